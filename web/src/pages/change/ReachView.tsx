import type { ComponentChildren } from 'preact'
import { Chain, type Link } from '../../parts/Chain.tsx'
import { Matter, Matters } from '../../parts/lists.tsx'
import { StateWord, Status } from '../../parts/Status.tsx'
import { OldAndNew } from '../../record/Difference.tsx'
import { housePath } from '../../record/record.ts'
import type { ChainOutput, ChangedValue, OrderState, Reach, ReachedDecision } from '../../record/types.ts'
import { labelWords, numberIn, valueWords } from '../../record/values.ts'
import { dayWords } from '../../units/days.ts'
import { rolesWord } from '../decision/words.ts'

interface ReachViewProps {
  reach: Reach
  house: string
  zone: string
  /** Over the columns: what the old numbers are, and the new ones. */
  heads: { old: string; now: string }
}

/** What a change reaches: the numbers along the chain, what no longer holds, whom it asks, and the orders. */
export function ReachView({ reach, house, zone, heads }: ReachViewProps) {
  const links = linksOf(reach, zone)
  const words = reach.changedValues.filter((v) => numberIn(v.new) === null && numberIn(v.old) === null)
  const refusals = reach.chain.filter((link) => link.refusal)
  return (
    <>
      {links.length > 0 && <Chain label="What the change reaches, in order" links={links} heads={heads} />}
      {words.length > 0 && (
        <ul class="typed">
          {words.map((v) => (
            <li key={v.path} class="rev">
              {labelWords(v.label)} <OldAndNew old={v.old} now={v.new} unit={v.unit} />
              <span class="from">{typedBy(v, zone)}</span>
            </li>
          ))}
        </ul>
      )}
      {refusals.map((link) => (
        <p key={link.proofKey} class="say wrong">
          <b>{link.title} cannot be computed.</b> {link.refusal}
        </p>
      ))}
      <Asked reach={reach} house={house} />
    </>
  )
}

/** First what was changed, then every number of every proof below it. */
function linksOf(reach: Reach, zone: string): Link[] {
  const changed = reach.changedValues
    .filter((v) => v.unit && (numberIn(v.new) !== null || numberIn(v.old) !== null))
    .map(
      (v): Link => ({
        name: labelWords(v.label),
        from: typedBy(v, zone),
        unit: v.unit!,
        old: numberIn(v.old),
        now: numberIn(v.new),
      }),
    )
  const computed = reach.chain.flatMap((link) =>
    link.outputs
      .filter((o) => o.leading && o.unit)
      .map(
        (o): Link => ({
          name: o.label,
          from: `${link.calculation ? 'computed' : 'submitted'} · ${link.title}`,
          unit: o.unit!,
          old: numberIn(o.old),
          now: numberIn(o.new),
          limit: numberIn(o.limit),
          torn: o.verdict === 'FAILS',
          says: verdictOf(o),
        }),
      ),
  )
  return [...changed, ...computed]
}

function verdictOf(output: ChainOutput): ComponentChildren {
  if (!output.verdict) return undefined
  return <StateWord state={output.verdict} />
}

function typedBy(value: ChangedValue, zone: string): string {
  if (!value.who) return 'in this trial, not saved'
  return `typed by ${value.who}, ${dayWords(value.when ?? undefined, zone)}${value.reason ? `: ${value.reason}` : ''}`
}

const ORDER_WORD: Record<OrderState, string> = {
  ORDERED: 'Ordered',
  HELD: 'On hold',
  BOUGHT: 'Already bought',
  BUILT: 'Already built',
}

