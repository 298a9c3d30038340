import { useSignal } from '@preact/signals'
import { useId } from 'preact/hooks'
import { call } from '../../api/http.ts'
import { Problem } from '../../api/problem.ts'
import { Reason } from '../../parts/Reason.tsx'
import { Wrong } from '../../parts/Says.tsx'
import type { Decision } from '../../record/types.ts'
import { lettersOf } from '../change/WaysOn.tsx'

interface ChangeDecisionProps {
  decision: Decision
  at: string
  tag: string | null
  onChanged: (next: Decision, tag: string | null) => void
  /** Somebody else wrote meanwhile: read it again. */
  onMoved: () => void
}

interface Words {
  question: string
  due: string
  choice: string
  reason: string
}

/**
 * Words a decision anew: what is asked, by when, and which alternative is chosen and why. An alternative that sets
 * values is taken from the computed table instead, because taking it saves its values and keeps its proofs.
 */
export function ChangeDecision({ decision, at, tag, onChanged, onMoved }: ChangeDecisionProps) {
  const id = useId()
  // only what was typed is kept here, so that the rest follows the decision when somebody else writes it
  const typed = useSignal<Partial<Words>>({})
  const missing = useSignal({ question: false, reason: false })
  const problem = useSignal<Problem | undefined>(undefined)
  const busy = useSignal(false)
  if (!decision.actions.includes('change-decision')) return null
  const now: Words = {
    question: decision.question,
    due: decision.dueOn ?? '',
    choice: decision.chosenAlternative ?? '',
    reason: decision.reason,
    ...typed.value,
  }
  const type = (words: Partial<Words>) => {
    typed.value = { ...typed.value, ...words }
  }
  const letters = lettersOf(decision.alternatives)
  const open = decision.alternatives.filter(
    (a) => a.changes.length === 0 || a.id === decision.chosenAlternative,
  )
  async function save() {
    missing.value = {
      question: now.question.trim() === '',
      reason: now.choice !== '' && now.reason.trim() === '',
    }
    if (missing.value.question || missing.value.reason) return
    busy.value = true
    problem.value = undefined
    const { title, group, alternatives, proofs, approvers, outsideApprovers, safetyList, governs, orders } =
      decision
    try {
      const answer = await call<Decision>('PUT', at, {
        body: {
          title,
          group,
          alternatives,
          proofs,
          approvers,
          outsideApprovers,
          safetyList,
          governs,
          orders,
          question: now.question.trim(),
          dueOn: now.due || null,
          chosenAlternative: now.choice || null,
          reason: now.reason.trim(),
        },
        ifMatch: tag ?? undefined,
      })
      typed.value = {}
      onChanged(answer.data, answer.etag)
    } catch (thrown) {
      problem.value = Problem.of(thrown)
      if (problem.value.status === 412) onMoved()
    } finally {
      busy.value = false
    }
  }
  return (
    <details class="open-up no-print">
      <summary>
        <span>
          <b>Word it anew, or choose</b>
        </span>
      </summary>
      <div class="inside narrow">
        <Reason
          label="Question"
          value={now.question}
          onType={(text) => type({ question: text })}
          error={missing.value.question && !now.question.trim() ? 'Say what is asked.' : undefined}
        />
        <div class="field one">
          <label for={`${id}-d`}>To be settled by</label>
          <div class="in">
            <input
              id={`${id}-d`}
              type="date"
              value={now.due}
              onInput={(e) => type({ due: e.currentTarget.value })}
            />
          </div>
          <p class="hint">May be left out.</p>
        </div>
        <div class="field one">
          <label for={`${id}-c`}>Chosen</label>
          <div class="in">
            <select
              id={`${id}-c`}
              value={now.choice}
              aria-describedby={`${id}-ch`}
              onChange={(e) => type({ choice: e.currentTarget.value })}
            >
              <option value="">none yet</option>
              {open.map((a) => (
                <option key={a.id} value={a.id}>
                  {a.changes.length > 0 && `${letters[decision.alternatives.indexOf(a)]} · `}
                  {a.title}
                </option>
              ))}
            </select>
          </div>
          <p class="hint" id={`${id}-ch`}>
            {open.length < decision.alternatives.length
              ? 'An alternative that sets values is taken from the computed table: that saves its values too.'
              : 'None of these sets a value of the record.'}
          </p>
        </div>
        <Reason
          label="Why it was chosen"
          value={now.reason}
          onType={(text) => type({ reason: text })}
          error={missing.value.reason && !now.reason.trim() ? 'Say why; it stays on the record.' : undefined}
        />
        {problem.value && (
          <Wrong problem={problem.value} outcome="Not saved.">
            {problem.value.status === 412 && (
              <p class="note">What you typed stands here still; the sheet above shows what stands now.</p>
            )}
          </Wrong>
        )}
        <div class="acts">
          <button type="button" class="b" disabled={busy.value} onClick={() => void save()}>
            Save the decision
          </button>
        </div>
      </div>
    </details>
  )
}
