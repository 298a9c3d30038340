import { useSignal } from '@preact/signals'
import { useCallback, useMemo } from 'preact/hooks'
import { useResource } from '../../api/resource.ts'
import type { Row } from '../../form/field.ts'
import { Choose } from '../../parts/Choose.tsx'
import { Matter, Matters } from '../../parts/lists.tsx'
import { Cautions, Notices, Outputs, spaced } from '../../parts/Result.tsx'
import { NothingYet, Of, Waiting, Wrong } from '../../parts/Says.tsx'
import { StateWord } from '../../parts/Status.tsx'
import { housePath } from '../../record/record.ts'
import type { House, Part } from '../../record/types.ts'
import type { PageProps } from '../../shell/routes.ts'
import { Sheet } from '../../shell/Sheet.tsx'
import { chooseUnits, me } from '../../shell/session.ts'
import { dayWords } from '../../units/days.ts'
import { system } from '../../units/system.ts'
import { DAY, type Placed } from '../../wall/day.ts'
import { Findings } from '../../wall/Findings.tsx'
import { firstSentence, type Simulation } from '../../wall/run.ts'
import { unitOf, words } from '../../wall/say.ts'
import type { AssemblySheet, SheetResult } from '../../wall/types.ts'
import type { Declaration, Notice } from '../calculation/types.ts'
import { DayDrawing, DayForm, dayFinding } from './DayDrawing.tsx'
import { LayersTable } from './LayersTable.tsx'
import { MonthlyWater } from './MonthlyWater.tsx'
import { Resistance } from './Resistance.tsx'
import { useDay } from './useDay.ts'
import { Years } from './Years.tsx'

export const RESISTANCE = 'assembly-resistance'
export const MONTHLY = 'condensation-monthly'

/** One wall, roof or floor: its layers, what is computed across them, and what is wrong with them. */
export default function WallPage({ house = '', assembly = '' }: PageProps) {
  const sheet = useResource<AssemblySheet>(`${housePath(house)}/assemblies/${encodeURIComponent(assembly)}`)
  const line = useResource<House>(housePath(house))
  const moisture = useResource<Part>(`${housePath(house)}/parts/moisture`)
  const day = useResource<Declaration>(`/calculations/${DAY}`)
  const resistance = useResource<Declaration>(`/calculations/${RESISTANCE}`)
  const all = [sheet, line, moisture, day, resistance]
  const problem = all.map((r) => r.problem.value).find(Boolean)
  if (all.some((r) => r.data.value === undefined)) {
    return (
      <Sheet heading={sheet.data.value?.label ?? 'Assembly'} block={[['Sheet', 'Assembly']]}>
        {problem ? (
          <Wrong
            problem={problem}
            onAgain={() => {
              for (const r of all) void r.reload()
            }}
          />
        ) : (
          <Waiting what="Computing the assembly from its layers." />
        )}
      </Sheet>
    )
  }
  return (
    <AssemblyPage
      key={`${house} ${assembly}`}
      sheet={sheet.data.value!}
      house={line.data.value!}
      moisture={moisture.data.value!}
      day={day.data.value!}
      resistance={resistance.data.value!}
    />
  )
}

interface AssemblyPageProps {
  sheet: AssemblySheet
  house: House
  moisture: Part
  day: Declaration
  resistance: Declaration
}

function AssemblyPage({ sheet, house, moisture, day: declaration, resistance }: AssemblyPageProps) {
  const placed = useMemo(() => placedOf(sheet), [sheet])
  const limits =
    (moisture.document.limits as unknown as { outdoorC: number; relativeHumidityFraction: number }[]) ?? []
  const recordDay = resultOf(sheet, DAY)?.answer?.inputs.climate as Row | undefined
  const day = useDay(declaration, recordDay && placed, recordDay ?? {})
  const thickness = unitOf(resistance.inputs, 'layers.thicknessM')
  const heat = resultOf(sheet, RESISTANCE)
  const monthly = resultOf(sheet, MONTHLY)
  const uValue = heat?.answer?.printed.uValueWPerM2K as number | undefined
  const run = useSignal<Simulation | undefined>(undefined)
  const newest = useCallback((r: Simulation | undefined) => (run.value = r), [run])
  const verdict = yearsFinding(run.value)
  const said = verdict ?? dayFinding(day.day.value, declaration)
  // a run wants its points from the cold up
  const curve = [...limits]
    .sort((a, b) => a.outdoorC - b.outdoorC)
    .map((l) => ({ outdoorC: l.outdoorC, humidityFraction: l.relativeHumidityFraction }))
  const path = housePath(house.id)
  return (
    <Sheet
      over={
        <>
          <a href={`${path}/record/enclosure`}>Enclosure</a> · {sheet.label}
        </>
      }
      heading={said.finding ?? sheet.label}
      title={`${sheet.label} · ${house.id}`}
      lead={said.lead}
      block={[
        ['House', `${house.id} ${house.name}`],
        ['Sheet', sheet.label],
        ['Record as of', dayWords(me.value?.today)],
        ['Scale', 'drawn in mm'],
        [
          'U-value',
          uValue === undefined ? '–' : words(uValue, unitOf(resistance.outputs, 'uValueWPerM2K'), 0.001),
        ],
      ]}
    >
      <Choose
        name="page-units"
        legend="Units"
        options={[
          ['IP', 'in., °F'],
          ['SI', 'mm, °C'],
        ]}
        value={system.value}
        onChoose={(units) => void chooseUnits(units)}
      />
      <DayDrawing
        sheet={sheet}
        house={house}
        day={day.day.value}
        declaration={declaration}
        thickness={thickness}
      />
      {day.problem.value && <Wrong problem={day.problem.value} outcome="Not computed." />}
      {resultOf(sheet, DAY)?.refusal && (
        <p class="say">
          <b>No day is drawn.</b> {resultOf(sheet, DAY)?.refusal}
        </p>
      )}
      {recordDay && <DayForm form={day.form} record={recordDay} />}
      <section>
        <h2>What to look at</h2>
        {sheet.sunDaysUsed !== null && (
          <p class="note">The outer membrane has stood in the sun for {sheet.sunDaysUsed} days by today.</p>
        )}
        <Findings findings={sheet.findings} none="None of the usual mistakes is found in it." />
      </section>
      <LayersTable
        sheet={sheet}
        resistance={resistance}
        result={heat}
        day={day.day.value}
        declaration={declaration}
      />
      <Resistance declaration={resistance} result={heat} />
      {monthly && <Monthly result={monthly} />}
      {sheet.results
        .filter((r) => !OWN.includes(r.calculation))
        .map((r) => (
          <OtherResult key={r.calculation} result={r} />
        ))}
      <Years sheet={sheet} house={house} curve={curve} onNewest={newest} />
      <section>
        <h2>Proofs that rest on it</h2>
        <RestingProofs sheet={sheet} />
      </section>
      <Underneath sheet={sheet} day={day.day.value?.answer} declaration={declaration} />
      <p class="note no-print">
        {sheet.actions.includes('save-part') && (
          <>
            <a href={`${path}/record/enclosure`}>Change its layers</a> ·{' '}
          </>
        )}
        <a href={`${path}/joins`}>How it is joined: {sheet.junctions.length} junctions</a>
      </p>
    </Sheet>
  )
}

