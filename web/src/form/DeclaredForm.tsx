import type { ComponentChildren } from 'preact'
import { print, shownBy } from '../units/quantity.ts'
import { system } from '../units/system.ts'
import { type Field, type Path, pointer, type Row } from './field.ts'
import { type Form, rangeText } from './form.ts'

/** What a page may add to single fields: where a value came from, or a field drawn in its own way. */
export interface FieldExtras {
  /** Before the limits in the hint: "from the record, typed by designer 8 May". */
  origin?: (path: Path) => ComponentChildren
  /** Fields that the page draws itself or leaves out. */
  hide?: (path: Path) => boolean
  /** Fields that may be left out but that this page shows among the others. */
  open?: (path: Path) => boolean
  /** What the portal noticed about a value, under the field. */
  says?: (path: Path) => ComponentChildren
  /** A field that the page draws in its own way; undefined leaves it to the form. */
  instead?: (path: Path, field: Field) => ComponentChildren
}

/** The fields of a declaration, ready to fill in. Draws any calculation's inputs and any part of the record. */
export function DeclaredForm({ form, extras = {} }: { form: Form; extras?: FieldExtras }) {
  const whole = form.errors.value['']
  return (
    <>
      {whole && (
        <p class="says whole" role="alert">
          <b>Refused.</b> {whole}
        </p>
      )}
      <Fields form={form} fields={form.fields} path={[]} extras={extras} />
    </>
  )
}

interface Place {
  form: Form
  path: Path
  extras: FieldExtras
}

/** The fields of one row or group, for a page that draws the rows of a list itself. */
export function FieldsAt({
  form,
  fields,
  path,
  extras = {},
}: {
  form: Form
  fields: Field[]
  path: Path
  extras?: FieldExtras
}) {
  return <Fields form={form} fields={fields} path={path} extras={extras} />
}

/** First what is needed; what may be left out stands together under one heading that opens. */
function Fields({ form, fields, path, extras }: Place & { fields: Field[] }) {
  const shown = fields.filter((f) => !extras.hide?.([...path, f.name]))
  const aside = shown.filter(
    (f) => f.optional && f.kind !== 'GROUP' && f.kind !== 'ROWS' && !extras.open?.([...path, f.name]),
  )
  const one = (field: Field) => (
    <One key={field.name} form={form} field={field} path={[...path, field.name]} extras={extras} />
  )
  if (aside.length < 2) return <>{shown.map(one)}</>
  const given = aside.filter((f) => form.get([...path, f.name]) !== undefined).length
  const bad = aside.some((f) => form.error([...path, f.name]))
  return (
    <>
      {shown.filter((f) => !aside.includes(f) && f.kind !== 'GROUP' && f.kind !== 'ROWS').map(one)}
      <details class="open-up aside-fields" open={bad || undefined}>
        <summary>
          <span>May be left out</span>
          <span class="note">
            {given} of {aside.length} filled in
          </span>
        </summary>
        <div class="inside">{aside.map(one)}</div>
      </details>
      {shown.filter((f) => !aside.includes(f) && (f.kind === 'GROUP' || f.kind === 'ROWS')).map(one)}
    </>
  )
}

function One(props: Place & { field: Field }) {
  const { field } = props
  const own = props.extras.instead?.(props.path, field)
  if (own !== undefined) return <>{own}</>
  switch (field.kind) {
    case 'GROUP':
      return <Group {...props} />
    case 'ROWS':
      return <Rows {...props} />
    case 'YES_NO':
      return <YesNo {...props} />
    default:
      return <Line {...props} />
  }
}

const idOf = (path: Path) => `f-${pointer(path).replace(/[^\w]+/g, '-')}`

function Symbol_({ field }: { field: Field }) {
  if (!field.symbol) return null
  const [, stem = field.symbol, below] = /^(.*?)_?(\d+|(?<=_).+)$/.exec(field.symbol) ?? []
  return (
    <span class="sym">
      {' '}
      {stem.replace(/_$/, '')}
      {below && <sub>{below}</sub>}
    </span>
  )
}

/** A field on its own line: its name, its box with the unit, its limits, and what is refused. */
function Line({ form, field, path, extras }: Place & { field: Field }) {
  const id = idOf(path)
  const error = form.error(path)
  const wide = field.kind === 'CHOICE' || field.kind === 'TEXT' || field.kind === 'NUMBERS'
  return (
    <div class={`field${error ? ' refused' : ''}${wide ? ' one' : ''}`} onFocusIn={met}>
      <label for={id}>
        {field.label}
        <Symbol_ field={field} />
      </label>
      <div class="in">
        <Box form={form} field={field} path={path} id={id} />
        {field.unit && <UnitOf field={field} />}
      </div>
      <Hint id={`${id}-h`} field={field} origin={extras.origin?.(path)} />
      <Says id={`${id}-e`} error={error}>
        {extras.says?.(path)}
      </Says>
    </div>
  )
}

function UnitOf({ field }: { field: Field }) {
  const symbol = shownBy(field.unit!, system.value).symbol
  return <span>{symbol}</span>
}

