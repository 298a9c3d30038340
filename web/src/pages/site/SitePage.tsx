import { useSignal } from '@preact/signals'
import { post } from '../../api/http.ts'
import { Problem } from '../../api/problem.ts'
import { useResource } from '../../api/resource.ts'
import { Of, Wrong } from '../../parts/Says.tsx'
import { Status } from '../../parts/Status.tsx'
import { house as houseLine } from '../../shell/house.ts'
import type { PageProps } from '../../shell/routes.ts'
import { Sheet } from '../../shell/Sheet.tsx'
import { me } from '../../shell/session.ts'
import { dayWords } from '../../units/days.ts'
import { CheckBody, CheckStateWord, StopBox } from './CheckBody.tsx'
import { Clocks } from './Clocks.tsx'
import { LooseEndList } from './LooseEnds.tsx'
import type { Check, CheckListed, ChecksOfHouse, LooseEnd } from './types.ts'

const hrefOf = (house: string, check: CheckListed) => `/houses/${house}/cover-checks/${check.code}`

/** The check that today is about: one that is stopped, else one that somebody began, else the next one. */
function todays(checks: CheckListed[]): CheckListed | undefined {
  const open = checks.filter((c) => c.state !== 'SIGNED')
  return open.find((c) => c.state === 'STOPPED') ?? open.find((c) => c.answeredCount > 0) ?? open[0]
}

function finding(checks: CheckListed[]): string {
  const stopped = checks.filter((c) => c.state === 'STOPPED')
  if (stopped.length === 1) return `${stopped[0]!.title}: stopped.`
  if (stopped.length > 1)
    return `${stopped.map((c, i) => (i === 0 ? c.title : small(c.title))).join('; ')}: stopped.`
  const now = todays(checks)
  if (!now) return checks.length === 0 ? 'No cover check yet.' : 'Every cover check is signed.'
  return now.state === 'TO_SIGN' ? `${now.title}: ready to sign.` : `Today: ${small(now.title)}.`
}

const small = (title: string) => title.charAt(0).toLowerCase() + title.slice(1)

/** What the site lead needs today, in one hand: stops, the check in work, clocks, loose ends. */
export default function SitePage({ house = '' }: PageProps) {
  const base = `/houses/${encodeURIComponent(house)}`
  const checks = useResource<ChecksOfHouse>(`${base}/cover-checks`)
  const all = checks.data.value?.checks
  const now = all && todays(all)
  const line = houseLine.value
  return (
    <Sheet
      kind="site"
      over={`${house}${line ? ` ${line.name}` : ''} · ${dayWords(me.value?.today)}`}
      heading={all ? finding(all) : 'Site, today'}
      block={[
        ['House', `${house} ${line?.name ?? ''}`],
        ['Sheet', 'Site, today'],
        ['Record as of', dayWords(me.value?.today)],
      ]}
    >
      <Of resource={checks}>
        {(data) => (
          <>
            {data.checks.map((c) => (
              <StopBox key={c.code} check={c} href={c.code === now?.code ? undefined : hrefOf(house, c)} />
            ))}
            {now ? <Now key={now.code} house={house} check={now} onChange={checks.reload} /> : null}
            <section aria-labelledby="all-checks">
              <h2 id="all-checks">All cover checks</h2>
              <ul class="check-list">
                {data.checks.map((c) => (
                  <li key={c.code}>
                    <a href={hrefOf(house, c)}>
                      <span>
                        <b>{c.title}</b>
                        <span class="note">
                          Cover check {c.number} · {c.answeredCount} of {c.rowCount} rows answered
                        </span>
                      </span>
                      <CheckStateWord check={c} />
                    </a>
                  </li>
                ))}
              </ul>
              {data.actions.includes('make-cover-check') && (
                <MakeCheck house={house} offered={data.notYetMade} onMade={checks.reload} />
              )}
            </section>
          </>
        )}
      </Of>
      <Clocks house={house} />
      <OpenEnds house={house} />
    </Sheet>
  )
}

function Now({
  house,
  check,
  onChange,
}: {
  house: string
  check: CheckListed
  onChange: () => Promise<void>
}) {
  const one = useResource<Check>(`/houses/${encodeURIComponent(house)}/cover-checks/${check.code}`)
  const zone = houseLine.value?.timeZone
  const both = { ...one, reload: async () => void (await Promise.all([one.reload(), onChange()])) }
  return (
    <Of resource={one}>
      {(data) => (
        <div class="now">
          <h2 class="vh">{data.title}</h2>
          <p class="progress">
            Cover check {data.number} · {data.answeredCount} of {data.rowCount} rows answered · covered by{' '}
            {data.coveredBy}
          </p>
          <CheckBody check={data} resource={both} zone={zone} />
        </div>
      )}
    </Of>
  )
}

function MakeCheck({
  house,
  offered,
  onMade,
}: {
  house: string
  offered: ChecksOfHouse['notYetMade']
  onMade: () => Promise<void>
}) {
  const problem = useSignal<Problem | undefined>(undefined)
  async function make(code: string) {
    problem.value = undefined
    try {
      await post(`/houses/${encodeURIComponent(house)}/cover-checks`, { code })
      await onMade()
    } catch (thrown) {
      problem.value = Problem.of(thrown)
    }
  }
  if (offered.length === 0) return null
  return (
    <details class="open-up">
      <summary>
        <span>Begin another cover check</span>
      </summary>
      <div class="inside stack">
        {offered.map((o) => (
          <button key={o.code} type="button" class="b" onClick={() => void make(o.code)}>
            {o.title}, {o.rowCount} rows
          </button>
        ))}
        {problem.value && <Wrong problem={problem.value} />}
      </div>
    </details>
  )
}

function OpenEnds({ house }: { house: string }) {
  const ends = useResource<LooseEnd[]>(`/houses/${encodeURIComponent(house)}/loose-ends`)
  return (
    <section aria-labelledby="ends">
      <h2 id="ends">Loose ends</h2>
      <Of resource={ends}>
        {(all) => {
          const open = all.filter((e) => !e.closed)
          return (
            <>
              {open.length === 0 ? (
                <p>
                  <Status is="stands">None open</Status>
                </p>
              ) : (
                <LooseEndList items={open} onChange={() => void ends.reload()} />
              )}
              <p>
                <a class="b" href={`/houses/${house}/loose-ends`}>
                  All loose ends
                </a>
              </p>
            </>
          )
        }}
      </Of>
    </section>
  )
}
