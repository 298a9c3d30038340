import { useId } from 'preact/hooks'
import type { FieldProblem } from '../../api/problem.ts'
import { chooseUnits } from '../../shell/session.ts'
import { shownBy, type Unit } from '../../units/quantity.ts'
import { other, system } from '../../units/system.ts'
import type { Entries } from './entries.ts'

/** Where fingers do the typing our own keys are larger than the phone's, and have a minus. */
const byFinger = () => matchMedia('(pointer: coarse)').matches

interface NumberFieldProps {
  entries: Entries
  /** As the portal names it. */
  name: string
  label: string
  unit: Unit
  problems?: FieldProblem[]
  /** The label is only for readers, where a head says it already. */
  bare?: boolean
}

/** One number of a sheet, with its unit. */
export function NumberField({ entries, name, label, unit, problems, bare }: NumberFieldProps) {
  const id = useId()
  const problem = problems?.find((p) => p.field === name)
  return (
    <div class={`num${problem ? ' refused' : ''}${entries.active.value?.name === name ? ' active' : ''}`}>
      <label for={id} class={bare ? 'vh' : ''}>
        {label}
      </label>
      <span class="in">
        <input
          id={id}
          name={name}
          inputMode={byFinger() ? 'none' : 'decimal'}
          autocomplete="off"
          value={entries.text(name)}
          aria-invalid={problem ? 'true' : undefined}
          aria-describedby={problem ? `${id}-p` : undefined}
          onFocus={(e) => {
            entries.active.value = { name, unit }
            // the keys cover the lower half; what is typed stays above them
            if (byFinger()) e.currentTarget.scrollIntoView({ block: 'start' })
          }}
          onInput={(e) => entries.type(name, e.currentTarget.value, unit)}
        />
        {shownBy(unit, system.value).symbol && <i>{shownBy(unit, system.value).symbol}</i>}
      </span>
      {problem && (
        <p class="says" id={`${id}-p`}>
          {problem.detail}
        </p>
      )}
    </div>
  )
}

/** Large keys at the foot of the screen, with minus, point and the other units; they write into the field that is open. */
export function Keypad({ entries }: { entries: Entries }) {
  const active = entries.active.value
  const name = active?.name
  const field = name ? document.querySelector<HTMLInputElement>(`input[name="${CSS.escape(name)}"]`) : null
  if (!active || !name || !field || !byFinger()) return null
  const text = entries.text(name)
  const write = (next: string) => entries.type(name, next, active.unit)
  const next = () => {
    const all = [...document.querySelectorAll<HTMLInputElement>('.measure .num input')]
    const at = all[all.indexOf(field) + 1]
    if (at) {
      at.focus({ preventScroll: true })
    } else entries.active.value = undefined
  }
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset would draw the keys as fields
    <div class="keypad no-print" role="group" aria-label="Keys">
      <p class="keypad-now" aria-hidden="true">
        <span>{field.labels?.[0]?.textContent}</span>
        <span>
          <b>{text || '–'}</b> {shownBy(active.unit, system.value).symbol}
        </span>
      </p>
      {['1', '2', '3', '4', '5', '6', '7', '8', '9'].map((k) => (
        <button key={k} type="button" onClick={() => write(text + k)}>
          {k}
        </button>
      ))}
      <button
        type="button"
        aria-label="minus"
        onClick={() => write(text.startsWith('−') ? text.slice(1) : `−${text}`)}
      >
        −
      </button>
      <button type="button" onClick={() => write(`${text}0`)}>
        0
      </button>
      <button type="button" aria-label="point" onClick={() => !text.includes('.') && write(`${text}.`)}>
        .
      </button>
      <button type="button" class="word" onClick={() => write(text.slice(0, -1))}>
        Back
      </button>
      <button type="button" class="word" onClick={() => void chooseUnits(other(system.value))}>
        {other(system.value) === 'IP' ? 'cfm, °F' : 'm³/h, °C'}
      </button>
      <button type="button" class="word main" onClick={next}>
        Next
      </button>
      <button
        type="button"
        class="word close"
        onClick={() => {
          entries.active.value = undefined
        }}
      >
        Close the keys
      </button>
    </div>
  )
}
