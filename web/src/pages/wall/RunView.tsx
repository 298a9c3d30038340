import { useComputed, useSignal } from '@preact/signals'
import { useEffect, useMemo } from 'preact/hooks'
import { get, post } from '../../api/http.ts'
import { Problem } from '../../api/problem.ts'
import { useResource } from '../../api/resource.ts'
import { type Column, DataTable, Fact, Facts } from '../../parts/lists.tsx'
import { Quantity } from '../../parts/Quantity.tsx'
import { Reason } from '../../parts/Reason.tsx'
import { Cautions, Notices } from '../../parts/Result.tsx'
import { Of, Waiting, Wrong } from '../../parts/Says.tsx'
import { Scale } from '../../parts/Scale.tsx'
import { StateWord, Status } from '../../parts/Status.tsx'
import { DifferenceWords } from '../../record/Difference.tsx'
import { housePath } from '../../record/record.ts'
import type { House } from '../../record/types.ts'
import { timeWords } from '../../units/days.ts'
import {
  byLayer,
  type DayProfile,
  dayOfYearWords,
  type LayerWater,
  monthMarks,
  nearestToLimit,
  proofKeyOf,
  type Simulation,
  type Tape,
  type YearsOutput,
} from '../../wall/run.ts'
import type { Strip } from '../../wall/Strips.tsx'
import { declared, number, shownAs, symbol, unitOf, words } from '../../wall/say.ts'
import type { AssemblySheet } from '../../wall/types.ts'
import { WallDrawing } from '../../wall/WallDrawing.tsx'
import { wallModel } from '../../wall/wallModel.ts'
import { YearChart } from '../../wall/YearChart.tsx'
import type { Answer, Declaration } from '../calculation/types.ts'
import { YearTape } from './YearTape.tsx'

interface RunViewProps {
  sheet: AssemblySheet
  house: House
  run: Simulation
  declaration: Declaration
  onKept: () => void
}

/** What came of one run: the verdict, the room left in each layer, its days, and the wall on one of them. */
export function RunView(props: RunViewProps) {
  const { house, run } = props
  const path = `${housePath(house.id)}/simulations/${run.id}`
  const result = useResource<{ answer: Answer | null }>(path)
  const tape = useResource<Tape>(`${path}/tape`)
  return (
    <>
      {run.partial && (
        <p class="say wrong">
          <b>Stopped before its end.</b> {run.failure} The days before are kept and shown.
        </p>
      )}
      <Since run={run} />
      <Of resource={result} what="Reading what came of it.">
        {({ answer }) =>
          answer && <Result {...props} answer={answer} out={answer.printed as unknown as YearsOutput} />
        }
      </Of>
      <Of resource={tape} what="Reading its days.">
        {(t) => (
          <Days
            {...props}
            tape={t}
            out={result.data.value?.answer?.printed as unknown as YearsOutput | undefined}
          />
        )}
      </Of>
      {result.data.value?.answer && <Keep {...props} />}
    </>
  )
}

/** What of the record changed since the run was asked for. */
function Since({ run }: { run: Simulation }) {
  if (run.inputsChanged.length === 0 && !run.newVersion) return null
  return (
    <div class="say">
      <StateWord state="INPUTS_CHANGED" />
      <ul>
        {run.inputsChanged.map((d) => (
          <li key={d.path} class="rev">
            <DifferenceWords difference={d} />
          </li>
        ))}
        {run.newVersion && (
          <li>
            The calculation has a newer version, {run.newVersion}; this ran by {run.version}.
          </li>
        )}
      </ul>
      <p class="note">Compute it again to see what the record says now.</p>
    </div>
  )
}

