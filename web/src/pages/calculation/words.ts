import type { Field, Row } from '../../form/field.ts'
import { editable, print } from '../../units/quantity.ts'
import { system } from '../../units/system.ts'
import type { Declaration } from './types.ts'

const HARD = '\u202f'

/** The declared field of a result, however deep: "depressurised.airflow50M3PerS". */
export function outputField(declaration: Declaration, name: string): Field {
  return fieldIn(declaration.outputs, name)
}

export const inputField = (declaration: Declaration, name: string): Field => fieldIn(declaration.inputs, name)

function fieldIn(fields: Field[], name: string): Field {
  let inner = fields
  let found: Field | undefined
  for (const step of name.split('.')) {
    found = inner.find((f) => f.name === step)
    if (!found) throw new Error(`the declaration has no field ${name}`)
    inner = found.fields
  }
  return found!
}

/** "83.5 Pa" in the units of the day, with a space that does not break. */
export function say(field: Field, value: unknown): string {
  if (typeof value !== 'number' || !field.unit) return '–'
  const { text, symbol } = print(value, field.unit, system.value, field.step)
  return symbol ? `${text}${HARD}${symbol}` : text
}

/** A limit or a typed value as somebody would say it: "5 Pa", without digits that mean nothing. */
export function saySet(field: Field, value: unknown): string {
  if (typeof value !== 'number' || !field.unit) return '–'
  const symbol = unitWord(field)
  const text = editable(value, field.unit, system.value)
  return symbol ? `${text}${HARD}${symbol}` : text
}

/** Only the figure. */
export function sayFigure(field: Field, value: unknown): string {
  return typeof value === 'number' && field.unit
    ? print(value, field.unit, system.value, field.step).text
    : '–'
}

/** Only the unit. */
export const unitWord = (field: Field): string =>
  field.unit ? print(0, field.unit, system.value, field.step).symbol : ''

export const numberOf = (row: Row, name: string): number | undefined => {
  const value = row[name]
  return typeof value === 'number' ? value : undefined
}
