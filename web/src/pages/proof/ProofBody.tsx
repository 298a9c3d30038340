import type { ComponentChildren } from 'preact'
import { useResource } from '../../api/resource.ts'
import type { Field } from '../../form/field.ts'
import { Behind, Cautions, Notices, spaced } from '../../parts/Result.tsx'
import { Of } from '../../parts/Says.tsx'
import { Scale } from '../../parts/Scale.tsx'
import { ShapeMark, StateWord } from '../../parts/Status.tsx'
import { housePath } from '../../record/record.ts'
import type { ChainOutput, Proof, ProofOutput } from '../../record/types.ts'
import { bothWords, fieldOf, numberIn, valueWords } from '../../record/values.ts'
import { dayWords } from '../../units/days.ts'
import type { Declaration } from '../calculation/types.ts'
import { ProofPaper } from './ProofPaper.tsx'

interface ProofBodyProps {
  proof: Proof
  house: string
  zone: string
  /** The numbers as they come out with today's record, where they differ. */
  today?: ChainOutput[]
  /** On paper the proof stands in its short form, as one matter of a larger sheet. */
  shortOnPaper?: boolean
}

/** A proof opened: its result, what went in and where that came from, equations, sources, cautions. */
export function ProofBody(props: ProofBodyProps) {
  const { proof } = props
  return proof.kind === 'SUBMITTED' || !proof.calculation ? (
    <Submitted {...props} />
  ) : (
    <Computed {...props} calculation={proof.calculation} />
  )
}

function Computed(props: ProofBodyProps & { calculation: string }) {
  const { proof, house, zone, today, calculation, shortOnPaper } = props
  const declaration = useResource<Declaration>(`/calculations/${calculation}`)
  return (
    <Of resource={declaration} what="Reading the calculation.">
      {(d) => (
        <>
          {shortOnPaper && (
            <ProofPaper proof={proof} declaration={d} house={house} zone={zone} today={today} />
          )}
          <div class={shortOnPaper ? 'no-print' : ''}>
            <Scales outputs={proof.outputs} today={today} />
            <Inputs proof={proof} fields={d.inputs} house={house} />
            <Results proof={proof} fields={d.outputs} today={today} />
            <Notices notices={proof.notices} />
            <Cautions cautions={d.cautions} />
            <Behind declaration={d} />
            <Made proof={proof} zone={zone} how={`${d.title} ${proof.calculationVersion}`} />
          </div>
        </>
      )}
    </Of>
  )
}

function Submitted({ proof, house, zone, today }: ProofBodyProps) {
  const s = proof.submission
  return (
    <>
      <Scales outputs={proof.outputs} today={today} />
      <Inputs proof={proof} fields={[]} house={house} />
      <Results proof={proof} fields={[]} today={today} />
      {s && (
        <>
          <h3>Method</h3>
          <p>{s.method}</p>
          <p class="evidence">{s.text}</p>
          {s.inputsHash && (
            <p class="note">
              Hash of the files that went in: <span class="hash">{s.inputsHash}</span>
            </p>
          )}
        </>
      )}
      <Made proof={proof} zone={zone} how={s ? `submitted, signed as ${s.signedAs}` : 'submitted'} />
    </>
  )
}

function Made({ proof, zone, how }: { proof: Proof; zone: string; how: string }) {
  return (
    <p class="note copy-code">
      <ShapeMark is="note" /> {how} · issue {proof.issue} by {proof.madeBy}, {dayWords(proof.madeAt, zone)}:{' '}
      {proof.reason} · copy code {spaced(proof.copyCode)}
    </p>
  )
}