function Result({
  run,
  declaration,
  answer,
  out,
  house,
}: RunViewProps & { answer: Answer; out: YearsOutput }) {
  const q = (name: string, value: number | undefined, step = 0) => (
    <Quantity value={value} unit={unitOf(declaration.outputs, name)} step={step} />
  )
  return (
    <>
      <p class="lead">
        <StateWord state={out.verdict} /> {out.inWords}
      </p>
      <p class="note">
        computed: {run.title}; asked by {run.askedBy}, {timeWords(run.askedAt, house.timeZone)}, version{' '}
        {run.version}
      </p>
      <RoomLeft out={out} declaration={declaration} />
      <Facts>
        <Fact name="Mould index, greatest on any hidden face">
          {q('mouldIndex', out.mouldIndex, 0.01)}
          <span class="from">limit {q('mouldLimit', out.mouldLimit)}: growth that can be seen</span>
        </Fact>
        <Fact name="Frost in wet pores">{q('frostH', out.frostH, 1)}</Fact>
        <Fact name="Years to balance">
          {out.yearsToBalanceCount === undefined
            ? 'not reached in this run'
            : q('yearsToBalanceCount', out.yearsToBalanceCount)}
        </Fact>
        <Fact name="Rain that ran off">{q('runOffKgPerM2', out.runOffKgPerM2, 0.1)}</Fact>
        <Fact name="Water and heat unaccounted for">
          <span class="q">
            {out.waterError.toExponential(0)} · {out.heatError.toExponential(0)}
          </span>
          <span class="from">of all that passed through it</span>
        </Fact>
      </Facts>
      <Notices notices={answer.notices} />
      <Cautions cautions={declaration.cautions} />
    </>
  )
}

/** The water of each layer on a small scale with its limit. */
function RoomLeft({ out, declaration }: { out: YearsOutput; declaration: Declaration }) {
  const share = unitOf(declaration.outputs, 'layers.peakFraction')
  const mould = unitOf(declaration.outputs, 'layers.mouldIndex')
  const stores = out.layers.filter((l) => l.peakFraction !== undefined)
  const columns: Column<LayerWater>[] = [
    { head: 'layer', cell: (l) => l.label },
    {
      head: 'wettest of the last year',
      unit: `${symbol(share)} of its dry mass`,
      cell: (l) => (
        <Scale
          label={l.label}
          unit={share}
          now={l.peakFraction}
          limit={l.limitFraction}
          min={0}
          max={l.limitFraction === undefined ? undefined : l.limitFraction * 1.5}
        />
      ),
    },
    {
      head: 'room left to the limit',
      figures: true,
      cell: (l) => (l.roomLeftFraction === undefined ? 'no limit' : words(l.roomLeftFraction, share, 0.001)),
    },
    { head: 'when', cell: (l) => l.peakOn ?? '–' },
    { head: 'dries towards', cell: (l) => l.driesTowards ?? '–' },
    {
      head: 'mould index',
      figures: true,
      cell: (l) => (l.mouldIndex === undefined ? '–' : number(l.mouldIndex, mould, 0.01)),
    },
    {
      head: 'answer',
      cell: (l) => (l.verdict ? <StateWord state={l.verdict} /> : <Status is="note">Not judged</Status>),
    },
  ]
  return (
    <>
      <h3>Room left to the limit</h3>
      <DataTable
        label="Room left to the limit"
        columns={columns}
        rows={stores}
        keyOf={(l) => l.id}
        isKey={(l) => l.id === nearestToLimit(out.layers)?.id}
        rowHeads
      />
    </>
  )
}

const PAUSE_MS = 120

