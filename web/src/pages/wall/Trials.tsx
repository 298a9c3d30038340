import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import { get, post } from '../../api/http.ts'
import { Problem } from '../../api/problem.ts'
import { useResource } from '../../api/resource.ts'
import type { MaterialPage } from '../../api/schema.d.ts'
import type { Field, Leaf } from '../../form/field.ts'
import { type Column, DataTable, Matter, Matters } from '../../parts/lists.tsx'
import { Wrong } from '../../parts/Says.tsx'
import { StateWord, Status } from '../../parts/Status.tsx'
import { housePath } from '../../record/record.ts'
import type { House } from '../../record/types.ts'
import { valueWords } from '../../record/values.ts'
import { editable, fromShown, parseNumber, shownBy, tidy } from '../../units/quantity.ts'
import { system } from '../../units/system.ts'
import {
  ended,
  monthMarks,
  nearestToLimit,
  type Simulation,
  type Tape,
  type TrialSent,
  type YearsOutput,
} from '../../wall/run.ts'
import { shownAs, symbol, unitOf, words } from '../../wall/say.ts'
import type { AssemblySheet } from '../../wall/types.ts'
import { YearChart } from '../../wall/YearChart.tsx'
import type { Answer, Declaration } from '../calculation/types.ts'

interface TrialsProps {
  sheet: AssemblySheet
  house: House
  run: Simulation
  runs: Simulation[]
  declaration: Declaration
  onAsked: () => void
}

const MOST = 8

/** One thing that a trial may change: an input of the run, or a value of one layer. */
interface Lever {
  input: string
  label: string
  field: Field
}

/** What may be other in a trial: single inputs of the run, and thickness or material of each layer. */
function leversOf(sheet: AssemblySheet, declaration: Declaration): Lever[] {
  const layerFields = declaration.inputs.find((f) => f.name === 'layers')?.fields ?? []
  const single = declaration.inputs
    .filter((f) => f.kind === 'NUMBER' || f.kind === 'INTEGER' || f.kind === 'CHOICE')
    .map((field): Lever => ({ input: field.name, label: field.label, field }))
  const layers = sheet.layers.flatMap((l, i) =>
    ['thicknessM', 'materialId'].flatMap((name): Lever[] => {
      const field = layerFields.find((f) => f.name === name)
      return field
        ? [
            {
              input: `layers[${l.id}].${name}`,
              label: `${i + 1} ${l.label}: ${field.label.toLowerCase()}`,
              field,
            },
          ]
        : []
    }),
  )
  return [...layers, ...single]
}

