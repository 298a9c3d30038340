import { useSignal } from '@preact/signals'
import { useId } from 'preact/hooks'
import { post, put } from '../../api/http.ts'
import { Problem } from '../../api/problem.ts'
import { useList, useResource } from '../../api/resource.ts'
import { NothingYet, Of, Wrong } from '../../parts/Says.tsx'
import { Status } from '../../parts/Status.tsx'
import { Sheet } from '../../shell/Sheet.tsx'
import { me } from '../../shell/session.ts'
import { dayWords } from '../../units/days.ts'
import {
  capital,
  type FilterFollowUp,
  type ProposedRound,
  type RoundList,
  type StockLine,
  type StockList,
  shortDay,
  sizeWords,
  type Visit,
} from './types.ts'
import { Windows } from './Windows.tsx'

const WORDS = ['No', 'One', 'Two', 'Three', 'Four', 'Five', 'Six', 'Seven', 'Eight', 'Nine', 'Ten']
const counted = (n: number) => WORDS[n] ?? String(n)

function finding(rounds: RoundList): string {
  const { proposed, kept, today } = rounds
  const first = [...kept.map((r) => r.day), ...proposed.map((r) => r.day)].filter((d) => d >= today).sort()[0]
  const leaves = first ? ` The first leaves on ${shortDay(first, today)}.` : ''
  if (proposed.length === 0)
    return kept.length === 0 ? 'No filter needs a round yet.' : `Every round is booked.${leaves}`
  const many = proposed.flatMap((r) => r.filters).length
  const served = many === 1 ? 'one filter' : `${counted(many).toLowerCase()} filters`
  return `${counted(proposed.length)} ${proposed.length === 1 ? 'round serves' : 'rounds serve'} ${served} that come due.${leaves}`
}

/** The office's page: windows of all filters, the rounds they make, the shelf. */
export default function RoundsPage() {
  const rounds = useResource<RoundList>('/rounds')
  const filters = useList<FilterFollowUp>('/filters')
  const stock = useResource<StockList>('/stock')
  const visits = useList<Visit>('/visits')
  const data = rounds.data.value
  const all = filters.data.value?.items
  const today = data?.today ?? me.value?.today ?? ''
  const again = () => Promise.all([rounds.reload(), stock.reload(), visits.reload(), filters.reload()])
  return (
    <Sheet
      over={`${dayWords(today)} · ${all ? `${all.length} filters in care` : 'filters in care'}`}
      heading={data ? finding(data) : 'Rounds'}
      title="Rounds"
      block={[
        ['Firm', me.value?.firmName ?? ''],
        ['Sheet', 'Rounds'],
        ['Record as of', dayWords(today)],
        ['Filters', all ? `${all.length} in care` : '–'],
      ]}
    >
      <section aria-labelledby="windows">
        <h2 id="windows">Filter windows and the rounds they make</h2>
        <Of resource={filters}>
          {(list) =>
            list.items.length === 0 ? (
              <NothingYet>
                No filter is followed yet. A house is taken into care first, then its filters.
              </NothingYet>
            ) : (
              <>
                {data && <Windows filters={list.items} rounds={data} />}
                <FilterTable filters={list.items} today={today} />
              </>
            )
          }
        </Of>
      </section>
      <div class="with-margin rounds-book">
        <h2>Rounds to book</h2>
        <div>
          <Of resource={rounds}>
            {(list) =>
              list.proposed.length === 0 ? (
                <p class="say">Nothing to book.</p>
              ) : (
                <ul class="round-list">
                  {list.proposed.map((r, i) => (
                    <Proposed
                      key={r.place + r.day}
                      round={r}
                      today={today}
                      may={list.actions.includes('keep-round')}
                      likely={i === 0}
                      onKept={again}
                    />
                  ))}
                </ul>
              )
            }
          </Of>
        </div>
        <div class="margin">
          <p>
            <b>How a round is made.</b> Houses of one place; the day on which most windows overlap; nobody
            past the latest day, which is a week before filter load 2.0.
          </p>
          <p>
            <b>Filter load</b> is pressure drop against the clean mark at the same flow: 1.0 new, 2.0 change
            it.
          </p>
        </div>
      </div>
      {data && data.kept.length > 0 && (
        <section aria-labelledby="booked">
          <h2 id="booked">Booked</h2>
          <ul class="matters">
            {data.kept.map((r) => (
              <li key={r.id}>
                <div>
                  <Status is="stands">{shortDay(r.day, today)}</Status>
                </div>
                <div>
                  <p>
                    <b>{capital(r.place)}</b>:{' '}
                    {r.visits.map((v, i) => (
                      <span key={v.id}>
                        {i > 0 && ', '}
                        <a href={`/visits/${v.id}`}>{v.house}</a>
                      </span>
                    ))}
                  </p>
                  <p class="acts no-print">
                    <a class="b" href={`/rounds/${r.id}`}>
                      Visit sheets
                    </a>
                  </p>
                </div>
              </li>
            ))}
          </ul>
        </section>
      )}
      <div class="with-margin stock">
        <h2>Stock to {stock.data.value ? dayWords(stock.data.value.until) : ''}</h2>
        <div>
          <Of resource={stock}>{(list) => <StockTable stock={list} onKept={again} />}</Of>
        </div>
        <div class="margin">
          <p>Exact size and grade, rounds of the next eight weeks, one spare a size.</p>
        </div>
      </div>
      <OtherVisits visits={visits.data.value?.items ?? []} today={today} onChange={again} />
      <CalendarLink />
    </Sheet>
  )
}

