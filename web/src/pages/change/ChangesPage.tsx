import { useSignal } from '@preact/signals'
import { useResource } from '../../api/resource.ts'
import { Matter, Matters } from '../../parts/lists.tsx'
import { NothingYet, Of, Waiting, Wrong } from '../../parts/Says.tsx'
import { Status } from '../../parts/Status.tsx'
import { housePath } from '../../record/record.ts'
import type { ChangeEntry, Decision, House, Page, Reach } from '../../record/types.ts'
import type { PageProps } from '../../shell/routes.ts'
import { Sheet } from '../../shell/Sheet.tsx'
import { me } from '../../shell/session.ts'
import { dayWords, timeWords } from '../../units/days.ts'
import { ChangeLine } from './ChangeLine.tsx'
import { headsOf, ReachView } from './ReachView.tsx'
import { WaysOn } from './WaysOn.tsx'
import { computedIn, finding, meaning } from './words.ts'

/** What today's record reaches against what was approved, the ways on, and everything that was ever changed. */
export default function ChangesPage({ house = '' }: PageProps) {
  const line = useResource<House>(housePath(house))
  const reach = useResource<Reach>(`${housePath(house)}/reach`)
  const decisions = useResource<Decision[]>(`${housePath(house)}/decisions`)
  const changes = useResource<Page<ChangeEntry>>(`${housePath(house)}/changes?limit=100`)
  const said = useSignal('')
  const [h, r, all] = [line.data.value, reach.data.value, decisions.data.value]
  const zone = h?.timeZone ?? 'UTC'
  const first = r?.changedValues.find((v) => v.who)
  const concerned = r ? new Set([...r.moved, ...r.askedNow].map((d) => d.code)) : new Set<string>()
  const ways = (all ?? []).filter(
    (d) => concerned.has(d.code) && d.alternatives.some((a) => a.changes.length > 0),
  )
  function again() {
    for (const one of [reach, decisions, changes]) void one.reload()
  }
  return (
    <Sheet
      over={
        first
          ? `Change of ${timeWords(first.when ?? undefined, zone)} · ${first.who} · reason: ${first.reason}`
          : 'Changes'
      }
      heading={r ? finding(r) : 'Changes'}
      title={`Changes · ${house}`}
      lead={r ? meaning(r) : undefined}
      block={[
        ['House', h ? `${h.id} ${h.name}` : house],
        ['Sheet', 'Changes'],
        ['Record as of', dayWords(me.value?.today)],
        ['Computed in', r ? computedIn(r) : ''],
        ['Asked now', r ? String(new Set(r.askedNow.flatMap((d) => d.asked)).size) : ''],
      ]}
    >
      <p role="status" class="say">
        {said.value}
      </p>
      {reach.problem.value && <Wrong problem={reach.problem.value} onAgain={again} />}
      {!r && !reach.problem.value && <Waiting what="Computing what the record reaches." />}
      {r && <ReachView reach={r} house={house} zone={zone} heads={headsOf(r)} />}
      {ways.map((d) => (
        <WaysOn
          key={d.code}
          decision={d}
          house={house}
          back={`${housePath(house)}/changes`}
          backWords="Back to the changes"
          onTaken={(taken) => {
            said.value = `Taken. ${meaning(taken) || 'Everything that rests on it was computed anew.'}`
            window.scrollTo(0, 0)
            again()
          }}
        />
      ))}
      <section>
        <h2>Everything that changed</h2>
        <Of resource={changes}>
          {({ items }) =>
            items.length === 0 ? (
              <NothingYet>Nothing was saved yet.</NothingYet>
            ) : (
              <Matters>
                {items.map((c) => (
                  <Matter
                    key={`${c.kind} ${c.key} ${c.number} ${c.when}`}
                    mark={
                      <span class="note">
                        {timeWords(c.when, zone)}
                        <br />
                        {c.who}
                        {c.open && (
                          <>
                            <br />
                            <Status is="open">Open</Status>
                          </>
                        )}
                      </span>
                    }
                    note={c.why}
                  >
                    <ChangeLine change={c} house={house} />
                  </Matter>
                ))}
              </Matters>
            )
          }
        </Of>
      </section>
    </Sheet>
  )
}