/** Trials beside a run: what is other in each, all computed side by side and compared with the run as it is. */
export function Trials({ sheet, house, run, runs, declaration, onAsked }: TrialsProps) {
  const levers = leversOf(sheet, declaration)
  const materials = useResource<MaterialPage>('/materials')
  const lever = useSignal(levers[0]?.input ?? '')
  const typed = useSignal('')
  const trials = useSignal<TrialSent[]>([])
  const problem = useSignal<Problem | undefined>(undefined)
  const unread = useSignal('')
  const busy = useSignal(false)
  const chosen = levers.find((l) => l.input === lever.value)
  const compared = runs.find((r) => r.comparison !== null)?.comparison
  const options: [string, string][] =
    chosen?.field.name === 'materialId'
      ? (materials.data.value?.items ?? []).map((m): [string, string] => [m.id, m.label])
      : (chosen?.field.options ?? []).map((o): [string, string] => [o.id, o.label])
  const unit = chosen?.field.unit ?? undefined

  function add() {
    if (!chosen) return
    let value: Leaf = typed.value
    if (unit) {
      const read = parseNumber(typed.value)
      if (Number.isNaN(read)) {
        unread.value = `“${typed.value}” is no number.`
        return
      }
      value = tidy(fromShown(read, shownBy(unit, system.value)))
    } else if (!typed.value) {
      unread.value = 'Choose one.'
      return
    }
    unread.value = ''
    const said = unit
      ? words(value as number, unit)
      : (options.find(([id]) => id === value)?.[1] ?? valueWords(String(value), null))
    trials.value = [
      ...trials.value,
      {
        title: `${chosen.label}: ${said}`.slice(0, 200),
        changes: [{ input: chosen.input, value, origin: 'trial' }],
      },
    ]
    typed.value = ''
  }

  async function compute() {
    busy.value = true
    problem.value = undefined
    try {
      await post(`${housePath(house.id)}/simulations/comparison`, {
        simulation: {
          title: `${sheet.label}, as it is`,
          calculation: run.calculation,
          bindings: run.bindings,
        },
        trials: trials.value,
      })
      trials.value = []
      onAsked()
    } catch (thrown) {
      problem.value = Problem.of(thrown)
    } finally {
      busy.value = false
    }
  }

  return (
    <>
      {compared && (
        <SideBySide
          key={compared}
          house={house}
          runs={runs.filter((r) => r.comparison === compared)}
          declaration={declaration}
        />
      )}
      <details class="open-up no-print">
        <summary>
          <span>
            <b>Trials side by side</b>
          </span>
          <span class="note">one thing other in each; the record stays as it is</span>
        </summary>
        <div class="inside narrow">
          <div class="field one">
            <label for="trial-lever">What is other</label>
            <div class="in">
              <select
                id="trial-lever"
                value={lever.value}
                onChange={(e) => {
                  lever.value = e.currentTarget.value
                  typed.value = ''
                }}
              >
                {levers.map((l) => (
                  <option key={l.input} value={l.input}>
                    {l.label}
                  </option>
                ))}
              </select>
            </div>
          </div>
          <div class={unread.value ? 'field refused' : 'field'}>
            <label for="trial-value">{chosen?.field.label ?? 'Value'} in the trial</label>
            <div class="in">
              {options.length > 0 ? (
                <select
                  id="trial-value"
                  value={typed.value}
                  onChange={(e) => (typed.value = e.currentTarget.value)}
                >
                  <option value="">choose</option>
                  {options.map(([id, label]) => (
                    <option key={id} value={id}>
                      {label}
                    </option>
                  ))}
                </select>
              ) : (
                <input
                  id="trial-value"
                  inputMode="decimal"
                  autocomplete="off"
                  aria-invalid={unread.value ? 'true' : undefined}
                  value={typed.value}
                  placeholder={nowOf(run, chosen, sheet)}
                  onInput={(e) => (typed.value = e.currentTarget.value)}
                />
              )}
              {unit && <span>{symbol(unit)}</span>}
            </div>
            {unread.value && (
              <p class="says" role="alert">
                <b>Refused.</b> {unread.value}
              </p>
            )}
          </div>
          <div class="acts">
            <button type="button" class="b" disabled={trials.value.length >= MOST} onClick={add}>
              Add this trial
            </button>
          </div>
          {trials.value.length > 0 && (
            <>
              <Matters label="Trials to compute">
                {trials.value.map((t, i) => (
                  <Matter key={t.title} mark={<Status is="open">Trial {letter(i)}</Status>}>
                    {t.title}{' '}
                    <button
                      type="button"
                      class="plain"
                      onClick={() => (trials.value = trials.value.filter((one) => one !== t))}
                    >
                      take away
                    </button>
                  </Matter>
                ))}
              </Matters>
              {problem.value && <Wrong problem={problem.value} outcome="Not started." />}
              <div class="acts">
                <button type="button" class="b main" disabled={busy.value} onClick={() => void compute()}>
                  Compute them side by side
                </button>
              </div>
            </>
          )}
        </div>
      </details>
    </>
  )
}

const letter = (i: number) => String.fromCharCode(65 + i)

/** The present value of a lever, as a hint in its empty box. */
function nowOf(run: Simulation, lever: Lever | undefined, sheet: AssemblySheet): string {
  if (!lever?.field.unit) return ''
  const thick = /^layers\[(.*)\]\.thicknessM$/.exec(lever.input)?.[1]
  const value = thick
    ? sheet.layers.find((l) => l.id === thick)?.thicknessM
    : Number(run.bindings.find((b) => b.input === lever.input)?.value ?? Number.NaN)
  return value === undefined || Number.isNaN(value) ? '' : editable(value, lever.field.unit, system.value)
}

interface Compared {
  run: Simulation
  out: YearsOutput | undefined
  tape: Tape | undefined
}

