import { useList } from '../../api/resource.ts'
import { linear, pathOf } from '../../chart/axis.ts'
import { useWidth } from '../../chart/Plot.tsx'
import { Fact, Facts } from '../../parts/lists.tsx'
import { NothingYet, Of } from '../../parts/Says.tsx'
import { Status } from '../../parts/Status.tsx'
import type { PageProps } from '../../shell/routes.ts'
import { Sheet } from '../../shell/Sheet.tsx'
import { me } from '../../shell/session.ts'
import { dayWords } from '../../units/days.ts'
import { figure } from '../../units/quantity.ts'
import { capital, type FilterFollowUp, shortDay, sizeWords } from './types.ts'

const DAY = 86_400_000

function finding(f: FilterFollowUp, today: string): string {
  const due = `change it by ${shortDay(f.latestOn, today)}`
  return f.fillingEarly
    ? `The filter of ${f.house} fills early: load ${figure(f.load, 2)}, ${due}.`
    : `The filter of ${f.house} has load ${figure(f.load, 2)}: ${due}.`
}

/** One filter: how its load grew, where it bent and why, and when it is due. */
export default function FilterPage({ house = '', filter = '' }: PageProps) {
  const all = useList<FilterFollowUp>('/filters')
  const today = me.value?.today ?? ''
  const f = all.data.value?.items.find((x) => x.house === house && x.filter === filter)
  return (
    <Sheet
      over={f ? `${f.house} ${f.houseName} · ${f.inHouse}, ${sizeWords(f)}, ${f.grade}` : 'Filter'}
      heading={f ? finding(f, today) : 'Filter'}
      title={`Filter of ${house}`}
      block={[
        ['House', house],
        ['Sheet', 'Filter load'],
        ['Record as of', dayWords(today)],
      ]}
    >
      <Of resource={all}>
        {() =>
          f ? <Trend filter={f} today={today} /> : <NothingYet>No such filter is followed.</NothingYet>
        }
      </Of>
    </Sheet>
  )
}

export function Trend({ filter: f, today }: { filter: FilterFollowUp; today: string }) {
  const { bend } = f
  return (
    <div class="with-margin">
      <h2>Filter load by day</h2>
      <div>
        <TrendChart filter={f} today={today} />
        {bend ? (
          <div class="say persistence">
            <p>
              <Status is="look">Filling early</Status>
            </p>
            <p>{f.reason}</p>
          </div>
        ) : (
          <p class="say persistence">{f.reason}</p>
        )}
        <Facts>
          <Fact name="Filter load">
            <span class="q">
              <b>{figure(f.load, 2)}</b>
            </span>
            <span class="from">computed · {dayWords(f.loadOn)}; 1.0 new, 2.0 change it</span>
          </Fact>
          {bend && (
            <Fact name="Slope">
              <span class="q">
                <b>{figure(bend.slopeSincePerWeek, 3)}</b> <i>a week since {shortDay(bend.byOn, today)}</i>
              </span>
              , before <span class="q">{figure(bend.slopeBeforePerWeek, 3)}</span>
              <span class="from">computed · median of pairwise slopes</span>
            </Fact>
          )}
          {!bend && f.slopePerWeek !== null && (
            <Fact name="Slope">
              <span class="q">
                <b>{figure(f.slopePerWeek, 3)}</b> <i>a week</i>
              </span>
              <span class="from">computed · median of pairwise slopes, last 28 days</span>
            </Fact>
          )}
          <Fact name="Due">
            <b>{dayWords(f.dueOn)}</b>, because of {f.dueBecause}
            <span class="from">
              computed · between {dayWords(f.dueEarliestOn)} and {dayWords(f.dueLatestOn)} with 80 %
              confidence
            </span>
          </Fact>
          <Fact name="Latest day of a planned visit">{dayWords(f.latestOn)}</Fact>
          {f.windowOpensOn && <Fact name="Window opens">{dayWords(f.windowOpensOn)}</Fact>}
        </Facts>
      </div>
      <div class="margin">
        <p>
          <b>Filter load</b> is the drop measured against the clean curve at the same flow and density; a day
          counts with its median.
        </p>
        <p>
          <b>Clean mark</b> {dayWords(f.fittedOn)}: {figure(f.cleanHighPa, 1)} Pa at high,{' '}
          {figure(f.cleanLowPa, 1)} Pa at low flow; design {figure(f.designHighPa, 1)} and{' '}
          {figure(f.designLowPa, 1)} Pa.
        </p>
        <p>
          <b>Standing.</b> {capital(f.standing)}.
        </p>
        <p>
          <b>Electrical.</b> Before the rack is opened the fan is switched off at its disconnect.
        </p>
      </div>
    </div>
  )
}

