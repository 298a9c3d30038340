import { figure } from '../../units/quantity.ts'
import { type FilterFollowUp, type RoundList, shortDay, sizeWords } from './types.ts'

const WEEKS = 21
const DAY = 86_400_000
const LEFT = 304
const RIGHT = 1230
const WIDTH = 1320
const ROW = 34
const HEAD = 70

/** A round as it is drawn: its day, and the filters on it. */
interface Drawn {
  place: string
  day: string
  on: Set<string>
}

const key = (house: string, filter: string) => `${house}/${filter}`

function drawn(rounds: RoundList): Drawn[] {
  return [
    ...rounds.kept.map((r) => ({
      place: r.place,
      day: r.day,
      on: new Set(r.visits.flatMap((v) => v.filters.map((f) => key(v.house, f)))),
    })),
    ...rounds.proposed.map((r) => ({
      place: r.place,
      day: r.day,
      on: new Set(r.filters.map((f) => key(f.house, f.filter))),
    })),
  ]
}

/** Filter windows over weeks, grouped by place, with the rounds that serve them. */
export function Windows({ filters, rounds }: { filters: FilterFollowUp[]; rounds: RoundList }) {
  const today = Date.parse(rounds.today)
  const start = today - ((new Date(today).getUTCDay() + 6) % 7) * DAY
  const end = start + WEEKS * 7 * DAY
  const x = (day: string | number) => {
    const t = typeof day === 'string' ? Date.parse(day) : day
    return LEFT + ((t - start) / (end - start)) * (RIGHT - LEFT)
  }
  const inside = (v: number) => Math.min(RIGHT, Math.max(LEFT, v))
  const all = drawn(rounds)
  const firstDay = (place: string) =>
    all
      .filter((r) => r.place === place)
      .map((r) => r.day)
      .sort()[0] ?? '9999'
  const places = [...new Set(filters.map((f) => f.place))].sort((a, b) =>
    firstDay(a).localeCompare(firstDay(b)),
  )
  let y = HEAD + 12
  const groups = places.map((place) => {
    const top = y
    const rows = filters
      .filter((f) => f.place === place)
      .sort((a, b) => a.dueOn.localeCompare(b.dueOn))
      .map((f, i) => ({ f, y: top + i * ROW + ROW / 2 }))
    y += rows.length * ROW + 30
    return { place, top, bottom: top + rows.length * ROW, rows }
  })
  const height = y + 24
  const weeks = Array.from({ length: WEEKS }, (_, i) => start + i * 7 * DAY)
  const months = weeks.filter(
    (w, i) => i === 0 || new Date(w).getUTCMonth() !== new Date(weeks[i - 1]!).getUTCMonth(),
  )
  const monthWord = new Intl.DateTimeFormat('en-GB', { month: 'long', timeZone: 'UTC' })
  return (
    <figure class="drawing">
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section class="wide" tabIndex={0} aria-label="Windows and rounds">
        <svg
          viewBox={`0 0 ${WIDTH} ${height}`}
          role="img"
          aria-labelledby="windows-t windows-d"
          style={{ '--least': '70rem' }}
        >
          <title id="windows-t">
            Filter windows of {filters.length} filters over {WEEKS} weeks, grouped by place
          </title>
          <desc id="windows-d">
            Each bar runs from the day the window opens to the latest day; hatching marks the last week. Dots
            on a line are the houses of one round.
          </desc>
          <g font-size="13">
            <text class="t2" x="78" y="62">
              house
            </text>
            <text class="t2" x="124" y="62">
              filter
            </text>
            <text class="t2" x="276" y="62" text-anchor="end">
              filter load
            </text>
          </g>
          {months.map((m) => (
            <text key={m} font-size="14" x={x(m)} y="38">
              {monthWord.format(m)}
            </text>
          ))}
          {weeks.map((w) => (
            <g key={w}>
              <path class="grid" d={`M${x(w)} ${HEAD}V${height - 50}`} />
              <text class="t2" font-size="12" x={x(w) + 4} y="60">
                {new Date(w).getUTCDate()}
              </text>
            </g>
          ))}
          <path class="axis" stroke-width="1.2" d={`M78 ${HEAD}H${WIDTH}`} />
          {groups.map((g) => (
            <g key={g.place}>
              <text class="tx" font-size="17" x="0" y={g.top + ROW / 2 + 5}>
                {g.place}
              </text>
              {g.rows.map(({ f, y: at }) => {
                const opens = f.windowOpensOn ? inside(x(f.windowOpensOn)) : LEFT
                const latest = inside(x(f.latestOn))
                const due = x(f.dueOn)
                const beyond = due > RIGHT
                const later = f.windowOpensOn !== null && x(f.windowOpensOn) > RIGHT
                return (
                  <g key={key(f.house, f.filter)}>
                    <path class="grid" d={`M78 ${at + ROW / 2}H${WIDTH}`} />
                    <text class="tb" font-size="15" x="78" y={at + 5}>
                      {f.house}
                    </text>
                    <text class="t2" font-size="14" x="124" y={at + 5}>
                      {sizeWords(f)}
                    </text>
                    <text font-size="14" x="276" y={at + 5} text-anchor="end">
                      {figure(f.load, 2)}
                    </text>
                    {!later && latest > opens && (
                      <>
                        <rect class="window" x={opens} y={at - 7} width={latest - opens} height="14" />
                        <path
                          class="o"
                          stroke-width="1.3"
                          d={
                            beyond
                              ? `M${latest} ${at - 7}H${opens}V${at + 7}H${latest}`
                              : `M${opens} ${at - 7}H${latest}V${at + 7}H${opens}z`
                          }
                        />
                      </>
                    )}
                    {!beyond && (
                      <>
                        <rect
                          x={Math.max(LEFT, x(f.latestOn))}
                          y={at - 7}
                          width={Math.max(0, due - Math.max(LEFT, x(f.latestOn)))}
                          height="14"
                          fill="url(#k-lim)"
                        />
                        <path class="o" stroke-width="2.6" d={`M${Math.max(LEFT, due)} ${at - 10}v20`} />
                      </>
                    )}
                    <text
                      class="t2 halo"
                      font-size="13"
                      stroke-width="5"
                      x={beyond ? WIDTH : Math.max(LEFT, due) + 8}
                      y={at + 5}
                      text-anchor={beyond ? 'end' : 'start'}
                    >
                      {later && `opens ${shortDay(f.windowOpensOn!, rounds.today, false)} · `}
                      {shortDay(f.dueOn, rounds.today, false)}
                    </text>
                  </g>
                )
              })}
            </g>
          ))}
          <path
            class="o"
            stroke-width="1.6"
            stroke-dasharray="2 4"
            d={`M${x(today)} ${HEAD}V${height - 42}`}
          />
          <text
            class="tb"
            font-size="13"
            x={Math.max(LEFT + 40, x(today))}
            y={height - 24}
            text-anchor="middle"
          >
            today, {shortDay(rounds.today, rounds.today, false)}
          </text>
          {all.map((r) => {
            const group = groups.find((g) => g.place === r.place)
            if (!group || x(r.day) > RIGHT) return null
            const at = x(r.day)
            return (
              <g key={r.place + r.day}>
                <path class="red" stroke-width="2" d={`M${at} ${group.top}V${group.bottom + 4}`} />
                {group.rows
                  .filter(({ f }) => r.on.has(key(f.house, f.filter)))
                  .map(({ f, y: row }) => (
                    <circle key={f.house + f.filter} class="redf" cx={at} cy={row} r="7" />
                  ))}
                <text
                  class="tr halo"
                  font-size="13"
                  stroke-width="6"
                  x={Math.max(LEFT + 30, at)}
                  y={group.bottom + 19}
                  text-anchor="middle"
                >
                  {shortDay(r.day, rounds.today)}
                </text>
              </g>
            )
          })}
        </svg>
      </section>
      <figcaption>
        A bar runs from filter load 1.5 to seven days before 2.0; the hatched week ends at 2.0. A red dot is a
        visit in a round.
      </figcaption>
    </figure>
  )
}
