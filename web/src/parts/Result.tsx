import type { ComponentChildren } from 'preact'
import type { Field, Row, Value } from '../form/field.ts'
import { type Answer, cited, type Declaration, type Notice } from '../pages/calculation/types.ts'
import { digitsOfStep, figure, shownBy, toShown } from '../units/quantity.ts'
import { system } from '../units/system.ts'
import { Formula } from './Formula.tsx'
import { Wide } from './lists.tsx'
import { Figure } from './Quantity.tsx'
import { StateWord, Status } from './Status.tsx'

/** Whether a choice is the answer of a comparison with a limit. */
const isVerdict = (field: Field) => field.options.some((o) => o.id === 'NOT_PROVEN')

/** A single result, worded for its kind. */
export function OutputValue({
  field,
  value,
  plain,
}: {
  field: Field
  value: Value
  plain?: boolean
}): ComponentChildren {
  if (value === undefined || value === null) return '–'
  if (field.kind === 'CHOICE') {
    const option = field.options.find((o) => o.id === value)
    if (isVerdict(field))
      return <StateWord state={String(value)}>{capital(option?.label ?? String(value))}</StateWord>
    return option?.label ?? String(value)
  }
  if (field.kind === 'YES_NO') return value ? 'yes' : 'no'
  if (field.kind === 'NUMBERS') return (value as number[]).map((v) => printed(field, v)).join(', ')
  if (typeof value === 'number' && field.unit) {
    if (plain) return printed(field, value)
    return <Figure text={printed(field, value)} symbol={shownBy(field.unit, system.value).symbol} />
  }
  return String(value)
}

function printed(field: Field, value: number): string {
  const shown = shownBy(field.unit!, system.value)
  return figure(toShown(value, shown), field.kind === 'INTEGER' ? 0 : digitsOfStep(field.step, shown))
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)

/** Results by their declaration: single ones as facts, groups under their heading, rows as tables. */
export function Outputs({
  fields,
  record,
  hide,
}: {
  fields: Field[]
  record: Row
  /** Names that the page shows in its own way. */
  hide?: string[]
}) {
  const shown = fields.filter((f) => !hide?.includes(f.name) && record[f.name] !== undefined)
  const single = shown.filter((f) => f.kind !== 'GROUP' && f.kind !== 'ROWS')
  const leading = single.filter((f) => f.leading || isVerdict(f))
  const rest = single.filter((f) => !leading.includes(f))
  return (
    <>
      {leading.length > 0 && <FactsOf fields={leading} record={record} />}
      {rest.length > 0 &&
        (leading.length > 0 ? (
          <details class="open-up">
            <summary>
              <span>
                <b>Everything else that came out</b>
              </span>
              <span class="note">{rest.length} more</span>
            </summary>
            <div class="inside">
              <FactsOf fields={rest} record={record} />
            </div>
          </details>
        ) : (
          <FactsOf fields={rest} record={record} />
        ))}
      {shown
        .filter((f) => f.kind === 'GROUP')
        .map((f) => (
          <div key={f.name} class="result-group">
            <h3>{f.label}</h3>
            <Outputs fields={f.fields} record={record[f.name] as Row} />
          </div>
        ))}
      {shown
        .filter((f) => f.kind === 'ROWS')
        .map((f) => (
          <RowsOf key={f.name} field={f} rows={record[f.name] as Row[]} />
        ))}
    </>
  )
}

function FactsOf({ fields, record }: { fields: Field[]; record: Row }) {
  return (
    <dl class="facts">
      {fields.map((field) => (
        <div key={field.name}>
          <dt>
            {field.label}
            {field.symbol && <span class="sym"> {field.symbol}</span>}
          </dt>
          <dd>
            <OutputValue field={field} value={record[field.name]} />
            {field.help && <span class="from">{field.help}</span>}
          </dd>
        </div>
      ))}
    </dl>
  )
}

