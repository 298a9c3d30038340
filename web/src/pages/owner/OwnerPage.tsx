import { useList, useResource } from '../../api/resource.ts'
import { Of, Waiting, Wrong } from '../../parts/Says.tsx'
import { house as houseLine } from '../../shell/house.ts'
import type { PageProps } from '../../shell/routes.ts'
import { Sheet } from '../../shell/Sheet.tsx'
import { me } from '../../shell/session.ts'
import { dayWords, timeWords } from '../../units/days.ts'
import { figure, print, type Unit } from '../../units/quantity.ts'
import { system } from '../../units/system.ts'
import type { FilterFollowUp, Visit } from '../aftercare/types.ts'
import { Report } from './Report.tsx'

interface HouseToday {
  until: string
  sentence: string
  items: {
    word: string
    sensor: string
    label: string
    unit: Unit
    value: number
    right: boolean
    limit: string
  }[]
  read: string[]
  looks: { person: string; times: number; lastAt: string }[]
}

const longDay = (iso: string) =>
  new Intl.DateTimeFormat('en-GB', {
    weekday: 'long',
    day: 'numeric',
    month: 'long',
    timeZone: 'UTC',
  }).format(new Date(iso))

/** The owner's page: is the house all right, what is there to do, when does somebody come, how is it done. */
export default function OwnerPage({ house = '' }: PageProps) {
  const base = `/houses/${encodeURIComponent(house)}`
  const today = useResource<HouseToday>(`${base}/readings/today`)
  const filters = useList<FilterFollowUp>('/filters')
  const visits = useList<Visit>('/visits')
  const line = houseLine.value
  const state = today.data.value
  const mine = (filters.data.value?.items ?? []).filter((f) => f.house === house)
  const early = mine.find((f) => f.fillingEarly)
  const open = (visits.data.value?.items ?? []).filter((v) => v.house === house && v.closedOn === null)
  const day = me.value?.today ?? ''
  const heading = state
    ? `${state.sentence}${early ? ' The air filter is filling early.' : ''}`
    : 'Your house'
  return (
    <Sheet
      kind="owner"
      over={`${line?.name ?? house} · ${day && longDay(day)}`}
      heading={heading}
      title="Your house"
      block={[
        ['House', line?.name ?? house],
        ['Readings until', state ? timeWords(state.until, line?.timeZone) : '–'],
      ]}
    >
      {today.problem.value && <Wrong problem={today.problem.value} onAgain={() => void today.reload()} />}
      {!state && !today.problem.value && <Waiting what="Looking at your house." />}
      {early && <Early filter={early} />}
      <section aria-labelledby="do">
        <h2 id="do">Is there anything you should do?</h2>
        <ToDo filters={mine} visits={open} />
      </section>
      <section aria-labelledby="next">
        <h2 id="next">Next visit</h2>
        <NextVisit visits={open} />
      </section>
      <Report house={house} dayOf={longDay} />
      <section aria-labelledby="how">
        <h2 id="how">How do I …</h2>
        <HowTo filters={mine} />
      </section>
      <section aria-labelledby="read">
        <h2 id="read">What we read</h2>
        <Of resource={today}>{(t) => <Read today={t} house={house} zone={line?.timeZone} />}</Of>
      </section>
      <section aria-labelledby="emergency" class="stop">
        <h2 id="emergency">In an emergency</h2>
        <p>
          Smell of gas or smoke: leave, do not switch anything, call from outside. Water where it should not
          be: shut off the water, then call.
        </p>
        <p>Alarms are a help, not a protection. This page reads; it does not protect.</p>
      </section>
    </Sheet>
  )
}

function Early({ filter: f }: { filter: FilterFollowUp }) {
  const event = f.bend?.explainedBy[0]
  return (
    <p>
      Nothing is wrong with the air.{' '}
      {event ? (
        <>
          What we know of it: {event.what}, {dayWords(event.onFrom)}
          {event.onTo !== event.onFrom && ` to ${dayWords(event.onTo)}`}. Dust from such work fills a filter.
        </>
      ) : (
        'We are finding out why.'
      )}{' '}
      It should be changed before <b>{longDay(f.dueOn)}</b>.
    </p>
  )
}

