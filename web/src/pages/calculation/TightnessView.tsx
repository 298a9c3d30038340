import type { ComponentChildren } from 'preact'
import { pathOf } from '../../chart/axis.ts'
import { apart, type Place, Plot } from '../../chart/Plot.tsx'
import type { Field, Row } from '../../form/field.ts'
import { DataTable, Wide } from '../../parts/lists.tsx'
import { Outputs, OutputValue } from '../../parts/Result.tsx'
import { shownBy, toShown } from '../../units/quantity.ts'
import { system } from '../../units/system.ts'
import type { ViewProps } from './CalculationPage.tsx'
import { Frame } from './Frame.tsx'
import type { Answer, Declaration } from './types.ts'
import { useCalculation } from './useCalculation.ts'
import { inputField, outputField, say, sayFigure, unitWord } from './words.ts'

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

interface Tightness extends Row {
  airflow50M3PerS: number
  airflow50UncertaintyM3PerS: number
  ach50NetPerH: number
  depressurised?: Direction
  pressurised?: Direction
}

/** What may be left out by the letter, but hardly ever is. */
const OPEN = [
  'altitudeM',
  'floorsVolumeM3',
  'targetAch50PerH',
  'targetVolume',
  'flowAccuracyFraction',
  'pressureAccuracyFraction',
]

/** Both directions in one plot with their uncertainty, both volume conventions side by side, and a hole as big. */
export function TightnessView({ declaration, house }: ViewProps) {
  const work = useCalculation<Tightness>(declaration, {
    standard: 'E779',
    fit: 'ORDINARY',
    depressurisation: {},
  })
  const answer = work.answer.value
  return (
    <Frame
      declaration={declaration}
      house={house}
      work={work}
      title="Tightness test"
      extras={{ open: (path) => OPEN.includes(String(path[0])) }}
      heading={answer && finding(declaration, answer)}
      lead={answer && asBigAs(declaration, answer)}
    >
      {(came) => <Result declaration={declaration} answer={came} />}
    </Frame>
  )
}

function finding(declaration: Declaration, answer: Answer<Row, Tightness>): string {
  const out = answer.printed
  const ach = outputField(declaration, 'ach50NetPerH')
  if (answer.rejected) return 'This test is no evidence. What speaks against it stands below.'
  const compared = out.comparedAch50PerH
  const target = answer.inputs.targetAch50PerH
  const basis =
    answer.inputs.targetVolume === 'WITH_FLOORS' ? 'the volume with floor depth' : 'net air volume'
  if (typeof compared !== 'number' || typeof target !== 'number') {
    const flow = say(outputField(declaration, 'airflow50M3PerS'), out.airflow50M3PerS)
    return `At 50\u202fPa this house leaks ${flow}: ${sayFigure(ach, out.ach50NetPerH)} times its net air volume in an hour.`
  }
  const change = `${sayFigure(ach, compared)} changes of air per hour at 50\u202fPa, on ${basis}`
  const limit = sayFigure(ach, target)
  if (out.verdict === 'PASSES') return `${change}. The target of ${limit} is met.`
  if (out.verdict === 'FAILS') return `${change}. That is over the target of ${limit}.`
  const spread = sayFigure(
    outputField(declaration, 'comparedAch50UncertaintyPerH'),
    out.comparedAch50UncertaintyPerH,
  )
  return `${change}, ±${spread}: not proven against the target of ${limit}.`
}

function asBigAs(declaration: Declaration, answer: Answer<Row, Tightness>): string {
  const out = answer.printed
  const round = say(outputField(declaration, 'roundHoleDiameterM'), out.roundHoleDiameterM)
  const side = say(outputField(declaration, 'squareHoleSideM'), out.squareHoleSideM)
  return `All leaks gathered in one sharp-edged hole would be as big as a square of ${side}, or a round hole ${round} across.`
}

function Result({ declaration, answer }: { declaration: Declaration; answer: Answer<Row, Tightness> }) {
  const out = answer.printed
  return (
    <>
      <LeakagePlot declaration={declaration} out={out} target={targetFlow(answer)} />
      <Volumes declaration={declaration} answer={answer} />
      <Directions declaration={declaration} out={out} />
      <Hole declaration={declaration} out={out} />
      <Outputs
        fields={declaration.outputs}
        record={out}
        hide={[
          'depressurised',
          'pressurised',
          'squareHoleSideM',
          'roundHoleDiameterM',
          'airflow50UncertaintyM3PerS',
          'ach50NetPerH',
          'ach50FloorsPerH',
          'comparedAch50PerH',
          'comparedAch50UncertaintyPerH',
          'verdict',
        ]}
      />
    </>
  )
}

/** The flow at 50 Pa that the target allows. */
function targetFlow(answer: Answer<Row, Tightness>): number | undefined {
  const { targetAch50PerH: target, targetVolume, netVolumeM3, floorsVolumeM3 } = answer.inputs
  const volume = targetVolume === 'WITH_FLOORS' ? floorsVolumeM3 : netVolumeM3
  return typeof target === 'number' && typeof volume === 'number' ? (target * volume) / 3600 : undefined
}

const NAMES: [keyof Tightness & string, string][] = [
  ['depressurised', 'depressurised'],
  ['pressurised', 'pressurised'],
]