function Hint({ id, field, origin }: { id: string; field: Field; origin?: ComponentChildren }) {
  const range = rangeText(field)
  const advised = rangeText(field, field.advisedMin, field.advisedMax)
  const parts: ComponentChildren[] = []
  if (field.help) parts.push(field.help)
  if (range) parts.push(<Sourced words={range} source={field.limitSource} />)
  if (advised) parts.push(<Sourced words={`advised ${advised}`} source={field.advisedSource} />)
  if (origin) parts.push(origin)
  if (parts.length === 0) return null
  return (
    <p class="hint" id={id}>
      {parts.map((part, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the parts have a fixed order
        <span key={i}>
          {i > 0 && ' · '}
          {part}
        </span>
      ))}
    </p>
  )
}

/**
 * Marks a field that somebody has come to. It stays marked: were its hint to shrink again when the focus leaves, the
 * button under the finger would move away between press and release.
 */
function met(event: FocusEvent) {
  ;(event.currentTarget as HTMLElement).classList.add('met')
}

/** A limit; where it comes from shows with a field that somebody has come to, or that is refused. */
function Sourced({ words, source }: { words: string; source: string }) {
  return (
    <>
      {words}
      {source && <span class="limit-source"> ({source})</span>}
    </>
  )
}

function Says({ id, error, children }: { id: string; error?: string; children?: ComponentChildren }) {
  return (
    <>
      {error && (
        <p class="says" id={id} role="alert">
          <b>Refused.</b> {error}
        </p>
      )}
      {children}
    </>
  )
}

/** The box itself: of a number, a choice, a text, or several numbers. */
function Box({
  form,
  field,
  path,
  id,
  label,
}: Omit<Place, 'extras'> & { field: Field; id: string; label?: string }) {
  const error = form.error(path)
  const common = {
    id,
    'aria-label': label,
    'aria-describedby': `${id}-h`,
    'aria-invalid': error ? ('true' as const) : undefined,
    'aria-errormessage': error ? `${id}-e` : undefined,
  }
  if (field.kind === 'CHOICE') {
    const value = (form.get(path) as string | undefined) ?? ''
    return (
      <select {...common} value={value} onChange={(e) => form.set(path, e.currentTarget.value || undefined)}>
        {(value === '' || field.optional) && <option value="">{field.optional ? 'none' : 'choose'}</option>}
        {field.options.map((o) => (
          <option key={o.id} value={o.id}>
            {o.label}
          </option>
        ))}
      </select>
    )
  }
  if (field.kind === 'TEXT') {
    return (
      <input
        {...common}
        class="words"
        value={(form.get(path) as string | undefined) ?? ''}
        onInput={(e) => form.set(path, e.currentTarget.value || undefined)}
      />
    )
  }
  return (
    <input
      {...common}
      inputMode="decimal"
      autocomplete="off"
      value={form.text(path, field)}
      onInput={(e) => form.type(path, field, e.currentTarget.value)}
      onPaste={(e) => pasteDown(e, form, path)}
    />
  )
}

function YesNo({ form, field, path, extras }: Place & { field: Field }) {
  const id = idOf(path)
  const value = form.get(path)
  const error = form.error(path)
  return (
    <fieldset class={`field yes-no${error ? ' refused' : ''}`} aria-describedby={`${id}-h`}>
      <legend>{field.label}</legend>
      <div class="choose">
        {[true, false].map((answer) => (
          <label key={String(answer)}>
            <input
              type="radio"
              name={id}
              checked={value === answer}
              onChange={() => form.set(path, answer)}
              aria-invalid={error ? 'true' : undefined}
            />
            {answer ? 'Yes' : 'No'}
          </label>
        ))}
      </div>
      <Hint id={`${id}-h`} field={field} origin={extras.origin?.(path)} />
      <Says id={`${id}-e`} error={error}>
        {extras.says?.(path)}
      </Says>
    </fieldset>
  )
}

function Group({ form, field, path, extras }: Place & { field: Field }) {
  const present = form.get(path) !== undefined
  return (
    <fieldset class="group">
      <legend>
        {field.label}
        {field.optional && (
          <button type="button" class="plain" onClick={() => form.set(path, present ? undefined : {})}>
            {present ? 'leave out' : 'fill in'}
          </button>
        )}
      </legend>
      {field.help && <p class="hint">{field.help}</p>}
      {(present || !field.optional) && (
        <Fields form={form} fields={field.fields} path={path} extras={extras} />
      )}
    </fieldset>
  )
}

/** Rows with few fields stand in a table, as they are read off; rows with many open one by one. */
function Rows(props: Place & { field: Field }) {
  const { form, field, path } = props
  const rows = (form.get(path) as Row[] | undefined) ?? []
  const error = form.error(path)
  const narrow =
    field.fields.length <= 4 && field.fields.every((f) => f.kind !== 'GROUP' && f.kind !== 'ROWS')
  return (
    <fieldset class="group rows">
      <legend>{field.label}</legend>
      {field.help && <p class="hint">{field.help}</p>}
      {rows.length > 0 && (narrow ? <RowTable {...props} rows={rows} /> : <RowList {...props} rows={rows} />)}
      <Says id={`${idOf(path)}-e`} error={error} />
      {rows.length < field.maxRows && (
        <button type="button" class="b" onClick={() => form.addRow(path)}>
          Add {rows.length === 0 ? 'a row' : 'another'}
        </button>
      )}
    </fieldset>
  )
}

