import { Choose } from '../../parts/Choose.tsx'
import type { Entries } from './entries.ts'
import { NumberField } from './Keypad.tsx'
import type { FieldsProps } from './Measure.tsx'
import type { SheetShown } from './types.ts'

const FLOWS = ['high', 'design', 'low']
const READINGS = 3

/** The filters of the Air part, as the design's paths name them. */
function filtersOf(sheet: SheetShown): string[] {
  const found = sheet.design
    .map((d) => /filters\[([^\]]+)\]/.exec(d.path ?? '')?.[1])
    .filter((f) => f !== undefined)
  return [...new Set(found)]
}

export function filterDropBody(entries: Entries) {
  const flows = FLOWS.map((label, i) => ({
    label,
    airflowM3PerS: entries.numbers(`flows[${i}].airflowM3PerS`, READINGS),
    dropPa: entries.numbers(`flows[${i}].dropPa`, READINGS),
  }))
  return {
    filterId: entries.text('filterId'),
    flows: flows.filter((f) => f.airflowM3PerS.length > 0 || f.dropPa.length > 0),
  }
}

/** Flow and drop over a new filter, three readings each at three flows. */
export function FilterDropFields({ sheet, entries, problem }: FieldsProps) {
  const filters = filtersOf(sheet)
  if (!entries.text('filterId') && filters[0]) entries.type('filterId', filters[0])
  return (
    <>
      {filters.length > 1 && (
        <Choose
          name="filterId"
          legend="Filter"
          options={filters.map((f) => [f, f])}
          value={entries.text('filterId')}
          onChoose={(f) => entries.type('filterId', f)}
        />
      )}
      {FLOWS.map((label, i) => {
        const designed = sheet.design.find(
          (d) => d.label.toLowerCase().includes(label) && d.unit.ucum === 'Pa',
        )
        return (
          <fieldset key={label} class="group">
            <legend>
              At {label} flow
              {designed && <span class="from">design: {designed.label.toLowerCase()}</span>}
            </legend>
            {(
              [
                ['airflowM3PerS', 'Flow', sheet.units.airflow],
                ['dropPa', 'Drop', sheet.units.drop],
              ] as const
            ).map(([of, words, unit]) => (
              <div key={of} class="nums three">
                {Array.from({ length: READINGS }, (_, k) => (
                  <NumberField
                    // biome-ignore lint/suspicious/noArrayIndexKey: readings keep their place
                    key={k}
                    entries={entries}
                    name={`flows[${i}].${of}[${k}]`}
                    label={`${words} ${k + 1}`}
                    unit={unit}
                    problems={problem?.fields}
                  />
                ))}
              </div>
            ))}
          </fieldset>
        )
      })}
    </>
  )
}
