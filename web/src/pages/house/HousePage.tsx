import { useSignal } from '@preact/signals'
import type { ComponentChildren } from 'preact'
import { useResource } from '../../api/resource.ts'
import { Choose } from '../../parts/Choose.tsx'
import { Fact, Matter, Matters } from '../../parts/lists.tsx'
import { NothingYet, Of, Waiting, Wrong } from '../../parts/Says.tsx'
import { StateWord } from '../../parts/Status.tsx'
import { documentsOf, type HouseRecord, housePath, useRecord } from '../../record/record.ts'
import type { ChangeEntry, Decision, Page } from '../../record/types.ts'
import { labelWords, valueWords } from '../../record/values.ts'
import { SectionDrawing } from '../../section/SectionDrawing.tsx'
import { sectionOf } from '../../section/sectionOf.ts'
import { FIRM, type PageProps } from '../../shell/routes.ts'
import { Sheet } from '../../shell/Sheet.tsx'
import { firstRole, holds, me, type Role, roleWord } from '../../shell/session.ts'
import { dayWords } from '../../units/days.ts'
import { system } from '../../units/system.ts'
import { ChangeLine } from '../change/ChangeLine.tsx'
import { countWord, stateLine } from '../decision/words.ts'
import { MARK_ROLES, marksFor, marksOf } from './marks.tsx'

/** The house cut open, and what is open about it. */
export default function HousePage({ house = '' }: PageProps) {
  const { record, problem, reload } = useRecord(house)
  const decisions = useResource<Decision[]>(`${housePath(house)}/decisions`)
  const history = useResource<Page<ChangeEntry>>(`${housePath(house)}/changes?limit=20`)
  if (!record) {
    return (
      <Sheet heading={house} block={[['Sheet', 'Section']]}>
        {problem ? <Wrong problem={problem} onAgain={reload} /> : <Waiting />}
      </Sheet>
    )
  }
  const open = (decisions.data.value ?? []).filter((d) => d.state !== 'APPROVED')
  const last = history.data.value?.items[0]
  const zone = record.house.timeZone
  return (
    <Sheet
      over={`Section · ${record.say('house.altitudeM', record.house.altitudeM, 1)} above the sea`}
      heading={finding(record, decisions.data.value, last)}
      title={`${record.house.id} ${record.house.name}`}
      block={[
        ['House', `${record.house.id} ${record.house.name}`],
        ['Sheet', 'Section'],
        ['Record as of', dayWords(me.value?.today)],
        ['Scale', 'drawn in mm'],
        ['Last change', last ? `${dayWords(last.when, zone)}, ${last.who}` : '–'],
      ]}
    >
      <Drawing record={record} decisions={decisions.data.value ?? []} />
      <div class="two">
        <section>
          <h2>Open decisions</h2>
          <Of resource={decisions}>{() => <OpenDecisions decisions={open} house={house} />}</Of>
        </section>
        <section>
          <h2>What changed</h2>
          <Of resource={history}>{({ items }) => <Changed changes={items} house={house} zone={zone} />}</Of>
        </section>
      </div>
      <section>
        <h2>The house in figures</h2>
        <Figures record={record} />
      </section>
    </Sheet>
  )
}

function finding(record: HouseRecord, decisions: Decision[] | undefined, last: ChangeEntry | undefined) {
  if (!decisions) return record.house.name
  const lapsed = decisions.filter((d) => d.state === 'LAPSED').length
  const look = decisions.filter((d) => d.state === 'FRESH_LOOK').length
  const value = last?.kind === 'PART' && last.values.length > 0 ? last.values[0] : undefined
  if (lapsed > 0) {
    const said = `${countWord(lapsed, 'approval has lapsed', 'approvals have lapsed')}.`
    return value?.new && value.old
      ? `${labelWords(value.label)} is now ${valueWords(value.new, value.unit)}, and ${lower(said)}`
      : capital(said)
  }
  if (look > 0) return capital(`${countWord(look, 'decision needs', 'decisions need')} a fresh look.`)
  const open = decisions.filter((d) => d.state !== 'APPROVED').length
  if (open > 0) return capital(`${countWord(open, 'decision is', 'decisions are')} still open.`)
  return decisions.length === 0
    ? `${record.house.name}: no decision is written yet.`
    : 'Every approval stands.'
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)
const lower = (text: string) => text.charAt(0).toLowerCase() + text.slice(1)

function Drawing({ record, decisions }: { record: HouseRecord; decisions: Decision[] }) {
  const role = useSignal<Role>(marksOf(firstRole.value))
  const model = sectionOf(`${record.house.id} ${record.house.name}`, documentsOf(record), system.value)
  if (!model) {
    return (
      <NothingYet>
        The section is drawn once the record holds the shape of the house and its wall, roof and slab.{' '}
        <a href={`${housePath(record.house.id)}/record/enclosure`}>Describe the enclosure</a>
      </NothingYet>
    )
  }
  const marks = marksFor(role.value, record, decisions)
  const drawn = { ...model, marks: { [role.value]: marks.map((m, i) => ({ number: i + 1, on: m.on })) } }
  return (
    <>
      <Choose
        name="marks"
        legend="Marks for"
        options={MARK_ROLES.map((r): [Role, string] => [r, roleWord[r]])}
        value={role.value}
        onChoose={(chosen) => (role.value = chosen)}
      />
      <div class="house-grid">
        <div>
          <SectionDrawing model={drawn} marksFor={role.value} />
          <AssemblyLinks record={record} />
        </div>
        <ol class="marks" aria-label={`Marks for ${roleWord[role.value].toLowerCase()}`}>
          {marks.map((m, i) => (
            <li key={m.on + String(m.title)}>
              <span class="no" aria-hidden="true">
                {i + 1}
              </span>
              <div>
                <b>{m.href ? <a href={m.href}>{m.title}</a> : m.title}</b>
                {m.says && <> {m.says}</>}
                {m.state && (
                  <>
                    <br />
                    <StateWord state={m.state} />
                  </>
                )}
              </div>
            </li>
          ))}
        </ol>
      </div>
    </>
  )
}

