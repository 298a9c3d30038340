import { Formula } from '../../parts/Formula.tsx'
import { Notices, spaced } from '../../parts/Result.tsx'
import { Scale } from '../../parts/Scale.tsx'
import type { ChainOutput, Proof } from '../../record/types.ts'
import { bothWords, fieldOf, numberIn, valueWords } from '../../record/values.ts'
import { dayWords } from '../../units/days.ts'
import { cited, type Declaration } from '../calculation/types.ts'
import { type InputRow, inputRows, Verdict } from './ProofBody.tsx'

interface ProofPaperProps {
  proof: Proof
  declaration: Declaration
  house: string
  zone: string
  /** The numbers as they come out with today's record, where they differ. */
  today?: ChainOutput[]
}

/**
 * A proof as the house book prints it: everything that went in from the record, the numbers that people compare, what
 * they rest on and what can hurt someone, on little more than half a sheet.
 */
export function ProofPaper({ proof, declaration, house, zone, today }: ProofPaperProps) {
  const rows = inputRows(proof, declaration.inputs, house)
  const bound = rows.filter((r) => r.bound)
  const typed = rows.filter((r) => !r.bound && r.origin)
  const usual = rows.length - bound.length - typed.length
  return (
    <div class="print-only proof-paper">
      <WentIn rows={bound} />
      <p class="note">
        {typed.length > 0 && <>Typed for this proof: {typed.map(typedWords).join('; ')}. </>}
        {usual > 0 &&
          `${usual === 1 ? 'One input is' : `${usual} inputs are`} as the calculation usually has it.`}
      </p>
      <CameOut proof={proof} declaration={declaration} today={today} />
      <Notices notices={proof.notices} />
      <div class="equations-paper">
        {declaration.equations.map((e) => (
          <p key={e.number}>
            <Formula text={e.text} /> <span class="note">eq. {e.number}</span>
          </p>
        ))}
      </div>
      <p class="note">
        Sources: {[...new Set(declaration.sources.map(cited))].join('; ')}. {declaration.title}{' '}
        {proof.calculationVersion}; issue {proof.issue} by {proof.madeBy}, {dayWords(proof.madeAt, zone)}:{' '}
        {proof.reason}; copy code {spaced(proof.copyCode)}.
      </p>
      {declaration.cautions.length > 0 && (
        <div class="caution in-columns">
          <b>Cautions</b>
          {declaration.cautions.map((c) => (
            <p key={c.subject + c.text}>
              <b>{c.subject}.</b> {c.text}
            </p>
          ))}
        </div>
      )}
    </div>
  )
}

const typedWords = (row: InputRow) =>
  `${row.label.charAt(0).toLowerCase()}${row.label.slice(1)} ${row.value} (${row.origin})`

/** Every value by the part of the record that it came from, in columns: a source is said once. */
function WentIn({ rows }: { rows: InputRow[] }) {
  const sources = [...new Set(rows.map((r) => r.origin))]
  return (
    <div class="went-in">
      {sources.map((source) => (
        <dl key={source}>
          <div class="source">
            <dt>What went in from {source}</dt>
          </div>
          {rows
            .filter((r) => r.origin === source)
            .map((r) => (
              <div key={r.pointer}>
                <dt>{r.label}</dt>
                <dd>
                  {r.today ? (
                    <>
                      <span class="was">{r.value}</span> <b>{r.today.text} today</b>
                    </>
                  ) : (
                    r.value
                  )}
                </dd>
              </div>
            ))}
        </dl>
      ))}
    </div>
  )
}

/** The numbers that people compare, with their limits; the first of them on its scale. */
function CameOut({
  proof,
  declaration,
  today,
}: {
  proof: Proof
  declaration: Declaration
  today?: ChainOutput[]
}) {
  const lead = proof.outputs.filter((o) => o.value !== null && o.leading)
  const nowOf = (name: string) => today?.find((t) => t.name === name)
  const moved = lead.some((o) => nowOf(o.name) && nowOf(o.name)!.new !== o.value)
  const first = lead.find((o) => o.unit && o.limit !== null)
  const now = first && nowOf(first.name)
  return (
    <div class="result-paper">
      <table class="t came-out">
        <thead>
          <tr>
            <th scope="col">what came out</th>
            <th scope="col" class="n">
              relied on
            </th>
            {moved && (
              <th scope="col" class="n">
                today
              </th>
            )}
            <th scope="col" class="n">
              limit
            </th>
            <th scope="col">answer</th>
          </tr>
        </thead>
        <tbody>
          {lead.map((o) => {
            const new_ = nowOf(o.name)
            const field = fieldOf(declaration.outputs, o.name)
            const differs = new_ !== undefined && new_.new !== o.value
            const [then, today_] = differs
              ? bothWords(o.value, new_.new, o.unit)
              : [valueWords(o.value, o.unit, field), 'same']
            const limit = new_?.limit ?? o.limit
            return (
              <tr key={o.name}>
                <th scope="row">
                  {o.label} {o.symbol && <Formula text={o.symbol} />}
                </th>
                <td class="n">{then}</td>
                {moved && <td class="n">{differs ? <b>{today_}</b> : today_}</td>}
                <td class="n">{limit === null ? '' : valueWords(limit, o.unit, field)}</td>
                <td>{o.unit && <Verdict output={new_ ?? o} />}</td>
              </tr>
            )
          })}
        </tbody>
      </table>
      {first && (
        <Scale
          label={first.label}
          unit={first.unit!}
          before={now && now.new !== first.value ? numberIn(first.value) : undefined}
          now={numberIn(now ? now.new : first.value)}
          limit={numberIn(now ? now.limit : first.limit)}
        />
      )}
    </div>
  )
}
