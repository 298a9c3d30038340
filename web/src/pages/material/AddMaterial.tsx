import { useSignal } from '@preact/signals'
import { useEffect, useMemo, useRef } from 'preact/hooks'
import { post } from '../../api/http.ts'
import { Problem } from '../../api/problem.ts'
import type { MaterialJson } from '../../api/schema.d.ts'
import { DeclaredForm } from '../../form/DeclaredForm.tsx'
import type { Field, Path, Row } from '../../form/field.ts'
import { Form } from '../../form/form.ts'
import { Choose } from '../../parts/Choose.tsx'
import { Wrong } from '../../parts/Says.tsx'
import { chooseUnits } from '../../shell/session.ts'
import { system } from '../../units/system.ts'

/** What most data sheets say. */
const USUAL = ['densityKgPerM3', 'heatCapacityJPerKgK', 'conductivityWPerMK']
const EXTRAS = { open: (path: Path) => USUAL.includes(String(path[0])) }

interface AddMaterialProps {
  fields: Field[]
  /** The values that a data sheet begins with; another object opens the form with them. */
  begun?: Row
  onAdded: () => void
}

/** An own material, typed from its data sheet. */
export function AddMaterial({ fields, begun, onAdded }: AddMaterialProps) {
  const form = useMemo(() => new Form(fields), [fields])
  const place = useRef<HTMLDetailsElement>(null)
  const problem = useSignal<Problem | undefined>(undefined)
  const busy = useSignal(false)
  const said = useSignal('')
  useEffect(() => {
    if (!begun) return
    form.fill(begun)
    said.value = ''
    if (place.current) {
      place.current.open = true
      place.current.querySelector('summary')?.focus()
    }
  }, [begun, form, said])
  async function add() {
    problem.value = undefined
    said.value = ''
    const values = form.read()
    if (!values) return
    busy.value = true
    try {
      const added = await post<MaterialJson>('/materials', values)
      said.value = `${added.label} is offered as ${added.id}.`
      form.fill({})
      form.touched.value = false
      onAdded()
    } catch (thrown) {
      const refusal = Problem.of(thrown)
      if (refusal.fields.length > 0) form.refuse(refusal)
      else problem.value = refusal
    } finally {
      busy.value = false
    }
  }
  return (
    <details class="open-up no-print" ref={place}>
      <summary>
        <span>
          <b>Add your own</b>
        </span>
        <span class="note">from a data sheet, for all houses</span>
      </summary>
      <form
        class="inside narrow"
        noValidate
        onSubmit={(e) => {
          e.preventDefault()
          void add()
        }}
      >
        <Choose
          name="page-units"
          legend="Units"
          options={[
            ['IP', 'in., °F'],
            ['SI', 'mm, °C'],
          ]}
          value={system.value}
          onChoose={(units) => void chooseUnits(units)}
        />
        <DeclaredForm form={form} extras={EXTRAS} />
        {problem.value && <Wrong problem={problem.value} outcome="Not added." />}
        <div class="acts">
          <button type="submit" class="b main" disabled={busy.value}>
            Add the material
          </button>
        </div>
        {said.value && <p role="status">{said.value}</p>}
      </form>
    </details>
  )
}
