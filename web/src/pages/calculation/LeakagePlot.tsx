import { pathOf } from '../../chart/axis.ts'
import { apart, type Place, Plot } from '../../chart/Plot.tsx'
import type { Field, Row } from '../../form/field.ts'
import { DataTable } from '../../parts/lists.tsx'
import { shownBy, toShown } from '../../units/quantity.ts'
import { system } from '../../units/system.ts'
import type { Declaration } from './types.ts'
import { outputField, say, sayFigure, unitWord } from './words.ts'

interface CurvePoint {
  pressurePa: number
  airflowM3PerS: number
  lowAirflowM3PerS?: number
  highAirflowM3PerS?: number
}

interface Direction extends Row {
  points: Row[]
  curve: Row[]
}

/** What a tightness test comes to, as it is printed. */
export interface Tightness extends Row {
  airflow50M3PerS: number
  airflow50UncertaintyM3PerS: number
  ach50NetPerH: number
  depressurised?: Direction
  pressurised?: Direction
}

export const NAMES: [keyof Tightness & string, string][] = [
  ['depressurised', 'depressurised'],
  ['pressurised', 'pressurised'],
]

/** Flow against pressure in both directions, with the interval of each line, on logarithmic scales. */
export function LeakagePlot({
  declaration,
  out,
  target,
}: {
  declaration: Declaration
  out: Tightness
  target?: number
}) {
  const flow = outputField(declaration, 'airflow50M3PerS')
  const shown = shownBy(flow.unit!, system.value)
  const show = (v: number) => toShown(v, shown)
  const directions = NAMES.flatMap(([key, name]) => {
    const d = out[key] as Direction | undefined
    return d ? [{ name, d, points: d.points, curve: d.curve as unknown as CurvePoint[] }] : []
  })
  const flows = directions.flatMap(({ curve, points }) => [
    ...curve.flatMap((c) => [c.lowAirflowM3PerS ?? c.airflowM3PerS, c.highAirflowM3PerS ?? c.airflowM3PerS]),
    ...points.map((p) => p.standardAirflowM3PerS as number),
  ])
  const pressures = directions.flatMap(({ points }) => points.map((p) => p.inducedPressurePa as number))
  const low = Math.min(...flows) * 0.9
  const high = Math.max(...flows, target ?? 0) * 1.15
  const pa = { low: Math.min(4, ...pressures), high: Math.max(75, ...pressures) * 1.02 }
  const field = (name: string) => outputField(declaration, `${directions[0]!.name}.${name}`)
  return (
    <Plot
      title="Flow through the envelope against pressure, both on logarithmic scales"
      desc={directions
        .map(
          ({ name, d }) =>
            `${name}: ${say(field('airflow50M3PerS'), d.airflow50M3PerS)} at 50 Pa, exponent ${say(field('exponent'), d.exponent)}.`,
        )
        .join(' ')}
      x={{
        kind: 'logarithmic',
        ...pa,
        words: 'pressure, Pa',
        ticks: [4, 6, 10, 15, 20, 30, 40, 50, 75, 100, 150],
      }}
      y={{
        kind: 'logarithmic',
        low: show(low),
        high: show(high),
        words: `flow at standard conditions, ${shown.symbol}`,
      }}
      endRoom={150}
      caption="Lines are the fitted laws, marks the corrected readings, tone the 95 % interval of each line. The stroke at 50 Pa is the flow that the target allows."
      table={directions.map(({ name, points }) => (
        <DataTable
          key={name}
          label={`Corrected readings, ${name}`}
          caption={`Corrected readings, ${name}`}
          keyOf={(p) => `${p.inducedPressurePa} ${p.airflowM3PerS}`}
          rows={points}
          columns={outputField(declaration, `${name}.points`).fields.map((f: Field) => ({
            head: f.label,
            unit: unitWord(f),
            figures: true,
            cell: (p: Row) => sayFigure(f, p[f.name]),
          }))}
        />
      ))}
    >
      {(place) => (
        <>
          {directions.map(({ name, curve }) => (
            <Band key={name} place={place} curve={curve} show={show} />
          ))}
          {target !== undefined && <Target place={place} flow={show(target)} />}
          {directions.map(({ name, d, curve, points }, i) => {
            const end = curve.at(-1)!
            const ends = apart(
              directions.map(({ curve: c }) => place.y.at(show(c.at(-1)!.airflowM3PerS))),
              36,
            )
            return (
              <g key={name}>
                <path
                  class={i === 0 ? 'red' : 'o'}
                  stroke-width="2.2"
                  stroke-dasharray={i === 0 ? undefined : '8 5'}
                  d={pathOf(curve.map((c) => [place.x.at(c.pressurePa), place.y.at(show(c.airflowM3PerS))]))}
                />
                {points.map((p) => (
                  <Mark
                    key={`${p.inducedPressurePa}`}
                    square={i === 1}
                    x={place.x.at(p.inducedPressurePa as number)}
                    y={place.y.at(show(p.standardAirflowM3PerS as number))}
                  />
                ))}
                <text
                  class={i === 0 ? 'tr' : 'tb'}
                  font-size="13"
                  x={place.x.at(end.pressurePa) + 10}
                  y={ends[i]! + 2}
                >
                  {place.narrow ? (name === 'depressurised' ? 'fan out' : 'fan in') : name}
                </text>
                <text class="t2" font-size="13" x={place.x.at(end.pressurePa) + 10} y={ends[i]! + 18}>
                  n {sayFigure(field('exponent'), d.exponent)}
                  {!place.narrow && d.exponentInterval !== undefined
                    ? ` ±${sayFigure(field('exponentInterval'), d.exponentInterval)}`
                    : ''}
                </text>
              </g>
            )
          })}
        </>
      )}
    </Plot>
  )
}

function Band({ place, curve, show }: { place: Place; curve: CurvePoint[]; show: (v: number) => number }) {
  const known = curve.filter((c) => c.lowAirflowM3PerS !== undefined && c.highAirflowM3PerS !== undefined)
  if (known.length < 2) return null
  const up = known.map((c): [number, number] => [
    place.x.at(c.pressurePa),
    place.y.at(show(c.highAirflowM3PerS!)),
  ])
  const down = known
    .map((c): [number, number] => [place.x.at(c.pressurePa), place.y.at(show(c.lowAirflowM3PerS!))])
    .reverse()
  return <path class="tone" d={`${pathOf([...up, ...down])}Z`} />
}

/** The flow that the target allows stands at 50 Pa only; above it is ground one must not be on. */
function Target({ place, flow }: { place: Place; flow: number }) {
  const x = place.x.at(50)
  const y = place.y.at(flow)
  const half = place.narrow ? 16 : 26
  return (
    <g>
      <rect x={x - half} y={y - 12} width={half * 2} height="12" fill="url(#k-lim)" />
      <path class="axis" stroke-width="2" d={`M${x - half} ${y}h${half * 2}`} />
      <text class="t2 halo" stroke-width="5" font-size="13" x={x - half - 6} y={y - 2} text-anchor="end">
        target
      </text>
    </g>
  )
}

function Mark({ x, y, square }: { x: number; y: number; square: boolean }) {
  return square ? (
    <rect class="o open-mark" stroke-width="1.8" x={x - 4} y={y - 4} width="8" height="8" />
  ) : (
    <circle class="o open-mark" stroke-width="1.8" cx={x} cy={y} r="4.5" />
  )
}