/** Each number with a limit on its scale: what was relied on, and what comes out today. */
function Scales({ outputs, today }: { outputs: ProofOutput[]; today?: ChainOutput[] }) {
  const shown = outputs.filter((o) => o.unit && o.limit !== null && o.leading)
  if (shown.length === 0) return null
  return (
    <ul class="scales">
      {shown.map((o) => {
        const now = today?.find((t) => t.name === o.name)
        const moved = now !== undefined && now.new !== o.value
        return (
          <li key={o.name}>
            <span>
              <b>{o.label}</b>
              <Verdict output={now ?? o} />
            </span>
            <Scale
              label={o.label}
              unit={o.unit!}
              before={moved ? numberIn(o.value) : undefined}
              now={numberIn(now ? now.new : o.value)}
              limit={numberIn(now ? now.limit : o.limit)}
            />
          </li>
        )
      })}
    </ul>
  )
}

export function Verdict({ output }: { output: { verdict: string | null } }) {
  return output.verdict ? <StateWord state={output.verdict} /> : null
}

export interface InputRow {
  pointer: string
  label: string
  value: string
  field: Field | undefined
  from: ComponentChildren
  /** Where it came from, in words; empty where it is the usual value of the calculation. */
  origin: string
  today: { text: string } | undefined
  bound: boolean
}

/** What went in, value by value: from the record first, then what was typed for this proof. */
function Inputs({ proof, fields, house }: { proof: Proof; fields: Field[]; house: string }) {
  const rows = inputRows(proof, fields, house)
  const bound = rows.filter((r) => r.bound)
  const typed = rows.filter((r) => !r.bound)
  return (
    <>
      {bound.length > 0 && <InputTable caption="What went in from the record" rows={bound} />}
      {typed.length > 0 && (
        <details class="open-up no-print">
          <summary>
            <span>
              <b>Typed for this proof</b>
            </span>
            <span class="note">{typed.length} values</span>
          </summary>
          <div class="inside">
            <InputTable caption="Typed for this proof" rows={typed} />
          </div>
        </details>
      )}
    </>
  )
}

export function inputRows(proof: Proof, fields: Field[], house: string): InputRow[] {
  const relied = new Map(proof.relied.map((r) => [r.input, r]))
  const names =
    Object.keys(proof.inputs).length > 0 ? Object.keys(proof.inputs) : proof.relied.map((r) => r.input)
  return names
    .filter((pointer) => !/\.(id|label)$/.test(pointer))
    .map((pointer) => {
      const from = relied.get(pointer)
      const difference = from && proof.differences.find((d) => d.path === from.path)
      const field = fieldOf(fields, pointer)
      const value = proof.inputs[pointer] ?? from?.value ?? ''
      const [then, now] = difference
        ? bothWords(difference.old, difference.new, difference.unit)
        : [valueWords(value, field?.unit ?? null, field), '']
      return {
        pointer,
        label: inputLabel(pointer, field, proof),
        value: then,
        field,
        from: from ? <From path={from.path} house={house} /> : originOf(proof, pointer) || USUAL,
        origin: from ? sourceWords(from.path) : originOf(proof, pointer),
        today: difference && { text: now },
        bound: from !== undefined,
      }
    })
}

const USUAL = 'usual value of the calculation'

/** "the record, air part", or the proof it was computed in. */
function sourceWords(path: string): string {
  return path.startsWith('results.') ? 'another proof' : `the record, ${path.split('.')[0]}`
}

function From({ path, house }: { path: string; house: string }) {
  const result = /^results\.([^.]+)/.exec(path)
  if (result) {
    return (
      <>
        computed · <a href={`${housePath(house)}/proofs/${result[1]}`}>proof</a>
      </>
    )
  }
  const part = path.split('.')[0]!
  return (
    <>
      record, <a href={`${housePath(house)}/record/${part}`}>{part}</a>
    </>
  )
}

/** "Range hood, airflow" for devices[0].airflowM3PerS. */
function inputLabel(pointer: string, field: Field | undefined, proof: Proof): string {
  const row = /^(.*\[\d+\])\./.exec(pointer)?.[1]
  const name = row && proof.inputs[`${row}.label`]
  const label = field?.label ?? pointer
  return name && field?.name !== 'label'
    ? `${name}, ${label.charAt(0).toLowerCase()}${label.slice(1)}`
    : label
}

