import { useId } from 'preact/hooks'
import { pathOf, roundTicks } from '../chart/axis.ts'
import { Wide } from '../parts/lists.tsx'
import { tickText } from '../parts/Scale.tsx'

export interface YearCurve {
  words: string
  /** One carmine curve at most; the others are ink, solid or dashed. */
  is: 'main' | 'ink' | 'dash'
  /** One value a step of the axis; null breaks the line. */
  values: (number | null)[]
}

interface YearChartProps {
  title: string
  /** The finding, for readers. */
  says: string
  unit: string
  curves: YearCurve[]
  /** Places along the axis that carry a word: from 0 to the number of steps. */
  marks: { at: number; words: string }[]
  steps: number
  limit?: { value: number; words: string }
  min?: number
  /** The step that is looked at. */
  here?: number
  height?: number
}

const LEFT = 120
const RIGHT = 1120
const TOP = 30

/** Curves over a year or several: a limit with ground hatched past it, names at the ends of the lines. */
export function YearChart({
  title,
  says,
  unit,
  curves,
  marks,
  steps,
  limit,
  min,
  here,
  height = 256,
}: YearChartProps) {
  const id = useId().replace(/[^\w-]/g, '')
  const values = curves.flatMap((c) => c.values.filter((v): v is number => v !== null && Number.isFinite(v)))
  if (values.length === 0) return null
  const all = limit ? [...values, limit.value] : values
  const low = min ?? Math.min(...all)
  const ticks = roundTicks(low, Math.max(...all, low + 1e-9), 6)
  const step = ticks.length > 1 ? ticks[1]! - ticks[0]! : Math.abs(ticks[0] ?? 1) || 1
  const high = Math.max(...all) + step * (limit ? 0.6 : 0.15)
  const bottom = min ?? low - step * 0.15
  const foot = TOP + height
  const x = (at: number) => LEFT + ((RIGHT - LEFT) * at) / Math.max(1, steps)
  const y = (v: number) => TOP + ((high - v) / (high - bottom || 1)) * height
  const ends = apart(
    curves.map((c) => y(c.values.findLast((v): v is number => v !== null) ?? bottom)),
    limit && y(limit.value),
  )
  return (
    <Wide label={title}>
      <svg
        viewBox={`0 0 1310 ${foot + 40}`}
        role="img"
        aria-labelledby={`${id}-t ${id}-d`}
        style={{ '--least': '66rem' }}
      >
        <title id={`${id}-t`}>{title}</title>
        <desc id={`${id}-d`}>{says}</desc>
        <text class="t2" font-size="13" x="0" y="18">
          {unit}
        </text>
        {ticks.map((t) => (
          <g key={t}>
            <path class="grid" d={`M${LEFT} ${y(t)}H${RIGHT}`} />
            <text class="t2" font-size="13" x={LEFT - 10} y={y(t) + 4.5} text-anchor="end">
              {tickText(t)}
            </text>
          </g>
        ))}
        {limit && (
          <>
            <rect
              x={LEFT}
              y={y(high)}
              width={RIGHT - LEFT}
              height={Math.max(0, y(limit.value) - y(high))}
              fill="url(#k-lim)"
            />
            <path class="axis" stroke-width="2" d={`M${LEFT} ${y(limit.value)}H${RIGHT}`} />
            <text font-size="14" x={RIGHT + 12} y={y(limit.value) + 5}>
              {limit.words}
            </text>
          </>
        )}
        <path class="axis" d={`M${LEFT} ${foot}H${RIGHT}`} />
        {marks.map((m) => (
          <g key={m.at}>
            <path class="axis" d={`M${x(m.at)} ${foot}v5`} />
            <text class="t2" font-size="13" x={x(m.at)} y={foot + 24} text-anchor="middle">
              {m.words}
            </text>
          </g>
        ))}
        {curves.map((c, i) => (
          <g key={c.words}>
            <path
              class={c.is === 'main' ? 'red' : c.is === 'ink' ? 'o' : 'o2'}
              fill="none"
              stroke-width={c.is === 'main' ? 2.8 : 1.8}
              stroke-dasharray={c.is === 'dash' ? '7 5' : undefined}
              d={pathOf(c.values.map((v, k) => (v === null ? null : [x(k), y(v)])))}
            />
            <text class={c.is === 'main' ? 'tr' : ''} font-size="14" x={RIGHT + 12} y={ends[i]! + 5}>
              {c.words}
            </text>
          </g>
        ))}
        {here !== undefined && <path class="o" stroke-width="1.4" d={`M${x(here)} ${TOP}V${foot + 8}`} />}
      </svg>
    </Wide>
  )
}

const LINE = 18

/** Names moved apart where lines end close to each other or to the limit. */
function apart(wanted: number[], limit: number | undefined): number[] {
  const sorted = wanted.map((y, i) => ({ i, y })).sort((a, b) => a.y - b.y)
  let last = Number.NEGATIVE_INFINITY
  const places: number[] = []
  for (const w of sorted) {
    let y = Math.max(w.y, last + LINE)
    if (limit !== undefined && Math.abs(y - limit) < LINE) y = limit + LINE
    places[w.i] = y
    last = y
  }
  return places
}
