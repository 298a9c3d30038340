import { useEffect, useId, useRef } from 'preact/hooks'
import type uPlot from 'uplot'
import 'uplot/dist/uPlot.min.css'
import { Wide } from '../parts/lists.tsx'
import { Waiting } from '../parts/Says.tsx'
import { figure, shownBy, toShown, type Unit } from '../units/quantity.ts'
import { system } from '../units/system.ts'
import { useWidth } from './Plot.tsx'

/** Readings of one sensor, drawn together by the portal: the lowest, mean and highest of each span of time. */
export interface Series {
  name: string
  /** Seconds since 1970, UTC, rising. */
  time: number[]
  mean: (number | null)[]
  low?: (number | null)[]
  high?: (number | null)[]
  /** The one series that the page is about is carmine. */
  main?: boolean
}

export interface SeriesLimit {
  /** One value, or a value for each time of the first series. */
  value: number | (number | null)[]
  words: string
  past: 'above' | 'below'
}

interface SeriesChartProps {
  title: string
  /** The finding in words. */
  desc: string
  /** What is measured, for the axis: "relative humidity indoors". */
  quantity: string
  unit: Unit
  series: Series[]
  limit?: SeriesLimit
  /** Time zone of the house. */
  zone: string
  height?: number
  /** Somebody looks closer, or at everything again: ask the portal for the readings between (seconds). */
  onRange?: (from: number, to: number) => void
}

const COLOURS = ['--draw', '--draw-2']

/** Readings over time: drag to look closer, double press for everything; prints as a picture. */
export function SeriesChart(props: SeriesChartProps) {
  const { title, desc, quantity, unit, series, limit, zone, height = 320, onRange } = props
  const { ref, width } = useWidth<HTMLDivElement>(720)
  const box = useRef<HTMLDivElement>(null)
  const chart = useRef<uPlot | undefined>(undefined)
  const asked = useRef(onRange)
  asked.current = onRange
  const id = useId()
  const units = system.value
  const shown = shownBy(unit, units)

  // biome-ignore lint/correctness/useExhaustiveDependencies: drawn anew when what is drawn changes, not when its texts do
  useEffect(() => {
    let gone = false
    let paper: (() => void) | undefined
    void import('uplot').then(({ default: Plot }) => {
      if (gone || !box.current) return
      const { data, lines, bands, limitAt } = columns(Plot, series, limit, (v) => toShown(v, shown))
      const axis = {
        stroke: () => resolve(box.current!, '--ink-2'),
        grid: { stroke: () => resolve(box.current!, '--rule'), width: 1 },
        ticks: { stroke: () => resolve(box.current!, '--rule') },
        font: '13px system-ui, sans-serif',
      }
      let last: [number, number] | undefined
      chart.current?.destroy()
      chart.current = new Plot(
        {
          width,
          height,
          tzDate: (ts) => Plot.tzDate(new Date(ts * 1000), zone),
          legend: { show: false },
          cursor: { drag: { x: true, y: false } },
          scales: { x: { time: true } },
          axes: [
            {
              ...axis,
              space: 70,
              values: (_, ticks, __, ___, step) => {
                const words = dayWords(step, zone)
                return ticks.map((t) => words.format(t * 1000))
              },
            },
            {
              ...axis,
              size: 56,
              values: (_, ticks) => ticks.map((t) => figure(t, digitsOf(ticks))),
            },
          ],
          series: [
            {},
            ...lines.map((line) => ({
              label: line.name,
              stroke: () => resolve(box.current!, line.colour),
              width: line.width,
              dash: line.dash,
              points: { show: false },
              spanGaps: false,
            })),
          ],
          bands: bands.map((b) => ({ series: b, fill: () => `${resolve(box.current!, '--draw-2')}55` })),
          hooks: {
            draw: [(u) => hatch(u, limit, limitAt, resolve(box.current!, '--draw-2'))],
            setScale: [
              (u, key) => {
                const { min, max } = u.scales.x!
                if (key !== 'x' || min == null || max == null) return
                if (last && (last[0] !== min || last[1] !== max)) asked.current?.(min, max)
                last = [min, max]
              },
            ],
          },
        },
        data,
        box.current,
      )
      paper = forPaper(box.current, title)
    })
    return () => {
      gone = true
      paper?.()
      chart.current?.destroy()
      chart.current = undefined
    }
  }, [series, limit, units, zone, width, height])

  if (series.length === 0) return <Waiting what="Reading the readings." />
  return (
    <figure class="drawing series">
      <p class="note" id={`${id}-q`}>
        {quantity}
        {shown.symbol && `, ${shown.symbol}`}
      </p>
      <div ref={ref}>
        <div ref={box} role="img" aria-label={`${title}. ${desc}`} class="series-box" />
      </div>
      <p class="series-names">
        {series.map((s, i) => (
          <span key={s.name} class={s.main ? 'is-main' : i === 0 ? 'is-first' : 'is-other'}>
            {s.name}
          </span>
        ))}
        {limit && <span class="is-limit">{limit.words}</span>}
        {series.some((s) => s.low) && <span class="is-band">tone: lowest to highest</span>}
      </p>
      <details class="open-up no-print">
        <summary>
          <span>Show as a table</span>
        </summary>
        <div class="inside">
          <SeriesTable series={series} unit={unit} zone={zone} />
        </div>
      </details>
    </figure>
  )
}

