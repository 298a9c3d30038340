import { useSignal } from '@preact/signals'
import { useEffect, useId, useMemo, useRef } from 'preact/hooks'
import { post } from '../../api/http.ts'
import { Problem } from '../../api/problem.ts'
import { sendPhoto } from '../../offline/photos.ts'
import { flush, send } from '../../offline/queue.ts'
import { Choose } from '../../parts/Choose.tsx'
import { PhotoInput } from '../../parts/Photo.tsx'
import { Wrong } from '../../parts/Says.tsx'
import { Status } from '../../parts/Status.tsx'
import { Thumbs } from '../../parts/Thumbs.tsx'
import { editable } from '../../units/quantity.ts'
import { system } from '../../units/system.ts'
import { Entries } from './entries.ts'
import { FilterDropFields, filterDropBody } from './FilterDropFields.tsx'
import { HousePressureFields, housePressureBody } from './HousePressureFields.tsx'
import { Keypad, NumberField } from './Keypad.tsx'
import { TightnessFields, tightnessBody } from './TightnessFields.tsx'
import type { Instrument, Occasion, SheetShown } from './types.ts'

/** What a sheet's own fields are given. */
export interface FieldsProps {
  sheet: SheetShown
  entries: Entries
  problem?: Problem
}

const FIELDS = {
  tightness: [TightnessFields, tightnessBody],
  'filter-drop': [FilterDropFields, filterDropBody],
  'house-pressure': [HousePressureFields, housePressureBody],
} as const

/** Typing a measurement: instrument and weather once, then the sheet's own numbers. */
export function Measure({ sheet, onKept }: { sheet: SheetShown; onKept: () => Promise<void> }) {
  const id = useId()
  const entries = useMemo(() => new Entries(), [])
  const form = useRef<HTMLFormElement>(null)
  const occasion = useSignal<Occasion>('AS_FOUND')
  const note = useSignal('')
  const photos = useSignal<string[]>([])
  const problem = useSignal<Problem | undefined>(undefined)
  const said = useSignal<string | undefined>(undefined)
  const busy = useSignal(false)
  const last = sheet.measurements[0]?.sent.taken.instrument
  const [Fields, bodyOf] = FIELDS[sheet.sheet]
  const u = sheet.units

  useEffect(() => {
    // the instrument is most likely the one that was used last
    if (last) fillInstrument(entries, last, sheet)
    return entries.stop
  }, [entries, last, sheet])

  async function submit(event: Event) {
    event.preventDefault()
    problem.value = undefined
    said.value = undefined
    entries.active.value = undefined
    const bad = entries.unreadable()
    if (bad.length > 0) {
      problem.value = new Problem(422, 'not-a-number', 'Some of what is typed is no number.', {
        errors: bad.map((field) => ({ field, detail: `"${entries.text(field)}" is not a number.` })),
      })
      toFirstRefused()
      return
    }
    const clientId = crypto.randomUUID()
    const n = (name: string) => entries.number(name)
    const taken = {
      clientId,
      occasion: occasion.value,
      takenAt: new Date().toISOString(),
      instrument: {
        description: entries.text('taken.instrument.description').trim(),
        serial: entries.text('taken.instrument.serial').trim(),
        calibratedOn: entries.text('taken.instrument.calibratedOn') || null,
        flowAccuracyFraction: n('taken.instrument.flowAccuracyFraction'),
        pressureAccuracyFraction: n('taken.instrument.pressureAccuracyFraction'),
        pressureAccuracyPa: n('taken.instrument.pressureAccuracyPa'),
      },
      weather: {
        windMPerS: n('taken.weather.windMPerS'),
        outdoorC: n('taken.weather.outdoorC'),
        indoorC: n('taken.weather.indoorC'),
      },
      note: note.value.trim() || null,
      photos: photos.value,
    }
    const body = { taken, ...bodyOf(entries) }
    const path = `/houses/${encodeURIComponent(sheet.houseId)}/setting-to-work/${sheet.sheet}/measurements`
    busy.value = true
    try {
      // photos go first, for the measurement names them
      await flush()
      await post(path, body, { idempotencyKey: clientId })
      said.value = 'Kept.'
      photos.value = []
      await onKept()
      scrollTo({ top: 0 })
    } catch (thrown) {
      const met = Problem.of(thrown)
      if (met.noSignal) {
        await send({ clientId, method: 'POST', path, body, words: `${sheet.title}, measurement` })
        photos.value = []
        said.value = 'No signal: kept on this device; it goes when there is signal, and is compared then.'
      } else {
        problem.value = met
        toFirstRefused()
      }
    } finally {
      busy.value = false
    }
  }

  function toFirstRefused() {
    requestAnimationFrame(() => form.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus())
  }

  const fields = problem.value?.fields
  const field = (name: string, label: string, unit = u.pressure) => (
    <NumberField entries={entries} name={name} label={label} unit={unit} problems={fields} />
  )
  return (
    <section class="measure no-print" aria-labelledby={`${id}-h`}>
      <h2 id={`${id}-h`}>Measure now</h2>
      <details class="open-up">
        <summary>
          <span>How it is measured</span>
        </summary>
        <div class="inside">
          <p>{sheet.purpose}</p>
          <ol class="steps-list">
            {sheet.steps.map((step) => (
              <li key={step}>{step}</li>
            ))}
          </ol>
          <p class="note">{sheet.instrument}</p>
        </div>
      </details>
      <form ref={form} onSubmit={(e) => void submit(e)} noValidate>
        <Choose
          name={`${id}-occasion`}
          legend="This is"
          options={[
            ['AS_FOUND', 'as-found, before adjusting'],
            ['AS_LEFT', 'as-left, what stays'],
          ]}
          value={occasion.value}
          onChoose={(o) => {
            occasion.value = o
          }}
        />
        <Fields sheet={sheet} entries={entries} problem={problem.value} />
        <fieldset class="group">
          <legend>Weather</legend>
          <div class="nums">
            {field('taken.weather.windMPerS', 'Wind', u.wind)}
            {field('taken.weather.outdoorC', 'Outdoors', u.temperature)}
            {field('taken.weather.indoorC', 'Indoors', u.temperature)}
          </div>
        </fieldset>
        <fieldset class="group">
          <legend>Instrument</legend>
          <div class="nums">
            <TextField
              entries={entries}
              name="taken.instrument.description"
              label="Kind"
              problem={problem.value}
            />
            <TextField
              entries={entries}
              name="taken.instrument.serial"
              label="Serial number"
              problem={problem.value}
            />
            <TextField
              entries={entries}
              name="taken.instrument.calibratedOn"
              label="Calibrated on"
              type="date"
              problem={problem.value}
            />
            {field('taken.instrument.flowAccuracyFraction', 'Accuracy of flow, of the reading', u.share)}
            {field(
              'taken.instrument.pressureAccuracyFraction',
              'Accuracy of pressure, of the reading',
              u.share,
            )}
            {field('taken.instrument.pressureAccuracyPa', 'Accuracy of pressure, at least', u.pressure)}
          </div>
        </fieldset>
        <div class="end-acts">
          <label for={`${id}-n`}>Note: type it, or speak it with the keyboard's microphone</label>
          <textarea
            id={`${id}-n`}
            rows={2}
            value={note.value}
            onInput={(e) => {
              note.value = e.currentTarget.value
            }}
          />
          <PhotoInput
            words={photos.value.length > 0 ? 'Another photo' : 'Photo of the set-up or the gauge'}
            onPhoto={async (taken) => {
              entries.active.value = undefined
              photos.value = [
                ...photos.value,
                await sendPhoto(sheet.houseId, taken, {
                  card: sheet.title,
                  words: `Photo for "${sheet.title}"`,
                }),
              ]
            }}
          />
          {photos.value.length > 0 && <Thumbs house={sheet.houseId} photos={photos.value} />}
        </div>
        {problem.value && (
          <Wrong problem={problem.value} outcome="Not kept.">
            <ul class="note">
              {fields?.map((f) => (
                <li key={f.field}>{f.detail}</li>
              ))}
            </ul>
          </Wrong>
        )}
        {said.value && (
          <p role="status">
            <Status is="stands">{said.value}</Status>
          </p>
        )}
        <div class="acts">
          <button type="submit" class="b main" disabled={busy.value}>
            Keep and compare
          </button>
        </div>
      </form>
      <Keypad entries={entries} />
    </section>
  )
}

