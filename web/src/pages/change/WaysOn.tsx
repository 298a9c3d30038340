import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import { call, post } from '../../api/http.ts'
import { Problem } from '../../api/problem.ts'
import { Dialog } from '../../parts/Dialog.tsx'
import { Reason } from '../../parts/Reason.tsx'
import { Waiting, Wrong } from '../../parts/Says.tsx'
import { StateWord } from '../../parts/Status.tsx'
import { housePath } from '../../record/record.ts'
import { keepTrial } from '../../record/trial.ts'
import type { Alternative, ChangedValue, Comparison, Decision, Reach } from '../../record/types.ts'
import { labelWords, valueWords } from '../../record/values.ts'
import { shownBy } from '../../units/quantity.ts'
import { system } from '../../units/system.ts'
import { countWord, rolesWord } from '../decision/words.ts'

interface WaysOnProps {
  decision: Decision
  house: string
  /** Where "See what it reaches" leads back to. */
  back: string
  backWords: string
  onTaken: (reach: Reach) => void
  heading?: string
}

/** The letters under which alternatives go: their own where they have one, else the next that is free. */
export function lettersOf(alternatives: Alternative[]): string[] {
  const own = (a: Alternative) => (/^[A-Za-z]$/.test(a.id) ? a.id.toUpperCase() : undefined)
  const free = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'].filter((l) => !alternatives.some((a) => own(a) === l))
  return alternatives.map((a) => own(a) ?? free.shift() ?? a.id)
}

/** The alternatives of a decision side by side, each computed, beside the record as it is. */
export function WaysOn({ decision, house, back, backWords, onTaken, heading }: WaysOnProps) {
  const tried = decision.alternatives.filter((a) => a.changes.length > 0)
  const came = useSignal<Comparison | undefined>(undefined)
  const problem = useSignal<Problem | undefined>(undefined)
  const asking = useSignal<number | undefined>(undefined)
  // another version of the decision, or another state of the record, is another comparison
  const key = `${house} ${decision.code} ${decision.version} ${decision.copyCode}`
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key says when to compute anew
  useEffect(() => {
    if (tried.length === 0) return
    const mine = new AbortController()
    call<Comparison>('POST', `${housePath(house)}/trials/comparison`, {
      body: { trials: tried.map((a) => ({ title: a.title, changes: a.changes })) },
      signal: mine.signal,
    })
      .then((answer) => {
        came.value = answer.data
        problem.value = undefined
      })
      .catch((thrown) => {
        if (!mine.signal.aborted) problem.value = Problem.of(thrown)
      })
    return () => mine.abort()
  }, [key])
  if (tried.length === 0) return null
  const comparison = came.value
  const open = asking.value === undefined ? undefined : tried[asking.value]
  const trial = asking.value === undefined ? undefined : comparison?.trials[asking.value]
  const words = heading ?? `${capital(countWord(tried.length, 'way', 'ways'))} on: ${lower(decision.title)}`
  return (
    <section>
      <h2>{words}</h2>
      {problem.value && <Wrong problem={problem.value} outcome="Not computed." />}
      {!comparison ? (
        !problem.value && <Waiting what="Computing each of them." />
      ) : (
        <>
          <Abreast
            decision={decision}
            tried={tried}
            comparison={comparison}
            house={house}
            back={back}
            backWords={backWords}
            onTake={(i) => (asking.value = i)}
          />
          {open && trial && (
            <Take
              letter={lettersOf(decision.alternatives)[decision.alternatives.indexOf(open)]!}
              alternative={open}
              decision={decision}
              house={house}
              trial={trial}
              onClose={() => (asking.value = undefined)}
              onTaken={(reach) => {
                asking.value = undefined
                onTaken(reach)
              }}
            />
          )}
        </>
      )}
    </section>
  )
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)
const lower = (text: string) => text.charAt(0).toLowerCase() + text.slice(1)

interface AbreastProps {
  decision: Decision
  tried: Alternative[]
  comparison: Comparison
  house: string
  back: string
  backWords: string
  onTake: (place: number) => void
}

interface Row {
  key: string
  head: string
  sub: string
  /** The record as it is, then each trial. */
  cells: { text: string; verdict?: string | null }[]
  matters: boolean
}

