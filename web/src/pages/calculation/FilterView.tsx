import { useSignal } from '@preact/signals'
import type { ComponentChildren } from 'preact'
import { at, type Field, type Row } from '../../form/field.ts'
import { Wide } from '../../parts/lists.tsx'
import { Outputs, OutputValue } from '../../parts/Result.tsx'
import { StateWord } from '../../parts/Status.tsx'
import type { ViewProps } from './CalculationPage.tsx'
import { Frame } from './Frame.tsx'
import type { Answer, Declaration } from './types.ts'
import { useCalculation } from './useCalculation.ts'
import { outputField, say, sayFigure, unitWord } from './words.ts'

interface Option extends Row {
  id: string
  verdict: string
  reason: string
}

interface Sizing extends Row {
  best?: string
  options: Option[] & Row[]
}

/** What people weigh first; the other rows open on request. */
const FIRST = [
  'faceMPerS',
  'cleanHighPa',
  'cleanLowPa',
  'loadedPa',
  'staticLeftPa',
  'changeAtLoad',
  'coilAir',
  'indoorUgPerM3',
  'fanLowW',
  'lowYearCost',
]
const ASIDE = ['id', 'verdict', 'reason']

/** The candidates as columns of one table, best first, each with why it passes or fails. */
export function FilterView({ declaration, house }: ViewProps) {
  const work = useCalculation<Sizing>(declaration)
  const answer = work.answer.value
  return (
    <Frame
      declaration={declaration}
      house={house}
      work={work}
      title="Filter sizing"
      heading={answer && finding(declaration, answer)}
      lead={
        answer &&
        `The air handler leaves ${say(outputField(declaration, 'staticBudgetPa'), answer.printed.staticBudgetPa)} of static for the filter.`
      }
    >
      {(came) => <Result declaration={declaration} answer={came} />}
    </Frame>
  )
}

function nameOf(answer: Answer<Row, Sizing>, id: string): string {
  const candidates = (answer.inputs.candidates as Row[] | undefined) ?? []
  return String(candidates.find((c) => c.id === id)?.label ?? id)
}

function finding(declaration: Declaration, answer: Answer<Row, Sizing>): string {
  const { best, options } = answer.printed
  const first = options.find((o) => o.id === best)
  if (!first) return options.length === 1 ? 'This candidate does not pass.' : 'None of the candidates passes.'
  const drop = say(outputField(declaration, 'options.cleanHighPa'), first.cleanHighPa)
  return `${nameOf(answer, first.id)} serves best: ${drop} clean at high flow.`
}

function Result({ declaration, answer }: { declaration: Declaration; answer: Answer<Row, Sizing> }) {
  const all = useSignal(false)
  const { options } = answer.printed
  const fields = outputField(declaration, 'options').fields.filter((f) => !ASIDE.includes(f.name))
  const known = fields.filter((f) => options.some((o) => o[f.name] !== undefined))
  const first = known.filter((f) => FIRST.includes(f.name))
  const shown = all.value ? known : first
  const limit = (f: Field) => limitOf(f, answer)
  return (
    <>
      <div class="abreast">
        <Wide label="Candidates side by side">
          <table class="t stick">
            <caption>Candidates side by side, best first</caption>
            <thead>
              <tr>
                <th scope="col">
                  <span class="vh">what</span>
                </th>
                {options.map((o) => (
                  <th key={o.id} scope="col" class="option">
                    <b>{nameOf(answer, o.id)}</b>
                    <span class="sub">{o.id}</span>
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              <tr class="key">
                <th scope="row">Result</th>
                {options.map((o) => (
                  <td key={o.id}>
                    <StateWord state={o.verdict} />
                  </td>
                ))}
              </tr>
              {shown.map((f) => (
                <tr key={f.name}>
                  <th scope="row">
                    {f.label}
                    <span class="sub">{[unitWord(f), limit(f)].filter(Boolean).join(', ')}</span>
                  </th>
                  {options.map((o) => (
                    <td key={o.id}>
                      <OutputValue field={f} value={o[f.name]} plain />
                    </td>
                  ))}
                </tr>
              ))}
              <tr>
                <th scope="row">Reason</th>
                {options.map((o) => (
                  <td key={o.id} class="reason">
                    <Reason text={o.reason} />
                  </td>
                ))}
              </tr>
            </tbody>
          </table>
        </Wide>
      </div>
      <div class="ways">
        {options.map((o) => (
          <section key={o.id} class="way" aria-label={nameOf(answer, o.id)}>
            <h3>
              <b>{nameOf(answer, o.id)}</b> <span class="unit">{o.id}</span>
            </h3>
            <p>
              <StateWord state={o.verdict} />
            </p>
            <Reason text={o.reason} />
            <dl class="facts">
              {shown.map((f) => (
                <div key={f.name}>
                  <dt>
                    {f.label}
                    {limit(f) && <span class="from">{limit(f)}</span>}
                  </dt>
                  <dd>
                    <OutputValue field={f} value={o[f.name]} />
                  </dd>
                </div>
              ))}
            </dl>
          </section>
        ))}
      </div>
      {known.length > first.length && (
        <div class="acts">
          <button type="button" class="b" aria-expanded={all.value} onClick={() => (all.value = !all.value)}>
            {all.value ? 'Only the rows that decide' : `The other ${known.length - first.length} rows too`}
          </button>
        </div>
      )}
      <Outputs fields={declaration.outputs} record={answer.printed} hide={['best', 'options']} />
    </>
  )
}

/** Reasons come as sentences; each on its own line. */
function Reason({ text }: { text: string }): ComponentChildren {
  return (
    <>
      {text.split(/(?<=\.)\s+/).map((sentence) => (
        <span key={sentence} class="sub">
          {sentence}
        </span>
      ))}
    </>
  )
}

function limitOf(field: Field, answer: Answer<Row, Sizing>): string {
  if (!field.limitField) return ''
  const path = field.limitField.split('.')
  const value = at(answer.inputs, path) ?? at(answer.printed, path)
  return typeof value === 'number' ? `at most ${sayFigure(field, value)}` : ''
}