interface Line {
  name: string
  colour: string
  width: number
  dash?: number[]
}

/** One column of times for all, each series on it; a low and a high column where there is a band. */
function columns(
  Plot: typeof uPlot,
  series: Series[],
  limit: SeriesLimit | undefined,
  show: (v: number) => number,
): { data: uPlot.AlignedData; lines: Line[]; bands: [number, number][]; limitAt: number | undefined } {
  const tables: uPlot.AlignedData[] = []
  const lines: Line[] = []
  const bands: [number, number][] = []
  const take = (values: (number | null)[]) =>
    values.map((v) => (v === null || Number.isNaN(v) ? null : show(v)))
  series.forEach((s, i) => {
    const own: (number | null)[][] = [take(s.mean)]
    lines.push({
      name: s.name,
      colour: s.main ? '--carmine' : (COLOURS[i % 2] ?? '--draw'),
      width: s.main ? 2 : 1.5,
      dash: s.main || i === 0 ? undefined : [7, 5],
    })
    if (s.low && s.high) {
      own.push(take(s.high), take(s.low))
      lines.push({ name: `${s.name}, highest`, colour: '--draw-2', width: 0 })
      lines.push({ name: `${s.name}, lowest`, colour: '--draw-2', width: 0 })
      bands.push([lines.length - 1, lines.length])
    }
    tables.push([s.time, ...own] as uPlot.AlignedData)
  })
  let limitAt: number | undefined
  if (limit && series[0]) {
    const values = Array.isArray(limit.value)
      ? take(limit.value)
      : series[0].time.map(() => show(limit.value as number))
    tables.push([series[0].time, values])
    lines.push({ name: limit.words, colour: '--draw', width: 2 })
    limitAt = lines.length
  }
  return { data: tables.length > 1 ? Plot.join(tables) : tables[0]!, lines, bands, limitAt }
}

