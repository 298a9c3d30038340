import { useList, useResource } from '../../api/resource.ts'
import { NothingYet, Of } from '../../parts/Says.tsx'
import type { PageProps } from '../../shell/routes.ts'
import { Sheet } from '../../shell/Sheet.tsx'
import { me } from '../../shell/session.ts'
import { dayWords } from '../../units/days.ts'
import { capital, type FilterFollowUp, type RoundList, shortDay } from './types.ts'
import { VisitSheet } from './VisitSheet.tsx'

/** The visit sheets of one round, a page of paper each. */
export default function RoundPage({ round = '' }: PageProps) {
  const rounds = useResource<RoundList>('/rounds')
  const filters = useList<FilterFollowUp>('/filters')
  const today = me.value?.today ?? ''
  const one = rounds.data.value?.kept.find((r) => r.id === round)
  const all = filters.data.value?.items ?? []
  return (
    <Sheet
      over="Visit sheets"
      heading={one ? `${capital(one.place)}, ${shortDay(one.day, today)}` : 'Round'}
      block={[
        ['Firm', me.value?.firmName ?? ''],
        ['Sheet', 'Visit sheets'],
        ['Record as of', dayWords(today)],
      ]}
    >
      <Of resource={rounds}>
        {() =>
          one ? (
            <>
              <p class="acts no-print">
                <button type="button" class="b main" onClick={() => print()}>
                  Print {one.visits.length === 1 ? 'the sheet' : `${one.visits.length} sheets`}
                </button>
                <a class="b" href="/rounds">
                  To the rounds
                </a>
              </p>
              {one.visits.map((v) => (
                <section key={v.id} class="one-visit" aria-label={v.house}>
                  <h2>
                    <a href={`/visits/${v.id}`}>
                      {v.house} {all.find((f) => f.house === v.house)?.houseName}
                    </a>
                  </h2>
                  <VisitSheet
                    visit={v}
                    filters={all.filter((f) => f.house === v.house && v.filters.includes(f.filter))}
                  />
                </section>
              ))}
            </>
          ) : (
            <NothingYet>
              This round is not among the booked ones; its visits may be closed.{' '}
              <a href="/rounds">To the rounds</a>
            </NothingYet>
          )
        }
      </Of>
    </Sheet>
  )
}
