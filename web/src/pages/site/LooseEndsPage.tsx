import { useResource } from '../../api/resource.ts'
import { Of } from '../../parts/Says.tsx'
import { house as houseLine } from '../../shell/house.ts'
import type { PageProps } from '../../shell/routes.ts'
import { Sheet } from '../../shell/Sheet.tsx'
import { me } from '../../shell/session.ts'
import { dayWords } from '../../units/days.ts'
import { LooseEndList, NewLooseEnd } from './LooseEnds.tsx'
import type { LooseEnd } from './types.ts'

function finding(ends: LooseEnd[]): string {
  const open = ends.filter((e) => !e.closed)
  const overdue = open.filter((e) => e.overdue).length
  if (open.length === 0) return 'No loose end is open.'
  const many = open.length === 1 ? 'One loose end is open' : `${open.length} loose ends are open`
  return overdue === 0
    ? `${many}; none is overdue.`
    : `${many}, ${overdue === open.length ? 'all' : overdue} overdue.`
}

/** Everything that is not done yet, and what was done about the rest. */
export default function LooseEndsPage({ house = '' }: PageProps) {
  const ends = useResource<LooseEnd[]>(`/houses/${encodeURIComponent(house)}/loose-ends`)
  const all = ends.data.value
  const line = houseLine.value
  const today = me.value?.today ?? ''
  return (
    <Sheet
      over={`${house} ${line?.name ?? ''} · loose ends`}
      heading={all ? finding(all) : 'Loose ends'}
      block={[
        ['House', `${house} ${line?.name ?? ''}`],
        ['Sheet', 'Loose ends'],
        ['Record as of', dayWords(today)],
      ]}
    >
      <Of resource={ends}>
        {(items) => (
          <>
            <section aria-labelledby="open">
              <h2 id="open">Open</h2>
              {items.some((e) => !e.closed) ? (
                <LooseEndList items={items.filter((e) => !e.closed)} onChange={() => void ends.reload()} />
              ) : (
                <p class="say">Nothing is open.</p>
              )}
            </section>
            <section aria-labelledby="new" class="no-print">
              <h2 id="new">Something you saw</h2>
              <NewLooseEnd house={house} today={today} onMade={() => void ends.reload()} />
            </section>
            {items.some((e) => e.closed) && (
              <section aria-labelledby="closed">
                <h2 id="closed">Closed</h2>
                <LooseEndList items={items.filter((e) => e.closed)} onChange={() => void ends.reload()} />
              </section>
            )}
          </>
        )}
      </Of>
    </Sheet>
  )
}
