import type { ComponentChildren } from 'preact'
import { useId, useLayoutEffect, useRef, useState } from 'preact/hooks'
import { tickText } from '../parts/Scale.tsx'
import { type Axis, linear, logarithmic, root } from './axis.ts'

/** The width in which something stands, followed as it changes. */
export function useWidth<E extends Element>(fallback: number) {
  const ref = useRef<E>(null)
  const [width, setWidth] = useState(fallback)
  useLayoutEffect(() => {
    const element = ref.current
    if (!element || typeof ResizeObserver === 'undefined') return
    const observer = new ResizeObserver(([entry]) => {
      const w = Math.floor(entry?.contentRect.width ?? 0)
      if (w > 0) setWidth(w)
    })
    observer.observe(element)
    return () => observer.disconnect()
  }, [])
  return { ref, width }
}

export interface AxisOf {
  kind: 'linear' | 'logarithmic' | 'root'
  low: number
  high: number
  /** Title with its unit: "house pressure below outdoors, Pa (root scale)". */
  words: string
  ticks?: number[]
}

/** Where a plot puts things. */
export interface Place {
  x: Axis
  y: Axis
  left: number
  right: number
  top: number
  bottom: number
  width: number
  /** Little room: words shorter, marks closer. */
  narrow: boolean
}

interface PlotProps {
  title: string
  /** The finding in words, for readers. */
  desc: string
  x: AxisOf
  y: AxisOf
  height?: number
  /** Room on the right for names at the ends of lines. */
  endRoom?: number
  children: (place: Place) => ComponentChildren
  /** The same numbers as a table. */
  table?: ComponentChildren
  caption?: ComponentChildren
}

const make = (of: AxisOf, a: number, b: number, most: number): Axis =>
  of.kind === 'linear'
    ? linear(of.low, of.high, a, b, most)
    : of.kind === 'logarithmic'
      ? logarithmic(of.low, of.high, a, b)
      : root(of.high, a, b)

/** A plot drawn at its real width, so that its words keep their size on a phone; it prints as lines. */
export function Plot({ title, desc, x, y, height = 380, endRoom = 0, children, table, caption }: PlotProps) {
  const { ref, width } = useWidth<HTMLDivElement>(720)
  const id = useId()
  const narrow = width < 520
  const left = 52
  const right = width - (narrow ? Math.min(endRoom, 84) : endRoom) - 12
  const top = 28
  const bottom = height - 46
  const xs = make(x, left, right, narrow ? 5 : 8)
  const ys = make(y, bottom, top, 7)
  const place: Place = { x: xs, y: ys, left, right, top, bottom, width, narrow }
  const xTicks = spread(
    (x.ticks ?? xs.ticks).filter((t) => t >= x.low && t <= x.high),
    (v) => xs.at(v),
    narrow ? 34 : 44,
  )
  const yTicks = spread(y.ticks ?? ys.ticks, (v) => ys.at(v), 18)
  return (
    <figure class="drawing plot">
      <div ref={ref}>
        <svg
          viewBox={`0 0 ${width} ${height}`}
          width={width}
          height={height}
          role="img"
          aria-labelledby={`${id}-t ${id}-d`}
        >
          <title id={`${id}-t`}>{title}</title>
          <desc id={`${id}-d`}>{desc}</desc>
          {yTicks.map((t) => (
            <g key={t}>
              <path class="grid" d={`M${left} ${ys.at(t)}H${right}`} />
              <text class="t2" font-size="13" x={left - 8} y={ys.at(t) + 4.5} text-anchor="end">
                {tickText(t)}
              </text>
            </g>
          ))}
          {xTicks.map((t) => (
            <g key={t}>
              <path class="axis" d={`M${xs.at(t)} ${bottom}v6`} />
              <text class="t2" font-size="13" x={xs.at(t)} y={bottom + 21} text-anchor="middle">
                {tickText(t)}
              </text>
            </g>
          ))}
          {children(place)}
          <path class="axis" d={`M${left} ${top}V${bottom}H${right}`} />
          <text class="t2" font-size="13" x="0" y="14">
            {y.words}
          </text>
          <text class="t2" font-size="13" x={right} y={height - 4} text-anchor="end">
            {x.words}
          </text>
        </svg>
      </div>
      {caption && <figcaption>{caption}</figcaption>}
      {table && (
        <details class="open-up no-print">
          <summary>
            <span>Show as a table</span>
          </summary>
          <div class="inside">{table}</div>
        </details>
      )}
    </figure>
  )
}

/** Ticks that stand far enough apart to be read; the first one always stays. */
export function spread(ticks: number[], at: (v: number) => number, apart: number): number[] {
  let last = Number.NEGATIVE_INFINITY
  return [...ticks]
    .sort((a, b) => a - b)
    .filter((t) => {
      const p = at(t)
      if (Math.abs(p - last) < apart) return false
      last = p
      return true
    })
}

/** Moves words that stand at the ends of lines apart, keeping their order. */
export function apart(places: number[], least: number): number[] {
  const order = places.map((p, i) => ({ p, i })).sort((a, b) => a.p - b.p)
  const out = [...places]
  let last = Number.NEGATIVE_INFINITY
  for (const { p, i } of order) {
    const y = Math.max(p, last + least)
    out[i] = y
    last = y
  }
  return out
}
