import { useList, useResource } from '../../api/resource.ts'
import { Of } from '../../parts/Says.tsx'
import type { PageProps } from '../../shell/routes.ts'
import { Sheet } from '../../shell/Sheet.tsx'
import { me } from '../../shell/session.ts'
import { dayWords } from '../../units/days.ts'
import type { FilterFollowUp, Visit } from './types.ts'
import { VisitClosing, VisitSheet, VisitState } from './VisitSheet.tsx'

/** One visit: its sheet, and its closing. */
export default function VisitPage({ visit = '' }: PageProps) {
  const one = useResource<Visit>(`/visits/${encodeURIComponent(visit)}`)
  const filters = useList<FilterFollowUp>('/filters')
  const today = me.value?.today ?? ''
  const v = one.data.value
  const of = (filters.data.value?.items ?? []).filter(
    (f) => f.house === v?.house && v.filters.includes(f.filter),
  )
  const name = (filters.data.value?.items ?? []).find((f) => f.house === v?.house)?.houseName ?? ''
  return (
    <Sheet
      over="Visit sheet"
      heading={v ? `${v.house} ${name}: ${v.label}` : 'Visit'}
      block={[
        ['Firm', me.value?.firmName ?? ''],
        ['House', v?.house ?? ''],
        ['Sheet', 'Visit'],
        ['Record as of', dayWords(today)],
      ]}
    >
      <Of resource={one}>
        {(data) => (
          <>
            <p>
              <VisitState visit={data} today={today} />
            </p>
            <VisitSheet visit={data} filters={of} />
            {data.actions.includes('close') && filters.data.value && (
              <section class="no-print" aria-labelledby="close">
                <h2 id="close">Close the visit</h2>
                <VisitClosing
                  visit={data}
                  filters={of}
                  today={today}
                  onClosed={(closed) => {
                    one.set(closed)
                    void filters.reload()
                  }}
                />
              </section>
            )}
          </>
        )}
      </Of>
      <p class="acts no-print">
        <button type="button" class="b" onClick={() => print()}>
          Print this sheet
        </button>
        <a class="b" href="/rounds">
          To the rounds
        </a>
      </p>
    </Sheet>
  )
}
