import { useSignal } from '@preact/signals'
import { useId } from 'preact/hooks'
import { post } from '../../api/http.ts'
import { Problem } from '../../api/problem.ts'
import { Reason } from '../../parts/Reason.tsx'
import { Wrong } from '../../parts/Says.tsx'
import type { HouseRecord } from '../../record/record.ts'
import type { Alternative, Decision, ValueChange } from '../../record/types.ts'
import { labelOf, leaves, valueWords } from '../../record/values.ts'
import { fromShown, parseNumber, shownBy, tidy } from '../../units/quantity.ts'
import { system } from '../../units/system.ts'
import { lettersOf } from '../change/WaysOn.tsx'

/** The alternatives as they were written, with what each would change; the computed table stands below. */
export function Alternatives({ decision, record }: { decision: Decision; record?: HouseRecord }) {
  const { alternatives, chosenAlternative, reason } = decision
  const letters = lettersOf(alternatives)
  // on paper the computed table beside the record says the same and more, wherever there is one
  const computed = alternatives.some((a) => a.changes.length > 0)
  return (
    <section class={computed ? 'no-print' : ''}>
      <h2>What is asked</h2>
      {alternatives.length === 0 ? (
        <p class="say">No alternative is written yet.</p>
      ) : (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
        <section class="wide" tabIndex={0} aria-label="Alternatives">
          <table class="t top">
            <thead>
              <tr>
                <th scope="col">alternative</th>
                <th scope="col">what the record would say</th>
                <th scope="col">reason for or against</th>
              </tr>
            </thead>
            <tbody>
              {alternatives.map((a, i) => (
                <tr key={a.id} class={a.id === chosenAlternative ? 'key' : ''}>
                  <th scope="row">
                    {a.changes.length > 0 && `${letters[i]} · `}
                    {a.title}
                    {a.id === chosenAlternative && <span class="sub">chosen</span>}
                  </th>
                  <td>
                    {a.changes.length === 0
                      ? 'as it is'
                      : a.changes.map((c) => (
                          <span key={c.path} class="block">
                            {changeWords(c, record)}
                          </span>
                        ))}
                  </td>
                  <td>{a.note}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      )}
      {reason && (
        <p class="chosen-because no-print">
          <b>Why it was chosen.</b> {reason}
        </p>
      )}
    </section>
  )
}

function changeWords(change: ValueChange, record: HouseRecord | undefined): string {
  const said = change.value === null ? null : String(change.value)
  if (!record) return `${change.path}: ${said ?? 'nothing'}`
  const known = pathIn(record, change.path)
  return `${known.label}: ${valueWords(said, known.unit, known.field)}`
}

/** A path of the record as people read it, with its declaration. */
function pathIn(record: HouseRecord, path: string) {
  const [part = '', ...rest] = path.split('.')
  const inner = rest.join('.')
  const field = record.field(path.replace(/\[[^\]]*\]/g, ''))
  const fields = record.types.find((t) => t.part === part)?.fields ?? []
  return {
    label: labelOf(fields, inner, record.parts[part]?.document ?? {}),
    unit: field?.unit ?? null,
    field,
  }
}

/** Writes another alternative: a title, a few values that would be others, and what speaks for it. */
export function AddAlternative({
  decision,
  at,
  record,
  onDone,
}: {
  decision: Decision
  at: string
  record?: HouseRecord
  onDone: () => void
}) {
  const title = useSignal('')
  const note = useSignal('')
  const changes = useSignal<{ path: string; text: string }[]>([])
  const said = useSignal('')
  const problem = useSignal<Problem | undefined>(undefined)
  const id = useId()
  if (!record || !decision.actions.includes('add-alternative')) return null
  const paths = Object.entries(record.parts)
    .flatMap(([part, p]) => (p ? leaves(p.document).map((l) => ({ ...l, path: `${part}.${l.path}` })) : []))
    .filter((l) => typeof l.value === 'number')
  // what this decision is about stands first
  const own = new Set([
    ...decision.governs,
    ...decision.alternatives.flatMap((a) => a.changes.map((c) => c.path)),
  ])
  const sorted = [...paths].sort((a, b) => Number(own.has(b.path)) - Number(own.has(a.path)))
  const words = record
  async function add() {
    said.value = ''
    problem.value = undefined
    if (!title.value.trim()) {
      said.value = 'Give it a title.'
      return
    }
    const read: ValueChange[] = []
    for (const c of changes.value) {
      const unit = pathIn(words, c.path).unit
      const typed = parseNumber(c.text)
      if (Number.isNaN(typed)) {
        said.value = `“${c.text}” is no number.`
        return
      }
      read.push({ path: c.path, value: unit ? tidy(fromShown(typed, shownBy(unit, system.value))) : typed })
    }
    const used = new Set(decision.alternatives.map((a) => a.id))
    const letter = [...'abcdefghijklmnopqrstuvwxyz'].find((l) => !used.has(l) && !used.has(l.toUpperCase()))!
    const alternative: Alternative = {
      id: [...used].some((u) => /^[A-Z]$/.test(u)) ? letter.toUpperCase() : letter,
      title: title.value.trim(),
      changes: read,
      note: note.value.trim(),
    }
    try {
      await post<Decision>(`${at}/alternatives`, alternative)
      onDone()
      title.value = ''
      note.value = ''
      changes.value = []
    } catch (thrown) {
      problem.value = Problem.of(thrown)
    }
  }
  const put = (i: number, next: Partial<{ path: string; text: string }>) => {
    changes.value = changes.value.map((c, j) => (j === i ? { ...c, ...next } : c))
  }
  return (
    <details class="open-up no-print">
      <summary>
        <span>
          <b>Write another alternative</b>
        </span>
      </summary>
      <div class="inside narrow">
        <div class="field one">
          <label for={`${id}-t`}>Title</label>
          <div class="in">
            <input
              id={`${id}-t`}
              class="words"
              value={title.value}
              onInput={(e) => (title.value = e.currentTarget.value)}
            />
          </div>
        </div>
        {changes.value.map((c, i) => {
          const known = c.path ? pathIn(record, c.path) : undefined
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: a row is its place
            <div key={i} class="field one">
              <label for={`${id}-p${i}`}>Value that would be another</label>
              <div class="in">
                <select
                  id={`${id}-p${i}`}
                  value={c.path}
                  onChange={(e) => put(i, { path: e.currentTarget.value })}
                >
                  {sorted.map((l) => {
                    const p = pathIn(record, l.path)
                    return (
                      <option key={l.path} value={l.path}>
                        {p.label}, now {valueWords(String(l.value), p.unit, p.field)}
                      </option>
                    )
                  })}
                </select>
              </div>
              <label for={`${id}-v${i}`} class="vh">
                Its value
              </label>
              <div class="in">
                <input
                  id={`${id}-v${i}`}
                  inputMode="decimal"
                  value={c.text}
                  onInput={(e) => put(i, { text: e.currentTarget.value })}
                />
                {known?.unit && <span>{shownBy(known.unit, system.value).symbol}</span>}
              </div>
            </div>
          )
        })}
        <p>
          <button
            type="button"
            class="b"
            onClick={() => (changes.value = [...changes.value, { path: sorted[0]?.path ?? '', text: '' }])}
          >
            Add a value
          </button>
        </p>
        <Reason label="Reason for or against" value={note.value} onType={(text) => (note.value = text)} />
        {said.value && (
          <p class="says" role="alert">
            <b>Not written.</b> {said.value}
          </p>
        )}
        {problem.value && <Wrong problem={problem.value} outcome="Not written." />}
        <div class="acts">
          <button type="button" class="b" onClick={() => void add()}>
            Write it
          </button>
        </div>
      </div>
    </details>
  )
}
