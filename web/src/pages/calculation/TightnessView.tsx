import type { ComponentChildren } from 'preact'
import type { Row } from '../../form/field.ts'
import { Wide } from '../../parts/lists.tsx'
import { Outputs, OutputValue } from '../../parts/Result.tsx'
import type { ViewProps } from './CalculationPage.tsx'
import { Frame } from './Frame.tsx'
import { LeakagePlot, NAMES, type Tightness } from './LeakagePlot.tsx'
import type { Answer, Declaration } from './types.ts'
import { useCalculation } from './useCalculation.ts'
import { inputField, outputField, say, sayFigure, unitWord } from './words.ts'

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
