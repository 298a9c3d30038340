import { useId } from 'preact/hooks'
import { pathOf, roundTicks } from '../chart/axis.ts'
import { Wide } from '../parts/lists.tsx'
import { tickText } from '../parts/Scale.tsx'
import { LEFT, RIGHT, WIDTH } from './wallModel.ts'

/** One curve over the depth of a wall. */
export interface Curve {
  words: string
  /** The one carmine curve of a strip; the others are ink, solid or dashed. */
  is: 'main' | 'ink' | 'dash'
  /** From inside to outside; null breaks the line. */
  points: { depthM: number; value: number | null }[]
}

/** Curves that share an axis. Values are as shown. */
export interface Strip {
  id: string
  /** "°C": over the axis. */
  unit: string
  curves: Curve[]
  min?: number
  max?: number
  /** Where one must not be for long, hatched on its far side. */
  limit?: { value: number; words: string }
}

const TALL = 168
const FOOT = 28

export const stripsHeight = (strips: Strip[]) => strips.length * (TALL + FOOT)

export function StripChart({ strip, at, top }: { strip: Strip; at: (m: number) => number; top: number }) {
  const values = strip.curves.flatMap((c) => c.points.flatMap((p) => (p.value === null ? [] : [p.value])))
  const all = strip.limit ? [...values, strip.limit.value] : values
  const ticks = roundTicks(strip.min ?? Math.min(...all), strip.max ?? Math.max(...all), 6)
  const step = (ticks[1] ?? 1) - (ticks[0] ?? 0)
  const low = strip.min ?? Math.min(...all, ticks[0]!) - step * 0.15
  const high = strip.max ?? Math.max(...all, ticks.at(-1)!) + step * 0.15
  const y = (v: number) => top + 24 + ((high - v) / (high - low)) * (TALL - 24)
  const ends = endLabels(strip.curves, y)
  return (
    <g data-strip={strip.id}>
      <text class="t2" font-size="13" x="0" y={top + 10}>
        {strip.unit}
      </text>
      {ticks.map((t) => (
        <g key={t}>
          <path class="grid" d={`M${LEFT} ${y(t)}H${RIGHT}`} />
          <text class="t2" font-size="13" x={LEFT - 10} y={y(t) + 4.5} text-anchor="end">
            {tickText(t)}
          </text>
        </g>
      ))}
      {strip.limit && (
        <>
          <rect
            x={LEFT}
            y={y(high)}
            width={RIGHT - LEFT}
            height={Math.max(0, y(strip.limit.value) - y(high))}
            fill="url(#k-lim)"
          />
          <path class="axis" stroke-width="2" d={`M${LEFT} ${y(strip.limit.value)}H${RIGHT}`} />
          <text class="t2 halo" stroke-width="5" font-size="13" x={LEFT + 10} y={y(strip.limit.value) + 17}>
            {strip.limit.words}
          </text>
        </>
      )}
      {strip.curves.map((c, i) => (
        <g key={c.words}>
          <path
            class={c.is === 'main' ? 'red' : c.is === 'ink' ? 'o' : 'o2'}
            stroke-width={c.is === 'dash' ? 1.8 : 2.6}
            stroke-dasharray={c.is === 'dash' ? '6 5' : undefined}
            fill="none"
            d={pathOf(c.points.map((p) => (p.value === null ? null : [at(p.depthM), y(p.value)])))}
          />
          <text class={c.is === 'main' ? 'tr' : ''} font-size="13" x={RIGHT + 14} y={ends[i]! + 4.5}>
            {c.words}
          </text>
        </g>
      ))}
    </g>
  )
}

const LINE = 17

/** Names at the ends of their lines, moved apart where two lines end together. */
function endLabels(curves: Curve[], y: (v: number) => number): number[] {
  const wanted = curves
    .map((c, i) => ({ i, y: y(c.points.findLast((p) => p.value !== null)?.value ?? 0) }))
    .sort((a, b) => a.y - b.y)
  for (let k = 1; k < wanted.length; k++) {
    wanted[k]!.y = Math.max(wanted[k]!.y, wanted[k - 1]!.y + LINE)
  }
  const places: number[] = []
  for (const w of wanted) places[w.i] = w.y
  return places
}

/** Strips on their own, where the wall itself stands further up the page. */
export function Strips({
  label,
  says,
  lengthM,
  strips,
  foot,
}: {
  label: string
  says: string
  lengthM: number
  strips: Strip[]
  foot: string
}) {
  const id = useId().replace(/[^\w-]/g, '')
  const at = (m: number) => LEFT + ((RIGHT - LEFT) * m) / (lengthM || 1)
  const tall = stripsHeight(strips)
  return (
    <Wide label={label}>
      <svg
        viewBox={`0 0 ${WIDTH + 30} ${tall + 20}`}
        role="img"
        aria-labelledby={`${id}-t ${id}-d`}
        style={{ '--least': '66rem' }}
      >
        <title id={`${id}-t`}>{label}</title>
        <desc id={`${id}-d`}>{says}</desc>
        {strips.map((strip, i) => (
          <StripChart key={strip.id} strip={strip} at={at} top={8 + stripsHeight(strips.slice(0, i))} />
        ))}
        <text class="t2" font-size="13" x={LEFT} y={tall + 10}>
          {foot}
        </text>
      </svg>
    </Wide>
  )
}