/** Days by name of the month, so that nobody mistakes 5/6; hours where the ticks are closer than a day. */
function dayWords(step: number, zone: string): Intl.DateTimeFormat {
  const by: Intl.DateTimeFormatOptions =
    step >= 28 * 86_400
      ? { month: 'short', year: 'numeric' }
      : step >= 86_400
        ? { day: 'numeric', month: 'short' }
        : { day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit' }
  return new Intl.DateTimeFormat('en-GB', { ...by, timeZone: zone })
}

function digitsOf(ticks: number[]): number {
  const step = ticks.length > 1 ? Math.abs(ticks[1]! - ticks[0]!) : 1
  return Math.min(4, Math.max(0, Math.ceil(-Math.log10(step || 1) - 1e-9)))
}

/** The value of a colour token where the element stands, as canvas understands it. */
function resolve(element: HTMLElement, token: string): string {
  const probe = document.createElement('i')
  probe.style.color = `var(${token})`
  element.append(probe)
  const [r = 0, g = 0, b = 0] = (getComputedStyle(probe).color.match(/[\d.]+/g) ?? []).map(Number)
  probe.remove()
  return `#${[r, g, b].map((v) => Math.round(v).toString(16).padStart(2, '0')).join('')}`
}

/** Ground past the limit, hatched as everywhere: a strip along the line on its wrong side. */
function hatch(u: uPlot, limit: SeriesLimit | undefined, at: number | undefined, ink: string) {
  if (!limit || at === undefined) return
  const values = u.data[at]!
  const times = u.data[0]
  const ratio = devicePixelRatio
  const strip = 9 * ratio * (limit.past === 'above' ? -1 : 1)
  const { ctx } = u
  ctx.save()
  ctx.beginPath()
  let back: [number, number][] = []
  // where no limit is known the strip ends, and begins anew after the gap
  const close = () => {
    for (const [x, y] of back.reverse()) ctx.lineTo(x, y)
    if (back.length > 0) ctx.closePath()
    back = []
  }
  for (let i = 0; i < times.length; i++) {
    const v = values[i]
    // a time that only another series has
    if (v === undefined) continue
    if (v === null) {
      close()
      continue
    }
    const x = u.valToPos(times[i]!, 'x', true)
    const y = u.valToPos(v, 'y', true)
    if (back.length > 0) ctx.lineTo(x, y)
    else ctx.moveTo(x, y)
    back.push([x, y + strip])
  }
  close()
  ctx.clip()
  ctx.strokeStyle = ink
  ctx.lineWidth = ratio
  const { left, top, width, height } = u.bbox
  ctx.beginPath()
  for (let x = left - height; x < left + width; x += 7 * ratio) {
    ctx.moveTo(x, top + height)
    ctx.lineTo(x + height, top)
  }
  ctx.stroke()
  ctx.restore()
}

/** On paper the canvas is replaced by a picture of itself. */
function forPaper(box: HTMLElement, title: string): () => void {
  const picture = document.createElement('img')
  picture.className = 'on-paper'
  picture.alt = title
  const before = () => {
    const canvas = box.querySelector('canvas')
    if (!canvas) return
    picture.src = canvas.toDataURL('image/png')
    box.append(picture)
  }
  const after = () => picture.remove()
  addEventListener('beforeprint', before)
  addEventListener('afterprint', after)
  return () => {
    removeEventListener('beforeprint', before)
    removeEventListener('afterprint', after)
    picture.remove()
  }
}

/** At most so many rows of a table are drawn at once. */
const TABLE_ROWS = 400

function SeriesTable({ series, unit, zone }: { series: Series[]; unit: Unit; zone: string }) {
  const shown = shownBy(unit, system.value)
  const when = new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium', timeStyle: 'short', timeZone: zone })
  const text = (v: number | null | undefined) =>
    v === null || v === undefined ? '–' : figure(toShown(v, shown), shown.digits)
  return (
    <>
      {series.map((s) => (
        <Wide key={s.name} label={s.name}>
          <table class="t">
            <caption>
              {s.name}
              {s.time.length > TABLE_ROWS && `, the first ${TABLE_ROWS} of ${s.time.length}`}
            </caption>
            <thead>
              <tr>
                <th scope="col">time at the house</th>
                {s.low && (
                  <th scope="col" class="n">
                    lowest<span class="sub">{shown.symbol}</span>
                  </th>
                )}
                <th scope="col" class="n">
                  mean<span class="sub">{shown.symbol}</span>
                </th>
                {s.high && (
                  <th scope="col" class="n">
                    highest<span class="sub">{shown.symbol}</span>
                  </th>
                )}
              </tr>
            </thead>
            <tbody>
              {s.time.slice(0, TABLE_ROWS).map((t, i) => (
                <tr key={t}>
                  <td>{when.format(t * 1000)}</td>
                  {s.low && <td class="n">{text(s.low[i])}</td>}
                  <td class="n">{text(s.mean[i])}</td>
                  {s.high && <td class="n">{text(s.high[i])}</td>}
                </tr>
              ))}
            </tbody>
          </table>
        </Wide>
      ))}
    </>
  )
}
