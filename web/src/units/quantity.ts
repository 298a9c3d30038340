import type { System } from './system.ts'

/** How one system shows a quantity: shown = value * factor + offset. */
export interface Shown {
  symbol: string
  factor: number
  offset: number
  digits: number
}

/** A unit as a declaration gives it: values are in the SI unit that the field's name ends in. */
export interface Unit {
  /** Its name in the portal, where it came from there. */
  id?: string
  ucum: string
  si: Shown
  ip: Shown
}

const MINUS = '\u2212'
const NARROW = '\u202f'

export const shownBy = (unit: Unit, system: System): Shown => (system === 'SI' ? unit.si : unit.ip)

/** A value in the unit in which it is shown. */
export const toShown = (value: number, shown: Shown): number => value * shown.factor + shown.offset

/** A shown number back in the unit in which it is kept. */
export const fromShown = (shownValue: number, shown: Shown): number =>
  (shownValue - shown.offset) / shown.factor

/** Rounds away what only the change of units brought in: 20 °F is kept as −6.666666667 °C. */
export function tidy(value: number): number {
  return Number(value.toPrecision(12))
}

/** A number with a real minus and narrow spaces between thousands. */
export function figure(value: number, digits: number): string {
  if (!Number.isFinite(value)) return '–'
  const text = Math.abs(value).toFixed(Math.max(0, digits))
  const [whole = '0', part] = text.split('.')
  const grouped = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, NARROW) : whole
  const zero = !/[1-9]/.test(text)
  return (value < 0 && !zero ? MINUS : '') + grouped + (part ? `.${part}` : '')
}

/**
 * The digits after the point that a printed step asks for in a shown unit: 0.1 gives 1, 10 gives 0. A step that was
 * declared for another unit never asks for more digits than this one usually has.
 */
export function digitsOfStep(step: number, shown: Shown): number {
  if (!(step > 0)) return shown.digits
  const shownStep = Math.abs(step * shown.factor)
  const asked = Math.min(6, Math.max(0, Math.ceil(-Math.log10(shownStep) - 1e-9)))
  return shown.factor === 1 ? asked : Math.min(asked, shown.digits)
}

export interface Printed {
  text: string
  symbol: string
}

/** A value with its symbol in one system; a declared step sets the digits, else the unit does. */
export function print(value: number, unit: Unit, system: System, step = 0): Printed {
  const shown = shownBy(unit, system)
  return { text: figure(toShown(value, shown), digitsOfStep(step, shown)), symbol: shown.symbol }
}

/** The text with which a field begins. The value behind it stays as it is until somebody types. */
export function editable(value: number, unit: Unit, system: System): string {
  const shown = toShown(value, shownBy(unit, system))
  const rounded = Number(shown.toPrecision(5))
  return String(rounded).includes('e') ? plain(rounded) : String(rounded).replace('-', MINUS)
}

function plain(value: number): string {
  const text = value.toFixed(12).replace(/0+$/, '').replace(/\.$/, '')
  return text.replace('-', MINUS)
}

/**
 * Whether a text says one number here and a thousand times that elsewhere: "1,200" is twelve hundred to one reader and
 * one and a fifth to another.
 */
export function ambiguous(text: string): boolean {
  return /^[+-]?[1-9]\d{0,2},\d{3}$/.test(bare(text))
}

const bare = (text: string) => text.replace(/[\s\u00a0\u202f\u2009']/g, '').replace(/[\u2212\u2013]/g, '-')

/**
 * Reads a number as people type it: decimal point or comma, spaces between thousands, any minus sign. A text with both
 * a comma and a point takes the last of them as the decimal mark. NaN where it is no number, or could be two.
 */
export function parseNumber(text: string): number {
  if (ambiguous(text)) return Number.NaN
  const typed = bare(text)
  const comma = typed.lastIndexOf(',')
  const point = typed.lastIndexOf('.')
  let plainText = typed
  if (comma >= 0 && point >= 0) {
    const thousands = comma > point ? '.' : ','
    plainText = typed.split(thousands).join('').replace(',', '.')
  } else if (comma >= 0) {
    if (typed.indexOf(',') !== comma) return Number.NaN
    plainText = typed.replace(',', '.')
  }
  return /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(plainText) ? Number(plainText) : Number.NaN
}
