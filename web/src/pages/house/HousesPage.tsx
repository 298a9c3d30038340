import { useResource } from '../../api/resource.ts'
import { DataTable } from '../../parts/lists.tsx'
import { NothingYet, Of } from '../../parts/Says.tsx'
import type { House, Page, PartType } from '../../record/types.ts'
import { fieldOf, valueWords } from '../../record/values.ts'
import { Sheet } from '../../shell/Sheet.tsx'
import { holds, me } from '../../shell/session.ts'
import { dayWords } from '../../units/days.ts'
import { NewHouse } from './NewHouse.tsx'

/** After this a house is lived in: its matters are readings and visits, no longer drawings. */
const LIVED_IN = ['HANDOVER', 'FIRST_YEAR', 'LATER']

/** Every house that this account may see. */
export default function HousesPage() {
  const houses = useResource<Page<House>>('/houses?limit=200')
  const types = useResource<PartType[]>('/part-types')
  const fields = types.data.value?.find((t) => t.part === 'house')?.fields ?? []
  const came = houses.data.value?.items
  const building = came?.filter((h) => !LIVED_IN.includes(h.stage)) ?? []
  return (
    <Sheet
      heading={came ? finding(came.length, building.length) : 'Houses'}
      title="Houses"
      block={[
        ['Sheet', 'Houses'],
        ['Day', dayWords(me.value?.today)],
        ['Houses', String(came?.length ?? '')],
      ]}
    >
      <Of resource={houses}>
        {({ items }) =>
          items.length === 0 ? (
            <NothingYet>
              No house is shared with this account yet. The principal shares a house with an account.
            </NothingYet>
          ) : (
            <>
              <Group heading="In design and building" houses={building} fields={fields} />
              <Group
                heading="Lived in"
                houses={items.filter((h) => LIVED_IN.includes(h.stage))}
                fields={fields}
              />
            </>
          )
        }
      </Of>
      {fields.length > 0 && holds('PRINCIPAL', 'DESIGNER') && <NewHouse fields={fields} />}
    </Sheet>
  )
}

function finding(all: number, building: number): string {
  if (all === 0) return 'No house is shared with you yet.'
  if (all === 1) return 'One house is shared with you.'
  return building === 0
    ? `${all} houses, all lived in.`
    : `${building} of ${all} houses ${building === 1 ? 'is' : 'are'} being designed or built.`
}

function Group({
  heading,
  houses,
  fields,
}: {
  heading: string
  houses: House[]
  fields: PartType['fields']
}) {
  if (houses.length === 0) return null
  const say = (name: string, value: number | string, step?: number) => {
    const field = fieldOf(fields, name)
    return valueWords(String(value), field?.unit ?? null, field, step)
  }
  const stages = fieldOf(fields, 'stage')?.options.map((o) => o.id) ?? []
  const sorted = [...houses].sort(
    (a, b) => stages.indexOf(a.stage) - stages.indexOf(b.stage) || a.id.localeCompare(b.id),
  )
  return (
    <section>
      <h2>{heading}</h2>
      <DataTable
        label={heading}
        rows={sorted}
        keyOf={(h) => h.id}
        rowHeads
        columns={[
          {
            head: 'House',
            by: (h) => h.id,
            cell: (h) => (
              <a class="house-link" href={`/houses/${encodeURIComponent(h.id)}`}>
                <b>{h.id}</b> {h.name}
              </a>
            ),
          },
          { head: 'Stage', by: (h) => stages.indexOf(h.stage), cell: (h) => say('stage', h.stage) },
          {
            head: 'Place',
            by: (h) => h.place,
            cell: (h) => h.place,
          },
          {
            head: 'Altitude',
            figures: true,
            by: (h) => h.altitudeM,
            cell: (h) => say('altitudeM', h.altitudeM, 1),
          },
          {
            head: 'Floor area',
            figures: true,
            by: (h) => h.floorAreaM2,
            cell: (h) => say('floorAreaM2', h.floorAreaM2, 1),
          },
          {
            head: 'Design outdoor temperature',
            figures: true,
            by: (h) => h.designOutdoorC,
            cell: (h) => say('designOutdoorC', h.designOutdoorC),
          },
        ]}
      />
    </section>
  )
}
