import { useSignal } from '@preact/signals'
import type { ComponentChildren } from 'preact'

/** A list of matters: a status left, a sentence right. */
export function Matters({ children, label }: { children: ComponentChildren; label?: string }) {
  return (
    <ul class="matters" aria-label={label}>
      {children}
    </ul>
  )
}

/** One matter. The mark is a status, a date, or any short word. */
export function Matter({
  mark,
  note,
  children,
}: {
  mark: ComponentChildren
  note?: ComponentChildren
  children: ComponentChildren
}) {
  return (
    <li>
      <div>{mark}</div>
      <div>
        <div>{children}</div>
        {note && <p class="note">{note}</p>}
      </div>
    </li>
  )
}

/** Names and what stands behind them. */
export function Facts({ children }: { children: ComponentChildren }) {
  return <dl class="facts">{children}</dl>
}

export function Fact({ name, children }: { name: ComponentChildren; children: ComponentChildren }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  )
}

/** A place that may be wider than the page: it moves sideways by itself, by keyboard too. */
export function Wide({ label, children }: { label: string; children: ComponentChildren }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section class="wide" tabIndex={0} aria-label={label}>
      {children}
    </section>
  )
}

/** A column of a table. */
export interface Column<T> {
  head: ComponentChildren
  /** The unit, under the head and never in each cell. */
  unit?: string
  /** Figures stand right under a right head. */
  figures?: boolean
  cell: (row: T) => ComponentChildren
  /** By what the rows are sorted when somebody asks for this column. */
  by?: (row: T) => number | string
}

interface TableProps<T> {
  /** For readers; also the caption unless that is given. */
  label: string
  caption?: ComponentChildren
  columns: Column<T>[]
  rows: T[]
  keyOf: (row: T) => string
  /** The row that matters. */
  isKey?: (row: T) => boolean
  /** The first column names the row and stays when the table is moved sideways. */
  rowHeads?: boolean
}

/** A table with horizontal rules only; moved sideways on a phone. */
export function DataTable<T>({ label, caption, columns, rows, keyOf, isKey, rowHeads }: TableProps<T>) {
  const sorted = useSignal<{ column: number; down: boolean } | undefined>(undefined)
  const order = sorted.value
  const by = order && columns[order.column]?.by
  const shown = by
    ? [...rows].sort((a, b) => {
        const [x, y] = [by(a), by(b)]
        const way = x < y ? -1 : x > y ? 1 : 0
        return order.down ? -way : way
      })
    : rows
  const ask = (column: number) => {
    sorted.value = order?.column === column ? { column, down: !order.down } : { column, down: false }
  }
  return (
    <Wide label={label}>
      <table class={rowHeads ? 't stick' : 't'}>
        {caption !== undefined && <caption>{caption}</caption>}
        <thead>
          <tr>
            {columns.map((c, i) => (
              <th
                // biome-ignore lint/suspicious/noArrayIndexKey: columns keep their order
                key={i}
                scope="col"
                class={c.figures ? 'n' : ''}
                aria-sort={order?.column === i ? (order.down ? 'descending' : 'ascending') : undefined}
              >
                {c.by ? (
                  <button type="button" class="plain sorter" onClick={() => ask(i)}>
                    {c.head}
                  </button>
                ) : (
                  c.head
                )}
                {c.unit && <span class="sub">{c.unit}</span>}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {shown.map((row) => (
            <tr key={keyOf(row)} class={isKey?.(row) ? 'key' : ''}>
              {columns.map((c, i) =>
                rowHeads && i === 0 ? (
                  // biome-ignore lint/suspicious/noArrayIndexKey: columns keep their order
                  <th key={i} scope="row">
                    {c.cell(row)}
                  </th>
                ) : (
                  // biome-ignore lint/suspicious/noArrayIndexKey: columns keep their order
                  <td key={i} class={c.figures ? 'n' : ''}>
                    {c.cell(row)}
                  </td>
                ),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </Wide>
  )
}
