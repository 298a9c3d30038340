import { useId } from 'preact/hooks'
import { Wide } from '../../parts/lists.tsx'
import { isUnnamed, lineOf, ringOf, type Side, stationsOf, type XY } from './ring.ts'
import type { Joins, Line } from './types.ts'

const BAND = 30

/** The faces around the conditioned volume with one control's line: closed, or open where the record leaves it open. */
export function JoinsDrawing({
  joins,
  control,
  sentence,
}: {
  joins: Joins
  control: Line
  sentence: string
}) {
  const id = useId().replace(/[^\w-]/g, '')
  const ring = ringOf(joins.assemblies)
  const stations = stationsOf(ring, joins)
  const line = lineOf(ring, stations, joins.breaks, control)
  const label = (a: string) => joins.assemblies.find((one) => one.id === a)
  const carrier = (a: string) => label(a)?.carriers.find((c) => c.control === control)?.layerLabel
  const numbers = new Map(joins.junctions.map((j, i) => [j.id, i + 1]))
  const named = new Set<string>()
  return (
    <figure class="drawing joins-drawing">
      <Wide label="The line around the house">
        <svg
          viewBox="0 40 1100 570"
          role="img"
          aria-labelledby={`${id}-t ${id}-d`}
          style={{ '--least': '50rem' }}
        >
          <title id={`${id}-t`}>
            Scheme of the house cut open, with its line for {labelOf(joins, control)}
          </title>
          <desc id={`${id}-d`}>{sentence}</desc>
          <path fill="url(#k-earth)" d="M40 520H236V560H864V520H1060V590H40z" />
          {ring.map((side) => (
            <path key={`${side.assembly} ${side.from}`} class="o cut" stroke-width="1.4" d={band(side)} />
          ))}
          <path
            class="red"
            data-line={control}
            data-closed={line.closed}
            stroke-width="5"
            fill="none"
            d={line.d}
          />
          {ring.map((side) => {
            const first = !named.has(side.assembly)
            named.add(side.assembly)
            if (!first) return null
            return (
              <SideWords
                key={side.assembly}
                side={side}
                name={label(side.assembly)?.label ?? side.assembly}
                layer={carrier(side.assembly)}
              />
            )
          })}
          {control === 'AIR' &&
            stations
              .filter((s) => s.kind === 'hole' && joins.holes.some((h) => h.id === s.id && h.holds))
              .map((s) => (
                <circle key={s.id} class="red pap" stroke-width="3" cx={s.at[0]} cy={s.at[1]} r="6" />
              ))}
          {stations
            .filter((s) => s.kind === 'junction')
            .map((s) => {
              const [x, y] = outward(s.at)
              return (
                <g key={`${s.id} ${s.along}`}>
                  <path class="o" stroke-width="1.2" d={`M${s.at[0]} ${s.at[1]}L${x} ${y}`} />
                  <rect class="o pap" stroke-width="1.6" x={x - 12} y={y - 12} width="24" height="24" />
                  <text class="tb" font-size="14" x={x} y={y + 5} text-anchor="middle">
                    {numbers.get(s.id)}
                  </text>
                </g>
              )
            })}
          <text class="tx" font-size="16" x="550" y="320" text-anchor="middle">
            conditioned volume
          </text>
        </svg>
      </Wide>
      <figcaption>
        A scheme, not to scale: every face stands once, numbers are those of the junctions below. The line
        runs along the layer that is named beside each face; where it is open, the record leaves it open.
        {control === 'AIR' &&
          ' A ring is a hole with its own seal; a break without a number is a hole that is not sealed or not named.'}
        {joins.breaks.some((b) => b.control === control && isUnnamed(b)) &&
          ' Nobody has said where an unnamed hole goes; it is drawn in a wall.'}
      </figcaption>
    </figure>
  )
}

export const labelOf = (joins: Joins, control: Line) =>
  joins.lines.find((l) => l.control === control)?.controlLabel ?? control.toLowerCase()

/** The band of a face: its line is the middle. */
function band({ from: [x0, y0], to: [x1, y1] }: Side): string {
  const h = BAND / 2
  return x0 === x1 ? `M${x0 - h} ${y0}V${y1}H${x0 + h}V${y0}z` : `M${x0} ${y0 - h}H${x1}V${y0 + h}H${x0}z`
}

const MIDDLE: XY = [550, 320]
const AWAY = 46

/** A place outside of a point on the ring, for its number. */
function outward([x, y]: XY): XY {
  const onSide = x === 250 || x === 850
  const onLevel = y === 120 || y === 520
  const dx = onSide ? Math.sign(x - MIDDLE[0]) * AWAY : 0
  const dy = onLevel ? Math.sign(y - MIDDLE[1]) * AWAY : 0
  return [x + dx, y + dy]
}

function SideWords({ side, name, layer }: { side: Side; name: string; layer: string | undefined }) {
  const [x, y] = [(side.from[0] + side.to[0]) / 2, (side.from[1] + side.to[1]) / 2]
  const upright = side.from[0] === side.to[0]
  // beside a wall inside, over a roof's underside, over a slab
  const [tx, ty, anchor] = upright
    ? [x + 26, y - 4, 'start' as const]
    : [x, y < 300 ? y + 40 : y - 44, 'middle' as const]
  return (
    <>
      <text font-size="14" class="tb" x={tx} y={ty} text-anchor={anchor}>
        {name}
      </text>
      <text font-size="14" class={layer ? 'tr' : 't2'} x={tx} y={ty + 18} text-anchor={anchor}>
        {layer ?? 'no layer is named'}
      </text>
    </>
  )
}