function Days({
  sheet,
  house,
  run,
  declaration,
  tape,
  out,
}: RunViewProps & { tape: Tape; out: YearsOutput | undefined }) {
  const share = unitOf(declaration.outputs, 'layers.peakFraction')
  const storing = useMemo(
    () =>
      tape.layers.map((_, i) => i).filter((i) => tape.days.some((d) => (d.layerWaterFraction[i] ?? 0) > 0)),
    [tape],
  )
  const nearest = out && nearestToLimit(out.layers)?.id
  const shown = useSignal(
    Math.max(
      storing[0] ?? 0,
      tape.layers.findIndex((l) => l.id === nearest),
    ),
  )
  const from = tape.profileFromDay ?? Math.max(0, tape.days.length - 365)
  const last = useMemo(() => tape.days.filter((d) => d.day >= from), [tape, from])
  const index = shown.value
  const values = last.map((d) => d.layerWaterFraction[index] ?? 0)
  const wettest = values.indexOf(Math.max(...values))
  const picked = useSignal(Math.max(0, wettest))
  const day = last[picked.value]
  const profile = useProfile(house.id, run.id, tape.profileFromDay === null ? undefined : day?.day)
  const water = out?.layers.find((l) => l.id === tape.layers[index]?.id)
  const limit = water?.limitFraction
  if (last.length === 0) return <p class="say">No whole day was computed.</p>
  const label = tape.layers[index]?.label ?? ''
  const dayWater = words(day?.layerWaterFraction[index] ?? 0, share, 0.001)
  return (
    <>
      <h3>Its days</h3>
      <div class="field one layer-choice">
        <label for="tape-layer">Layer on the strip and in the curve</label>
        <div class="in">
          <select
            id="tape-layer"
            value={String(index)}
            onChange={(e) => {
              shown.value = Number(e.currentTarget.value)
            }}
          >
            {storing.map((i) => (
              <option key={i} value={i}>
                {tape.layers[i]!.label}
              </option>
            ))}
          </select>
        </div>
      </div>
      <YearTape
        days={last}
        values={values}
        limit={limit}
        here={picked.value}
        onPick={(i) => (picked.value = i)}
        words={`${label} ${dayWater}`}
      />
      {day && (
        <DayDrawn
          sheet={sheet}
          declaration={declaration}
          layers={tape.layers}
          profile={profile.value}
          says={`On ${dayOfYearWords(day.date)} ${label} holds ${dayWater} of its dry mass.`}
        />
      )}
      <figure class="drawing">
        <YearChart
          title={`Moisture over the whole run, ${label} in front`}
          says={`${tape.dayCount} days. ${water?.peakOn ? `${label} is wettest on ${water.peakOn}.` : ''}`}
          unit={`${symbol(share)} of dry mass`}
          steps={tape.days.length - 1}
          marks={monthMarks(tape.days)}
          here={day ? tape.days.indexOf(day) : undefined}
          limit={
            limit === undefined
              ? undefined
              : { value: shownAs(limit, share), words: `limit ${words(limit, share)}` }
          }
          curves={curvesOf(tape, index, storing, out).map(({ i, is }) => ({
            words: tape.layers[i]!.label,
            is,
            values: tape.days.map((d) => shownAs(d.layerWaterFraction[i] ?? 0, share)),
          }))}
        />
        <figcaption>
          Water of whole layers at the end of each day. The upright stroke is the day that is drawn above.
        </figcaption>
      </figure>
    </>
  )
}

/** The chosen layer in carmine; beside it those that are judged, for there a limit makes them comparable. */
function curvesOf(
  tape: Tape,
  index: number,
  storing: number[],
  out: YearsOutput | undefined,
): { i: number; is: 'main' | 'ink' | 'dash' }[] {
  const judged = storing.filter(
    (i) => i !== index && out?.layers.find((l) => l.id === tape.layers[i]!.id)?.limitFraction !== undefined,
  )
  return [
    ...judged.slice(0, 3).map((i, k) => ({ i, is: k === 0 ? ('ink' as const) : ('dash' as const) })),
    { i: index, is: 'main' as const },
  ]
}

/** The profile of one day; while another is read, the last one stays. */
function useProfile(house: string, run: string, day: number | undefined) {
  const profile = useSignal<DayProfile | undefined>(undefined)
  useEffect(() => {
    if (day === undefined) return
    const asked = new AbortController()
    const timer = setTimeout(async () => {
      try {
        profile.value = await get<DayProfile>(
          `${housePath(house)}/simulations/${run}/tape/${day}`,
          asked.signal,
        )
      } catch {
        // a day without a profile draws the wall alone
        if (!asked.signal.aborted) profile.value = undefined
      }
    }, PAUSE_MS)
    return () => {
      clearTimeout(timer)
      asked.abort()
    }
  }, [house, run, day, profile])
  return useComputed(() => profile.value)
}