/** The same as the drawing in words: each filter with why it stands so. */
function FilterTable({ filters, today }: { filters: FilterFollowUp[]; today: string }) {
  return (
    <details class="open-up">
      <summary>
        <span>
          <b>Every filter, and why it stands so</b>
        </span>
        <span class="note">{filters.length}</span>
      </summary>
      <div class="inside">
        <ul class="matters">
          {[...filters]
            .sort((a, b) => a.dueOn.localeCompare(b.dueOn))
            .map((f) => (
              <li key={f.house + f.filter}>
                <div>
                  <Status is={f.fillingEarly ? 'look' : 'note'}>{capital(f.standing)}</Status>
                </div>
                <div>
                  <p>
                    <a href={`/filters/${f.house}/${f.filter}`}>
                      {f.house} {f.houseName}, {sizeWords(f)}
                    </a>
                  </p>
                  <p class="note">
                    {f.reason} Latest day {shortDay(f.latestOn, today)}.
                  </p>
                </div>
              </li>
            ))}
        </ul>
      </div>
    </details>
  )
}

interface ProposedProps {
  round: ProposedRound
  today: string
  may: boolean
  /** The one likely next step. */
  likely: boolean
  onKept: () => Promise<unknown>
}

function Proposed({ round, today, may, likely, onKept }: ProposedProps) {
  const id = useId()
  const day = useSignal(round.day)
  const problem = useSignal<Problem | undefined>(undefined)
  const busy = useSignal(false)
  async function keep() {
    busy.value = true
    problem.value = undefined
    try {
      await post(
        '/rounds',
        {
          place: round.place,
          day: day.value,
          filters: round.filters.map((f) => ({ house: f.house, filter: f.filter })),
        },
        { idempotencyKey: crypto.randomUUID() },
      )
      await onKept()
    } catch (thrown) {
      problem.value = Problem.of(thrown)
    } finally {
      busy.value = false
    }
  }
  const first = [...round.filters].sort((a, b) => a.latestOn.localeCompare(b.latestOn))[0]
  return (
    <li>
      <div class="round-head">
        <h3>
          {capital(round.place)}, {shortDay(round.day, today)}
        </h3>
        {may && (
          <div class="round-keep no-print">
            <label class="vh" for={id}>
              Day of the round to {round.place}
            </label>
            <input
              id={id}
              type="date"
              value={day.value}
              min={today}
              onInput={(e) => {
                day.value = e.currentTarget.value
              }}
            />
            <button
              type="button"
              class={likely ? 'b main' : 'b'}
              disabled={busy.value || !day.value}
              onClick={() => void keep()}
            >
              Book {capital(round.place)}, {day.value && shortDay(day.value, today)}
            </button>
          </div>
        )}
      </div>
      <dl class="facts">
        <div>
          <dt>houses</dt>
          <dd>
            {round.filters.map((f) => (
              <span key={f.house + f.filter} class="stop-of">
                <a href={`/filters/${f.house}/${f.filter}`}>{f.house}</a> {sizeWords(f)}
              </span>
            ))}
          </dd>
        </div>
        <div>
          <dt>why this day</dt>
          <dd>
            {first && (
              <p>
                {first.house} must be seen by {shortDay(first.latestOn, today)}
                {first.fillingEarly && '; it fills early'}
              </p>
            )}
            {round.reasons.map((r) => (
              <p key={r}>{r}</p>
            ))}
            {round.remarks.map((r) => (
              <p key={r}>{r}</p>
            ))}
          </dd>
        </div>
        {round.also.length > 0 && (
          <div>
            <dt>also there</dt>
            <dd>
              {round.also.map((a) => (
                <p key={a.house + a.what}>
                  {a.house}: {a.what}, due {shortDay(a.dueOn, today)}
                </p>
              ))}
            </dd>
          </div>
        )}
      </dl>
      {problem.value && <Wrong problem={problem.value} outcome="Not booked." onAgain={() => void onKept()} />}
    </li>
  )
}