/** What no longer holds, and whom it asks: now, and later. */
function Asked({ reach, house }: { reach: Reach; house: string }) {
  const { askedLater, orders, quiet } = reach
  const askedNow = [...reach.askedNow].sort(
    (a, b) => Number(b.state === 'LAPSED') - Number(a.state === 'LAPSED'),
  )
  if (askedNow.length + askedLater.length + quiet.length + orders.length === 0) return null
  const titles = new Map([...askedNow, ...reach.moved].map((d) => [d.code, d.title]))
  const groups = [...new Set(askedLater.map((d) => d.when))]
  return (
    <section>
      <h2>What no longer holds, and whom it asks</h2>
      <div class="reach">
        <div>
          <h3 class="ask">Asked now</h3>
          {askedNow.length === 0 ? (
            <p class="say">Nobody.</p>
          ) : (
            <Matters>
              {askedNow.map((d) => (
                <Reached key={d.code} decision={d} house={house} />
              ))}
            </Matters>
          )}
        </div>
        <div class="later">
          {groups.map((when) => (
            <div key={String(when)}>
              <h3 class="ask">
                Asked later{when ? `, when ${lower(titles.get(when) ?? when)} is settled` : ''}
              </h3>
              <Matters>
                {askedLater
                  .filter((d) => d.when === when)
                  .map((d) => (
                    <Reached key={d.code} decision={d} house={house} />
                  ))}
              </Matters>
            </div>
          ))}
          {quiet.length > 0 && (
            <>
              <h3 class="ask">Not asked: within its band</h3>
              <Matters>
                {quiet.map((q) => (
                  <Matter
                    key={`${q.from} ${q.to} ${q.sentence}`}
                    mark={<Status is="note">Quiet</Status>}
                    note={q.sentence}
                  >
                    <a href={`${housePath(house)}/decisions/${q.to}`}>{q.title}</a>
                  </Matter>
                ))}
              </Matters>
            </>
          )}
          {orders.length > 0 && (
            <>
              <h3>Orders</h3>
              <Matters>
                {orders.map((o) => (
                  <Matter
                    key={`${o.decision} ${o.id}`}
                    mark={<OrderWord state={o.state} />}
                    note={o.note || undefined}
                  >
                    <a href={`${housePath(house)}/decisions/${o.decision}`}>{o.title}</a>
                  </Matter>
                ))}
              </Matters>
            </>
          )}
        </div>
      </div>
    </section>
  )
}

export function OrderWord({ state }: { state: OrderState }) {
  if (state === 'HELD') return <StateWord state="HELD" />
  return <Status is={state === 'ORDERED' ? 'open' : 'stands'}>{ORDER_WORD[state]}</Status>
}

function Reached({ decision: d, house }: { decision: ReachedDecision; house: string }) {
  const asked = [rolesWord(d.asked), ...d.outside].filter(Boolean).join(', ')
  return (
    <Matter mark={<StateWord state={d.state} />}>
      <a href={`${housePath(house)}/decisions/${d.code}`}>{d.title}</a>
      {d.again && ', again'} {d.safetyList && <span class="tag">safety list</span>}{' '}
      {d.alreadyBought && <span class="tag">already bought</span>}{' '}
      {d.alreadyBuilt && <span class="tag">already built</span>}
      {d.because.map((why) => (
        <span key={why} class="from">
          {why}
        </span>
      ))}
      {d.state !== 'WAITING' && asked && (
        <span class="ask block">
          Asked: {asked}
          {d.dueOn ? `, by ${dayWords(d.dueOn)}` : ''}
        </span>
      )}
    </Matter>
  )
}

const lower = (text: string) => text.charAt(0).toLowerCase() + text.slice(1)

/** What "old" and "new" are over the columns of the chain. */
export function headsOf(reach: Reach): { old: string; now: string } {
  const issues = [...new Set(reach.chain.map((link) => link.issue))]
  const first = reach.changedValues[0]
  return {
    old: issues.length === 1 ? `relied on, issue ${issues[0]}` : 'relied on',
    now:
      reach.changedValues.length === 1 && first
        ? `with ${valueWords(first.new, first.unit)}`
        : reach.title
          ? 'in this trial'
          : 'today',
  }
}
