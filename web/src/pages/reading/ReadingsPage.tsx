import { useSignal } from '@preact/signals'
import { useEffect, useId, useMemo } from 'preact/hooks'
import { get } from '../../api/http.ts'
import { Problem } from '../../api/problem.ts'
import { useResource } from '../../api/resource.ts'
import { type Series, SeriesChart, type SeriesLimit } from '../../chart/SeriesChart.tsx'
import { Choose } from '../../parts/Choose.tsx'
import { Fact, Facts } from '../../parts/lists.tsx'
import { Quantity } from '../../parts/Quantity.tsx'
import { NothingYet, Of, Waiting, Wrong } from '../../parts/Says.tsx'
import { Status } from '../../parts/Status.tsx'
import { house as houseLine } from '../../shell/house.ts'
import type { PageProps } from '../../shell/routes.ts'
import { Sheet } from '../../shell/Sheet.tsx'
import { me } from '../../shell/session.ts'
import { dayWords, timeWords } from '../../units/days.ts'
import { print, type Unit } from '../../units/quantity.ts'
import { system } from '../../units/system.ts'
import { BringReadings } from './BringReadings.tsx'
import { type Span, spanEnding } from './span.ts'
import type { Property, ReadingSeries, Sensor } from './types.ts'

/** Buckets asked for: about one for each two points of a wide chart. */
const POINTS = 700

const SPANS: [Span, string][] = [
  ['day', 'day'],
  ['week', 'week'],
  ['month', 'month'],
  ['year', 'year'],
  ['own', 'own days'],
]

/** The readings of a house: one sensor at a time, as a band of lowest and highest with its mean. */
export default function ReadingsPage({ house = '' }: PageProps) {
  const base = `/houses/${encodeURIComponent(house)}`
  const sensors = useResource<{ items: Sensor[]; actions: string[] }>(`${base}/sensors`)
  const properties = useResource<Property[]>('/observed-properties')
  const line = houseLine.value
  const chosen = useSignal<string | undefined>(
    new URLSearchParams(location.search).get('sensor') ?? undefined,
  )
  const other = useSignal('')
  const span = useSignal<Span>('year')
  const own = useSignal<[string, string]>(['', ''])
  /** What somebody looks at more closely than the span. */
  const closer = useSignal<[number, number] | undefined>(undefined)
  const series = useSignal<ReadingSeries | undefined>(undefined)
  const problem = useSignal<Problem | undefined>(undefined)
  const all = sensors.data.value?.items ?? []
  const key = chosen.value && all.some((s) => s.key === chosen.value) ? chosen.value : first(all)?.key
  const sensor = all.find((s) => s.key === key)
  const property = properties.data.value?.find((p) => p.id === sensor?.property)
  const zone = line?.timeZone
  const second = all.find((s) => s.key === other.value && s.property === sensor?.property && s.key !== key)
  const today = me.value?.today ?? ''

  const range = closer.value
    ? [new Date(closer.value[0] * 1000).toISOString(), new Date(closer.value[1] * 1000).toISOString()]
    : zone
      ? spanEnding(span.value, own.value, today, zone)
      : undefined
  const query =
    key && range
      ? `${base}/readings?sensor=${encodeURIComponent(key)}${second ? `&sensor=${encodeURIComponent(second.key)}` : ''}` +
        `&from=${range[0]}&to=${range[1]}&points=${POINTS}&persistence=true`
      : undefined

  useEffect(() => {
    if (!query) return
    const stop = new AbortController()
    problem.value = undefined
    get<ReadingSeries>(query, stop.signal).then(
      (came) => {
        series.value = came
      },
      (thrown) => {
        if (!stop.signal.aborted) problem.value = Problem.of(thrown)
      },
    )
    return () => stop.abort()
  }, [query, series, problem])

  const came = series.value?.series[0]?.sensor.key === key ? series.value : undefined
  const heading = came && property ? finding(came, property.shown, zone) : 'Readings'
  return (
    <Sheet
      over={`${house} ${line?.name ?? ''} · readings`}
      heading={heading}
      title={`Readings of ${house}`}
      block={[
        ['House', `${house} ${line?.name ?? ''}`],
        ['Sheet', 'Readings'],
        ['Sensor', sensor ? nameOf(sensor, property) : 'none'],
        ['Drawn from', came ? (came.source === 'hours' ? 'hourly values' : 'readings') : '–'],
        ['Record as of', dayWords(today)],
      ]}
    >
      <Of resource={sensors}>
        {(list) =>
          list.items.length === 0 ? (
            <NothingYet>
              No sensor of this house is known yet. The designer or the office adds them.
            </NothingYet>
          ) : (
            <div class="with-margin">
              <h2>{sensor && nameOf(sensor, property)}</h2>
              <div>
                <div class="reading-choice no-print">
                  <SensorChoice
                    label="Sensor"
                    sensors={list.items}
                    properties={properties.data.value ?? []}
                    value={key ?? ''}
                    onChoose={(k) => {
                      chosen.value = k
                      other.value = ''
                      history.replaceState(null, '', `${location.pathname}?sensor=${encodeURIComponent(k)}`)
                    }}
                  />
                  {list.items.some((s) => s.property === sensor?.property && s.key !== key) && (
                    <SensorChoice
                      label="beside it"
                      none="none"
                      sensors={list.items.filter((s) => s.property === sensor?.property && s.key !== key)}
                      properties={properties.data.value ?? []}
                      value={second?.key ?? ''}
                      onChoose={(k) => {
                        other.value = k
                      }}
                    />
                  )}
                  <Choose
                    name="span"
                    legend="Span"
                    options={SPANS}
                    value={span.value}
                    onChoose={(s) => {
                      if (s === 'own' && own.value[0] === '' && range && zone)
                        own.value = [range[0]!.slice(0, 10), today]
                      span.value = s
                      closer.value = undefined
                    }}
                  />
                  {span.value === 'own' && (
                    <OwnDays
                      value={own.value}
                      onChoose={(days) => {
                        own.value = days
                        closer.value = undefined
                      }}
                    />
                  )}
                </div>
                {problem.value && <Wrong problem={problem.value} />}
                {came && property && zone ? (
                  <Drawn
                    house={house}
                    came={came}
                    property={property}
                    zone={zone}
                    closer={Boolean(closer.value)}
                    onRange={(from, to) => {
                      closer.value = [from, to]
                    }}
                    onAll={() => {
                      closer.value = undefined
                    }}
                  />
                ) : (
                  !problem.value && <Waiting what="Reading the readings." />
                )}
              </div>
              <Margin sensor={sensor} property={property} came={came} />
            </div>
          )
        }
      </Of>
      {sensors.data.value?.actions.includes('bring-readings') && <BringReadings house={house} />}
    </Sheet>
  )
}

