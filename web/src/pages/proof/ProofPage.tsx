import { useSignal } from '@preact/signals'
import { post } from '../../api/http.ts'
import { Problem } from '../../api/problem.ts'
import { useResource } from '../../api/resource.ts'
import { Matter, Matters } from '../../parts/lists.tsx'
import { Reason } from '../../parts/Reason.tsx'
import { spaced } from '../../parts/Result.tsx'
import { Of, Wrong } from '../../parts/Says.tsx'
import { StateWord } from '../../parts/Status.tsx'
import { housePath } from '../../record/record.ts'
import type { Decision, House, Proof, Reach } from '../../record/types.ts'
import { valueWords } from '../../record/values.ts'
import type { PageProps } from '../../shell/routes.ts'
import { Sheet } from '../../shell/Sheet.tsx'
import { me } from '../../shell/session.ts'
import { dayWords, timeWords } from '../../units/days.ts'
import { ProofBody } from './ProofBody.tsx'

interface ProofHistory {
  proof: Proof
  issues: Proof[]
}

/** One proof with its issues, and computing it anew. */
export default function ProofPage({ house = '', proof: key = '' }: PageProps) {
  const at = `${housePath(house)}/proofs/${encodeURIComponent(key)}`
  const read = useResource<ProofHistory>(at)
  const line = useResource<House>(housePath(house))
  const reach = useResource<Reach>(`${housePath(house)}/reach`)
  const decisions = useResource<Decision[]>(`${housePath(house)}/decisions`)
  const zone = line.data.value?.timeZone ?? 'UTC'
  const came = read.data.value
  const proof = came?.proof
  const today = reach.data.value?.chain.find((link) => link.proofKey === key)
  const rests = (decisions.data.value ?? []).filter((d) => d.proofs.includes(key))
  function again() {
    for (const one of [read, reach, decisions]) void one.reload()
  }
  return (
    <Sheet
      over={
        <>
          <a href={`${housePath(house)}/proofs`}>Proofs</a> ·{' '}
          {proof?.kind === 'SUBMITTED' ? 'submitted evidence' : 'computed from the record'}
        </>
      }
      heading={proof ? finding(proof) : 'Proof'}
      title={proof ? `${proof.title} · ${house}` : 'Proof'}
      block={[
        ['House', line.data.value ? `${house} ${line.data.value.name}` : house],
        ['Sheet', proof ? `Proof, ${proof.title}` : 'Proof'],
        ['Record as of', dayWords(me.value?.today)],
        ['Issue', proof ? String(proof.issue) : ''],
        ['Copy code', proof ? spaced(proof.copyCode) : ''],
      ]}
    >
      <Of resource={read}>
        {({ proof: p, issues }) => (
          <>
            <p class="state-line">
              {p.state && <StateWord state={p.state} />} <span class="note">{stateSays(p)}</span>
            </p>
            <section>
              <h2>The proof</h2>
              <ProofBody proof={p} house={house} zone={zone} today={today?.outputs} shortOnPaper />
              {today?.refusal && (
                <p class="say wrong">
                  <b>Not to be computed today.</b> {today.refusal}
                </p>
              )}
            </section>
            {p.calculation && (
              <p class="no-print">
                <a
                  href={`${housePath(house)}/calculations/${p.calculation}?proof=${encodeURIComponent(key)}`}
                >
                  Try other inputs in its form
                </a>
              </p>
            )}
            {p.actions.includes('recompute') && <Recompute at={at} onDone={again} />}
            {rests.length > 0 && (
              <section>
                <h2>Decisions that rest on it</h2>
                <Matters>
                  {rests.map((d) => (
                    <Matter key={d.code} mark={<StateWord state={d.state} />}>
                      <a href={`${housePath(house)}/decisions/${d.code}`}>{d.title}</a>
                    </Matter>
                  ))}
                </Matters>
              </section>
            )}
            <section>
              <h2>Issues</h2>
              <Matters>
                {issues.map((i) => (
                  <Matter
                    key={i.issue}
                    mark={<span class="note">Issue {i.issue}</span>}
                    note={`${i.madeBy}, ${timeWords(i.madeAt, zone)} · copy code ${spaced(i.copyCode)}`}
                  >
                    {leadWords(i)}
                    <span class="from">{i.reason}</span>
                  </Matter>
                ))}
              </Matters>
            </section>
          </>
        )}
      </Of>
    </Sheet>
  )
}

function leadWords(proof: Proof): string {
  return proof.outputs
    .filter((o) => o.leading && o.unit && o.value !== null)
    .slice(0, 3)
    .map((o) => `${o.label.toLowerCase()} ${valueWords(o.value, o.unit)}`)
    .join(', ')
}

function finding(proof: Proof): string {
  const lead = proof.outputs.find((o) => o.leading && o.limit !== null)
  if (!lead) return `${proof.title}${leadWords(proof) ? `: ${leadWords(proof)}` : ''}.`
  const limit = valueWords(lead.limit, lead.unit)
  const says = { PASSES: 'within', FAILS: 'past', NOT_PROVEN: 'not proven against' }[lead.verdict ?? 'PASSES']
  return `${proof.title}: ${valueWords(lead.value, lead.unit)}, ${says} the limit of ${limit}.`
}

function stateSays(p: Proof): string {
  if (p.state === 'CURRENT') return 'Everything it relied on is still what the record says.'
  if (p.state === 'WAITING') return `Waits for ${p.waitingFor.join(', ')}.`
  const n = p.differences.length
  const version = p.newVersion ? ` The calculation has version ${p.newVersion} now.` : ''
  return n === 0
    ? version.trim()
    : `${n === 1 ? 'One value that it relied on is' : `${n} values that it relied on are`} another today.${version}`
}

function Recompute({ at, onDone }: { at: string; onDone: () => void }) {
  const reason = useSignal('')
  const missing = useSignal(false)
  const problem = useSignal<Problem | undefined>(undefined)
  const busy = useSignal(false)
  async function recompute() {
    missing.value = reason.value.trim() === ''
    if (missing.value) return
    busy.value = true
    problem.value = undefined
    try {
      await post(`${at}/recomputations`, { reason: reason.value.trim() })
      reason.value = ''
      onDone()
    } catch (thrown) {
      problem.value = Problem.of(thrown)
    } finally {
      busy.value = false
    }
  }
  return (
    <section class="no-print">
      <h2>Compute anew</h2>
      <Reason
        label="Reason"
        value={reason.value}
        onType={(text) => (reason.value = text)}
        error={missing.value && !reason.value.trim() ? 'Say why; it stays on the record.' : undefined}
        hint="With today's record, kept as the next issue. Whatever it rests on is computed anew first. The issues before stay."
      />
      {problem.value && <Wrong problem={problem.value} outcome="Not computed." />}
      <div class="acts">
        <button type="button" class="b main" disabled={busy.value} onClick={() => void recompute()}>
          Compute anew
        </button>
      </div>
    </section>
  )
}