function RowTable({ form, field, path, rows }: Place & { field: Field; rows: Row[] }) {
  return (
    <div class="wide">
      <table class="t rows-table">
        <thead>
          <tr>
            {field.fields.map((f) => (
              <th key={f.name} scope="col">
                {f.label}
                {f.unit && shownBy(f.unit, system.value).symbol && (
                  <span class="sub">{shownBy(f.unit, system.value).symbol}</span>
                )}
              </th>
            ))}
            <th>
              <span class="vh">take away</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map((_, i) => {
            const errors = field.fields
              .map((f) => ({ f, error: form.error([...path, i, f.name]) }))
              .filter(({ error }) => error)
            return (
              // biome-ignore lint/suspicious/noArrayIndexKey: a row is its place
              <tr key={i}>
                {field.fields.map((f, column) => {
                  const here = [...path, i, f.name]
                  const id = idOf(here)
                  const error = form.error(here)
                  return (
                    <td key={f.name} class={error ? 'field refused' : 'field'}>
                      <span class="in">
                        <Box form={form} field={f} path={here} id={id} label={`${f.label}, row ${i + 1}`} />
                      </span>
                      <span id={`${id}-h`} class="vh">
                        {rangeText(f)}
                      </span>
                      {column === 0 &&
                        errors.map(({ f: bad, error: said }) => (
                          <p
                            key={bad.name}
                            class="says"
                            role="alert"
                            id={`${idOf([...path, i, bad.name])}-e`}
                          >
                            <b>Refused.</b> {bad.label}: {said}
                          </p>
                        ))}
                    </td>
                  )
                })}
                <td>
                  <TakeAway form={form} field={field} path={path} index={i} count={rows.length} />
                </td>
              </tr>
            )
          })}
        </tbody>
      </table>
    </div>
  )
}

function TakeAway({
  form,
  field,
  path,
  index,
  count,
}: {
  form: Form
  field: Field
  path: Path
  index: number
  count: number
}) {
  return (
    <button
      type="button"
      class="plain"
      disabled={count <= field.minRows}
      onClick={() => form.removeRow(path, index)}
      aria-label={`Take away row ${index + 1}`}
    >
      take away
    </button>
  )
}

function RowList({ form, field, path, extras, rows }: Place & { field: Field; rows: Row[] }) {
  return (
    <>
      {rows.map((row, i) => {
        const name = typeof row.label === 'string' && row.label ? row.label : `${field.label}, ${i + 1}`
        const empty = Object.keys(row).length === 0
        const bad = Object.keys(form.errors.value).some((key) => key.startsWith(`${pointer([...path, i])}.`))
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a row is its place
          <details key={i} class="open-up" open={bad || empty || undefined}>
            <summary>
              <span>
                <b>{name}</b>
              </span>
              <span class="note">{bad ? 'something is refused' : rowWords(field.fields, row)}</span>
            </summary>
            <div class="inside">
              <Fields form={form} fields={field.fields} path={[...path, i]} extras={extras} />
              <p>
                <TakeAway form={form} field={field} path={path} index={i} count={rows.length} />
              </p>
            </div>
          </details>
        )
      })}
    </>
  )
}

/** The first numbers of a row, so that a closed one tells what it is. */
function rowWords(fields: Field[], row: Row): string {
  return fields
    .filter((f) => f.kind === 'NUMBER' && typeof row[f.name] === 'number')
    .slice(0, 2)
    .map((f) => {
      const { text, symbol } = print(row[f.name] as number, f.unit!, system.value)
      return `${text} ${symbol}`.trim()
    })
    .join(', ')
}

/** Several cells pasted into a table of rows fill it from the cell on, right and down, adding rows as needed. */
function pasteDown(event: ClipboardEvent, form: Form, path: Path) {
  const text = event.clipboardData?.getData('text/plain') ?? ''
  const [listName, row, column] = path.slice(-3)
  if (typeof row !== 'number' || typeof listName !== 'string' || !/[\t\n\r]/.test(text.trim())) return
  event.preventDefault()
  const list = path.slice(0, -2)
  const fields = fieldsOf(form.fields, list)
  const first = fields.findIndex((f) => f.name === column)
  text
    .trimEnd()
    .split(/\r?\n/)
    .forEach((line, down) => {
      while (((form.get(list) as Row[] | undefined) ?? []).length <= row + down) form.addRow(list)
      line.split('\t').forEach((cell, right) => {
        const field = fields[first + right]
        if (field?.unit) form.type([...list, row + down, field.name], field, cell.trim())
      })
    })
}

function fieldsOf(fields: Field[], path: Path): Field[] {
  return path.reduce<Field[]>(
    (inner, step) => (typeof step === 'number' ? inner : (inner.find((f) => f.name === step)?.fields ?? [])),
    fields,
  )
}