/** One table with the options as columns; on a phone one below the other. */
function Abreast(props: AbreastProps) {
  const { decision, tried, comparison } = props
  const rows = rowsOf(tried, comparison)
  const mayTake =
    comparison.nothingElse.actions.includes('take-trial') ||
    comparison.trials.some((t) => t.actions.includes('take-trial'))
  const all = lettersOf(decision.alternatives)
  const letters = tried.map((a) => all[decision.alternatives.indexOf(a)]!)
  const likely = likelyOf(decision, tried, comparison)
  const act = (i: number) => (
    <WayActs
      letter={letters[i]!}
      main={i === likely}
      mayTake={mayTake}
      onTake={() => props.onTake(i)}
      seeHref={`${housePath(props.house)}/changes/trial`}
      onSee={() =>
        keepTrial(props.house, {
          title: `${letters[i]}: ${tried[i]!.title}`,
          changes: tried[i]!.changes,
          decision: decision.code,
          alternative: tried[i]!.id,
          back: props.back,
          backWords: props.backWords,
        })
      }
      note={i === likely && mayTake ? becomes(comparison.trials[i]!, decision) : undefined}
    />
  )
  return (
    <>
      <div class="ways">
        {[...tried.keys()]
          .sort((a, b) => Number(b === likely) - Number(a === likely))
          .map((i) => (
            <section key={tried[i]!.id} class="way">
              <h3>
                <b>{letters[i]}</b> {tried[i]!.title}
              </h3>
              <dl class="facts">
                {rows.map((row) => (
                  <div key={row.key}>
                    <dt>{[row.head, row.sub].filter(Boolean).join(', ')}</dt>
                    <dd>
                      <Cell cell={row.cells[i + 1]!} strong={row.matters} />
                    </dd>
                  </div>
                ))}
              </dl>
              {tried[i]!.note && <p class="note">{tried[i]!.note}</p>}
              {act(i)}
            </section>
          ))}
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section class="wide abreast" tabIndex={0} aria-label="Side by side">
        <table class="t stick options">
          <thead>
            <tr>
              <th scope="col">
                <span class="vh">item</span>
              </th>
              <th scope="col">
                Nothing else,
                <br />
                as it is now
              </th>
              {tried.map((a, i) => (
                <th key={a.id} scope="col" class="option">
                  <b>{letters[i]}</b>
                  <br />
                  {a.title}
                  {a.id === decision.chosenAlternative && <span class="sub">chosen</span>}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.key} class={row.matters ? 'key' : ''}>
                <th scope="row">
                  {row.head} <span class="sub">{row.sub}</span>
                </th>
                {row.cells.map((cell, i) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: columns keep their order
                  <td key={i}>
                    <Cell cell={cell} strong={row.matters} />
                  </td>
                ))}
              </tr>
            ))}
            {tried.some((a) => a.note) && (
              <tr>
                <th scope="row">Reason for or against</th>
                <td />
                {tried.map((a) => (
                  <td key={a.id}>{a.note}</td>
                ))}
              </tr>
            )}
            <tr class="no-print">
              <th scope="row">
                <span class="vh">go on with it</span>
              </th>
              <td />
              {tried.map((a, i) => (
                <td key={a.id}>{act(i)}</td>
              ))}
            </tr>
          </tbody>
        </table>
      </section>
    </>
  )
}

function Cell({ cell, strong }: { cell: Row['cells'][number]; strong: boolean }) {
  return (
    <>
      {strong ? <b>{cell.text}</b> : cell.text}
      {cell.verdict && (
        <span class="sub">
          <StateWord state={cell.verdict} />
        </span>
      )}
    </>
  )
}

/** What the options set, then what comes of it. */
function rowsOf(tried: Alternative[], comparison: Comparison): Row[] {
  const { nothingElse, trials, rows } = comparison
  const known = new Map<string, ChangedValue>()
  for (const reach of [nothingElse, ...trials]) {
    for (const v of reach.changedValues) known.set(v.path, known.get(v.path) ?? v)
  }
  const set = [...known.values()].map((v): Row => {
    const unit = v.unit
    const cell = (reach: Reach, own?: Alternative) => {
      const chosen = own?.changes.find((c) => c.path === v.path)
      const text =
        chosen === undefined
          ? (reach.changedValues.find((c) => c.path === v.path)?.new ?? v.old)
          : chosen.value === null
            ? null
            : String(chosen.value)
      return { text: figureOnly(text, unit) }
    }
    return {
      key: v.path,
      head: labelWords(v.label),
      sub: unit ? shownBy(unit, system.value).symbol : '',
      cells: [cell(nothingElse), ...trials.map((t, i) => cell(t, tried[i]))],
      matters: false,
    }
  })
  const found = rows.map((r): Row => {
    const limits = [...new Set(r.cells.map((c) => c.limit))]
    const limit = limits.length === 1 && limits[0] ? `limit ${figureOnly(limits[0], r.unit)}` : ''
    return {
      key: `${r.proofKey} ${r.name}`,
      head: r.label,
      sub: [r.unit ? shownBy(r.unit, system.value).symbol : '', limit].filter(Boolean).join(', '),
      cells: r.cells.map((c) => ({ text: figureOnly(c.value, r.unit), verdict: c.verdict })),
      matters: r.cells.some((c) => c.verdict === 'FAILS') && r.cells.some((c) => c.verdict === 'PASSES'),
    }
  })
  return [...set, ...found]
}

