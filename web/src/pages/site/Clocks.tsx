import { useSignal } from '@preact/signals'
import { useId } from 'preact/hooks'
import { post, put } from '../../api/http.ts'
import { Problem } from '../../api/problem.ts'
import { useResource } from '../../api/resource.ts'
import { Of, Wrong } from '../../parts/Says.tsx'
import { Status } from '../../parts/Status.tsx'
import { dayWords } from '../../units/days.ts'
import type { Clock } from './types.ts'

/** A day some days later; ISO days in and out. */
export function daysAfter(day: string, days: number): string {
  const at = new Date(`${day}T00:00:00Z`)
  at.setUTCDate(at.getUTCDate() + days)
  return at.toISOString().slice(0, 10)
}

/** The running clocks of a house as tapes; those that are covered on one day are moved together. */
export function Clocks({ house }: { house: string }) {
  const clocks = useResource<Clock[]>(`/houses/${encodeURIComponent(house)}/clocks`)
  return (
    <section class="clocks" aria-labelledby="clocks">
      <h2 id="clocks">Sun clocks</h2>
      <Of resource={clocks}>
        {(all) =>
          all.length === 0 ? (
            <p class="say">Nothing stands exposed. A clock starts when a membrane goes up.</p>
          ) : (
            <>
              {groups(all).map(([plannedOn, some]) => (
                <Planned
                  key={plannedOn ?? 'none'}
                  house={house}
                  plannedOn={plannedOn}
                  clocks={some}
                  onSaved={() => void clocks.reload()}
                />
              ))}
              {all
                .filter((c) => c.stoppedOn)
                .map((c) => (
                  <Tape key={c.id} clock={c} />
                ))}
            </>
          )
        }
      </Of>
    </section>
  )
}

function groups(all: Clock[]): [string | null, Clock[]][] {
  const by = new Map<string | null, Clock[]>()
  for (const c of all.filter((c) => !c.stoppedOn)) by.set(c.plannedOn, [...(by.get(c.plannedOn) ?? []), c])
  return [...by.entries()]
}

interface PlannedProps {
  house: string
  plannedOn: string | null
  clocks: Clock[]
  onSaved: () => void
}

/** Clocks with one planned day: a trial of another day, and keeping it. */
function Planned({ house, plannedOn, clocks, onSaved }: PlannedProps) {
  const id = useId()
  const today = clocks[0]!.today
  const day = useSignal(plannedOn ?? today)
  const trials = useSignal<Clock[] | undefined>(undefined)
  const problem = useSignal<Problem | undefined>(undefined)
  const busy = useSignal(false)
  const may = clocks.every((c) => c.actions.length > 0)
  const path = (c: Clock) => `/houses/${encodeURIComponent(house)}/clocks/${encodeURIComponent(c.id)}`
  let asked = ''

  async function attempt(next: string) {
    if (!/^\d{4}-\d{2}-\d{2}$/.test(next)) return
    day.value = next
    asked = next
    problem.value = undefined
    if (next === plannedOn) {
      trials.value = undefined
      return
    }
    try {
      const came = await Promise.all(
        clocks.map((c) => post<{ trial: Clock }>(`${path(c)}/trial`, { plannedOn: next })),
      )
      if (asked === next) trials.value = came.map((t) => t.trial)
    } catch (thrown) {
      problem.value = Problem.of(thrown)
    }
  }

  async function keep() {
    busy.value = true
    problem.value = undefined
    try {
      for (const c of clocks)
        await put(path(c), { plannedOn: day.value, stoppedOn: null }, { ifMatch: `"${c.version}"` })
      trials.value = undefined
      onSaved()
    } catch (thrown) {
      problem.value = Problem.of(thrown)
      if (problem.value.status === 412) onSaved()
    } finally {
      busy.value = false
    }
  }

  const shown = trials.value ?? clocks
  const over = shown.filter((c) => c.daysOver > 0)
  const least = Math.min(...shown.map((c) => c.daysToSpare))
  const tight = shown.find((c) => c.daysToSpare === least)
  return (
    <div class="planned">
      <p role="status">
        {trials.value ? <b>Trial, nothing saved. </b> : ''}
        {plannedOn || trials.value
          ? `Covered on ${dayWords(day.value)}: `
          : 'No day of covering is planned. '}
        {over.length > 0 ? (
          <b>{over.map((c) => `${face(c)} over by ${counted(c.daysOver)}`).join(', ')}.</b>
        ) : (
          tight && (
            <b>
              {counted(least)} to spare on the {face(tight)}.
            </b>
          )
        )}
      </p>
      {shown.map((c, i) => (
        <Tape key={c.id} clock={c} before={trials.value ? clocks[i] : undefined} />
      ))}
      <p class="note">
        Limit {clocks[0]!.limitDays} days ({clocks[0]!.limitSource}). The red mark is the day of covering; the
        firm asks for {clocks[0]!.wantedDays} days to spare.
      </p>
      {may && (
        <div class="mover">
          <label for={id}>Day of covering</label>
          <div class="in">
            <input
              id={id}
              type="date"
              value={day.value}
              min={today}
              onChange={(e) => void attempt(e.currentTarget.value)}
            />
          </div>
          <div class="steps">
            <button type="button" class="b" onClick={() => void attempt(daysAfter(day.value, -1))}>
              A day earlier
            </button>
            <button type="button" class="b" onClick={() => void attempt(daysAfter(day.value, 1))}>
              A day later
            </button>
            <button type="button" class="b" onClick={() => void attempt(daysAfter(day.value, -7))}>
              A week earlier
            </button>
            <button type="button" class="b" onClick={() => void attempt(daysAfter(day.value, 7))}>
              A week later
            </button>
          </div>
          {trials.value && (
            <>
              <button type="button" class="b main" disabled={busy.value} onClick={() => void keep()}>
                Keep {dayWords(day.value)}
              </button>
              <button type="button" class="b" onClick={() => void attempt(plannedOn ?? today)}>
                Leave it as it was
              </button>
            </>
          )}
          {problem.value && (
            <Wrong problem={problem.value} outcome={problem.value.noSignal ? 'No signal.' : 'Not saved.'} />
          )}
        </div>
      )}
    </div>
  )
}

