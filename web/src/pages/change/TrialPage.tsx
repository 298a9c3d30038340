import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import { useLocation } from 'preact-iso'
import { call, post } from '../../api/http.ts'
import { Problem } from '../../api/problem.ts'
import { useResource } from '../../api/resource.ts'
import { Reason } from '../../parts/Reason.tsx'
import { NothingYet, Waiting, Wrong } from '../../parts/Says.tsx'
import { housePath } from '../../record/record.ts'
import { dropTrial, type Trial, trialOf } from '../../record/trial.ts'
import type { House, Reach } from '../../record/types.ts'
import type { PageProps } from '../../shell/routes.ts'
import { Sheet } from '../../shell/Sheet.tsx'
import { me } from '../../shell/session.ts'
import { dayWords } from '../../units/days.ts'
import { dropDraft } from '../house/draft.ts'
import { headsOf, ReachView } from './ReachView.tsx'
import { computedIn, finding, meaning } from './words.ts'

/** What typed values would reach, before anything is saved. */
export default function TrialPage({ house = '' }: PageProps) {
  const trial = trialOf(house)
  const line = useResource<House>(housePath(house))
  const h = line.data.value
  if (!trial) {
    return (
      <Sheet heading="There is nothing to try in this window." block={[['Sheet', 'Trial']]}>
        <NothingYet>
          Type other values into a part of the record, or take an alternative of a decision, and ask what it
          reaches. <a href={`${housePath(house)}/record`}>To the record</a>
        </NothingYet>
      </Sheet>
    )
  }
  return <Computed house={house} line={h} trial={trial} />
}

function Computed({ house, line, trial }: { house: string; line: House | undefined; trial: Trial }) {
  const { route } = useLocation()
  const reach = useSignal<Reach | undefined>(undefined)
  const problem = useSignal<Problem | undefined>(undefined)
  const refused = useSignal<Problem | undefined>(undefined)
  const reason = useSignal(trial.reason ?? '')
  const missing = useSignal(false)
  const busy = useSignal(false)
  const zone = line?.timeZone ?? 'UTC'

  async function compute() {
    problem.value = undefined
    try {
      const answer = await call<Reach>('POST', `${housePath(house)}/trials`, {
        body: { title: trial.title, changes: trial.changes },
      })
      reach.value = answer.data
    } catch (thrown) {
      problem.value = Problem.of(thrown)
    }
  }
  // biome-ignore lint/correctness/useExhaustiveDependencies: computed once for the page; again where somebody asks
  useEffect(() => void compute(), [])

  async function keep() {
    missing.value = reason.value.trim() === ''
    const shown = reach.value
    if (missing.value || !shown) return
    busy.value = true
    refused.value = undefined
    try {
      await post<Reach>(`${housePath(house)}/trials/taking`, {
        changes: trial.changes,
        reason: reason.value.trim(),
        copyCode: shown.copyCode,
        decision: trial.decision ?? null,
        alternative: trial.alternative ?? null,
      })
      dropTrial(house)
      for (const c of trial.changes) dropDraft(house, c.path.split('.')[0]!)
      route(`${housePath(house)}/changes`)
    } catch (thrown) {
      refused.value = Problem.of(thrown)
      if (refused.value.code === 'not-what-stands') void compute()
    } finally {
      busy.value = false
    }
  }

  const r = reach.value
  return (
    <Sheet
      over={`Trial, nothing is saved · ${trial.title}`}
      heading={r ? finding(r) : 'What it would reach'}
      title={`Trial · ${house}`}
      lead={r ? meaning(r) : undefined}
      block={[
        ['House', line ? `${line.id} ${line.name}` : house],
        ['Sheet', 'Trial, not saved'],
        ['Record as of', dayWords(me.value?.today)],
        ['Computed in', r ? computedIn(r) : ''],
        ['Copy code', r ? r.copyCode.replace(/^(\d{3})(\d{3})$/, '$1\u202f$2') : ''],
      ]}
    >
      {problem.value && (
        <Wrong problem={problem.value} outcome="Not computed." onAgain={() => void compute()} />
      )}
      {!r && !problem.value && <Waiting what="Computing what it would reach." />}
      {r && <ReachView reach={r} house={house} zone={zone} heads={headsOf(r)} />}
      <section class="no-print">
        <h2>Keep it, or not</h2>
        {r?.actions.includes('take-trial') ? (
          <>
            <Reason
              label="Reason"
              value={reason.value}
              onType={(text) => (reason.value = text)}
              error={missing.value && !reason.value.trim() ? 'Say why; it stays on the record.' : undefined}
              hint="Keeping saves the values, and every proof that could be computed from them as its next issue."
            />
            {refused.value && (
              <Wrong problem={refused.value} outcome="Not saved.">
                {refused.value.code === 'not-what-stands' && (
                  <p class="note">What stands above is computed anew from today's record; look again.</p>
                )}
              </Wrong>
            )}
          </>
        ) : (
          r && <p class="note">This account tries values; the designer keeps them.</p>
        )}
        <div class="acts">
          {r?.actions.includes('take-trial') && (
            <button type="button" class="b main" disabled={busy.value} onClick={() => void keep()}>
              Keep
            </button>
          )}
          <a class="b" href={trial.back}>
            {trial.backWords}
          </a>
        </div>
      </section>
    </Sheet>
  )
}
