import { useSignal } from '@preact/signals'
import { post } from '../../api/http.ts'
import { Problem } from '../../api/problem.ts'
import type { Resource } from '../../api/resource.ts'
import { waiting } from '../../offline/queue.ts'
import { Cautions, spaced } from '../../parts/Result.tsx'
import { Wrong } from '../../parts/Says.tsx'
import { ShapeMark, Status } from '../../parts/Status.tsx'
import { type Role, roleWord } from '../../shell/session.ts'
import { timeWords } from '../../units/days.ts'
import { usePending } from './answers.ts'
import { CheckRows } from './CheckRows.tsx'
import { type Check, type CheckListed, type CheckState, capital, type RowStop } from './types.ts'

const SHAPE: Record<CheckState, 'stop' | 'open' | 'look' | 'stands'> = {
  STOPPED: 'stop',
  OPEN: 'open',
  TO_SIGN: 'look',
  SIGNED: 'stands',
}

export function CheckStateWord({ check }: { check: CheckListed }) {
  return <Status is={SHAPE[check.state]}>{capital(check.stateLabel)}</Status>
}

const nameOf = (s: RowStop) => s.place ?? s.lookAt

const isLookedAt = (s: RowStop) => s.reason !== 'Nobody has looked yet.'

/** What is not right and stops covering, each with its number and its reason. */
export function StopBox({ check, href }: { check: CheckListed; href?: string }) {
  const title = check.title.charAt(0).toLowerCase() + check.title.slice(1)
  if (check.state !== 'STOPPED') return null
  const shut = check.stops.filter((s) => isLookedAt(s) && !s.reason.startsWith('Photos are missing'))
  return (
    <div class="stop">
      <p class="big">
        <ShapeMark is="stop" />
        <span>
          {href || shut.length !== 1 ? `Do not cover: ${title}` : `Do not cover: ${nameOf(shut[0]!)}`}
        </span>
      </p>
      <ul>
        {shut.map((s) => (
          <li key={s.row}>
            {(href || shut.length > 1) && <b>{capital(nameOf(s))}</b>} {s.reason}
          </li>
        ))}
        {check.lapsed.map((l) => (
          <li key={l.decision}>
            <b>The approval of "{l.title}" no longer stands.</b> {l.because}
          </li>
        ))}
      </ul>
      {href && (
        <p>
          <a class="b" href={href}>
            Open cover check {check.number}
          </a>
        </p>
      )}
    </div>
  )
}

/** A cover check with its rows, its signing, and what can hurt. */
export function CheckBody({
  check,
  resource,
  zone,
}: {
  check: Check
  resource: Resource<Check>
  zone?: string
}) {
  const { pending, add } = usePending(check, resource.reload)
  return (
    <>
      <CheckRows
        check={check}
        zone={zone}
        pending={pending}
        onAnswer={add}
        onCheck={(next) => resource.set(next)}
      />
      <Signing check={check} resource={resource} zone={zone} />
      <Cautions cautions={check.cautions} />
    </>
  )
}

function Signing({ check, resource, zone }: { check: Check; resource: Resource<Check>; zone?: string }) {
  const problem = useSignal<Problem | undefined>(undefined)
  const busy = useSignal(false)
  const may = check.actions.includes('sign')
  const waits = waiting.value > 0
  async function sign() {
    busy.value = true
    problem.value = undefined
    try {
      resource.set(
        await post<Check>(
          `/houses/${encodeURIComponent(check.houseId)}/cover-checks/${encodeURIComponent(check.code)}/signature`,
          { copyCode: check.copyCode },
        ),
      )
    } catch (thrown) {
      problem.value = Problem.of(thrown)
      if (problem.value.status === 409) await resource.reload()
    } finally {
      busy.value = false
    }
  }
  const rows = (problem.value?.body.rows as RowStop[] | undefined) ?? (problem.value ? [] : check.stops)
  const untouched = rows.filter((s) => !isLookedAt(s))
  return (
    <section class="check signing" aria-label="Signing">
      <h2>Signing</h2>
      {check.signatures.map((s) => (
        <p key={s.role + s.at} class="note">
          <Status is={s.stands ? 'stands' : 'lapsed'}>
            {s.stands ? 'Signed' : 'Signed before a row changed'}
          </Status>{' '}
          {s.person}, {roleWord[s.role as Role]?.toLowerCase()}, {timeWords(s.at, zone)}, copy code{' '}
          {spaced(s.copyCode)}
        </p>
      ))}
      {check.state !== 'SIGNED' && (
        <>
          <button
            type="button"
            class="b main"
            disabled={!may || waits || busy.value}
            onClick={() => void sign()}
          >
            Sign cover check {check.number}
          </button>
          {problem.value && (
            <Wrong
              problem={problem.value}
              outcome={problem.value.noSignal ? 'Not signed: no signal.' : 'Not signed.'}
            />
          )}
          {waits && <p>Signing waits until what is on this phone has been sent.</p>}
          {rows.length > 0 ? (
            <>
              <p>
                {check.state === 'STOPPED'
                  ? 'Refused while these stand'
                  : 'Signing opens when these are done'}
                :
              </p>
              <ul class="shut">
                {rows.filter(isLookedAt).map((s) => (
                  <li key={s.row}>
                    <button type="button" class="plain" onClick={() => goTo(check, s.row)}>
                      {s.lookAt}
                      {s.place && ` ${capital(s.place)}`}
                    </button>{' '}
                    {s.reason}
                  </li>
                ))}
                {untouched.length > 0 && (
                  <li>
                    <button type="button" class="plain" onClick={() => goTo(check, untouched[0]!.row)}>
                      {untouched.length === 1 ? 'One row' : `${untouched.length} rows`}
                    </button>{' '}
                    that nobody has looked at yet.
                  </li>
                )}
              </ul>
            </>
          ) : (
            !may &&
            check.waitsFor && (
              <p>It waits for the {roleWord[check.waitsFor as Role]?.toLowerCase()}'s signature.</p>
            )
          )}
        </>
      )}
    </section>
  )
}

function goTo(check: Check, row: string) {
  const template = check.rows.find((r) => r.id === row)?.templateRow ?? row
  const target = document.getElementById(`row-${template}`)
  target?.scrollIntoView({ block: 'start' })
  target?.focus({ preventScroll: true })
}