const counted = (n: number) => (n === 1 ? '1 day' : `${n} days`)
/** "Outer membrane, south face" is "south face" beside its siblings. */
const face = (c: Clock) => c.label.split(', ').at(-1) ?? c.label

const LEFT = 2
const RIGHT = 318
const FULL = 286.4

/** A ruled strip: filled for days used, hatched past the limit, a carmine mark for the planned day. */
export function Tape({ clock, before }: { clock: Clock; before?: Clock }) {
  const { limitDays, daysUsed, plannedDay } = clock
  const perDay = (FULL - LEFT) / limitDays
  const at = (d: number) => Math.min(RIGHT, LEFT + d * perDay)
  const step = limitDays > 40 ? 2 : 1
  const ticks = Array.from({ length: Math.floor((RIGHT - LEFT) / perDay / step) + 1 }, (_, i) => i * step)
  const numbers = [0, limitDays / 3, (limitDays * 2) / 3, limitDays]
  const plannedWords = plannedDay === null ? 'no day planned' : `covered on day ${plannedDay}`
  return (
    <div class="tape">
      <p>
        <b>{clock.label}</b>
        <span class="q">
          <b>{daysUsed}</b> of {limitDays} days
        </span>
      </p>
      <svg
        viewBox="0 0 320 64"
        role="img"
        aria-label={`${clock.label}: ${daysUsed} of ${limitDays} days used, ${plannedWords}, last day ${dayWords(clock.lastDay)}`}
      >
        <rect class="used" x={LEFT} y="14" width={Math.max(0, at(daysUsed) - LEFT)} height="20" />
        <path class="o" stroke-width="1.4" d={`M${LEFT} 14H${FULL}V34H${LEFT}z`} />
        <rect x={FULL} y="14" width={RIGHT - FULL} height="20" fill="url(#k-lim)" />
        <path class="o" stroke-width="3" d={`M${FULL} 8v32`} />
        {ticks.map((t) => (
          <path
            key={t}
            class="axis"
            stroke-width={t % 10 === 0 ? 1.4 : 0.8}
            d={`M${at(t)} 34v${t % 10 === 0 ? 10 : 5}`}
          />
        ))}
        {before && before.plannedDay !== null && (
          <path class="o open-mark" stroke-width="1.6" d={`M${at(before.plannedDay)} 13l-6 -11h12z`} />
        )}
        {plannedDay !== null && !clock.stoppedOn && (
          <>
            <path class="redf" d={`M${at(plannedDay)} 13l-6 -11h12z`} />
            <path class="red" stroke-width="2" d={`M${at(plannedDay)} 12V36`} />
          </>
        )}
        {numbers.map((n, i) => (
          <text key={n} class="t2" font-size="13" x={at(n)} y="60" text-anchor={i === 0 ? 'start' : 'middle'}>
            {Math.round(n)}
          </text>
        ))}
      </svg>
      <p class="spare">
        {clock.stoppedOn ? (
          <span>{clock.sentence}</span>
        ) : clock.daysOver > 0 ? (
          <Status is="over">Over by {counted(clock.daysOver)}</Status>
        ) : (
          <Status is="under">{counted(clock.daysToSpare)} to spare</Status>
        )}
        <span>last day {dayWords(clock.lastDay)}</span>
      </p>
    </div>
  )
}