/** Points of load, the slopes before and since, what the record knows of the bend, and the limit as ground. */
function TrendChart({ filter: f, today }: { filter: FilterFollowUp; today: string }) {
  const { ref, width } = useWidth<HTMLDivElement>(900)
  const narrow = width < 560
  const height = narrow ? 320 : 400
  const left = 44
  const right = width - (narrow ? 16 : 120)
  const top = 34
  const bottom = height - 42
  const day = (iso: string) => Date.parse(iso) / DAY
  const first = day(f.fittedOn)
  const ends = [f.dueOn, f.dueLatestOn, f.bend?.asBeforeDueOn, today].filter((d) => d !== undefined).map(day)
  const last = Math.min(first + 420, Math.max(...ends) + 10)
  const highest = Math.max(f.changeLoad, ...f.loads.map((l) => l.load)) + 0.2
  const x = linear(first, last, left, right)
  const y = linear(0.9, highest, bottom, top, 7)
  const at = (iso: string, load: number): [number, number] => [x.at(Math.min(last, day(iso))), y.at(load)]
  const due = f.changeLoad
  const { bend } = f
  const beforeBend = bend && [...f.loads].reverse().find((l) => l.on <= bend.afterOn)
  const sinceBend = bend && f.loads.find((l) => l.on >= bend.byOn)
  // a point each week is enough to see the course; all days are in the table
  const shown = f.loads.filter((_, i) => f.loads.length <= 40 || i % 7 === 0 || i === f.loads.length - 1)
  const months: number[] = []
  for (let d = new Date(first * DAY); d.getTime() / DAY < last; ) {
    d = new Date(Date.UTC(d.getUTCFullYear(), d.getUTCMonth() + 1, 1))
    if (d.getTime() / DAY < last) months.push(d.getTime() / DAY)
  }
  const monthWord = new Intl.DateTimeFormat('en-GB', { month: 'short', timeZone: 'UTC' })
  const event = bend?.explainedBy[0]
  const eventAt = event ? x.at(day(event.onFrom)) : 0
  // words stand left of the event where there is room for them, else right of it and low, where nothing is drawn
  const label =
    eventAt - left > 270
      ? { x: eventAt - 6, y: top + 12, anchor: 'end' as const }
      : { x: event ? x.at(day(event.onTo) + 1) + 6 : 0, y: bottom - 74, anchor: 'start' as const }
  const toDue = sinceBend ?? f.loads[0]
  return (
    <figure class="drawing plot">
      <div ref={ref}>
        <svg
          viewBox={`0 0 ${width} ${height}`}
          width={width}
          height={height}
          role="img"
          aria-labelledby="trend-t trend-d"
        >
          <title id="trend-t">Filter load of {f.house} by day</title>
          <desc id="trend-d">{f.reason}</desc>
          <text class="t2" font-size="13" x="0" y="14">
            filter load, 1.0 at the clean mark
          </text>
          {y.ticks.map((t) => (
            <g key={t}>
              <path class="grid" d={`M${left} ${y.at(t)}H${right}`} />
              <text class="t2" font-size="13" x={left - 8} y={y.at(t) + 4.5} text-anchor="end">
                {figure(t, t % 1 === 0 ? 1 : 2)}
              </text>
            </g>
          ))}
          {months.map((m, i) => (
            <g key={m}>
              <path class="axis" d={`M${x.at(m)} ${bottom}v6`} />
              {(!narrow || i % 2 === 0) && (
                <text class="t2" font-size="13" x={x.at(m) + 4} y={bottom + 20}>
                  {monthWord.format(m * DAY)}
                </text>
              )}
            </g>
          ))}
          {f.windowOpensOn && day(f.latestOn) > day(f.windowOpensOn) && (
            <rect
              class="window"
              x={at(f.windowOpensOn, due)[0]}
              y={y.at(due)}
              width={Math.max(0, at(f.latestOn, due)[0] - at(f.windowOpensOn, due)[0])}
              height={y.at(f.windowLoad) - y.at(due)}
            />
          )}
          <rect x={left} y={y.at(due) - 10} width={right - left} height="10" fill="url(#k-lim)" />
          <path class="o" stroke-width="2" d={`M${left} ${y.at(due)}H${right}`} />
          <text
            font-size="13"
            x={narrow ? right : right + 8}
            y={y.at(due) + (narrow ? -14 : 5)}
            text-anchor={narrow ? 'end' : 'start'}
          >
            change it at {figure(due, 1)}
          </text>
          {bend && beforeBend && f.loads[0] && (
            <path
              class="o2"
              stroke-width="1.6"
              stroke-dasharray="7 5"
              d={pathOf([at(f.fittedOn, 1), at(beforeBend.on, beforeBend.load), at(bend.asBeforeDueOn, due)])}
            />
          )}
          {toDue && day(f.dueOn) > day(toDue.on) && (
            <path
              class={bend ? 'red' : 'o2'}
              stroke-width="2"
              stroke-dasharray={bend ? undefined : '7 5'}
              d={pathOf([at(toDue.on, toDue.load), at(f.loadOn, f.load), at(f.dueOn, due)])}
            />
          )}
          {bend && event && (
            <>
              <rect
                class="event"
                x={x.at(day(event.onFrom))}
                y={top}
                width={Math.max(2, x.at(day(event.onTo) + 1) - x.at(day(event.onFrom)))}
                height={bottom - top}
              />
              <text
                class="tr halo"
                font-size="13"
                stroke-width="5"
                x={label.x}
                y={label.y}
                text-anchor={label.anchor}
              >
                {event.what}
              </text>
              <text
                class="t2 halo"
                font-size="13"
                stroke-width="5"
                x={label.x}
                y={label.y + 17}
                text-anchor={label.anchor}
              >
                {shortDay(event.onFrom, today, false)}
                {event.onTo !== event.onFrom && ` to ${shortDay(event.onTo, today, false)}`}, from the record
              </text>
            </>
          )}
          <path
            class="o2"
            stroke-width="1.4"
            stroke-dasharray="2 4"
            d={`M${x.at(day(today))} ${top + 40}V${bottom}`}
          />
          {shown.map((l) => {
            const [cx, cy] = at(l.on, l.load)
            return <circle key={l.on} class="o open-mark" stroke-width="1.6" cx={cx} cy={cy} r="3.6" />
          })}
          <text
            class="tb halo"
            font-size="13"
            stroke-width="5"
            x={at(f.loadOn, f.load)[0] + 9}
            y={at(f.loadOn, f.load)[1] + 5}
          >
            {figure(f.load, 2)} today
          </text>
          <path
            class="o"
            stroke-width="2.6"
            d={`M${x.at(day(f.dueEarliestOn))} ${bottom - 8}H${x.at(Math.min(last, day(f.dueLatestOn)))}M${x.at(day(f.dueOn))} ${bottom - 14}v12`}
          />
          <text
            class="t2 halo"
            font-size="13"
            stroke-width="5"
            x={x.at(day(f.dueOn))}
            y={bottom - 20}
            text-anchor="middle"
          >
            due {shortDay(f.dueOn, today, false)}
          </text>
          <path class="axis" d={`M${left} ${top}V${bottom}H${right}`} />
        </svg>
      </div>
      <figcaption>
        {bend
          ? 'Carmine: as it fills since the bend; dashed: as it filled before. '
          : 'Dashed: as it fills. '}
        The bar above the axis is the due day with its 80 % interval.
      </figcaption>
      <details class="open-up no-print">
        <summary>
          <span>Show as a table</span>
        </summary>
        <div class="inside">
          <table class="t">
            <thead>
              <tr>
                <th scope="col">day</th>
                <th scope="col" class="n">
                  filter load
                </th>
              </tr>
            </thead>
            <tbody>
              {f.loads.map((l) => (
                <tr key={l.on}>
                  <td>{dayWords(l.on)}</td>
                  <td class="n">{figure(l.load, 2)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      </details>
    </figure>
  )
}
