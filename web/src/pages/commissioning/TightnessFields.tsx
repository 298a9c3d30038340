import { useSignal } from '@preact/signals'
import { Choose } from '../../parts/Choose.tsx'
import type { Entries } from './entries.ts'
import { NumberField } from './Keypad.tsx'
import type { FieldsProps } from './Measure.tsx'

const STEPS = 7
const MOST_STEPS = 12

/** One direction of the test; null where nothing of it was typed. */
function direction(entries: Entries, name: string) {
  if (!entries.filled(name)) return null
  const steps = []
  for (let i = 0; i < MOST_STEPS; i++) {
    const pressurePa = entries.number(`${name}.steps[${i}].pressurePa`)
    const airflowM3PerS = entries.number(`${name}.steps[${i}].airflowM3PerS`)
    if (pressurePa !== null || airflowM3PerS !== null) steps.push({ pressurePa, airflowM3PerS })
  }
  return {
    baselineBeforePa: entries.number(`${name}.baselineBeforePa`),
    baselineAfterPa: entries.number(`${name}.baselineAfterPa`),
    steps,
  }
}

export function tightnessBody(entries: Entries) {
  return {
    stage: entries.text('stage') || 'FINISHED',
    standard: entries.text('standard') || 'ISO_9972',
    depressurisation: direction(entries, 'depressurisation'),
    pressurisation: direction(entries, 'pressurisation'),
    typedTargetAch50PerH: entries.number('typedTargetAch50PerH'),
    typedTargetVolume: entries.number('typedTargetAch50PerH') === null ? null : 'NET',
    roomAirAppliance: entries.text('roomAirAppliance') === 'yes',
  }
}

/** A tightness test in both directions, pressures as the gauge shows them. */
export function TightnessFields({ sheet, entries, problem }: FieldsProps) {
  const choose = (name: string, legend: string, options: [string, string][], usual: string) => (
    <Choose
      name={name}
      legend={legend}
      options={options}
      value={entries.text(name) || usual}
      onChoose={(v) => entries.type(name, v)}
    />
  )
  return (
    <>
      {choose(
        'stage',
        'What is tested',
        [
          ['ROUGH_IN', 'the air layer, before insulation'],
          ['FINISHED', 'the finished house'],
        ],
        'FINISHED',
      )}
      {choose(
        'standard',
        'By',
        [
          ['ISO_9972', 'ISO 9972'],
          ['E779', 'ASTM E779'],
          ['SINGLE_POINT', 'a single point'],
        ],
        'ISO_9972',
      )}
      {choose(
        'roomAirAppliance',
        'Something that burns takes air from the rooms',
        [
          ['no', 'no'],
          ['yes', 'yes'],
        ],
        'no',
      )}
      {sheet.design.length === 0 && (
        <div class="nums">
          <NumberField
            entries={entries}
            name="typedTargetAch50PerH"
            label="Target on net volume (the record has none)"
            unit={sheet.units.airChanges}
            problems={problem?.fields}
          />
        </div>
      )}
      <Direction
        name="depressurisation"
        words="Fan blows out: the house is below outdoors, pressures below zero"
        {...{ sheet, entries, problem }}
      />
      <Direction
        name="pressurisation"
        words="Fan blows in: the house is above outdoors"
        {...{ sheet, entries, problem }}
      />
    </>
  )
}

function Direction({ name, words, sheet, entries, problem }: FieldsProps & { name: string; words: string }) {
  const count = useSignal(STEPS)
  const u = sheet.units
  const field = (of: string, label: string, unit: typeof u.pressure, bare = false) => (
    <NumberField
      entries={entries}
      name={`${name}.${of}`}
      label={label}
      unit={unit}
      problems={problem?.fields}
      bare={bare}
    />
  )
  return (
    <fieldset class="group">
      <legend>{words}</legend>
      <div class="nums">
        {field('baselineBeforePa', 'Fan covered, before', u.pressure)}
        {field('baselineAfterPa', 'Fan covered, after', u.pressure)}
      </div>
      <div class="step-rows">
        <p class="note" aria-hidden="true">
          <span>step</span>
          <span>pressure as read</span>
          <span>flow through the fan</span>
        </p>
        {Array.from({ length: count.value }, (_, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: steps keep their place
          <div key={i}>
            <span>{i + 1}</span>
            {field(`steps[${i}].pressurePa`, `Step ${i + 1}, pressure as read`, u.pressure, true)}
            {field(`steps[${i}].airflowM3PerS`, `Step ${i + 1}, flow`, u.airflow, true)}
          </div>
        ))}
      </div>
      {count.value < MOST_STEPS && (
        <button
          type="button"
          class="b"
          onClick={() => {
            count.value++
          }}
        >
          Another step
        </button>
      )}
    </fieldset>
  )
}