function figureOnly(text: string | null, unit: ChangedValue['unit']): string {
  if (text === null) return '–'
  const words = valueWords(text, unit)
  const symbol = unit ? shownBy(unit, system.value).symbol : ''
  return symbol && words.endsWith(symbol) ? words.slice(0, -symbol.length).trimEnd() : words
}

/** The likely next step: the one that somebody chose, else the first that crosses no limit and asks the fewest. */
function likelyOf(decision: Decision, tried: Alternative[], comparison: Comparison): number {
  const chosen = tried.findIndex((a) => a.id === decision.chosenAlternative)
  const fails = comparison.trials.map((_, i) =>
    comparison.rows.some((r) => r.cells[i + 1]?.verdict === 'FAILS'),
  )
  if (chosen >= 0 && !fails[chosen]) return chosen
  let best = -1
  comparison.trials.forEach((t, i) => {
    if (!fails[i] && (best < 0 || t.askedNow.length < comparison.trials[best]!.askedNow.length)) best = i
  })
  return best
}

function becomes(trial: Reach, decision: Decision): string {
  const roles = [...new Set([...decision.approvers, ...trial.askedNow.flatMap((d) => d.asked)])]
  return `Becomes the new proof; ${rolesWord(roles)} ${roles.length === 1 ? 'is' : 'are'} asked.`
}

function WayActs({
  letter,
  main,
  mayTake,
  onTake,
  onSee,
  seeHref,
  note,
}: {
  letter: string
  main: boolean
  mayTake: boolean
  onTake: () => void
  onSee: () => void
  seeHref: string
  note?: string
}) {
  return (
    <div class="way-acts no-print">
      {mayTake && (
        <button type="button" class={main ? 'b main' : 'b'} onClick={onTake}>
          Take {letter}
        </button>
      )}
      <a href={seeHref} onClick={onSee}>
        See what {letter} reaches
      </a>
      {note && <span class="sub">{note}</span>}
    </div>
  )
}

/** Keeping a trial: why, and what it does. */
export function Take({
  letter,
  alternative,
  decision,
  house,
  trial,
  onClose,
  onTaken,
}: {
  letter: string
  alternative: Alternative
  decision: Decision
  house: string
  trial: Reach
  onClose: () => void
  onTaken: (reach: Reach) => void
}) {
  const reason = useSignal('')
  const missing = useSignal(false)
  const problem = useSignal<Problem | undefined>(undefined)
  const busy = useSignal(false)
  async function take() {
    missing.value = reason.value.trim() === ''
    if (missing.value) return
    busy.value = true
    problem.value = undefined
    try {
      onTaken(
        await post<Reach>(`${housePath(house)}/trials/taking`, {
          changes: alternative.changes,
          reason: reason.value.trim(),
          copyCode: trial.copyCode,
          decision: decision.code,
          alternative: alternative.id,
        }),
      )
    } catch (thrown) {
      problem.value = Problem.of(thrown)
    } finally {
      busy.value = false
    }
  }
  return (
    <Dialog open heading={`Take ${letter}: ${alternative.title}`} onClose={onClose}>
      <p class="note">
        The values are saved and the proofs computed from them are kept. {becomes(trial, decision)}
      </p>
      <Reason
        label="Reason"
        value={reason.value}
        onType={(text) => (reason.value = text)}
        error={missing.value && !reason.value.trim() ? 'Say why; it stays on the record.' : undefined}
      />
      {problem.value && <Wrong problem={problem.value} outcome="Not taken." />}
      <div class="acts">
        <button type="button" class="b main" disabled={busy.value} onClick={() => void take()}>
          Take {letter}
        </button>
        <button type="button" class="b" onClick={onClose}>
          Not now
        </button>
      </div>
    </Dialog>
  )
}