function StockTable({ stock, onKept }: { stock: StockList; onKept: () => Promise<unknown> }) {
  const problem = useSignal<Problem | undefined>(undefined)
  if (stock.items.length === 0) return <NothingYet>No filter is on the shelf and none is needed.</NothingYet>
  const may = stock.actions.includes('count-stock')
  async function keep(line: StockLine, onShelf: number) {
    problem.value = undefined
    try {
      await put(
        '/stock',
        { size: line.size, grade: line.grade, shelfPlace: line.shelfPlace, onShelf },
        line.version === null ? {} : { ifMatch: `"${line.version}"` },
      )
      await onKept()
    } catch (thrown) {
      problem.value = Problem.of(thrown)
    }
  }
  return (
    <>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section class="wide" tabIndex={0} aria-label="Stock">
        <table class="t">
          <thead>
            <tr>
              <th scope="col">size</th>
              <th scope="col">order</th>
              <th scope="col" class="n">
                need
              </th>
              <th scope="col" class="n">
                spare
              </th>
              <th scope="col" class="n">
                on the shelf
              </th>
              <th scope="col">shelf</th>
            </tr>
          </thead>
          <tbody>
            {stock.items.map((s) => (
              <tr key={s.size + s.grade} class={s.order > 0 ? 'key' : ''}>
                <th scope="row">
                  {s.size.replaceAll('x', '×')}
                  <span class="sub">
                    {s.grade}
                    {s.houses.length === 1 && ` · only ${s.houses[0]} uses it`}
                    {s.windowsLater > 0 && ` · ${s.windowsLater} more open later`}
                  </span>
                </th>
                <td>{s.order > 0 ? <b>order {s.order}</b> : 'enough'}</td>
                <td class="n">{s.need}</td>
                <td class="n">{s.spare}</td>
                <td class="n">
                  {may ? (
                    <input
                      class="count"
                      type="number"
                      min="0"
                      inputMode="numeric"
                      aria-label={`${s.size} ${s.grade} on the shelf`}
                      value={s.onShelf}
                      onChange={(e) => {
                        const n = Number.parseInt(e.currentTarget.value, 10)
                        if (Number.isInteger(n) && n !== s.onShelf) void keep(s, n)
                      }}
                    />
                  ) : (
                    s.onShelf
                  )}
                </td>
                <td>{s.shelfPlace ?? '–'}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      {problem.value && <Wrong problem={problem.value} outcome="Not saved." onAgain={() => void onKept()} />}
    </>
  )
}

/** Visits after handover, and single ones: each with the day it must be done before. */
function OtherVisits({
  visits,
  today,
  onChange,
}: {
  visits: Visit[]
  today: string
  onChange: () => Promise<unknown>
}) {
  const problem = useSignal<Problem | undefined>(undefined)
  const open = visits.filter((v) => v.closedOn === null && v.round === null)
  if (open.length === 0) return null
  async function plan(v: Visit, day: string) {
    problem.value = undefined
    try {
      await put(`/visits/${v.id}`, { plannedOn: day || null }, { ifMatch: `"${v.version}"` })
      await onChange()
    } catch (thrown) {
      problem.value = Problem.of(thrown)
    }
  }
  return (
    <section aria-labelledby="visits">
      <h2 id="visits">Other visits</h2>
      <ul class="matters">
        {open.map((v) => (
          <li key={v.id}>
            <div>
              <Status is={v.dueOn < today ? 'now' : v.plannedOn ? 'stands' : 'open'}>
                {v.plannedOn ? shortDay(v.plannedOn, today) : `by ${shortDay(v.dueOn, today, false)}`}
              </Status>
            </div>
            <div>
              <p>
                <a href={`/visits/${v.id}`}>
                  {v.house}: {v.label}
                </a>
              </p>
              <p class="pick no-print">
                <label for={`plan-${v.id}`}>due before {shortDay(v.dueOn, today)}, planned for</label>
                <input
                  id={`plan-${v.id}`}
                  type="date"
                  value={v.plannedOn ?? ''}
                  onChange={(e) => void plan(v, e.currentTarget.value)}
                />
              </p>
            </div>
          </li>
        ))}
      </ul>
      {problem.value && <Wrong problem={problem.value} outcome="Not saved." />}
    </section>
  )
}

/** The address by which a calendar program reads due days; whoever has it can read them. */
function CalendarLink() {
  const address = useSignal<string | undefined>(undefined)
  const copied = useSignal(false)
  const problem = useSignal<Problem | undefined>(undefined)
  async function renew() {
    problem.value = undefined
    copied.value = false
    try {
      address.value = location.origin + (await post<{ path: string }>('/calendars')).path
    } catch (thrown) {
      problem.value = Problem.of(thrown)
    }
  }
  return (
    <section class="no-print" aria-labelledby="calendar">
      <h2 id="calendar">Calendar link</h2>
      <p>
        A calendar program reads windows, rounds and visits from an address of your own. Whoever has the
        address can read them; making another one ends the earlier one.
      </p>
      {address.value && (
        <div class="calendar-link">
          <label for="calendar-address">The address, shown once</label>
          <input
            id="calendar-address"
            readOnly
            value={address.value}
            onFocus={(e) => e.currentTarget.select()}
          />
          <button
            type="button"
            class="b"
            onClick={() =>
              void navigator.clipboard.writeText(address.value!).then(() => {
                copied.value = true
              })
            }
          >
            {copied.value ? 'Copied' : 'Copy'}
          </button>
        </div>
      )}
      <p class="acts">
        <button type="button" class="b" onClick={() => void renew()}>
          {address.value ? 'Make another address' : 'Make my address'}
        </button>
      </p>
      {problem.value && <Wrong problem={problem.value} />}
    </section>
  )
}