/** Humidity of the room people live in tells most; else whatever is first. */
const first = (all: Sensor[]) =>
  all.find((s) => s.property === 'relative-humidity' && /living/i.test(s.room ?? s.label)) ?? all[0]

export function nameOf(sensor: Sensor, property: Property | undefined): string {
  const what = property?.label ?? sensor.property
  return sensor.label.toLowerCase() === what.toLowerCase() ? sensor.label : `${sensor.label}, ${what}`
}

function extremes(series: ReadingSeries) {
  const buckets = series.series[0]?.buckets ?? []
  if (buckets.length === 0) return undefined
  return {
    low: buckets.reduce((a, b) => (b.min < a.min ? b : a)),
    high: buckets.reduce((a, b) => (b.max > a.max ? b : a)),
  }
}

function finding(series: ReadingSeries, unit: Unit, zone?: string): string {
  const ends = extremes(series)
  const name = series.series[0]?.sensor.label ?? ''
  if (!ends) return `${name}: no reading in these days.`
  const low = print(ends.low.min, unit, system.value)
  const high = print(ends.high.max, unit, system.value)
  const rule = series.series[0]?.persistence
  const raised = !rule ? '' : rule.stayed.length === 0 ? '; nothing was raised' : '; look'
  const until = new Date(new Date(series.to).getTime() - 1000).toISOString()
  return `${name}: ${low.text} to ${high.text}\u202f${high.symbol}, ${dayWords(series.from, zone)} to ${dayWords(until, zone)}${raised}.`
}

interface SensorChoiceProps {
  label: string
  none?: string
  sensors: Sensor[]
  properties: Property[]
  value: string
  onChoose: (key: string) => void
}

