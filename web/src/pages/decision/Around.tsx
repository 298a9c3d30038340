import { useSignal } from '@preact/signals'
import { call, post } from '../../api/http.ts'
import { Problem } from '../../api/problem.ts'
import { Matter, Matters } from '../../parts/lists.tsx'
import { Reason } from '../../parts/Reason.tsx'
import { Wrong } from '../../parts/Says.tsx'
import { StateWord } from '../../parts/Status.tsx'
import { housePath } from '../../record/record.ts'
import type { Decision, OrderLine, OrderState, Reach } from '../../record/types.ts'
import { dayWords } from '../../units/days.ts'
import { OrderWord } from '../change/ReachView.tsx'

const NEXT: [OrderState, string][] = [
  ['ORDERED', 'ordered'],
  ['HELD', 'on hold'],
  ['BOUGHT', 'already bought'],
  ['BUILT', 'already built'],
]

/** What was ordered because of the decision, and how far it has come. */
export function Orders({
  decision,
  at,
  tag,
  onChanged,
}: {
  decision: Decision
  at: string
  tag: string | null
  onChanged: () => void
}) {
  const problem = useSignal<Problem | undefined>(undefined)
  if (decision.orders.length === 0) return null
  const may = decision.actions.includes('change-order')
  async function move(line: OrderLine, state: OrderState) {
    problem.value = undefined
    try {
      await call('PUT', `${at}/orders/${encodeURIComponent(line.id)}`, {
        body: { state, note: line.note },
        ifMatch: tag ?? undefined,
      })
      onChanged()
    } catch (thrown) {
      problem.value = Problem.of(thrown)
      if (problem.value.status === 412) onChanged()
    }
  }
  return (
    <section class="no-print">
      <h2>Orders</h2>
      {problem.value && <Wrong problem={problem.value} outcome="Not changed." />}
      <Matters>
        {decision.orders.map((o) => (
          <Matter key={o.id} mark={<OrderWord state={o.state} />} note={o.note || undefined}>
            {o.title}
            {may && (
              <span class="pick no-print">
                <label for={`order-${o.id}`}>It is</label>
                <select
                  id={`order-${o.id}`}
                  value={o.state}
                  onChange={(e) => void move(o, e.currentTarget.value as OrderState)}
                >
                  {NEXT.map(([state, words]) => (
                    <option key={state} value={state}>
                      {words}
                    </option>
                  ))}
                </select>
              </span>
            )}
          </Matter>
        ))}
      </Matters>
    </section>
  )
}

/** Orders and what it touches, as the printed sheet has them: a line each. */
export function HangsOnIt({ decision, reach }: { decision: Decision; reach: Reach | undefined }) {
  if (decision.orders.length === 0 && decision.arrows.length === 0) return null
  return (
    <section class="print-only">
      <h2>What hangs on it</h2>
      <table class="t">
        <tbody>
          {decision.orders.map((o) => (
            <tr key={o.id}>
              <th scope="row">Order: {o.title}</th>
              <td>
                <OrderWord state={o.state} />
              </td>
              <td>{o.note}</td>
            </tr>
          ))}
          {decision.arrows.map((a) => (
            <tr key={a.to}>
              <th scope="row">{a.title}</th>
              <td>
                <TouchWord arrow={a} decision={decision} reach={reach} />
              </td>
              <td>{a.because}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}

/** How another decision stands because of this one. */
function TouchWord({
  arrow,
  decision,
  reach,
}: {
  arrow: Decision['arrows'][number]
  decision: Decision
  reach: Reach | undefined
}) {
  const now = reach?.askedNow.find((d) => d.code === arrow.to)
  if (now) return <StateWord state={now.state} />
  const later = reach?.askedLater.some((d) => d.code === arrow.to && d.when === decision.code)
  if (later) return <StateWord state="WAITING">Asked later</StateWord>
  return <span class="note">{arrow.hard ? 'lapses with it' : 'looked at again'}</span>
}

/** What this decision touches: asked now, asked later when it moves, and the other arrows. */
export function Touches({
  decision,
  house,
  reach,
}: {
  decision: Decision
  house: string
  reach: Reach | undefined
}) {
  if (decision.arrows.length === 0) return null
  return (
    <section class="no-print">
      <h2>What it touches</h2>
      <Matters>
        {decision.arrows.map((a) => (
          <Matter
            key={a.to}
            mark={<TouchWord arrow={a} decision={decision} reach={reach} />}
            note={`${a.because} (${a.trigger})`}
          >
            {a.inHouse ? <a href={`${housePath(house)}/decisions/${a.to}`}>{a.title}</a> : a.title}
            {!a.inHouse && <span class="note"> (not written for this house yet)</span>}
          </Matter>
        ))}
      </Matters>
    </section>
  )
}

/** What people said about it; a remark stays on the record. */
export function Said({
  decision,
  at,
  zone,
  onSaid,
}: {
  decision: Decision
  at: string
  zone: string
  onSaid: (next: Decision) => void
}) {
  const text = useSignal('')
  const problem = useSignal<Problem | undefined>(undefined)
  const busy = useSignal(false)
  async function say() {
    if (!text.value.trim()) return
    busy.value = true
    problem.value = undefined
    try {
      onSaid(await post<Decision>(`${at}/comments`, { text: text.value.trim() }))
      text.value = ''
    } catch (thrown) {
      problem.value = Problem.of(thrown)
    } finally {
      busy.value = false
    }
  }
  const may = decision.actions.includes('comment')
  if (decision.comments.length === 0 && !may) return null
  return (
    <section class="no-print">
      <h2>Said</h2>
      <div class="said">
        {decision.comments.map((c) => (
          <blockquote key={c.id}>
            <p>{c.text}</p>
            <footer>
              {c.person}, {dayWords(c.at, zone)}
            </footer>
          </blockquote>
        ))}
      </div>
      {may && (
        <div class="no-print narrow">
          <Reason
            label="Say something about it"
            value={text.value}
            onType={(typed) => (text.value = typed)}
          />
          {problem.value && <Wrong problem={problem.value} outcome="Not said." />}
          <div class="acts">
            <button
              type="button"
              class="b"
              disabled={busy.value || !text.value.trim()}
              onClick={() => void say()}
            >
              Put it on the record
            </button>
          </div>
        </div>
      )}
    </section>
  )
}