/** From the section to what is computed across its walls, roofs and floors. */
function AssemblyLinks({ record }: { record: HouseRecord }) {
  if (!holds(...FIRM)) return null
  const path = housePath(record.house.id)
  const assemblies =
    (record.parts.enclosure?.document.assemblies as unknown as { id: string; label: string }[]) ?? []
  return (
    <nav aria-label="Layer by layer" class="note layer-links no-print">
      Layer by layer:{' '}
      {assemblies.map((a) => (
        <span key={a.id}>
          <a href={`${path}/walls/${encodeURIComponent(a.id)}`}>{a.label}</a> ·{' '}
        </span>
      ))}
      <a href={`${path}/joins`}>How they are joined</a>
    </nav>
  )
}

function OpenDecisions({ decisions, house }: { decisions: Decision[]; house: string }) {
  if (decisions.length === 0) return <p class="say">None is open.</p>
  const order: Decision['state'][] = ['LAPSED', 'FRESH_LOOK', 'PARTLY_APPROVED', 'OPEN']
  const sorted = [...decisions].sort((a, b) => order.indexOf(a.state) - order.indexOf(b.state))
  return (
    <Matters>
      {sorted.map((d) => (
        <Matter key={d.code} mark={<StateWord state={d.state} />} note={stateLine(d)}>
          <a href={`${housePath(house)}/decisions/${d.code}`}>{d.title}</a>{' '}
          {d.safetyList && <span class="tag">safety list</span>}
        </Matter>
      ))}
    </Matters>
  )
}

const SHOWN = 8

function Changed({ changes, house, zone }: { changes: ChangeEntry[]; house: string; zone: string }) {
  if (changes.length === 0) return <p class="say">Nothing was saved yet.</p>
  const shown = changes.slice(0, SHOWN)
  return (
    <>
      <Matters>
        {shown.map((c) => (
          <Matter
            key={`${c.kind} ${c.key} ${c.number}`}
            mark={
              <span class="note">
                {dayWords(c.when, zone)}
                <br />
                {c.who}
              </span>
            }
            note={c.why}
          >
            <ChangeLine change={c} house={house} />
          </Matter>
        ))}
      </Matters>
      <p class="note">
        <a href={`${housePath(house)}/changes`}>All changes, and what they reach</a>
      </p>
    </>
  )
}

function Figures({ record }: { record: HouseRecord }) {
  const { house, parts, say } = record
  const zone = house.timeZone
  const from = (part: string) => {
    const p = parts[part]
    return p?.madeBy && p.madeAt ? (
      <span class="from">
        typed by {p.madeBy}, {dayWords(p.madeAt, zone)}
        {holds('OWNER') ? null : (
          <>
            {' '}
            · <a href={`${housePath(house.id)}/record/${part}`}>{p.title}</a>
          </>
        )}
      </span>
    ) : null
  }
  const at = (path: string, value: unknown, step?: number) =>
    typeof value === 'number' ? <b class="q">{say(path, value, step)}</b> : undefined
  const air = (parts.air?.document ?? {}) as Record<string, Record<string, unknown> | undefined>
  const heat = (parts.heat?.document ?? {}) as Record<string, unknown>
  const pump = heat.heatPump as { points?: { outdoorC: number; capacityW: number }[] } | undefined
  const point = pump?.points?.find((p) => p.outdoorC === house.designOutdoorC) ?? pump?.points?.[0]
  const t = air.tightness
  const facts: [string, ComponentChildren, string?][] = [
    [
      'Floor area, net air volume',
      <>
        {at('house.floorAreaM2', house.floorAreaM2, 1)} · {at('house.netVolumeM3', house.netVolumeM3, 1)}
      </>,
      'house',
    ],
    ['Design outdoor temperature', at('house.designOutdoorC', house.designOutdoorC), 'house'],
    [
      t?.measuredOn ? 'Tightness, measured' : 'Tightness required',
      t && (
        <>
          {t.measuredOn ? null : <>{at('air.tightness.targetAch50PerH', t.targetAch50PerH)} at 50 Pa · </>}
          {at('air.tightness.q50M3PerS', t.q50M3PerS)}
        </>
      ),
      'air',
    ],
    [
      'Ventilation, required',
      air.ventilation && (
        <>
          {at('air.ventilation.supplyM3PerS', air.ventilation.supplyM3PerS)} ·{' '}
          {at('air.ventilation.requiredM3PerS', air.ventilation.requiredM3PerS)}
        </>
      ),
      'air',
    ],
    ['Design heat loss', at('heat.designHeatLossW', heat.designHeatLossW), 'heat'],
    [
      point ? `Heat pump at ${say('heat.heatPump.points.outdoorC', point.outdoorC)}` : 'Heat pump',
      point && at('heat.heatPump.points.capacityW', point.capacityW),
      'heat',
    ],
  ]
  return (
    <dl class="facts pairs">
      {facts
        .filter(([, value]) => value)
        .map(([name, value, part]) => (
          <Fact key={name} name={name}>
            {value}
            {part && from(part)}
          </Fact>
        ))}
    </dl>
  )
}
