import { useResource } from '../../api/resource.ts'
import { Of } from '../../parts/Says.tsx'
import { StateWord, Status } from '../../parts/Status.tsx'
import { house as houseLine } from '../../shell/house.ts'
import type { PageProps } from '../../shell/routes.ts'
import { Sheet } from '../../shell/Sheet.tsx'
import { me } from '../../shell/session.ts'
import { dayWords, timeWords } from '../../units/days.ts'
import type { SheetListed } from './types.ts'

function finding(sheets: SheetListed[]): string {
  const measured = sheets.filter((s) => s.measurementCount > 0)
  const failed = measured.filter((s) => s.verdict === 'FAILS').length
  if (measured.length === 0) return 'Nothing is set to work yet.'
  if (failed > 0)
    return failed === 1 ? 'One sheet does not fit the design.' : `${failed} sheets do not fit the design.`
  const open = sheets.length - measured.filter((s) => s.verdict === 'PASSES').length
  return open === 0
    ? 'Every sheet passes.'
    : open === 1
      ? 'One sheet is still to do.'
      : `${open} sheets are still to do.`
}

/** Setting to work: the sheets of a house and how each stands. */
export default function SheetsPage({ house = '' }: PageProps) {
  const sheets = useResource<SheetListed[]>(`/houses/${encodeURIComponent(house)}/setting-to-work`)
  const line = houseLine.value
  const all = sheets.data.value
  return (
    <Sheet
      over={`${house} ${line?.name ?? ''} · setting to work (commissioning)`}
      heading={all ? finding(all) : 'Setting to work'}
      block={[
        ['House', `${house} ${line?.name ?? ''}`],
        ['Sheet', 'Setting to work'],
        ['Record as of', dayWords(me.value?.today)],
      ]}
    >
      <Of resource={sheets}>
        {(list) => (
          <ul class="matters">
            {list.map((s) => (
              <li key={s.sheet}>
                <div>{s.verdict ? <StateWord state={s.verdict} /> : <Status is="open">Not yet</Status>}</div>
                <div>
                  <p>
                    <a class="big-link" href={`/houses/${house}/setting-to-work/${s.sheet}`}>
                      {s.title}
                    </a>
                  </p>
                  <p class="note">
                    {s.measurementCount === 0
                      ? 'nothing measured'
                      : `${s.occasion === 'AS_LEFT' ? 'as-left' : 'as-found'}, ${timeWords(s.takenAt ?? undefined, line?.timeZone)}, ${s.signed ? 'signed' : 'not signed'} · ${s.measurementCount === 1 ? 'one measurement' : `${s.measurementCount} measurements`}`}
                  </p>
                </div>
              </li>
            ))}
          </ul>
        )}
      </Of>
    </Sheet>
  )
}
