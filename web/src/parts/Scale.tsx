import { linear, roundUp } from '../chart/axis.ts'
import { figure, print, shownBy, toShown, type Unit } from '../units/quantity.ts'
import { system } from '../units/system.ts'

interface ScaleProps {
  /** What is shown, for readers: "House pressure". */
  label: string
  unit: Unit
  before?: number | null
  now?: number | null
  limit?: number | null
  /** One word before the limit's figure: limit, wanted, on order, circuit. */
  limitWord?: string
  /** The side where one must not be. */
  past?: 'above' | 'below'
  /** Ends of the scale, in the unit in which values are kept; chosen by itself where left out. */
  min?: number
  max?: number
}

const LEFT = 18
const RIGHT = 402

/** A small ruled scale: open mark before, carmine mark now, the limit with ground hatched past it. */
export function Scale({
  label,
  unit,
  before,
  now,
  limit,
  limitWord = 'limit',
  past = 'above',
  min,
  max,
}: ScaleProps) {
  const shown = shownBy(unit, system.value)
  const here = (v: number | null | undefined) => (typeof v === 'number' ? toShown(v, shown) : undefined)
  const [b, n, l] = [here(before), here(now), here(limit)]
  const known = [b, n, l].filter((v): v is number => v !== undefined && Number.isFinite(v))
  if (known.length === 0) return null
  const least = here(min) ?? Math.min(0, ...known)
  const low = least < 0 ? -roundUp(-least) : least
  const high = here(max) ?? (Math.max(...known) <= low ? low + 1 : roundUp(Math.max(...known)))
  const axis = linear(low, high, LEFT, RIGHT)
  const at = (v: number) => Math.min(RIGHT, Math.max(LEFT, axis.at(v)))
  const limitX = l === undefined ? undefined : at(l)
  const words = [
    b !== undefined && n !== undefined
      ? `from ${say(before!, unit)} to ${say(now!, unit)}`
      : n !== undefined
        ? say(now!, unit)
        : b !== undefined
          ? say(before!, unit)
          : '',
    l !== undefined ? `${limitWord} ${say(limit!, unit)}` : '',
  ]
  return (
    <svg
      class="scale"
      viewBox="0 0 420 56"
      role="img"
      aria-label={`${label}: ${words.filter(Boolean).join(', ')}`}
    >
      {limitX !== undefined && (
        <>
          <rect
            class="past"
            x={past === 'above' ? limitX : LEFT}
            y="23"
            width={Math.max(0, past === 'above' ? RIGHT - limitX : limitX - LEFT)}
            height="9"
            fill="url(#k-lim)"
          />
          <path class="axis" stroke-width="2" d={`M${limitX} 18v19`} />
          <text
            class="t2"
            font-size="14"
            x={Math.min(Math.max(limitX, LEFT + 34), RIGHT - 34)}
            y="14"
            text-anchor="middle"
          >
            {limitWord} {tickText(l!)}
          </text>
        </>
      )}
      <path class="axis" d={`M${LEFT} 32H${RIGHT}`} />
      {axis.ticks.map((t) => (
        <g key={t}>
          <path class="axis" d={`M${axis.at(t)} 32v5`} />
          <text class="t2" font-size="15" x={axis.at(t)} y="53" text-anchor="middle">
            {tickText(t)}
          </text>
        </g>
      ))}
      {b !== undefined && n !== undefined && (
        <path class="red" stroke-width="2" d={`M${at(b)} 27H${at(n)}`} />
      )}
      {b !== undefined && <path class="o open-mark" stroke-width="1.6" d={`M${at(b)} 31l-4.5 -8h9z`} />}
      {n !== undefined && <path class="redf" d={`M${at(n)} 31l-5 -9h10z`} />}
    </svg>
  )
}

/** A tick as short as it can be. */
export function tickText(v: number): string {
  const digits = Math.min(4, Math.max(0, (String(Number(v.toPrecision(6))).split('.')[1] ?? '').length))
  return figure(v, digits)
}

function say(value: number, unit: Unit): string {
  const { text, symbol } = print(value, unit, system.value)
  return `${text} ${symbol}`.trim()
}