/** The run as it is and its trials in one table, and the layer with least room left of all of them as curves. */
function SideBySide({
  house,
  runs,
  declaration,
}: {
  house: House
  runs: Simulation[]
  declaration: Declaration
}) {
  // asked for first, the run as it is is the oldest
  const ordered = [...runs].reverse()
  const came = useSignal<Compared[]>([])
  const done = ordered.filter((r) => r.state === 'DONE').map((r) => r.id)
  const asked = done.join(' ')
  // biome-ignore lint/correctness/useExhaustiveDependencies: read again only when another run is done
  useEffect(() => {
    const stop = new AbortController()
    const path = (id: string) => `${housePath(house.id)}/simulations/${id}`
    void Promise.all(
      asked
        .split(' ')
        .filter(Boolean)
        .map(async (id) => ({
          id,
          out: (await get<{ answer: Answer | null }>(path(id), stop.signal)).answer?.printed as unknown as
            | YearsOutput
            | undefined,
          tape: await get<Tape>(`${path(id)}/tape`, stop.signal),
        })),
    )
      .then((all) => {
        came.value = ordered.map((run) => {
          const found = all.find((a) => a.id === run.id)
          return { run, out: found?.out, tape: found?.tape }
        })
      })
      .catch(() => {})
    return () => stop.abort()
  }, [asked, house.id])
  const rows = ordered.map(
    (run) => came.value.find((c) => c.run.id === run.id) ?? { run, out: undefined, tape: undefined },
  )
  const base = rows[0]?.out
  const watched = base && nearestToLimit(base.layers)
  const share = unitOf(declaration.outputs, 'layers.peakFraction')
  const mould = unitOf(declaration.outputs, 'mouldIndex')
  const frost = unitOf(declaration.outputs, 'frostH')
  const q = (value: number | undefined, unit: typeof share, step: number) =>
    value === undefined ? '–' : words(value, unit, step)
  const columns: Column<Compared>[] = [
    { head: 'run', cell: ({ run }) => run.title },
    {
      head: 'answer',
      cell: ({ run, out }) =>
        out ? (
          <StateWord state={out.verdict} />
        ) : (
          <Status is={ended(run.state) ? 'withdrawn' : 'wait'}>
            {ended(run.state) ? (run.failure ?? 'Cancelled') : `${Math.round(100 * run.doneFraction)} %`}
          </Status>
        ),
    },
    { head: 'wettest wood', figures: true, cell: ({ out }) => q(out?.woodPeakFraction, share, 0.001) },
    {
      head: watched ? `room left, ${watched.label}` : 'room left',
      figures: true,
      cell: ({ out }) => q(out?.layers.find((l) => l.id === watched?.id)?.roomLeftFraction, share, 0.001),
    },
    { head: 'mould index', figures: true, cell: ({ out }) => q(out?.mouldIndex, mould, 0.01) },
    { head: 'frost', figures: true, cell: ({ out }) => q(out?.frostH, frost, 1) },
  ]
  const curves = rows.flatMap(({ tape }, k) => {
    const i = tape?.layers.findIndex((l) => l.id === watched?.id) ?? -1
    if (!tape || i < 0) return []
    const days = tape.days.slice(-365)
    return [
      {
        words: k === 0 ? 'as it is' : letter(k - 1),
        is: k === 0 ? ('main' as const) : k % 2 === 1 ? ('ink' as const) : ('dash' as const),
        values: days.map((d) => shownAs(d.layerWaterFraction[i] ?? 0, share)),
      },
    ]
  })
  const days = rows.find((r) => r.tape)?.tape?.days.slice(-365) ?? []
  return (
    <>
      <h3>Trials side by side</h3>
      <DataTable
        label="Trials side by side"
        columns={columns}
        rows={rows}
        keyOf={({ run }) => run.id}
        isKey={({ run }) => run.id === rows[0]?.run.id}
        rowHeads
      />
      {watched && curves.length > 0 && (
        <figure class="drawing">
          <YearChart
            title={`${watched.label} over the last year, as it is and in each trial`}
            says="The table says how wet it gets at most in each."
            unit={`${symbol(share)} of dry mass`}
            steps={Math.max(1, days.length - 1)}
            marks={monthMarks(days)}
            limit={
              watched.limitFraction === undefined
                ? undefined
                : {
                    value: shownAs(watched.limitFraction, share),
                    words: `limit ${words(watched.limitFraction, share)}`,
                  }
            }
            curves={curves}
          />
          <figcaption>
            {rows
              .slice(1)
              .map(({ run }, i) => `${letter(i)}: ${run.title}`)
              .join('; ')}
          </figcaption>
        </figure>
      )}
    </>
  )
}