function DayDrawn({
  sheet,
  declaration,
  layers,
  profile,
  says,
}: {
  sheet: AssemblySheet
  declaration: Declaration
  layers: Tape['layers']
  profile: DayProfile | undefined
  says: string
}) {
  const model = wallModel(sheet)
  const celsius = declared(declaration.inputs, 'indoorC')?.unit
  const thickness = unitOf(declaration.inputs, 'layers.thicknessM')
  const density = sheet.layers.flatMap((l) => l.values).find((v) => v.name === 'densityKgPerM3')?.unit
  if (!model || !celsius) return null
  if (!profile) return <Waiting what="Reading the day." />
  const strips: Strip[] = [
    {
      id: 'temperature',
      unit: symbol(celsius),
      curves: [
        {
          words: 'temperature',
          is: 'ink',
          points: profile.depthM.map((depthM, i) => ({
            depthM,
            value: shownAs(profile.temperatureC[i]!, celsius),
          })),
        },
      ],
    },
    {
      id: 'humidity',
      unit: '% RH',
      min: 0,
      max: 100,
      limit: { value: 80, words: '80 % for long lets mould grow' },
      curves: [
        {
          words: 'humidity',
          is: 'ink',
          points: profile.depthM.map((depthM, i) => ({
            depthM,
            value: Math.min(100, 100 * profile.humidityFraction[i]!),
          })),
        },
      ],
    },
    {
      id: 'water',
      unit: density ? symbol(density) : 'kg/m³',
      min: 0,
      curves: [
        {
          words: 'water',
          is: 'main',
          points: byLayer(profile.depthM, profile.waterKgPerM3, layers).map(({ depthM, value }) => ({
            depthM,
            value: value === null || !density ? value : shownAs(value, density),
          })),
        },
      ],
    },
  ]
  return (
    <WallDrawing
      model={model}
      title={`${sheet.label} on ${dayOfYearWords(profile.date)} at ${profile.hourOfDay}:00`}
      says={says}
      strips={strips}
      thicknessWords={(m) => number(m, thickness)}
      inAll={`${symbol(thickness)}, ${number(model.totalM, thickness)} in all`}
      caption={`${says} Drawn as it was at ${profile.hourOfDay}:00, standard time.`}
    />
  )
}

/** Keeps the run as a proof: computed once more from the same bindings, so that a changed layer is seen. */
function Keep({ sheet, house, run, onKept }: RunViewProps) {
  const reason = useSignal('')
  const missing = useSignal(false)
  const busy = useSignal(false)
  const kept = useSignal('')
  const problem = useSignal<Problem | undefined>(undefined)
  if (!run.actions.includes('keep-as-proof')) return null
  const key = proofKeyOf(sheet.id)
  async function keep() {
    missing.value = reason.value.trim() === ''
    if (missing.value) return
    busy.value = true
    problem.value = undefined
    try {
      await post(`${housePath(house.id)}/proofs`, {
        kind: 'COMPUTED',
        key,
        title: `Years of moisture, ${sheet.label}`,
        calculation: run.calculation,
        bindings: run.bindings,
        submission: null,
        reason: reason.value.trim(),
      })
      kept.value = key
      reason.value = ''
      onKept()
    } catch (thrown) {
      problem.value = Problem.of(thrown)
    } finally {
      busy.value = false
    }
  }
  return (
    <div class="keep no-print">
      <h3>Keep as a proof</h3>
      <Reason
        label="Reason"
        value={reason.value}
        onType={(text) => {
          reason.value = text
          if (text.trim()) missing.value = false
        }}
        error={missing.value ? 'Say why; it stays on the record beside the proof.' : undefined}
        hint="Computed once more from the same inputs; it says so when a layer changes."
      />
      {problem.value && <Wrong problem={problem.value} outcome="Not kept." />}
      <p role="status">
        {kept.value && (
          <>
            Kept. <a href={`${housePath(house.id)}/proofs/${kept.value}`}>See the proof</a>
          </>
        )}
      </p>
      <div class="acts">
        <button type="button" class="b" disabled={busy.value} onClick={() => void keep()}>
          Keep as a proof
        </button>
      </div>
    </div>
  )
}
