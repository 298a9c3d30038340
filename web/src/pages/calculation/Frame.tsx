import type { ComponentChildren } from 'preact'
import { useContext, useEffect, useRef } from 'preact/hooks'
import { DeclaredForm, type FieldExtras } from '../../form/DeclaredForm.tsx'
import type { Row } from '../../form/field.ts'
import { Choose } from '../../parts/Choose.tsx'
import { Underneath } from '../../parts/Result.tsx'
import { NothingYet, Waiting, Wrong } from '../../parts/Says.tsx'
import { Sheet } from '../../shell/Sheet.tsx'
import { chooseUnits, me } from '../../shell/session.ts'
import { dayWords } from '../../units/days.ts'
import { system } from '../../units/system.ts'
import { FromHouseContext } from './fromHouse.ts'
import type { Answer, Declaration, WorkedExample } from './types.ts'
import type { useCalculation } from './useCalculation.ts'

interface FrameProps<O> {
  declaration: Declaration
  house?: string
  work: ReturnType<typeof useCalculation<O>>
  /** The finding, once there is an answer. */
  heading?: ComponentChildren
  title?: string
  lead?: ComponentChildren
  extras?: FieldExtras
  /** Over the fields: a choice of which of them are known. */
  before?: ComponentChildren
  /** Words of the units choice: what this page's numbers are read in. */
  unitWords?: { IP: string; SI: string }
  /** The result. */
  children: (answer: Answer<Row, O>) => ComponentChildren
}

/** Published or independently computed examples to fill in; where there is none, that is said. */
function Examples({ examples, onFill }: { examples: WorkedExample[]; onFill: (inputs: Row) => void }) {
  const list = useRef<HTMLDetailsElement>(null)
  if (examples.length === 0) return <p class="note">No published example was found for this calculation.</p>
  return (
    <details class="open-up examples" ref={list}>
      <summary>
        <span>Fill in a worked example</span>
        <span class="note">{examples.length === 1 ? 'one' : `${examples.length} to choose from`}</span>
      </summary>
      <ul class="inside">
        {examples.map((example) => (
          <li key={example.id}>
            <button
              type="button"
              class="plain"
              onClick={() => {
                onFill(example.inputs)
                if (list.current) list.current.open = false
              }}
            >
              {example.title}
            </button>
            <span class="from">
              {example.source} ({example.status})
            </span>
          </li>
        ))}
      </ul>
    </details>
  )
}

/** What every calculation page has: what goes in on the left, what comes out on the right, the finding above both. */
export function Frame<O>(props: FrameProps<O>) {
  const { declaration, house, work, extras, unitWords = { IP: 'cfm, in., °F', SI: 'm³/h, mm, °C' } } = props
  const { form, answer, problem, busy, compute } = work
  const from = useContext(FromHouseContext)
  const came = answer.value
  const examples = declaration.workedExamples
  const result = useRef<HTMLHeadingElement>(null)
  useEffect(() => {
    // on a phone the result stands far below the button that was pressed
    const place = result.current?.getBoundingClientRect()
    if (came && place && place.top > innerHeight - 80) {
      result.current?.focus({ preventScroll: true })
      result.current?.scrollIntoView({ block: 'start' })
    }
  }, [came])
  const stale = came && form.touched.value
  return (
    <Sheet
      over={`Calculation · ${declaration.title} ${declaration.version}`}
      heading={(came && props.heading) || declaration.title}
      title={props.title ?? declaration.title}
      lead={(came && props.lead) || declaration.purpose}
      block={[
        ['House', house ?? 'none'],
        ['Sheet', declaration.title],
        ['Day', dayWords(me.value?.today)],
        ['Version', declaration.version],
        ['Kept as proof', 'no, trial'],
      ]}
    >
      <div class="calc">
        <section aria-labelledby="in">
          <h2 id="in">What goes in</h2>
          <Choose
            name="page-units"
            legend="Units"
            options={[
              ['IP', unitWords.IP],
              ['SI', unitWords.SI],
            ]}
            value={system.value}
            onChoose={(units) => void chooseUnits(units)}
          />
          <form
            noValidate
            onSubmit={(e) => {
              e.preventDefault()
              void compute()
            }}
          >
            <Examples examples={examples} onFill={(inputs) => form.fill(inputs)} />
            {props.before}
            {from && (
              <p class="say">
                Filled from “{from.title}” of {house}, with today's record. Nothing that is changed here is
                saved.
              </p>
            )}
            <DeclaredForm form={form} extras={from ? { ...extras, origin: from.origin } : extras} />
            <div class="acts">
              <button type="submit" class="b main">
                Compute
              </button>
            </div>
            {examples.length === 0 && (
              <p class="note">No published example was found for this calculation.</p>
            )}
          </form>
        </section>
        <section aria-labelledby="out" aria-live="polite">
          <h2 id="out" tabIndex={-1} ref={result}>
            What comes out
          </h2>
          {problem.value && (
            <Wrong problem={problem.value} outcome="Not computed." onAgain={() => void compute()}>
              {came && <p class="note">The answers below are the last ones computed.</p>}
            </Wrong>
          )}
          {busy.value && <Waiting what="Computing." />}
          {stale && !busy.value && (
            <p class="says">
              What goes in was changed since; the answers below still rest on what was computed last.
            </p>
          )}
          {came ? (
            props.children(came)
          ) : (
            <NothingYet>
              Fill in what is known and press Compute. Limits and sources stand under each field.
            </NothingYet>
          )}
          <Underneath declaration={declaration} answer={came as Answer | undefined} />
        </section>
      </div>
    </Sheet>
  )
}
