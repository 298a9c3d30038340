import { signal } from '@preact/signals'
import type { Problem } from '../api/problem.ts'
import {
  ambiguous,
  editable,
  figure,
  fromShown,
  parseNumber,
  shownBy,
  tidy,
  toShown,
} from '../units/quantity.ts'
import { type System, system } from '../units/system.ts'
import { at, type Field, type Path, pathOf, pointer, type Row, type Value, withValue } from './field.ts'

/** What stands in a number's box, and in which units it was typed. */
interface Typed {
  text: string
  system: System
}

/** A record being filled in: its values in SI, the texts as typed, and what is refused. Nothing typed is ever lost. */
export class Form {
  readonly fields: Field[]
  readonly value = signal<Row>({})
  readonly typed = signal<Record<string, Typed>>({})
  /** Sentences by pointer; the empty pointer is about the whole. */
  readonly errors = signal<Record<string, string>>({})
  /** Whether anything was changed since it was filled. */
  readonly touched = signal(false)

  constructor(fields: Field[], initial: Row = {}) {
    this.fields = fields
    this.fill(initial)
    this.touched.value = false
  }

  /** Puts a whole record in, for example a published example. */
  fill(record: Row) {
    this.value.value = withLeastRows(this.fields, record)
    this.typed.value = {}
    this.errors.value = {}
    this.touched.value = true
  }

  get(path: Path): Value {
    return at(this.value.value, path)
  }

  set(path: Path, value: Value) {
    this.value.value = withValue(this.value.value, path, value)
    this.clear(pointer(path))
    this.touched.value = true
  }

  error(path: Path): string | undefined {
    return this.errors.value[pointer(path)]
  }

  private clear(key: string) {
    if (this.errors.value[key] === undefined) return
    const rest = { ...this.errors.value }
    delete rest[key]
    this.errors.value = rest
  }

  /** What stands in the box of a number. */
  text(path: Path, field: Field): string {
    const typed = this.typed.value[pointer(path)]
    if (typed && typed.system === system.value) return typed.text
    const value = this.get(path)
    if (Array.isArray(value))
      return (value as number[]).map((v) => editable(v, field.unit!, system.value)).join('; ')
    if (typeof value !== 'number') return typed?.text ?? ''
    return field.kind === 'INTEGER' && !field.unit
      ? String(value)
      : editable(value, field.unit!, system.value)
  }

  /** Takes what is typed into the box of a number; a text that is no number stays and is said to be none. */
  type(path: Path, field: Field, text: string) {
    const key = pointer(path)
    this.typed.value = { ...this.typed.value, [key]: { text, system: system.value } }
    const shown = shownBy(field.unit!, system.value)
    if (field.kind === 'NUMBERS') {
      const parts = text.split(/[;\s]+/).filter(Boolean)
      const values = parts.map((p) => fromShown(parseNumber(p), shown))
      this.set(path, values.some(Number.isNaN) ? undefined : values)
      return
    }
    const value = parseNumber(text)
    this.set(path, Number.isNaN(value) ? undefined : tidy(fromShown(value, shown)))
  }

  addRow(path: Path, row: Row = {}) {
    const rows = (this.get(path) as Row[] | undefined) ?? []
    this.set(path, [...rows, row])
  }

  removeRow(path: Path, index: number) {
    this.reorder(path, (order) => order.filter((i) => i !== index))
  }

  /** Puts a row before the one at an index. */
  insertRow(path: Path, index: number, row: Row = {}) {
    this.reorder(path, (order) => [...order.slice(0, index), row, ...order.slice(index)])
  }

  /** Takes a row to the place of another; those between move up. */
  moveRow(path: Path, from: number, to: number) {
    this.reorder(path, (order) => {
      if (to < 0 || to >= order.length) return order
      const others = order.filter((i) => i !== from)
      return [...others.slice(0, to), from, ...others.slice(to)]
    })
  }

  /**
   * Rows in another order: the numbers of those that stay, and rows that are new. What was typed into a row, and what is
   * refused of it, goes with the row.
   */
  private reorder(path: Path, change: (order: number[]) => (number | Row)[]) {
    const rows = (this.get(path) as Row[] | undefined) ?? []
    const next = change(rows.map((_, i) => i))
    const list = pointer(path)
    const moved = <T>(all: Record<string, T>) =>
      Object.fromEntries(
        Object.entries(all).flatMap(([key, said]) => {
          const inRow = key.startsWith(`${list}[`) ? /^\[(\d+)\](.*)$/.exec(key.slice(list.length)) : null
          if (!inRow) return [[key, said]]
          const at = next.indexOf(Number(inRow[1]))
          return at < 0 ? [] : [[`${list}[${at}]${inRow[2]}`, said]]
        }),
      ) as Record<string, T>
    const [typed, errors] = [moved(this.typed.value), moved(this.errors.value)]
    this.set(
      path,
      next.map((row) => (typeof row === 'number' ? rows[row]! : row)),
    )
    this.typed.value = typed
    this.errors.value = errors
  }