/** Rows of results; figures right, units under the heads. */
export function RowsOf({ field, rows }: { field: Field; rows: Row[] }) {
  if (rows.length === 0) return null
  const columns = field.fields.filter((f) => f.kind !== 'GROUP' && f.kind !== 'ROWS')
  const isNumber = (f: Field) => f.kind === 'NUMBER' || f.kind === 'INTEGER'
  return (
    <Wide label={field.label}>
      <table class="t">
        <caption>{field.label}</caption>
        <thead>
          <tr>
            {columns.map((f) => (
              <th key={f.name} scope="col" class={isNumber(f) ? 'n' : ''}>
                {f.label}
                {f.unit && <span class="sub">{shownBy(f.unit, system.value).symbol}</span>}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: results keep their order
            <tr key={i}>
              {columns.map((f) => (
                <td key={f.name} class={isNumber(f) ? 'n' : ''}>
                  <OutputValue field={f} value={row[f.name]} plain />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </Wide>
  )
}

/** What the calculation says beside its numbers, the weightiest first. */
export function Notices({ notices }: { notices: Notice[] }) {
  if (notices.length === 0) return null
  const order = ['REJECTED', 'ADVICE', 'NOTE']
  const sorted = [...notices].sort((a, b) => order.indexOf(a.weight) - order.indexOf(b.weight))
  return (
    <ul class="matters">
      {sorted.map((n) => (
        <li key={n.code + n.field + n.sentence}>
          {n.weight === 'REJECTED' ? (
            <Status is="withdrawn">No evidence</Status>
          ) : n.weight === 'ADVICE' ? (
            <Status is="look">Look</Status>
          ) : (
            <Status is="note">Note</Status>
          )}
          <div>
            <p>{n.sentence}</p>
            {n.source?.citation && <p class="note">{cited(n.source)}</p>}
          </div>
        </li>
      ))}
    </ul>
  )
}

/** What can hurt someone, where the number is shown. */
export function Cautions({ cautions }: { cautions: { subject: string; text: string }[] }) {
  return (
    <>
      {cautions.map((c) => (
        <p key={c.subject + c.text} class="caution">
          <b>{c.subject}</b>
          {c.text}
        </p>
      ))}
    </>
  )
}

/** Equations with their numbers, sources, what it was tested against. */
export function Behind({ declaration }: { declaration: Declaration }) {
  const { equations, sources, validation } = declaration
  const count = (n: number, word: string) => `${n} ${word}${n === 1 ? '' : 's'}`
  return (
    <details class="open-up behind">
      <summary>
        <span>
          <b>Equations and sources</b>
        </span>
        <span class="note">
          {count(equations.length, 'equation')}, {count(sources.length, 'source')}
        </span>
      </summary>
      <div class="inside">
        {equations.map((e) => (
          <div key={e.number} class="equation">
            <Formula text={e.text} />
            <span class="no">
              eq. {e.number} · {cited(e.source)}
            </span>
          </div>
        ))}
        <ul class="note">
          {sources.map((s) => (
            <li key={s.citation}>{cited(s)}</li>
          ))}
        </ul>
        <p class="note">
          <b>Tested against.</b> {validation}
        </p>
      </div>
    </details>
  )
}

/** Everything under a computed answer, the same on every page: notices, cautions, equations, sources, copy code. */
export function Underneath({ declaration, answer }: { declaration: Declaration; answer?: Answer }) {
  return (
    <>
      {answer && <Notices notices={answer.notices} />}
      <Cautions cautions={declaration.cautions} />
      <Behind declaration={declaration} />
      {answer && (
        <p class="note copy-code">
          Copy code {spaced(answer.copyCode)}: six digits for these inputs and this result.
        </p>
      )}
    </>
  )
}

/** 614207 as 614 207. */
export function spaced(code: string): string {
  return code.replace(/^(\d{3})\s?(\d{3})$/, '$1\u202f$2')
}