/** Results that the page shows in its own way; any other is shown as its declaration says. */
const OWN = [RESISTANCE, MONTHLY, DAY]

function OtherResult({ result }: { result: SheetResult }) {
  const declaration = useResource<Declaration>(`/calculations/${result.calculation}`)
  return (
    <section>
      <h2>{result.title}</h2>
      {result.answer ? (
        <Of resource={declaration}>
          {(d) => <Outputs fields={d.outputs} record={result.answer!.printed} />}
        </Of>
      ) : (
        <p class="say">
          <b>Not computed.</b> {result.refusal}
        </p>
      )}
    </section>
  )
}

/** Its declaration is read only where the page has such a result. */
function Monthly({ result }: { result: SheetResult }) {
  const declaration = useResource<Declaration>(`/calculations/${MONTHLY}`)
  return <Of resource={declaration}>{(d) => <MonthlyWater result={result} declaration={d} />}</Of>
}

/** The verdict of the newest run stands over what a single day says; one on older values says so. */
function yearsFinding(run: Simulation | undefined): { finding: string; lead: string } | undefined {
  const words = run?.outputs.find((o) => o.name === 'inWords')?.value
  if (!run || !words) return undefined
  const [finding, rest] = firstSentence(words)
  const old = run.inputsChanged.length > 0 ? ' Inputs changed since this was computed.' : ''
  return { finding, lead: rest + old }
}

const resultOf = (sheet: AssemblySheet, calculation: string) =>
  sheet.results.find((r) => r.calculation === calculation)

/** The layers as the portal filled them into its calculations; nothing is put together here. */
function placedOf(sheet: AssemblySheet): Placed | undefined {
  const answer = resultOf(sheet, RESISTANCE)?.answer
  if (!answer) return undefined
  return {
    placement: answer.inputs.placement as Placed['placement'],
    layers: answer.inputs.layers as unknown as Placed['layers'],
    counted: answer.output.layers as unknown as Placed['counted'],
  }
}

function RestingProofs({ sheet }: { sheet: AssemblySheet }) {
  if (sheet.proofs.length === 0)
    return <NothingYet>No proof is kept yet; a computed year can be kept as one.</NothingYet>
  return (
    <Matters>
      {sheet.proofs.map((p) => (
        <Matter
          key={p.key}
          mark={<StateWord state={p.state} />}
          note={`issue ${p.issue}, copy code ${spaced(p.copyCode)}`}
        >
          <a href={`${housePath(sheet.houseId)}/proofs/${encodeURIComponent(p.key)}`}>{p.title}</a>
        </Matter>
      ))}
    </Matters>
  )
}

/** What the calculations say beside their numbers, each once. */
function Underneath({
  sheet,
  day,
  declaration,
}: {
  sheet: AssemblySheet
  day: { notices: Notice[] } | undefined
  declaration: Declaration
}) {
  const notices = [...sheet.results.flatMap((r) => r.answer?.notices ?? []), ...(day?.notices ?? [])]
  const cautions = [...sheet.results.flatMap((r) => r.answer?.cautions ?? []), ...declaration.cautions]
  const once = <T,>(all: T[], key: (t: T) => string) => [...new Map(all.map((t) => [key(t), t])).values()]
  return (
    <section>
      <h2>What to bear in mind</h2>
      <Notices notices={once(notices, (n) => n.code + n.sentence)} />
      <Cautions cautions={once(cautions, (c) => c.subject + c.text)} />
    </section>
  )
}