function originOf(proof: Proof, pointer: string): string {
  const any = pointer.replace(/\[\d+\]/g, '[*]')
  const own = [...proof.bindings].reverse().find((b) => b.input === pointer || b.input === any)
  return own?.origin ?? ''
}

function InputTable({ caption, rows }: { caption: string; rows: InputRow[] }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section class="wide inputs" tabIndex={0} aria-label={caption}>
      <table class="t">
        <thead>
          <tr>
            <th scope="col">what went in</th>
            <th scope="col" class="n">
              relied on
            </th>
            <th scope="col">where it came from</th>
            <th scope="col">today</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((r) => (
            <tr key={r.pointer}>
              <th scope="row">{r.label}</th>
              <td class="n">{r.value}</td>
              <td>{r.from}</td>
              <td class={r.today ? 'chg' : ''}>{r.today ? <b>{r.today.text}</b> : r.bound ? 'same' : ''}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}

/** Every single number that came out; the few that people compare stand open, with today's beside them. */
function Results({ proof, fields, today }: { proof: Proof; fields: Field[]; today?: ChainOutput[] }) {
  const shown = proof.outputs.filter((o) => o.value !== null)
  const lead = shown.filter((o) => o.leading)
  const rest = shown.filter((o) => !o.leading)
  const table = (list: ProofOutput[]) => (
    <dl class="facts">
      {list.map((o) => {
        const now = today?.find((t) => t.name === o.name)
        const field = fieldOf(fields, o.name)
        const moved = now && now.new !== o.value
        return (
          <div key={o.name}>
            <dt>
              {o.label}
              {o.symbol && <span class="sym"> {o.symbol}</span>}
            </dt>
            <dd>
              {moved ? (
                <MovedValue old={o.value} now={now.new} unit={o.unit} />
              ) : (
                <b class="q">{valueWords(o.value, o.unit, field)}</b>
              )}
              {o.limit !== null && (
                <span class="note"> limit {valueWords(now?.limit ?? o.limit, o.unit, field)}</span>
              )}{' '}
              {o.unit && <Verdict output={now ?? o} />}
            </dd>
          </div>
        )
      })}
    </dl>
  )
  return (
    <>
      {lead.length > 0 && (
        <>
          <h3>What came out</h3>
          {table(lead)}
        </>
      )}
      {rest.length > 0 && (
        <details class="open-up no-print">
          <summary>
            <span>
              <b>Everything else that came out</b>
            </span>
            <span class="note">{rest.length} more</span>
          </summary>
          <div class="inside">{table(rest)}</div>
        </details>
      )}
    </>
  )
}

function MovedValue({
  old,
  now,
  unit,
}: {
  old: string | null
  now: string | null
  unit: ProofOutput['unit']
}) {
  const [before, after] = bothWords(old, now, unit)
  return (
    <>
      <span class="was q">
        <span class="vh">was </span>
        {before}
      </span>{' '}
      <b class="q">
        <span class="vh">now </span>
        {now === null ? 'not to be computed' : after}
      </b>
    </>
  )
}

/** The line of a proof that opens: its name, its leading number, how it stands. */
export function ProofSummary({ proof, today }: { proof: Proof; today?: ChainOutput[] }) {
  const lead =
    proof.outputs.find((o) => o.leading && o.limit !== null) ?? proof.outputs.find((o) => o.leading && o.unit)
  const now = lead && today?.find((t) => t.name === lead.name)
  return (
    <>
      <span>
        <b>{proof.title}</b>
        <br />
        <span class="note">
          {lead?.limit != null
            ? `${lead.label.toLowerCase()}, limit ${valueWords(lead.limit, lead.unit)}`
            : `issue ${proof.issue}`}
        </span>
      </span>
      <span class="end">
        {lead &&
          (now && now.new !== lead.value ? (
            <MovedValue old={lead.value} now={now.new} unit={lead.unit} />
          ) : (
            <b class="q">{valueWords(lead.value, lead.unit)}</b>
          ))}
        <br />
        {proof.state && <StateWord state={proof.state} />}
      </span>
    </>
  )
}
