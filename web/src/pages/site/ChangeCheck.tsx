import { useSignal } from '@preact/signals'
import { useId } from 'preact/hooks'
import { post } from '../../api/http.ts'
import { Problem } from '../../api/problem.ts'
import { Wrong } from '../../parts/Says.tsx'
import type { Check, CheckRow } from './types.ts'

const pathOf = (check: Check) =>
  `/houses/${encodeURIComponent(check.houseId)}/cover-checks/${encodeURIComponent(check.code)}`

/** The principal lets a row pass as it is, with the reason beside it for good. */
export function AcceptRow({
  check,
  row,
  onAccepted,
}: {
  check: Check
  row: CheckRow
  onAccepted: (next: Check) => void
}) {
  return (
    <OneSentence
      words="Accept it as it is"
      label="Why it may pass as it is"
      hint="The answer stays as it was given. Your name and this reason stand beside it, and it no longer stops covering."
      button="Accept it"
      outcome="Not accepted."
      longest={1000}
      send={async (reason) =>
        onAccepted(
          await post<Check>(`${pathOf(check)}/rows/${encodeURIComponent(row.id)}/acceptance`, { reason }),
        )
      }
    />
  )
}

/** One more place where the same is looked at. */
export function AddPlace({
  check,
  templateRow,
  onAdded,
}: {
  check: Check
  templateRow: string
  onAdded: (next: Check, place: string) => void
}) {
  return (
    <OneSentence
      words="Add a place"
      label="Which place"
      hint="As people on the site call it: window W4, north wall under the eave."
      button="Add it"
      outcome="Not added."
      longest={60}
      oneLine
      send={async (place) =>
        onAdded(await post<Check>(`${pathOf(check)}/places`, { place, templateRow }), place)
      }
    />
  )
}

interface OneSentenceProps {
  /** The key that opens it. */
  words: string
  label: string
  hint: string
  button: string
  outcome: string
  longest: number
  oneLine?: boolean
  send: (text: string) => Promise<void>
}

/** A key that opens one field and sends what is written in it; what was written stays until it is taken. */
function OneSentence({ words, label, hint, button, outcome, longest, oneLine, send }: OneSentenceProps) {
  const id = useId()
  const open = useSignal(false)
  const text = useSignal('')
  const busy = useSignal(false)
  const problem = useSignal<Problem | undefined>(undefined)
  async function go(event: Event) {
    event.preventDefault()
    busy.value = true
    problem.value = undefined
    try {
      await send(text.value.trim())
      text.value = ''
      open.value = false
    } catch (thrown) {
      problem.value = Problem.of(thrown)
    } finally {
      busy.value = false
    }
  }
  const field = {
    id,
    required: true,
    maxLength: longest,
    value: text.value,
    'aria-describedby': `${id}-h`,
  }
  return (
    <div class="end-acts">
      <button type="button" class="b" aria-expanded={open.value} onClick={() => (open.value = !open.value)}>
        {words}
      </button>
      {open.value && (
        <form onSubmit={(e) => void go(e)}>
          <label for={id}>{label}</label>
          {oneLine ? (
            <input {...field} autocomplete="off" onInput={(e) => (text.value = e.currentTarget.value)} />
          ) : (
            <textarea {...field} rows={2} onInput={(e) => (text.value = e.currentTarget.value)} />
          )}
          <p class="note" id={`${id}-h`}>
            {hint}
          </p>
          {problem.value && (
            <Wrong problem={problem.value} outcome={problem.value.noSignal ? 'No signal.' : outcome} />
          )}
          <button type="submit" class="b main" disabled={busy.value || !text.value.trim()}>
            {button}
          </button>
        </form>
      )}
    </div>
  )
}