function ToDo({ filters, visits }: { filters: FilterFollowUp[]; visits: Visit[] }) {
  const due = filters.filter((f) => f.windowOpensOn !== null && f.windowOpensOn <= (me.value?.today ?? ''))
  const unplanned = due.filter(
    (f) => !visits.some((v) => v.filters.includes(f.filter) && v.plannedOn !== null),
  )
  if (unplanned.length > 0)
    return (
      <p>
        Not today. The office will offer you a day to change the filter, at the latest{' '}
        {longDay(unplanned[0]!.latestOn)}.
      </p>
    )
  const planned = visits.find((v) => v.plannedOn !== null)
  return <p>{planned ? 'Be at home for the next visit, or tell us how to get in.' : 'No, nothing.'}</p>
}

function NextVisit({ visits }: { visits: Visit[] }) {
  const planned = visits
    .filter((v) => v.plannedOn !== null)
    .sort((a, b) => a.plannedOn!.localeCompare(b.plannedOn!))
  if (planned.length === 0) return <p>None is planned yet.</p>
  return (
    <ul>
      {planned.map((v) => (
        <li key={v.id}>
          <b>{longDay(v.plannedOn!)}</b>: {v.label}.{v.kind === 'filter' && ' 20 minutes, shoes off.'}
        </li>
      ))}
    </ul>
  )
}

/** General words; what is special in this house stands on the labels in it. */
function HowTo({ filters }: { filters: FilterFollowUp[] }) {
  const f = filters[0]
  const all: [string, string][] = [
    [
      'shut off the water',
      'Turn the lever with the label "water, main" a quarter turn, until it stands across the pipe. Turn it back to open it.',
    ],
    [
      'look at the filter',
      `${f ? `It is here: ${f.inHouse}. ` : ''}Switch the fan off at its switch first. Open the door of the rack, look at the face of the filter, shut the door tight, switch the fan on again. You need not change it yourself; we bring the right size.`,
    ],
    [
      'set the humidity',
      'Leave the setting as it is unless windows stay wet in the morning; then set it one step lower and tell us. In winter the house may be drier than in summer: that keeps the walls dry.',
    ],
    [
      'go away for a while',
      'Shut off the water. Leave the ventilation on low and the heating on, not below 15 °C. Tell us, so that we do not wonder about the readings.',
    ],
  ]
  return (
    <div class="how-to">
      {all.map(([what, how]) => (
        <details key={what}>
          <summary class="b">{what}</summary>
          <p>{how}</p>
        </details>
      ))}
    </div>
  )
}

function Read({ today, house, zone }: { today: HouseToday; house: string; zone?: string }) {
  return (
    <>
      <p>
        We look at numbers, not at you: {today.read.join(', ')}. They are for keeping the house well, and they
        stay with the house's record.
      </p>
      <details class="how-to-more">
        <summary>The last day in numbers</summary>
        <ul class="plain-list">
          {today.items.map((i) => {
            const value = print(i.value, i.unit, system.value)
            return (
              <li key={i.sensor + i.word}>
                <a href={`/houses/${house}/readings?sensor=${encodeURIComponent(i.sensor)}`}>{i.label}</a>:{' '}
                <b>
                  {value.text}
                  {'\u202f'}
                  {value.symbol}
                </b>
                , should be {i.limit}
              </li>
            )
          })}
        </ul>
      </details>
      <h3>Who looked in the last 30 days</h3>
      {today.looks.length === 0 ? (
        <p>Nobody.</p>
      ) : (
        <ul class="plain-list">
          {today.looks.map((l) => (
            <li key={l.person}>
              {l.person}, {l.times === 1 ? 'once' : `${figure(l.times, 0)} times`}, last on{' '}
              {dayWords(l.lastAt, zone)}
            </li>
          ))}
        </ul>
      )}
      <p>You may have any of it switched off; tell the office.</p>
    </>
  )
}
