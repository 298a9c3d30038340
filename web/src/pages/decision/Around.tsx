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
  const now = new Map((reach?.askedNow ?? []).map((d) => [d.code, d.state]))
  const later = new Set((reach?.askedLater ?? []).filter((d) => d.when === decision.code).map((d) => d.code))
  const mark = (to: string) =>
    now.has(to) ? (
      <StateWord state={now.get(to)!} />
    ) : later.has(to) ? (
      <StateWord state="WAITING">Asked later</StateWord>
    ) : (
      <span class="note">
        {decision.arrows.find((a) => a.to === to)?.hard ? 'lapses with it' : 'looked at again'}
      </span>
    )
  return (
    <section class="no-print">
      <h2>What it touches</h2>
      <Matters>
        {decision.arrows.map((a) => (
          <Matter key={a.to} mark={mark(a.to)} note={a.because}>
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
