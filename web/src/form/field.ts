import type { FieldJson } from '../api/schema.d.ts'

/** One declared field of a calculation or of a part of the record, as the portal gives it. */
export type Field = FieldJson

export type Leaf = number | string | boolean | number[]
export type Value = Leaf | Row | Row[] | undefined
/** A record: numbers in the units that the names end in. */
export interface Row {
  [name: string]: Value
}

/** A place in a record: names and row numbers. */
export type Path = (string | number)[]

/** `devices[2].airflowM3PerS`, as the portal points at fields. */
export function pointer(path: Path): string {
  return path.reduce<string>(
    (text, step) => (typeof step === 'number' ? `${text}[${step}]` : text ? `${text}.${step}` : step),
    '',
  )
}

/** The place that a pointer names; a row may be named by its number or by its id. */
export function pathOf(text: string, record: Row): Path {
  const path: Path = []
  let here: Value = record
  for (const [, name, key] of text.matchAll(/([^.[\]]+)|\[([^\]]*)\]/g)) {
    let step: string | number = name ?? ''
    if (key !== undefined) {
      const rows: Value[] = Array.isArray(here) ? here : []
      const byId = rows.findIndex((row) => isRow(row) && row.id === key)
      step = byId >= 0 ? byId : Number(key)
    }
    path.push(step)
    here = inside(here, step)
  }
  return path
}

export const isRow = (value: unknown): value is Row =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

function inside(value: Value, step: string | number): Value {
  if (typeof step === 'number') return Array.isArray(value) ? (value[step] as Value) : undefined
  return isRow(value) ? value[step] : undefined
}

export const at = (record: Row, path: Path): Value => path.reduce<Value>(inside, record)

/** The record with another value in one place; nothing else changes. */
export function withValue(record: Row, path: Path, value: Value): Row {
  return put(record, path, value) as Row
}

function put(here: Value, path: Path, value: Value): Value {
  const [step, ...rest] = path
  if (step === undefined) return value
  const next = put(inside(here, step), rest, value)
  if (typeof step === 'number') {
    const rows = Array.isArray(here) ? [...here] : []
    rows[step] = next as Row
    return rows as Row[]
  }
  const row = isRow(here) ? { ...here } : {}
  if (next === undefined) delete row[step]
  else row[step] = next
  return row
}
