import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import { post } from '../../api/http.ts'
import { Problem } from '../../api/problem.ts'
import { useResource } from '../../api/resource.ts'
import { Matter, Matters } from '../../parts/lists.tsx'
import { NothingYet, Of, Wrong } from '../../parts/Says.tsx'
import { StateWord, Status } from '../../parts/Status.tsx'
import { housePath } from '../../record/record.ts'
import type { House, Page } from '../../record/types.ts'
import { timeWords } from '../../units/days.ts'
import { ended, isAbout, type Job, type JobState, type Simulation, YEARS } from '../../wall/run.ts'
import type { AssemblySheet } from '../../wall/types.ts'
import type { Declaration } from '../calculation/types.ts'
import { RunForm } from './RunForm.tsx'
import { RunView } from './RunView.tsx'
import { Trials } from './Trials.tsx'
import { useJob } from './useJob.ts'

interface YearsProps {
  sheet: AssemblySheet
  house: House
  curve: { outdoorC: number; humidityFraction: number }[]
  /** The newest run that went through, for the finding at the head of the sheet. */
  onNewest: (run: Simulation | undefined) => void
}

/** Years of heat and moisture in one assembly: asked for, followed while they are computed, and looked through. */
export function Years(props: YearsProps) {
  const declaration = useResource<Declaration>(`/calculations/${YEARS}`)
  return <Of resource={declaration}>{(d) => <YearsOf {...props} declaration={d} />}</Of>
}

function YearsOf({ sheet, house, curve, onNewest, declaration }: YearsProps & { declaration: Declaration }) {
  const runs = useResource<Page<Simulation>>(`${housePath(house.id)}/simulations?limit=100`)
  const chosen = useSignal<string | undefined>(undefined)
  const about = (runs.data.value?.items ?? []).filter((r) => isAbout(r, sheet.id))
  const going = about.filter((r) => !ended(r.state))
  const done = about.filter((r) => r.state === 'DONE' || r.partial)
  const newest = done.find((r) => r.comparison === null) ?? done[0]
  const run = done.find((r) => r.id === chosen.value) ?? newest
  useEffect(() => onNewest(newest), [newest, onNewest])
  const mayRun = sheet.actions.includes('keep-proof')
  return (
    <section aria-labelledby="years" class="years">
      <h2 id="years">Years of moisture</h2>
      <Of resource={runs}>
        {() => (
          <>
            {going.map((r) => (
              <Going key={r.id} house={house.id} run={r} onEnd={() => void runs.reload()} />
            ))}
            {about.length === 0 && (
              <NothingYet>
                No year is computed yet.{' '}
                {mayRun ? 'Say below what surrounds it and for how long.' : 'The designer computes it.'}
              </NothingYet>
            )}
            {about
              .filter((r) => r.state === 'FAILED')
              .slice(0, 1)
              .map((r) => (
                <p key={r.id} class="say wrong">
                  <b>Not computed to its end.</b> {r.title}: {r.failure}
                </p>
              ))}
            {run && (
              <RunView
                key={run.id}
                sheet={sheet}
                house={house}
                run={run}
                declaration={declaration}
                onKept={() => void runs.reload()}
              />
            )}
            {run && mayRun && (
              <Trials
                sheet={sheet}
                house={house}
                run={run}
                runs={about}
                declaration={declaration}
                onAsked={() => void runs.reload()}
              />
            )}
            {about.length > 1 && (
              <Others runs={about} run={run} house={house} onChoose={(id) => (chosen.value = id)} />
            )}
          </>
        )}
      </Of>
      {mayRun && (
        <details class="open-up no-print" open={runs.data.value !== undefined && about.length === 0}>
          <summary>
            <span>
              <b>Compute years</b>
            </span>
            <span class="note">layers from the record; weather, air inside, rain and start as you say</span>
          </summary>
          <div class="inside narrow">
            <RunForm
              sheet={sheet}
              house={house}
              declaration={declaration}
              curve={curve}
              onAsked={() => void runs.reload()}
            />
          </div>
        </details>
      )}
    </section>
  )
}

/** A run that is not at its end: how far it is, and its way out. */
function Going({ house, run, onEnd }: { house: string; run: Simulation; onEnd: () => void }) {
  const job = useJob(house, run.id, onEnd)
  const problem = useSignal<Problem | undefined>(undefined)
  const now: Pick<Job, 'doneFraction' | 'step' | 'state'> = job.value ?? run
  const cancel = async () => {
    try {
      await post(`${housePath(house)}/jobs/${encodeURIComponent(run.id)}/cancellation`)
    } catch (thrown) {
      problem.value = Problem.of(thrown)
    }
  }
  const percent = Math.round(100 * now.doneFraction)
  return (
    <div class="going">
      <p>
        <b>{run.title}</b> <span class="note">{now.state === 'WAITING' ? 'waits its turn' : now.step}</span>
      </p>
      <progress max={100} value={percent} aria-label={`${run.title}: how far it is`} />
      <p class="note" role="status">
        {percent} % computed.
      </p>
      {problem.value && <Wrong problem={problem.value} />}
      {/* what this person may do came with the list; the stream only tells how far it is */}
      {run.actions.includes('cancel') && (
        <button type="button" class="b" onClick={() => void cancel()}>
          Cancel
        </button>
      )}
    </div>
  )
}

const STATE: Record<JobState, string> = {
  WAITING: 'Waiting',
  RUNNING: 'Computing',
  DONE: 'Computed',
  FAILED: 'Not to its end',
  CANCELLED: 'Cancelled',
}

function Others({
  runs,
  run,
  house,
  onChoose,
}: {
  runs: Simulation[]
  run: Simulation | undefined
  house: House
  onChoose: (id: string) => void
}) {
  return (
    <details class="open-up no-print">
      <summary>
        <span>
          <b>Other runs</b>
        </span>
        <span class="note">{runs.length} in all, the newest first</span>
      </summary>
      <div class="inside">
        <Matters label="Runs of this assembly">
          {runs.map((r) => (
            <Matter
              key={r.id}
              mark={
                r.inputsChanged.length > 0 ? (
                  <StateWord state="INPUTS_CHANGED" />
                ) : (
                  <Status is={r.state === 'DONE' ? 'stands' : 'open'}>{STATE[r.state]}</Status>
                )
              }
              note={`asked by ${r.askedBy}, ${timeWords(r.askedAt, house.timeZone)}`}
            >
              {r.state === 'DONE' || r.partial ? (
                <button
                  type="button"
                  class="plain"
                  aria-current={r.id === run?.id ? 'true' : undefined}
                  onClick={() => onChoose(r.id)}
                >
                  {r.title}
                </button>
              ) : (
                r.title
              )}
            </Matter>
          ))}
        </Matters>
      </div>
    </details>
  )
}
