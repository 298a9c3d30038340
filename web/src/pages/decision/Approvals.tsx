import { useSignal } from '@preact/signals'
import { post } from '../../api/http.ts'
import { Problem } from '../../api/problem.ts'
import { Choose } from '../../parts/Choose.tsx'
import { Dialog } from '../../parts/Dialog.tsx'
import { Matter, Matters } from '../../parts/lists.tsx'
import { Reason } from '../../parts/Reason.tsx'
import { spaced } from '../../parts/Result.tsx'
import { Wrong } from '../../parts/Says.tsx'
import { StateWord, Status } from '../../parts/Status.tsx'
import type { Approval, Decision, Proof } from '../../record/types.ts'
import { me, type Role, roles, roleWord } from '../../shell/session.ts'
import { timeWords } from '../../units/days.ts'
import { chosen, missing, present } from './words.ts'

interface ApprovalsProps {
  decision: Decision
  at: string
  zone: string
  proofs: Proof[]
  onChanged: (next: Decision, words: string) => void
  /** The portal refused because something moved: read everything again. */
  onMoved: () => void
}

/** Who approved what, whether that still stands, and approving exactly what is shown. */
export function Approvals({ decision, at, zone, proofs, onChanged, onMoved }: ApprovalsProps) {
  const withdrawing = useSignal<Approval | undefined>(undefined)
  const problem = useSignal<Problem | undefined>(undefined)
  const busy = useSignal(false)
  const mine = decision.approvers.filter((r) => roles.value.has(r))
  const role = useSignal<Role | undefined>(undefined)
  const as = role.value ?? mine.find((r) => missing(decision).includes(r)) ?? mine[0]
  const excepts = decision.actions.includes('approve-with-exception')
  const may = excepts || decision.actions.includes('approve')
  const exception = useSignal('')
  const missingException = useSignal(false)
  async function approve() {
    if (!as) return
    missingException.value = excepts && exception.value.trim() === ''
    if (missingException.value) return
    busy.value = true
    problem.value = undefined
    try {
      const next = await post<Decision>(`${at}/approvals`, {
        copyCode: decision.copyCode,
        role: as,
        exception: exception.value.trim() || null,
      })
      exception.value = ''
      onChanged(next, `Approved as ${roleWord[as].toLowerCase()}: copy code ${spaced(decision.copyCode)}.`)
    } catch (thrown) {
      problem.value = Problem.of(thrown)
      if (problem.value.status === 409) onMoved()
    } finally {
      busy.value = false
    }
  }
  const latest = present(decision)
  const never = decision.approvers.filter((r) => !latest.some((a) => a.role === r))
  const earlier = decision.approvals.filter((a) => a.replaced)
  return (
    <section class="no-print">
      <h2>Approvals</h2>
      <Matters>
        {latest.map((a) => (
          <Given
            key={a.id}
            approval={a}
            zone={zone}
            onWithdraw={
              decision.actions.includes('withdraw') && a.state !== 'WITHDRAWN' && mayWithdraw(a)
                ? () => (withdrawing.value = a)
                : undefined
            }
          />
        ))}
        {never.map((r) => (
          <Matter key={r} mark={<Status is="open">Not yet</Status>}>
            <b>{roleWord[r]}</b>
          </Matter>
        ))}
        {decision.outsideApprovers.map((name) => (
          <Matter
            key={name}
            mark={<Status is="open">On paper</Status>}
            note="Signs on paper; the sheet prints a line for it."
          >
            <b>{name.charAt(0).toUpperCase() + name.slice(1)}</b>
          </Matter>
        ))}
      </Matters>
      {earlier.length > 0 && (
        <details class="open-up">
          <summary>
            <span>
              <b>Earlier approvals</b>
            </span>
            <span class="note">{earlier.length}</span>
          </summary>
          <div class="inside">
            <Matters>
              {earlier.map((a) => (
                <Given key={a.id} approval={a} zone={zone} />
              ))}
            </Matters>
          </div>
        </details>
      )}
      {decision.failing.length > 0 && (
        <>
          <h3>What fails in its proofs</h3>
          <Matters>
            {decision.failing.map((f) => (
              <Matter
                key={f.sentence}
                mark={<Status is="over">Fails</Status>}
                note={f.needsException ? 'Approving needs a written exception.' : undefined}
              >
                {f.sentence}
              </Matter>
            ))}
          </Matters>
        </>
      )}
      {problem.value && (
        <Wrong problem={problem.value} outcome="Not approved.">
          {problem.value.code === 'not-what-stands' && (
            <p class="note">
              This page shows what stands now, with its own copy code. Look at it and approve again.
            </p>
          )}
        </Wrong>
      )}
      {mine.length > 0 && (
        <div class="no-print">
          {may && mine.length > 1 && (
            <Choose
              name="as"
              legend="Approve as"
              options={mine.map((r): [Role, string] => [r, roleWord[r].toLowerCase()])}
              value={as!}
              onChoose={(r) => (role.value = r)}
            />
          )}
          {excepts && (
            <Reason
              label="Written exception"
              value={exception.value}
              onType={(text) => (exception.value = text)}
              hint="Why it is approved although it fails; it stays with the approval."
              error={
                missingException.value && !exception.value.trim()
                  ? 'Say why it is approved although it fails.'
                  : undefined
              }
            />
          )}
          <div class="acts">
            <button type="button" class="b main" disabled={!may || busy.value} onClick={() => void approve()}>
              Approve
            </button>
          </div>
          <p class="note">
            {may
              ? `You approve exactly what this page shows: copy code ${spaced(decision.copyCode)}. If the record moves while you read, the portal refuses and shows you the new sheet.`
              : whyClosed(decision, proofs)}
          </p>
        </div>
      )}
      {withdrawing.value && (
        <Withdraw
          approval={withdrawing.value}
          at={at}
          onClose={() => (withdrawing.value = undefined)}
          onChanged={(next) => {
            withdrawing.value = undefined
            onChanged(next, 'The approval is withdrawn.')
          }}
        />
      )}
    </section>
  )
}

