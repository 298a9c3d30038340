import { useResource } from '../../api/resource.ts'
import { Matter, Matters } from '../../parts/lists.tsx'
import { Of } from '../../parts/Says.tsx'
import { housePath, PARTS } from '../../record/record.ts'
import type { House, Part, PartType } from '../../record/types.ts'
import type { PageProps } from '../../shell/routes.ts'
import { Sheet } from '../../shell/Sheet.tsx'
import { dayWords } from '../../units/days.ts'
import { PartSheet } from './PartSheet.tsx'

/** The parts of a house's record, or one of them. */
export default function RecordPage({ house = '', part }: PageProps) {
  return part ? <OnePart key={`${house} ${part}`} house={house} part={part} /> : <AllParts house={house} />
}

function OnePart({ house, part }: { house: string; part: string }) {
  const type = useResource<PartType>(`/part-types/${encodeURIComponent(part)}`)
  const read = useResource<Part>(`${housePath(house)}/parts/${encodeURIComponent(part)}`)
  const line = useResource<House>(housePath(house))
  const [t, p, h] = [type.data.value, read.data.value, line.data.value]
  if (t && p && h) {
    // name and place of a house have one address of their own, and its version counts there
    const tag = part === 'house' ? line.etag.value : read.etag.value
    return <PartSheet house={h} type={t} part={p} tag={tag} />
  }
  return (
    <Sheet heading="Record" block={[['Sheet', 'Record']]}>
      <Of resource={type}>{() => null}</Of>
      <Of resource={read}>{() => null}</Of>
    </Sheet>
  )
}

const SAYS: Record<string, string> = {
  house: 'Name, place, altitude, areas and volumes, design outdoor temperature.',
  enclosure: 'Wall, roof and slab layer by layer, windows, membrane, shape.',
  air: 'Tightness, exhaust, make-up air, ventilation, air handler, filters, limits.',
  heat: 'Design heat loss, heat pump, backup.',
  moisture: 'Sources indoors, humidity limits by outdoor cold, humidifier.',
  water: 'Water heater, its room, where a leak goes.',
  sensors: 'What is read, and where on the section it sits.',
}

function AllParts({ house }: { house: string }) {
  const line = useResource<House>(housePath(house))
  // the list of parts never changes, so the hooks keep their order
  const all = ['house', ...PARTS]
  // biome-ignore lint/correctness/useHookAtTopLevel: a fixed list
  const parts = all.map((part) => useResource<Part>(`${housePath(house)}/parts/${part}`))
  const written = parts.filter((p) => (p.data.value?.revision ?? 0) > 0).length
  const zone = line.data.value?.timeZone
  const came = parts.every((p) => p.data.value)
  return (
    <Sheet
      over="Record"
      heading={
        !came
          ? 'The record'
          : written === all.length
            ? 'Every part of the record is written.'
            : `${written} of ${all.length} parts of the record are written.`
      }
      title="Record"
      lead="Every value has one place. Whatever rests on a value is told when it changes."
      block={[
        ['House', line.data.value ? `${line.data.value.id} ${line.data.value.name}` : house],
        ['Sheet', 'Record'],
        ['Parts', String(all.length)],
      ]}
    >
      <Matters>
        {parts.map((resource, i) => (
          <Matter
            key={all[i]}
            mark={<PartLink house={house} part={all[i]!} title={resource.data.value?.title} />}
            note={said(resource.data.value, zone)}
          >
            {SAYS[all[i]!]}
            <Of resource={resource}>{() => null}</Of>
          </Matter>
        ))}
      </Matters>
    </Sheet>
  )
}

function PartLink({ house, part, title }: { house: string; part: string; title?: string }) {
  return <a href={`${housePath(house)}/record/${part}`}>{title ?? part}</a>
}

function said(part: Part | undefined, zone: string | undefined): string {
  if (!part) return ''
  if (part.revision === 0 || !part.madeAt) return 'Not written yet.'
  return `Revision ${part.revision}, typed by ${part.madeBy}, ${dayWords(part.madeAt, zone)}: ${part.reason}`
}
