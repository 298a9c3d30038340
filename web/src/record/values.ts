import { type Field, isRow, type Row, type Value } from '../form/field.ts'
import { figure, print, type Unit } from '../units/quantity.ts'
import { system } from '../units/system.ts'

export const HARD = '\u202f'

/** A part as it came, without the places that are empty: a form takes what is missing as left out. */
export function withoutNulls(document: Row): Row {
  return Object.fromEntries(
    Object.entries(document)
      .filter(([, value]) => value !== null && value !== undefined)
      .map(([name, value]) => [
        name,
        Array.isArray(value)
          ? value.map((v) => (isRow(v) ? withoutNulls(v) : v))
          : isRow(value)
            ? withoutNulls(value)
            : value,
      ]),
  ) as Row
}

/** "264.0 cfm" for a value as the record keeps it in text; words stay as they are. */
export function valueWords(
  text: string | null | undefined,
  unit: Unit | null,
  field?: Field,
  step = field?.step,
): string {
  if (text === null || text === undefined || text === '') return 'nothing'
  const option = field?.options.find((o) => o.id === text)
  if (option) return option.label
  if (text === 'true') return 'yes'
  if (text === 'false') return 'no'
  const value = Number(text)
  if (!Number.isFinite(value)) return /^[A-Z][A-Z0-9_]+$/.test(text) ? plainWords(text) : text
  if (!unit) return text
  const shown = print(value, unit, system.value, step)
  return shown.symbol ? `${shown.text}${HARD}${shown.symbol}` : shown.text
}

/** A row's name and its field as a sentence takes them: "Range hood: Rated flow" is "Range hood, rated flow". */
export const labelWords = (label: string) =>
  label.replace(/: ([A-Z])(?=[a-z-])/g, (_, first: string) => `, ${first.toLowerCase()}`)

/** A name in capitals as a sentence takes it: FIRM_RULE is "firm rule". */
export const plainWords = (name: string) => name.replaceAll('_', ' ').toLowerCase()

/** A number of the record in text as a number, or nothing. */
export function numberIn(text: string | null | undefined): number | null {
  if (text === null || text === undefined || text.trim() === '') return null
  const value = Number(text)
  return Number.isFinite(value) ? value : null
}

/** Two values in one unit, old and new, with as many digits as it takes to tell them apart. */
export function bothWords(old: string | null, now: string | null, unit: Unit | null): [string, string] {
  const plain: [string, string] = [valueWords(old, unit), valueWords(now, unit)]
  const [a, b] = [numberIn(old), numberIn(now)]
  if (plain[0] !== plain[1] || !unit || a === null || b === null) return plain
  const shown = system.value === 'SI' ? unit.si : unit.ip
  for (let digits = shown.digits + 1; digits <= 8; digits++) {
    const pair = [a, b].map((v) => figure(v * shown.factor + shown.offset, digits)) as [string, string]
    if (pair[0] !== pair[1]) return [`${pair[0]}${HARD}${shown.symbol}`, `${pair[1]}${HARD}${shown.symbol}`]
  }
  return plain
}

/** One value of a record beside its place: rows are named by their id where they have one. */
export interface Leaf {
  path: string
  value: Value
}

/** Every single value of a record by path: `exhaust[rangeHood].ratedFlowM3PerS`. */
export function leaves(record: Row, prefix = ''): Leaf[] {
  return Object.entries(record).flatMap(([name, value]) => {
    const path = prefix ? `${prefix}.${name}` : name
    if (Array.isArray(value) && value.some(isRow)) {
      return (value as Row[]).flatMap((row, i) =>
        leaves(row, `${path}[${typeof row.id === 'string' && row.id ? row.id : i}]`),
      )
    }
    if (isRow(value)) return leaves(value, path)
    if (value === undefined || value === null || (Array.isArray(value) && value.length === 0)) return []
    return [{ path, value }]
  })
}

/** What differs between two records, place by place. */
export interface Change {
  path: string
  old: Value
  now: Value
}

export function changesBetween(before: Row, after: Row): Change[] {
  const old = new Map(leaves(before).map((l) => [l.path, l.value]))
  const now = new Map(leaves(after).map((l) => [l.path, l.value]))
  const paths = [...old.keys(), ...[...now.keys()].filter((p) => !old.has(p))]
  return paths
    .map((path) => ({ path, old: old.get(path), now: now.get(path) }))
    .filter((c) => JSON.stringify(c.old) !== JSON.stringify(c.now))
}

/** The rows of a record by list and id: whether rows came or went, which single values cannot say. */
export function rowsOf(record: Row, prefix = ''): string[] {
  return Object.entries(record).flatMap(([name, value]) => {
    const path = prefix ? `${prefix}.${name}` : name
    if (Array.isArray(value) && value.some(isRow)) {
      return (value as Row[]).flatMap((row, i) => {
        const here = `${path}[${typeof row.id === 'string' && row.id ? row.id : i}]`
        return [here, ...rowsOf(row, here)]
      })
    }
    return isRow(value) ? rowsOf(value, path) : []
  })
}

/** The declared field that a path of a record names. */
export function fieldOf(fields: Field[], path: string): Field | undefined {
  let inner = fields
  let found: Field | undefined
  for (const [name] of path.replace(/\[[^\]]*\]/g, '').matchAll(/[^.]+/g)) {
    found = inner.find((f) => f.name === name)
    if (!found) return undefined
    inner = found.fields
  }
  return found
}

/** "Range hood, rated flow" for `exhaust[rangeHood].ratedFlowM3PerS`. */
export function labelOf(fields: Field[], path: string, record: Row): string {
  const field = fieldOf(fields, path)
  const row = /^(.*)\[([^\]]*)\]/.exec(path)
  let inRow: Value
  if (row) {
    const list = row[1]!
      .split('.')
      .reduce<Value>((here, name) => (isRow(here) ? here[name.replace(/\[.*$/, '')] : undefined), record)
    inRow = Array.isArray(list) ? (list as Row[]).find((r) => r.id === row[2]) : undefined
  }
  const name = isRow(inRow) && typeof inRow.label === 'string' ? inRow.label : undefined
  const label = field?.label ?? path
  return name && field?.name !== 'label'
    ? `${name}, ${label.charAt(0).toLowerCase()}${label.slice(1)}`
    : label
}
