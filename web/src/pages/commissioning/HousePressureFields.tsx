import { print, type Unit } from '../../units/quantity.ts'
import { system } from '../../units/system.ts'
import type { Entries } from './entries.ts'
import { NumberField } from './Keypad.tsx'
import { type FieldsProps, TextField } from './Measure.tsx'

const READINGS = 3

function failing(entries: Entries, name: string) {
  if (!entries.filled(name)) return null
  return {
    worstPa: entries.number(`${name}.worstPa`),
    hoodOffS: entries.number(`${name}.hoodOffS`),
    heldPa: entries.numbers(`${name}.heldPa`, READINGS),
    heldAfterS: entries.number(`${name}.heldAfterS`),
  }
}

export function housePressureBody(entries: Entries) {
  return {
    restBeforePa: entries.numbers('restBeforePa', READINGS),
    restAfterPa: entries.numbers('restAfterPa', READINGS),
    fluctuationPa: entries.number('fluctuationPa'),
    running: entries
      .text('running')
      .split(',')
      .map((r) => r.trim())
      .filter(Boolean),
    working: {
      pressurePa: entries.numbers('working.pressurePa', READINGS),
      damperOpenS: entries.number('working.damperOpenS'),
      deliveredC: entries.number('working.deliveredC'),
      hoodM3PerS: entries.number('working.hoodM3PerS'),
      hoodWithoutMakeUpM3PerS: entries.number('working.hoodWithoutMakeUpM3PerS'),
    },
    failed: failing(entries, 'failed'),
    blocked: failing(entries, 'blocked'),
    typedDesignPressurePa: null,
  }
}

/** House pressure with everything on; every pressure is indoors less outdoors, below zero when exhaust pulls. */
export function HousePressureFields({ sheet, entries, problem }: FieldsProps) {
  const u = sheet.units
  const field = (name: string, label: string, unit: Unit = u.pressure) => (
    <NumberField
      key={name}
      entries={entries}
      name={name}
      label={label}
      unit={unit}
      problems={problem?.fields}
    />
  )
  const three = (name: string, label: string) => (
    <div class="nums three">{[0, 1, 2].map((k) => field(`${name}[${k}]`, `${label} ${k + 1}`))}</div>
  )
  const designed = (...names: string[]) =>
    sheet.design
      .filter((d) => names.includes(d.name))
      .map((d) => {
        const { text, symbol } = print(d.value, d.unit, system.value)
        return (
          <p key={d.name + d.label} class="hint">
            {d.label}: <b>{`${text}\u202f${symbol}`}</b>, {d.sourceLabel} · {d.origin}
          </p>
        )
      })
  return (
    <>
      <fieldset class="group">
        <legend>At rest, everything off</legend>
        <p class="hint">Pressures are indoors less outdoors: below zero when exhaust pulls.</p>
        {three('restBeforePa', 'Before')}
        <div class="nums">{field('fluctuationPa', 'Swings in the wind by')}</div>
      </fieldset>
      <fieldset class="group">
        <legend>Everything on, make-up air working</legend>
        {designed('housePressurePa', 'designPressurePa', 'damperOpenS', 'deliveredC', 'hoodM3PerS')}
        <div class="nums">
          <TextField
            entries={entries}
            name="running"
            label="What ran, with commas between"
            problem={problem}
          />
        </div>
        {three('working.pressurePa', 'Pressure')}
        <div class="nums">
          {field('working.damperOpenS', 'Damper proved open after', u.time)}
          {field('working.deliveredC', 'Make-up air where it enters', u.temperature)}
          {field('working.hoodM3PerS', 'Hood flow, make-up air on', u.airflow)}
          {field('working.hoodWithoutMakeUpM3PerS', 'Hood flow, make-up air off', u.airflow)}
        </div>
      </fieldset>
      {(
        [
          ['failed', 'Make-up damper held shut'],
          ['blocked', 'Damper open, outside intake blocked'],
        ] as const
      ).map(([name, words]) => (
        <fieldset key={name} class="group">
          <legend>{words}</legend>
          {designed('failedMakeUpPressurePa', 'heldAfterS')}
          <div class="nums">
            {field(`${name}.worstPa`, 'Farthest from rest')}
            {field(`${name}.hoodOffS`, 'Hood off after', u.time)}
          </div>
          {three(`${name}.heldPa`, 'Afterwards')}
          <div class="nums">{field(`${name}.heldAfterS`, 'Back within its limit after', u.time)}</div>
        </fieldset>
      ))}
      <fieldset class="group">
        <legend>At rest again</legend>
        {three('restAfterPa', 'After')}
      </fieldset>
    </>
  )
}
