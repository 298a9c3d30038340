import type { Field } from '../form/field.ts'
import { digitsOfStep, figure, shownBy, toShown, type Unit } from '../units/quantity.ts'
import { system } from '../units/system.ts'

const NARROW = '\u202f'

/** "−25.0 °C" in the units of the day. */
export function words(value: number, unit: Unit, step = 0): string {
  const shown = shownBy(unit, system.value)
  return `${figure(toShown(value, shown), digitsOfStep(step, shown))}${NARROW}${shown.symbol}`.trim()
}

/** A difference of temperatures: the zero of the scale falls out. */
export function apart(value: number, unit: Unit, step = 0): string {
  const shown = { ...shownBy(unit, system.value), offset: 0 }
  return `${figure(toShown(value, shown), digitsOfStep(step, shown))}${NARROW}${shown.symbol}`.trim()
}

export const number = (value: number, unit: Unit, step = 0): string => {
  const shown = shownBy(unit, system.value)
  return figure(toShown(value, shown), digitsOfStep(step, shown))
}

/** A thickness, with as many digits as tell a membrane from nothing. */
export function thicknessText(m: number, unit: Unit): string {
  const shown = toShown(m, shownBy(unit, system.value))
  const usual = shownBy(unit, system.value).digits
  return figure(shown, shown > 0 && shown < 2 ? Math.max(usual, 1) : usual)
}

/** A value in the units of the day, for a place along an axis. */
export const shownAs = (value: number, unit: Unit): number => toShown(value, shownBy(unit, system.value))

export const symbol = (unit: Unit): string => shownBy(unit, system.value).symbol

/** The declared field by its path: `layers.thicknessM`. */
export function declared(fields: Field[], path: string): Field | undefined {
  let inner = fields
  let found: Field | undefined
  for (const name of path.split('.')) {
    found = inner.find((f) => f.name === name)
    if (!found) return undefined
    inner = found.fields
  }
  return found
}

/** Units of a path of a declaration; one that it does not name is a fault of ours. */
export function unitOf(fields: Field[], path: string): Unit {
  const unit = declared(fields, path)?.unit
  if (!unit) throw new Error(`no unit is declared for ${path}`)
  return unit
}