function LeakagePlot({
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

/** The same leak on both volume conventions, side by side; the target counts on one of them. */
function Volumes({ declaration, answer }: { declaration: Declaration; answer: Answer<Row, Tightness> }) {
  const { inputs, printed: out } = answer
  const ach = outputField(declaration, 'ach50NetPerH')
  const relative = out.airflow50UncertaintyM3PerS / out.airflow50M3PerS
  const bases = [
    { id: 'NET', words: 'Net air volume', volume: inputs.netVolumeM3, ach: out.ach50NetPerH },
    {
      id: 'WITH_FLOORS',
      words: 'Volume with floor depth',
      volume: inputs.floorsVolumeM3,
      ach: out.ach50FloorsPerH,
    },
  ]
  const counts = (id: string) => inputs.targetAch50PerH !== undefined && inputs.targetVolume === id
  const cells = (of: (b: (typeof bases)[number]) => ComponentChildren) =>
    bases.map((b) => (
      <td key={b.id} class="n">
        {b.volume === undefined ? 'not given' : of(b)}
      </td>
    ))
  const volume = inputField(declaration, 'netVolumeM3')
  return (
    <Wide label="The same leak on both volumes">
      <table class="t fits">
        <caption>The same leak on both volumes</caption>
        <thead>
          <tr>
            <th scope="col">
              <span class="vh">what</span>
            </th>
            {bases.map((b) => (
              <th key={b.id} scope="col" class="n">
                {b.words}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">
              Volume<span class="sub">{unitWord(volume)}</span>
            </th>
            {cells((b) => sayFigure(volume, b.volume))}
          </tr>
          <tr class="key">
            <th scope="row">
              ACH50<span class="sub">1/h, ± with instruments</span>
            </th>
            {cells((b) => (
              <>
                <b>{sayFigure(ach, b.ach)}</b> ±{((b.ach as number) * relative).toFixed(3)}
              </>
            ))}
          </tr>
          {inputs.targetAch50PerH !== undefined && (
            <>
              <tr>
                <th scope="row">
                  Target<span class="sub">1/h</span>
                </th>
                {cells((b) =>
                  counts(b.id) ? sayFigure(ach, inputs.targetAch50PerH) : 'does not count here',
                )}
              </tr>
              <tr>
                <th scope="row">Against the target</th>
                {cells((b) =>
                  counts(b.id) ? (
                    <OutputValue field={outputField(declaration, 'verdict')} value={out.verdict} />
                  ) : (
                    '–'
                  ),
                )}
              </tr>
            </>
          )}
        </tbody>
      </table>
    </Wide>
  )
}

const ROWS = [
  'airflow50M3PerS',
  'airflow50UncertaintyFraction',
  'exponent',
  'exponentInterval',
  'standardCoefficientM3PerSPaN',
  'rSquared',
  'leakageArea4M2',
  'equivalentArea10M2',
  'baselinePa',
]

function Directions({ declaration, out }: { declaration: Declaration; out: Tightness }) {
  const run = NAMES.filter(([key]) => out[key] !== undefined)
  if (run.length === 0) return null
  return (
    <Wide label="Each direction by itself">
      <table class="t fits">
        <caption>Each direction by itself</caption>
        <thead>
          <tr>
            <th scope="col">
              <span class="vh">what</span>
            </th>
            {run.map(([key, name]) => (
              <th key={key} scope="col" class="n">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {ROWS.map((name) => {
            const field = outputField(declaration, `${run[0]![0]}.${name}`)
            return (
              <tr key={name}>
                <th scope="row">
                  {field.label}
                  <span class="sub">{unitWord(field)}</span>
                </th>
                {run.map(([key]) => (
                  <td key={key} class="n">
                    {sayFigure(field, (out[key] as Row)[name])}
                  </td>
                ))}
              </tr>
            )
          })}
        </tbody>
      </table>
    </Wide>
  )
}

/** The hole at its true proportion beside a sheet of letter paper, in millimetres. */
function Hole({ declaration, out }: { declaration: Declaration; out: Tightness }) {
  const side = (out.squareHoleSideM as number) * 1000
  const across = (out.roundHoleDiameterM as number) * 1000
  const words = say(outputField(declaration, 'roundHoleDiameterM'), out.roundHoleDiameterM)
  const size = Math.max(290, side + 20, across + 20)
  return (
    <figure class="drawing hole">
      <svg
        viewBox={`-6 -6 ${236 + side + across + 60} ${size}`}
        role="img"
        aria-label={`A hole ${words} across beside a sheet of letter paper`}
      >
        <rect class="o" stroke-width="1.5" x="0" y="0" width="215.9" height="279.4" />
        <text class="t2" font-size="13" x="10" y="268">
          letter paper, to scale
        </text>
        <rect class="o cut" stroke-width="2.5" x="236" y={279.4 - side} width={side} height={side} />
        <circle
          class="o cut"
          stroke-width="2.5"
          cx={256 + side + across / 2}
          cy={279.4 - across / 2}
          r={across / 2}
        />
      </svg>
      <figcaption>
        Either hole lets through as much as all leaks together at 10&nbsp;Pa (sharp-edged, so that the jet
        fills about six tenths of it).
      </figcaption>
    </figure>
  )
}