const mayWithdraw = (a: Approval) => roles.value.has('PRINCIPAL') || a.person === me.value?.displayName

function Given({
  approval: a,
  zone,
  onWithdraw,
}: {
  approval: Approval
  zone: string
  onWithdraw?: () => void
}) {
  return (
    <Matter
      mark={<StateWord state={a.state} />}
      note={
        <>
          copy code {spaced(a.copyCode)}
          {a.withdrawnAt &&
            ` · withdrawn by ${a.withdrawnBy}, ${timeWords(a.withdrawnAt, zone)}: ${a.withdrawnReason}`}
        </>
      }
    >
      <b>{roleWord[a.role]}</b> ({a.person}) approved on {timeWords(a.at, zone)}{' '}
      {a.alreadyBought && <span class="tag">already bought</span>}{' '}
      {a.alreadyBuilt && <span class="tag">already built</span>}
      {a.reasons.map((why) => (
        <span key={why} class="from">
          {why}
        </span>
      ))}
      {a.exceptionReason && (
        <span class="from">
          Exception: {a.exceptionReason} ({a.failing.join(' ')})
        </span>
      )}
      {onWithdraw && (
        <button type="button" class="plain no-print" onClick={onWithdraw}>
          Withdraw
        </button>
      )}
    </Matter>
  )
}

function whyClosed(decision: Decision, proofs: Proof[]): string {
  if (decision.chosenAlternative === null) return 'Approving is closed until an alternative is chosen.'
  const moved = proofs.find((p) => p.state !== 'CURRENT')
  if (moved)
    return `Approving is closed while ${moved.title.toLowerCase()} does not rest on today's record. Take a way on, or compute it anew.`
  if (missing(decision).every((r) => !roles.value.has(r))) return 'Your approval stands.'
  if (decision.failing.some((f) => f.needsException))
    return 'Approving is closed while its proofs fail; only the principal may give a written exception.'
  return 'Approving is closed for this account now.'
}

function Withdraw({
  approval,
  at,
  onClose,
  onChanged,
}: {
  approval: Approval
  at: string
  onClose: () => void
  onChanged: (next: Decision) => void
}) {
  const reason = useSignal('')
  const problem = useSignal<Problem | undefined>(undefined)
  const missingReason = useSignal(false)
  async function withdraw() {
    missingReason.value = reason.value.trim() === ''
    if (missingReason.value) return
    try {
      onChanged(
        await post<Decision>(`${at}/approvals/${approval.id}/withdrawal`, { reason: reason.value.trim() }),
      )
    } catch (thrown) {
      problem.value = Problem.of(thrown)
    }
  }
  return (
    <Dialog
      open
      heading={`Withdraw the approval of the ${roleWord[approval.role].toLowerCase()}`}
      onClose={onClose}
    >
      <Reason
        label="Reason"
        value={reason.value}
        onType={(text) => (reason.value = text)}
        error={missingReason.value && !reason.value.trim() ? 'Say why; it stays on the record.' : undefined}
      />
      {problem.value && <Wrong problem={problem.value} outcome="Not withdrawn." />}
      <div class="acts">
        <button type="button" class="b main" onClick={() => void withdraw()}>
          Withdraw
        </button>
        <button type="button" class="b" onClick={onClose}>
          Leave it
        </button>
      </div>
    </Dialog>
  )
}

/** Chosen and approved, on paper: a line for each who approves, filled where the approval stands. */
export function Signatures({ decision, zone }: { decision: Decision; zone: string }) {
  const latest = present(decision)
  const choice = chosen(decision)
  return (
    <section class="print-only sign-paper">
      <h2>Chosen and approved</h2>
      {choice ? (
        <p>
          {choice.title}. {decision.reason}
        </p>
      ) : (
        <p class="to-write">
          <span>Chosen</span> <span>Reason</span>
        </p>
      )}
      <div class="sign">
        {decision.approvers.map((r) => {
          const a = latest.find((one) => one.role === r)
          return (
            <div key={r}>
              <b>{roleWord[r]}, date</b>
              {a && (
                <span>
                  <StateWord state={a.state} /> {timeWords(a.at, zone)}, copy code {spaced(a.copyCode)}
                  {a.reasons.map((why) => `; ${why}`).join('')}
                </span>
              )}
            </div>
          )
        })}
        {decision.outsideApprovers.map((name) => (
          <div key={name}>
            <b>{name.charAt(0).toUpperCase() + name.slice(1)}, date</b>
          </div>
        ))}
      </div>
      {latest
        .filter((a) => a.exceptionReason)
        .map((a) => (
          <p key={a.role}>
            <b>Exception by the {roleWord[a.role].toLowerCase()}</b>: {a.exceptionReason}
          </p>
        ))}
    </section>
  )
}
