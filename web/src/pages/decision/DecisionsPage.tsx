import { useResource } from '../../api/resource.ts'
import { Matter, Matters } from '../../parts/lists.tsx'
import { NothingYet, Of } from '../../parts/Says.tsx'
import { StateWord } from '../../parts/Status.tsx'
import { housePath } from '../../record/record.ts'
import type { Decision, House } from '../../record/types.ts'
import type { PageProps } from '../../shell/routes.ts'
import { Sheet } from '../../shell/Sheet.tsx'
import { me } from '../../shell/session.ts'
import { dayWords } from '../../units/days.ts'
import { countWord, stateLine } from './words.ts'

const ORDER: Decision['state'][] = ['LAPSED', 'FRESH_LOOK', 'PARTLY_APPROVED', 'OPEN', 'APPROVED']

/** Every decision of a house by its subject, the ones that need somebody first. */
export default function DecisionsPage({ house = '' }: PageProps) {
  const line = useResource<House>(housePath(house))
  const decisions = useResource<Decision[]>(`${housePath(house)}/decisions`)
  const list = decisions.data.value
  return (
    <Sheet
      over="Decisions"
      heading={list ? finding(list) : 'Decisions'}
      title={`Decisions · ${house}`}
      block={[
        ['House', line.data.value ? `${house} ${line.data.value.name}` : house],
        ['Sheet', 'Decisions'],
        ['Record as of', dayWords(me.value?.today)],
        ['Decisions', String(list?.length ?? '')],
      ]}
    >
      <Of resource={decisions}>
        {(all) =>
          all.length === 0 ? (
            <NothingYet>No decision is written for this house yet.</NothingYet>
          ) : (
            [...new Set(all.map((d) => d.group))].map((group) => (
              <section key={group}>
                <h2>{group}</h2>
                <Matters>
                  {all
                    .filter((d) => d.group === group)
                    .sort((a, b) => ORDER.indexOf(a.state) - ORDER.indexOf(b.state))
                    .map((d) => (
                      <Matter
                        key={d.code}
                        mark={<StateWord state={d.state} />}
                        note={stateLine(d) || d.reason}
                      >
                        <a href={`${housePath(house)}/decisions/${d.code}`}>{d.title}</a>{' '}
                        {d.safetyList && <span class="tag">safety list</span>}
                      </Matter>
                    ))}
                </Matters>
              </section>
            ))
          )
        }
      </Of>
    </Sheet>
  )
}

function finding(decisions: Decision[]): string {
  const count = (state: Decision['state']) => decisions.filter((d) => d.state === state).length
  const parts = [
    [count('LAPSED'), 'has lapsed', 'have lapsed'],
    [count('FRESH_LOOK'), 'needs a fresh look', 'need a fresh look'],
    [count('OPEN') + count('PARTLY_APPROVED'), 'is open', 'are open'],
  ] as const
  const said = parts.filter(([n]) => n > 0).map(([n, one, many]) => countWord(n, one, many))
  if (decisions.length === 0) return 'No decision is written yet.'
  if (said.length === 0) return 'Every decision is approved, and every approval stands.'
  const text = said.join(', ')
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`
}