function SensorChoice({ label, none, sensors, properties, value, onChoose }: SensorChoiceProps) {
  const id = useId()
  return (
    <div class="pick">
      <label for={id}>{label}</label>
      <select id={id} value={value} onChange={(e) => onChoose(e.currentTarget.value)}>
        {none && <option value="">{none}</option>}
        {sensors.map((s) => (
          <option key={s.key} value={s.key}>
            {nameOf(
              s,
              properties.find((p) => p.id === s.property),
            )}
          </option>
        ))}
      </select>
    </div>
  )
}

function OwnDays({ value, onChoose }: { value: [string, string]; onChoose: (v: [string, string]) => void }) {
  const id = useId()
  return (
    <div class="pick">
      <label for={`${id}-a`}>from</label>
      <input
        id={`${id}-a`}
        type="date"
        value={value[0]}
        max={value[1] || undefined}
        onChange={(e) => e.currentTarget.value && onChoose([e.currentTarget.value, value[1]])}
      />
      <label for={`${id}-b`}>to</label>
      <input
        id={`${id}-b`}
        type="date"
        value={value[1]}
        min={value[0] || undefined}
        onChange={(e) => e.currentTarget.value && onChoose([value[0], e.currentTarget.value])}
      />
    </div>
  )
}

/** A rule for long stays is one line; indoor humidity has a limit that follows the cold outside. */
function limitOf(came: ReadingSeries): SeriesLimit | undefined {
  const first = came.series[0]
  if (first?.persistence)
    return { value: first.persistence.limit, words: 'limit for long stays', past: first.persistence.past }
  if (!first || first.limits.every((l) => l.limit === null)) return undefined
  const by = first.limits.map((l) => [Date.parse(l.at), l.limit] as const)
  let i = 0
  const value = first.buckets.map((b) => {
    // outdoors is read more rarely: the last limit holds until the next one comes
    while (i + 1 < by.length && by[i + 1]![0] <= Date.parse(b.at)) i++
    return by[i]![0] <= Date.parse(b.at) ? by[i]![1] : null
  })
  return { value, words: 'limit, by outdoor cold', past: 'above' }
}

interface DrawnProps {
  house: string
  came: ReadingSeries
  property: Property
  zone: string
  closer: boolean
  onRange: (from: number, to: number) => void
  onAll: () => void
}

function Drawn({ house, came, property, zone, closer, onRange, onAll }: DrawnProps) {
  const lines = useMemo<Series[]>(
    () =>
      came.series.map((s, i) => ({
        name: i === 0 ? `${s.sensor.label}, mean` : s.sensor.label,
        time: s.buckets.map((b) => Date.parse(b.at) / 1000),
        mean: s.buckets.map((b) => b.mean),
        // one band is enough; two would hide each other
        ...(i === 0 ? { low: s.buckets.map((b) => b.min), high: s.buckets.map((b) => b.max) } : {}),
        main: i === 0,
      })),
    [came],
  )
  const rule = came.series[0]?.persistence
  const limit = useMemo(() => limitOf(came), [came])
  const ends = extremes(came)
  const buckets = came.series[0]?.buckets ?? []
  if (!ends || buckets.length === 0)
    return (
      <NothingYet>
        No reading in these days.{' '}
        {closer ? (
          <button type="button" class="plain" onClick={onAll}>
            Back to the whole span
          </button>
        ) : (
          'Choose a longer span.'
        )}
      </NothingYet>
    )
  return (
    <>
      <SeriesChart
        title={`${property.label} by time`}
        desc={`Lowest, mean and highest of each ${lengthWords(came.bucketS)}.`}
        quantity={`${property.label}, each ${lengthWords(came.bucketS)}`}
        unit={property.shown}
        series={lines}
        limit={limit}
        zone={zone}
        onRange={onRange}
      />
      <p class="acts no-print">
        {closer && (
          <button type="button" class="b" onClick={onAll}>
            Back to the whole span
          </button>
        )}
        <button type="button" class="b" onClick={() => saveCsv(house, came)}>
          Download as CSV
        </button>
      </p>
      {!closer && <p class="note no-print">Drag across the chart to look closer.</p>}
      {rule && (
        <div class="say persistence">
          <p>
            {rule.stayed.length === 0 ? (
              <Status is="stands">Nothing to do</Status>
            ) : (
              <Status is="look">Look</Status>
            )}
          </p>
          <p>{rule.sentence}</p>
          {rule.stayed.length > 0 && (
            <ul class="note">
              {rule.stayed.map((s) => (
                <li key={s.from}>
                  {timeWords(s.from, zone)} to {timeWords(s.to, zone)},{' '}
                  {print(s.peak, property.shown, system.value).text}{' '}
                  {print(s.peak, property.shown, system.value).symbol}
                </li>
              ))}
            </ul>
          )}
          <p class="note">{rule.source}</p>
        </div>
      )}
      <Facts>
        <Fact name="Lowest">
          <Quantity
            value={ends.low.min}
            unit={property.shown}
            from={`measured · ${whenWords(ends.low.at, came.bucketS, zone)}`}
          />
        </Fact>
        <Fact name="Highest">
          <Quantity
            value={ends.high.max}
            unit={property.shown}
            from={`measured · ${whenWords(ends.high.at, came.bucketS, zone)}`}
          />
        </Fact>
        <Fact name="Latest">
          <Quantity
            value={buckets.at(-1)?.mean}
            unit={property.shown}
            from={`measured · mean of ${whenWords(buckets.at(-1)?.at, came.bucketS, zone)}`}
          />
        </Fact>
      </Facts>
    </>
  )
}

