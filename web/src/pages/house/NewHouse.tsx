import { useSignal } from '@preact/signals'
import { useId, useMemo } from 'preact/hooks'
import { useLocation } from 'preact-iso'
import { post } from '../../api/http.ts'
import { Problem } from '../../api/problem.ts'
import { DeclaredForm } from '../../form/DeclaredForm.tsx'
import type { Field, Row } from '../../form/field.ts'
import { Form } from '../../form/form.ts'
import { Choose } from '../../parts/Choose.tsx'
import { Reason } from '../../parts/Reason.tsx'
import { Wrong } from '../../parts/Says.tsx'
import { housePath } from '../../record/record.ts'
import type { House } from '../../record/types.ts'
import { chooseUnits } from '../../shell/session.ts'
import { system } from '../../units/system.ts'

/** Opens a house: its code, where it stands and its measures. Everything else follows in its record. */
export function NewHouse({ fields }: { fields: Field[] }) {
  const id = useId()
  const { route } = useLocation()
  const code = useSignal('')
  const reason = useSignal('')
  const codeError = useSignal('')
  const problem = useSignal<Problem | undefined>(undefined)
  const busy = useSignal(false)
  const form = useMemo(() => new Form(fields, first()), [fields])
  async function open() {
    problem.value = undefined
    codeError.value = code.value.trim() ? '' : 'Give it a code: a capital letter, then digits or capitals.'
    const house = form.read()
    if (codeError.value || !house) return
    busy.value = true
    try {
      const made = await post<House>('/houses', {
        id: code.value.trim(),
        house,
        reason: reason.value.trim() || null,
      })
      route(housePath(made.id))
    } catch (thrown) {
      refused(Problem.of(thrown))
    } finally {
      busy.value = false
    }
  }
  function refused(refusal: Problem) {
    if (refusal.body.field === 'id') codeError.value = refusal.message
    else if (refusal.fields.length > 0) form.refuse(refusal)
    else problem.value = refusal
  }
  return (
    <details class="open-up no-print">
      <summary>
        <span>
          <b>Open a house</b>
        </span>
      </summary>
      <form
        class="inside narrow"
        noValidate
        onSubmit={(e) => {
          e.preventDefault()
          void open()
        }}
      >
        <Choose
          name="page-units"
          legend="Units"
          options={[
            ['IP', 'cfm, in., °F'],
            ['SI', 'm³/h, mm, °C'],
          ]}
          value={system.value}
          onChoose={(units) => void chooseUnits(units)}
        />
        <div class={`field${codeError.value ? ' refused' : ''}`}>
          <label for={id}>Code</label>
          <div class="in">
            <input
              id={id}
              class="words"
              autocomplete="off"
              maxLength={16}
              value={code.value}
              aria-invalid={codeError.value ? 'true' : undefined}
              aria-describedby={`${id}-h`}
              onInput={(e) => {
                code.value = e.currentTarget.value.toUpperCase()
                codeError.value = ''
              }}
            />
          </div>
          <p class="hint" id={`${id}-h`}>
            A capital letter and up to 15 more capitals, digits or hyphens: H4. It stays for good.
          </p>
          {codeError.value && (
            <p class="says" role="alert">
              <b>Refused.</b> {codeError.value}
            </p>
          )}
        </div>
        <DeclaredForm form={form} />
        <Reason label="Reason" value={reason.value} onType={(text) => (reason.value = text)} />
        {problem.value && <Wrong problem={problem.value} outcome="Not opened." />}
        <div class="acts">
          <button type="submit" class="b main" disabled={busy.value}>
            Open the house
          </button>
        </div>
      </form>
    </details>
  )
}

/** What is likely of a house that is only talked about: its stage, and that it stands where this device does. */
function first(): Row {
  return { stage: 'FIRST_TALK', timeZone: Intl.DateTimeFormat().resolvedOptions().timeZone }
}
