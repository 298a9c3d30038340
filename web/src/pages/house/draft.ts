import { isRow, type Row, type Value } from '../../form/field.ts'
import { changesBetween, leaves, rowsOf } from '../../record/values.ts'

/** What somebody typed into a part and has not saved, kept for this window so that leaving the page loses nothing. */
interface Draft {
  /** The revision it was made from. */
  base: Row
  typed: Row
}

const key = (house: string, part: string) => `oakum.draft.${house}.${part}`

export function keepDraft(house: string, part: string, draft: Draft) {
  sessionStorage.setItem(key(house, part), JSON.stringify(draft))
}

export function dropDraft(house: string, part: string) {
  sessionStorage.removeItem(key(house, part))
}

export function draftOf(house: string, part: string): Draft | undefined {
  const kept = sessionStorage.getItem(key(house, part))
  return kept ? (JSON.parse(kept) as Draft) : undefined
}

/**
 * What I typed, put onto what somebody else saved meanwhile: my values where I changed one, theirs everywhere else. A
 * list whose rows I added or took away is mine as a whole.
 */
export function ontoTheirs(base: Row, mine: Row, theirs: Row): Row {
  const next: Row = { ...theirs }
  for (const name of new Set([...Object.keys(base), ...Object.keys(mine)])) {
    const [b, m, t] = [base[name], mine[name], theirs[name]]
    if (JSON.stringify(b) === JSON.stringify(m)) continue
    const merged = onto(b, m, t)
    if (merged === undefined) delete next[name]
    else next[name] = merged
  }
  return next
}

function onto(base: Value, mine: Value, theirs: Value): Value {
  if (isRow(base) && isRow(mine) && isRow(theirs)) return ontoTheirs(base, mine, theirs)
  if (isRows(base) && isRows(mine) && isRows(theirs) && sameRows(base, mine)) {
    return theirs.map((row) => {
      const b = base.find((r) => r.id === row.id)
      const m = mine.find((r) => r.id === row.id)
      return b && m ? ontoTheirs(b, m, row) : row
    })
  }
  return mine
}

const isRows = (value: Value): value is Row[] =>
  Array.isArray(value) && value.every((row) => isRow(row) && typeof row.id === 'string')

const sameRows = (a: Row[], b: Row[]) => a.length === b.length && a.every((row, i) => row.id === b[i]!.id)

/** Whether rows came or went, which a trial of single values cannot say. */
export function otherRows(before: Row, after: Row): boolean {
  return JSON.stringify(rowsOf(before)) !== JSON.stringify(rowsOf(after))
}

/** The single values of a part that differ, with their path in the whole record, as a trial takes them. */
export function asChanges(part: string, before: Row, after: Row) {
  return changesBetween(before, after).map(({ path, now }) => ({
    path: `${part}.${path}`,
    value: typeof now === 'number' || typeof now === 'string' || typeof now === 'boolean' ? now : null,
  }))
}

/** A record's value at a path with row names, as text; nothing where there is none. */
export function textAt(record: Row, path: string): string | null {
  const found = leaves(record).find((l) => l.path === path)
  return found === undefined ? null : String(found.value)
}