/** A day where a bucket is a day or more, else the time at which it begins. */
function whenWords(at: string | undefined, bucketS: number, zone: string): string {
  if (bucketS < 3600) return timeWords(at, zone)
  if (bucketS < 86_400) return `the ${lengthWords(bucketS)} from ${timeWords(at, zone)}`
  return bucketS === 86_400 ? dayWords(at, zone) : `the ${lengthWords(bucketS)} from ${dayWords(at, zone)}`
}

function lengthWords(seconds: number): string {
  if (seconds >= 172_800) return `${seconds / 86_400} days`
  if (seconds === 86_400) return 'day'
  if (seconds > 3600) return `${seconds / 3600} hours`
  if (seconds === 3600) return 'hour'
  return seconds >= 120 ? `${seconds / 60} minutes` : seconds === 60 ? 'minute' : `${seconds} seconds`
}

/** What is drawn, as a file: SI, times in UTC. */
function saveCsv(house: string, came: ReadingSeries) {
  const rows = came.series.flatMap((s) =>
    s.buckets.map((b) => [s.sensor.key, b.at, b.count, b.min, b.mean, b.max, s.sensor.unit].join(',')),
  )
  const text = `sensor,at,count,min,mean,max,unit\n${rows.join('\n')}\n`
  const link = document.createElement('a')
  link.href = URL.createObjectURL(new Blob([text], { type: 'text/csv' }))
  link.download = `${house}-${came.series.map((s) => s.sensor.key).join('-')}-${came.from.slice(0, 10)}-${came.to.slice(0, 10)}.csv`
  link.click()
  setTimeout(() => URL.revokeObjectURL(link.href), 1000)
}

function Margin({ sensor, property, came }: { sensor?: Sensor; property?: Property; came?: ReadingSeries }) {
  if (!sensor) return <div class="margin" />
  const accuracy =
    sensor.accuracy !== null && property
      ? print(
          sensor.accuracy,
          {
            ...property.shown,
            si: { ...property.shown.si, offset: 0 },
            ip: { ...property.shown.ip, offset: 0 },
          },
          system.value,
        )
      : undefined
  return (
    <div class="margin">
      <p>
        <b>Sensor.</b> {[sensor.room, sensor.place].filter(Boolean).join(', ') || sensor.label}
        {accuracy && `, ±${accuracy.text}\u202f${accuracy.symbol}`}
        {sensor.sampleIntervalS !== null && `, read each ${lengthWords(sensor.sampleIntervalS)}`}.
      </p>
      {sensor.instrument && (
        <p>
          <b>Instrument.</b> {sensor.instrument}
        </p>
      )}
      {came && (
        <p>
          <b>Drawn.</b> Lowest, mean and highest of each {lengthWords(came.bucketS)}, computed by the portal;
          a short peak is never smoothed away.
        </p>
      )}
      {(came?.series[0]?.limits.length ?? 0) > 0 && came && (
        <p>
          <b>Limit.</b> From the house record: the most indoor humidity at each outdoor temperature, so that
          walls and windows stay dry; drawn at the mean outdoor temperature of each{' '}
          {lengthWords(came.bucketS)}. On warmer or colder days than the record speaks of, none is drawn.
        </p>
      )}
      <p>
        <b>Privacy.</b> Readings tell how people live. Every look is written down, and the owner sees who
        looked.
      </p>
    </div>
  )
}
