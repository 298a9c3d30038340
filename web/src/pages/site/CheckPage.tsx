import { useResource } from '../../api/resource.ts'
import { Of } from '../../parts/Says.tsx'
import { house as houseLine } from '../../shell/house.ts'
import type { PageProps } from '../../shell/routes.ts'
import { Sheet } from '../../shell/Sheet.tsx'
import { me } from '../../shell/session.ts'
import { dayWords } from '../../units/days.ts'
import { CheckBody, StopBox } from './CheckBody.tsx'
import type { Check } from './types.ts'

/** One cover check. */
export default function CheckPage({ house = '', check = '' }: PageProps) {
  const one = useResource<Check>(
    `/houses/${encodeURIComponent(house)}/cover-checks/${encodeURIComponent(check)}`,
  )
  const data = one.data.value
  const line = houseLine.value
  return (
    <Sheet
      kind="site"
      over={
        <>
          {house} {line?.name} · <a href={`/houses/${house}/site`}>site, today</a>
        </>
      }
      heading={
        data
          ? data.state === 'SIGNED'
            ? `${data.title}: may be covered.`
            : data.state === 'TO_SIGN'
              ? `${data.title}: ready to sign.`
              : data.title
          : 'Cover check'
      }
      block={[
        ['House', `${house} ${line?.name ?? ''}`],
        ['Sheet', `Cover check ${data?.number ?? ''}`],
        ['Record as of', dayWords(me.value?.today)],
      ]}
    >
      <Of resource={one}>
        {(c) => (
          <>
            <p class="progress">
              Cover check {c.number} · {c.answeredCount} of {c.rowCount} rows answered · covered by{' '}
              {c.coveredBy}
            </p>
            <StopBox check={c} />
            <CheckBody check={c} resource={one} zone={line?.timeZone} />
          </>
        )}
      </Of>
    </Sheet>
  )
}