  /**
   * The record as far as it is complete. Names what is missing, unreadable or outside its limits beside the fields, and
   * then answers undefined. The portal checks everything again.
   */
  read(): Row | undefined {
    const errors: Record<string, string> = {}
    this.check(this.fields, [], errors)
    this.errors.value = errors
    return Object.keys(errors).length === 0 ? this.value.value : undefined
  }

  private check(fields: Field[], path: Path, errors: Record<string, string>) {
    for (const field of fields) {
      const here = [...path, field.name]
      const value = this.get(here)
      const key = pointer(here)
      if (field.kind === 'GROUP') {
        if (value !== undefined || !field.optional) this.check(field.fields, here, errors)
      } else if (field.kind === 'ROWS') {
        const rows = (value as Row[] | undefined) ?? []
        if (rows.length < field.minRows) errors[key] = `At least ${field.minRows}; there are ${rows.length}.`
        rows.forEach((_, i) => {
          this.check(field.fields, [...here, i], errors)
        })
      } else {
        const typed = this.typed.value[key]?.text.trim()
        const said =
          value === undefined
            ? typed
              ? notRead(typed)
              : field.optional
                ? undefined
                : 'This is needed.'
            : limitsSay(field, value)
        if (said) errors[key] = said
      }
    }
  }

  /** Takes a refusal of the portal to the fields it names; what names none stands over the whole. */
  refuse(problem: Problem) {
    const errors: Record<string, string> = {}
    for (const f of problem.fields) {
      const path = pathOf(f.field, this.value.value)
      const known = this.fieldAt(path)
      errors[known ? pointer(path) : ''] = (known && rangeSays(known, f.value)) || f.detail
    }
    if (problem.fields.length === 0) errors[''] = problem.message
    this.errors.value = errors
  }

  private fieldAt(path: Path): Field | undefined {
    let fields: Field[] = this.fields
    let found: Field | undefined
    for (const step of path) {
      if (typeof step === 'number') continue
      found = fields.find((f) => f.name === step)
      if (!found) return undefined
      fields = found.fields
    }
    return found
  }
}

function notRead(text: string): string {
  return ambiguous(text)
    ? `“${text}” could be ${text.replace(',', '')} or ${text.replace(',', '.')}; write one of them.`
    : `“${text}” is no number.`
}

function withLeastRows(fields: Field[], record: Row): Row {
  const filled: Row = { ...record }
  for (const field of fields) {
    const value = filled[field.name]
    if (field.kind === 'ROWS') {
      const rows = (value as Row[] | undefined) ?? []
      const lacking = Math.max(0, field.minRows - rows.length)
      filled[field.name] = [...rows, ...Array.from({ length: lacking }, () => ({}))]
    } else if (field.kind === 'GROUP' && (value !== undefined || !field.optional)) {
      filled[field.name] = withLeastRows(field.fields, (value as Row | undefined) ?? {})
    }
  }
  return filled
}

/** "0.50 to 1.00" in the units of the day; empty where there is no limit. */
export function rangeText(field: Field, min = field.min, max = field.max): string {
  if (!field.unit || (min == null && max == null)) return ''
  const shown = shownBy(field.unit, system.value)
  const text = (v: number) => {
    const s = toShown(v, shown)
    const digits = Math.min(6, Math.max(0, 2 - Math.floor(Math.log10(Math.abs(s) || 1))))
    return figure(s, digits)
      .replace(/(\.\d*?)0+$/, '$1')
      .replace(/\.$/, '')
  }
  const unit = shown.symbol && shown.symbol !== '1' ? `\u202f${shown.symbol}` : ''
  if (min == null) return `at most ${text(max as number)}${unit}`
  if (max == null) return `${field.minExclusive ? 'above' : 'at least'} ${text(min)}${unit}`
  return `${field.minExclusive ? 'above ' : ''}${text(min)} to ${text(max)}${unit}`
}

/** The sentence of a broken limit, or nothing. */
function limitsSay(field: Field, value: Value): string | undefined {
  const values = Array.isArray(value) ? (value as number[]) : [value]
  for (const v of values) {
    const said = rangeSays(field, v)
    if (said) return said
  }
  if (
    field.kind === 'TEXT' &&
    typeof value === 'string' &&
    field.maxLength > 0 &&
    value.length > field.maxLength
  ) {
    return `At most ${field.maxLength} letters; these are ${value.length}.`
  }
  return undefined
}

function rangeSays(field: Field, value: unknown): string | undefined {
  const v = typeof value === 'string' && value.trim() !== '' ? Number(value) : value
  if (typeof v !== 'number' || !Number.isFinite(v) || !field.unit) return undefined
  const shown = shownBy(field.unit, system.value)
  const unit = shown.symbol ? `\u202f${shown.symbol}` : ''
  if (field.kind === 'INTEGER' && !Number.isInteger(v)) return `${figure(v, 2)} is no whole number.`
  const text = (x: number) =>
    figure(toShown(x, shown), 6)
      .replace(/(\.\d*?)0+$/, '$1')
      .replace(/\.$/, '') + unit
  if (field.max != null && v > field.max) return `${text(v)} is above ${text(field.max)}.`
  if (field.min != null && (v < field.min || (field.minExclusive && v === field.min))) {
    return `${text(v)} is ${field.minExclusive ? 'not above' : 'below'} ${text(field.min)}.`
  }
  return undefined
}