interface TextFieldProps {
  entries: Entries
  name: string
  label: string
  type?: 'text' | 'date'
  problem?: Problem
}

export function TextField({ entries, name, label, type = 'text', problem }: TextFieldProps) {
  const id = useId()
  const refused = problem?.fields.find((f) => f.field === name)
  return (
    <div class={`num words${refused ? ' refused' : ''}`}>
      <label for={id}>{label}</label>
      <span class="in">
        <input
          id={id}
          {...(type === 'date' ? { type } : { type: 'text' as const })}
          autocomplete="off"
          value={entries.text(name)}
          aria-invalid={refused ? 'true' : undefined}
          onFocus={() => {
            entries.active.value = undefined
          }}
          onInput={(e) => entries.type(name, e.currentTarget.value)}
        />
      </span>
      {refused && <p class="says">{refused.detail}</p>}
    </div>
  )
}

function fillInstrument(entries: Entries, last: Instrument, sheet: SheetShown) {
  const base = 'taken.instrument.'
  if (entries.filled(base)) return
  const { share, pressure } = sheet.units
  entries.type(`${base}description`, last.description)
  entries.type(`${base}serial`, last.serial)
  entries.type(`${base}calibratedOn`, last.calibratedOn)
  const number = (name: string, value: number, unit: typeof share) =>
    entries.type(base + name, editable(value, unit, system.peek()), unit)
  number('flowAccuracyFraction', last.flowAccuracyFraction, share)
  number('pressureAccuracyFraction', last.pressureAccuracyFraction, share)
  number('pressureAccuracyPa', last.pressureAccuracyPa, pressure)
}
