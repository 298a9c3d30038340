import { useSignal } from '@preact/signals'
import { useId } from 'preact/hooks'
import { post } from '../../api/http.ts'
import { Problem } from '../../api/problem.ts'
import { Reason } from '../../parts/Reason.tsx'
import { Wrong } from '../../parts/Says.tsx'
import { housePath } from '../../record/record.ts'
import type { Proof } from '../../record/types.ts'
import { valueWords } from '../../record/values.ts'
import { fromShown, parseNumber, shownBy, tidy } from '../../units/quantity.ts'
import { system } from '../../units/system.ts'

/** Evidence that somebody made elsewhere: a second opinion on the numbers of a proof, with the values that it saw. */
export function Submit({
  house,
  proofs,
  onDone,
}: {
  house: string
  proofs: Proof[]
  onDone: (kept: Proof) => void
}) {
  const computed = proofs.filter((p) => p.kind === 'COMPUTED')
  const about = useSignal(computed[0]?.key ?? '')
  const texts = useSignal<Record<string, string>>({})
  const words = useSignal({ title: '', method: '', evidence: '', hash: '', reason: '' })
  const said = useSignal('')
  const problem = useSignal<Problem | undefined>(undefined)
  const busy = useSignal(false)
  const id = useId()
  const proof = computed.find((p) => p.key === about.value)
  if (!proof) return null
  const numbers = proof.outputs.filter((o) => o.leading && o.unit)
  const put = (next: Partial<typeof words.value>) => {
    words.value = { ...words.value, ...next }
  }

  async function submit() {
    said.value = ''
    problem.value = undefined
    const w = words.value
    const filled = numbers.filter((o) => texts.value[o.name]?.trim())
    const wrong = filled.find((o) => Number.isNaN(parseNumber(texts.value[o.name]!)))
    if (wrong) said.value = `“${texts.value[wrong.name]}” is no number.`
    else if (filled.length === 0) said.value = 'Give at least one number.'
    else if (!w.title.trim() || !w.method.trim() || !w.evidence.trim() || !w.reason.trim())
      said.value = 'Title, method, evidence and reason are needed.'
    if (said.value) return
    busy.value = true
    try {
      const kept = await post<Proof>(`${housePath(house)}/proofs`, {
        kind: 'SUBMITTED',
        key: keyOf(w.title),
        title: w.title.trim(),
        calculation: null,
        bindings: proof!.relied
          .filter((r) => !r.path.startsWith('results.'))
          .map((r) => ({ input: r.input, path: r.path, value: seen(proof!, r) })),
        submission: {
          method: w.method.trim(),
          inputsHash: w.hash.trim(),
          text: w.evidence.trim(),
          results: filled.map((o) => ({
            name: o.name,
            label: o.label,
            unit: o.unit!.id,
            value: tidy(fromShown(parseNumber(texts.value[o.name]!), shownBy(o.unit!, system.value))),
            limit: o.limit === null ? null : Number(o.limit),
          })),
        },
        reason: w.reason.trim(),
      })
      texts.value = {}
      words.value = { title: '', method: '', evidence: '', hash: '', reason: '' }
      onDone(kept)
    } catch (thrown) {
      problem.value = Problem.of(thrown)
    } finally {
      busy.value = false
    }
  }

  return (
    <section class="no-print">
      <h2>Submit evidence</h2>
      <form
        class="narrow"
        noValidate
        onSubmit={(e) => {
          e.preventDefault()
          void submit()
        }}
      >
        <div class="field one">
          <label for={`${id}-about`}>A second opinion on</label>
          <div class="in">
            <select
              id={`${id}-about`}
              value={about.value}
              onChange={(e) => (about.value = e.currentTarget.value)}
            >
              {computed.map((p) => (
                <option key={p.key} value={p.key}>
                  {p.title}
                </option>
              ))}
            </select>
          </div>
          <p class="hint">
            It rests on the same {proof.relied.length} values of the record, as they are now. When one of them
            changes, your evidence says so.
          </p>
        </div>
        <TextLine
          id={`${id}-title`}
          label="Title"
          value={words.value.title}
          onType={(title) => put({ title })}
        />
        <fieldset class="group">
          <legend>What comes out</legend>
          {numbers.map((o) => (
            <div key={o.name} class="field">
              <label for={`${id}-${o.name}`}>
                {o.label}
                <span class="unit"> (may be left out)</span>
              </label>
              <div class="in">
                <input
                  id={`${id}-${o.name}`}
                  inputMode="decimal"
                  autocomplete="off"
                  value={texts.value[o.name] ?? ''}
                  onInput={(e) => (texts.value = { ...texts.value, [o.name]: e.currentTarget.value })}
                />
                <span>{shownBy(o.unit!, system.value).symbol}</span>
              </div>
              <p class="hint">
                the proof says {valueWords(o.value, o.unit)}
                {o.limit !== null && `, limit ${valueWords(o.limit, o.unit)}`}
              </p>
            </div>
          ))}
        </fieldset>
        <Reason
          label="Method"
          value={words.value.method}
          onType={(method) => put({ method })}
          hint="Standard, clause and steps, so that somebody else can follow them."
        />
        <Reason label="Evidence" value={words.value.evidence} onType={(evidence) => put({ evidence })} />
        <TextLine
          id={`${id}-hash`}
          label="Hash of the files that went in (may be left out)"
          value={words.value.hash}
          onType={(hash) => put({ hash })}
        />
        <Reason label="Reason" value={words.value.reason} onType={(reason) => put({ reason })} />
        {said.value && (
          <p class="says" role="alert">
            <b>Not submitted.</b> {said.value}
          </p>
        )}
        {problem.value && <Wrong problem={problem.value} outcome="Not submitted." />}
        <div class="acts">
          <button type="submit" class="b main" disabled={busy.value}>
            Submit
          </button>
        </div>
      </form>
    </section>
  )
}

function TextLine({
  id,
  label,
  value,
  onType,
}: {
  id: string
  label: string
  value: string
  onType: (text: string) => void
}) {
  return (
    <div class="field one">
      <label for={id}>{label}</label>
      <div class="in">
        <input id={id} class="words" value={value} onInput={(e) => onType(e.currentTarget.value)} />
      </div>
    </div>
  )
}

/** The value as it is now, in the type that it has in the record. */
function seen(proof: Proof, relied: Proof['relied'][number]): number | string | boolean {
  const difference = proof.differences.find((d) => d.path === relied.path)
  const text = difference?.new ?? relied.value
  if (text === 'true' || text === 'false') return text === 'true'
  const number = Number(text)
  return text.trim() !== '' && Number.isFinite(number) ? number : text
}

/** "Second opinion, altitude" as a name in paths: secondOpinionAltitude. */
function keyOf(title: string): string {
  const words = title.match(/[A-Za-z0-9]+/g) ?? []
  const joined = words
    .map((w, i) => (i === 0 ? w.toLowerCase() : w.charAt(0).toUpperCase() + w.slice(1).toLowerCase()))
    .join('')
  return (/^[a-z]/.test(joined) ? joined : `evidence${joined}`).slice(0, 40)
}
