import { useSignal } from '@preact/signals'
import { useResource } from '../../api/resource.ts'
import { Choose } from '../../parts/Choose.tsx'
import { type Column, DataTable, Matter, Matters } from '../../parts/lists.tsx'
import { spaced } from '../../parts/Result.tsx'
import { Waiting, Wrong } from '../../parts/Says.tsx'
import { StateWord, Status } from '../../parts/Status.tsx'
import { housePath } from '../../record/record.ts'
import type { House, PartType } from '../../record/types.ts'
import { fieldOf } from '../../record/values.ts'
import type { PageProps } from '../../shell/routes.ts'
import { Sheet } from '../../shell/Sheet.tsx'
import { me } from '../../shell/session.ts'
import { dayWords } from '../../units/days.ts'
import { Findings } from '../../wall/Findings.tsx'
import { words } from '../../wall/say.ts'
import { JoinsDrawing, labelOf } from './JoinsDrawing.tsx'
import type { ControlLine, Joins, JoinsHole, JoinsJunction, Line, LinkedCheck } from './types.ts'

/** Whether water, air, vapour and heat are held all around the house, and where not. */
export default function JoinsPage({ house = '' }: PageProps) {
  const joins = useResource<Joins>(`${housePath(house)}/joins`)
  const line = useResource<House>(housePath(house))
  const type = useResource<PartType>('/part-types/enclosure')
  const [j, h, t] = [joins.data.value, line.data.value, type.data.value]
  if (!j || !h || !t) {
    const problem = joins.problem.value ?? line.problem.value ?? type.problem.value
    return (
      <Sheet heading="Joins" block={[['Sheet', 'Joins']]}>
        {problem ? (
          <Wrong problem={problem} onAgain={() => void joins.reload()} />
        ) : (
          <Waiting what="Following the lines around the house." />
        )}
      </Sheet>
    )
  }
  return <Page joins={j} house={h} type={t} />
}

const ORDER: Line[] = ['AIR', 'WATER', 'VAPOUR', 'THERMAL']

function Page({ joins, house, type }: { joins: Joins; house: House; type: PartType }) {
  const control = useSignal<Line>('AIR')
  const path = housePath(house.id)
  const line = joins.lines.find((l) => l.control === control.value)
  return (
    <Sheet
      over={
        <>
          <a href={`${path}/record/enclosure`}>Enclosure</a> · junctions (joins), holes, the red line
        </>
      }
      heading={finding(joins)}
      title={`Joins · ${house.id}`}
      lead={othersSay(joins)}
      block={[
        ['House', `${house.id} ${house.name}`],
        ['Sheet', 'Joins'],
        ['Record as of', dayWords(me.value?.today)],
        ['Scale', 'none'],
        ['Junctions, holes', `${joins.junctions.length}, ${joins.holes.length}`],
      ]}
    >
      {joins.refusal ? (
        <p class="say">
          <b>Not drawn.</b> {joins.refusal}
        </p>
      ) : (
        <>
          <Choose
            name="line"
            legend="Line for"
            options={ORDER.map((c): [Line, string] => [c, labelOf(joins, c)])}
            value={control.value}
            onChoose={(c) => (control.value = c)}
          />
          <JoinsDrawing joins={joins} control={control.value} sentence={line?.sentence ?? ''} />
          <section>
            <h2>The four lines</h2>
            <Matters>
              {ORDER.map((c) => joins.lines.find((l) => l.control === c)).map(
                (l) => l && <LineMatter key={l.control} joins={joins} line={l} house={house.id} />,
              )}
            </Matters>
          </section>
        </>
      )}
      <section>
        <h2>Holes through the red line</h2>
        <Holes joins={joins} house={house.id} type={type} />
      </section>
      <section>
        <h2>Junctions</h2>
        <Junctions joins={joins} house={house.id} />
      </section>
      <section>
        <h2>What to look at</h2>
        <Findings
          findings={[...joins.findings, ...joins.junctions.flatMap((j) => j.findings)]}
          none="Nothing is found against the joins."
        />
        {joins.assemblies
          .filter((a) => a.findings.length > 0)
          .map((a) => (
            <div key={a.id}>
              <h3>
                <a href={`${path}/walls/${encodeURIComponent(a.id)}`}>{a.label}</a>
              </h3>
              <Findings findings={a.findings} />
            </div>
          ))}
      </section>
      {joins.proofs.length > 0 && (
        <section>
          <h2>Proofs that rest on the enclosure</h2>
          <Matters>
            {joins.proofs.map((p) => (
              <Matter
                key={p.key}
                mark={<StateWord state={p.state} />}
                note={`issue ${p.issue}, copy code ${spaced(p.copyCode)}`}
              >
                <a href={`${path}/proofs/${encodeURIComponent(p.key)}`}>{p.title}</a>
              </Matter>
            ))}
          </Matters>
        </section>
      )}
      {joins.actions.includes('save-part') && (
        <p class="note no-print">
          <a href={`${path}/record/enclosure`}>Say in the record how something is joined or sealed</a>
        </p>
      )}
    </Sheet>
  )
}

/** The red line first: it is the one that the tightness test will measure. */
export function finding(joins: Joins): string {
  if (joins.refusal) return 'The lines around the house cannot be followed yet.'
  const open = joins.lines.filter((l) => !l.closed)
  if (open.length === 0) return 'All four lines are closed around the house.'
  const air = joins.lines.find((l) => l.control === 'AIR')
  if (air?.closed) return `The red line is closed; the line for ${listed(open)} is not.`
  return air?.sentence.replace('The line for air', 'The red line') ?? ''
}

const listed = (lines: ControlLine[]) =>
  lines
    .map((l) => l.controlLabel)
    .join(', ')
    .replace(/, ([^,]*)$/, ' and $1')

function othersSay(joins: Joins): string | undefined {
  const others = joins.lines.filter((l) => l.control !== 'AIR' && !l.closed)
  const missing = joins.missingHoles.length
  const said = others.map((l) => l.sentence)
  if (missing > 0) {
    const which = joins.missingHoles.map((m) => m.label)
    said.push(`Not named yet: ${which.join(', ')}.`)
  }
  return said.length > 0 ? said.join(' ') : undefined
}

function LineMatter({ joins, line, house }: { joins: Joins; line: ControlLine; house: string }) {
  const breaks = joins.breaks.filter((b) => b.control === line.control)
  return (
    <Matter mark={<Status is={line.closed ? 'stands' : 'lapsed'}>{line.closed ? 'Closed' : 'Open'}</Status>}>
      {line.sentence}
      {breaks.length > 0 && (
        <ul class="breaks">
          {breaks.map((b) => (
            <li key={b.id}>
              {b.reason}
              {b.coverCheck && (
                <>
                  {' '}
                  <a href={`${housePath(house)}/cover-checks/${encodeURIComponent(b.coverCheck)}`}>
                    Cover check {b.coverCheck}
                  </a>
                </>
              )}
            </li>
          ))}
        </ul>
      )}
    </Matter>
  )
}

function Check({ check, house }: { check: LinkedCheck | null; house: string }) {
  if (!check) return <>none</>
  return (
    <>
      <a href={`${housePath(house)}/cover-checks/${encodeURIComponent(check.code)}`}>
        {check.title ?? check.code}
      </a>
      <span class="sub">{check.title ? (check.stateLabel ?? 'not yet made') : 'no check of this house'}</span>
    </>
  )
}

const SHAPE = { CONTINUOUS: 'stands', DETAIL: 'stands', OPEN: 'lapsed', NOT_SAID: 'open' } as const
const WORD = {
  CONTINUOUS: 'Runs through',
  DETAIL: 'Detail',
  OPEN: 'Not joined',
  NOT_SAID: 'Not said',
} as const

function Junctions({ joins, house }: { joins: Joins; house: string }) {
  const columns: Column<JoinsJunction>[] = [
    {
      head: 'junction',
      cell: (j) => (
        <>
          {joins.junctions.indexOf(j) + 1} {j.label}
          <span class="sub">{j.toLabel ? `${j.fromLabel} to ${j.toLabel}` : j.fromLabel}</span>
        </>
      ),
    },
    ...(['WATER', 'AIR', 'VAPOUR', 'THERMAL'] as const).map(
      (control): Column<JoinsJunction> => ({
        head: labelOf(joins, control),
        cell: (j) => {
          const join = j.joins.find((one) => one.control === control)
          if (!join) return '–'
          const broken = !join.holds && (join.state === 'CONTINUOUS' || join.state === 'DETAIL')
          return (
            <>
              <Status is={broken ? 'lapsed' : SHAPE[join.state]}>
                {broken ? 'Does not hold' : WORD[join.state]}
              </Status>
              <span class="sub">{join.holds ? (join.detail ?? '') : (join.reason ?? join.detail ?? '')}</span>
            </>
          )
        },
      }),
    ),
    { head: 'looked at by', cell: (j) => <Check check={j.coverCheck} house={house} /> },
  ]
  if (joins.junctions.length === 0)
    return <p class="say">No junction (join) of two assemblies is written yet.</p>
  return <DataTable label="Junctions" columns={columns} rows={joins.junctions} keyOf={(j) => j.id} rowHeads />
}

function Holes({ joins, house, type }: { joins: Joins; house: string; type: PartType }) {
  const unit = fieldOf(type.fields, 'holes.diameterM')?.unit
  const holes = [...joins.holes].sort((a, b) => Number(a.holds) - Number(b.holds))
  const columns: Column<JoinsHole>[] = [
    { head: 'hole', cell: (h) => h.label },
    { head: 'through', cell: (h) => h.assemblyLabel },
    {
      head: 'diameter',
      figures: true,
      cell: (h) => (h.diameterM === null || !unit ? '–' : words(h.diameterM, unit)),
    },
    {
      head: 'sealed',
      cell: (h) => (
        <>
          <Status is={h.holds ? 'stands' : 'open'}>{h.holds ? 'Sealed' : 'Not said'}</Status>
          <span class="sub">{h.holds ? h.sealedBy : h.reason}</span>
        </>
      ),
    },
    { head: 'looked at by', cell: (h) => <Check check={h.coverCheck} house={house} /> },
  ]
  return (
    <>
      {joins.missingHoles.length > 0 && (
        <Matters label="Holes that nobody has named">
          {joins.missingHoles.map((m) => (
            <Matter key={m.id} mark={<Status is="open">Not named</Status>}>
              <b>{m.label}</b>: {m.namedCount} of {m.expectedCount} named. The house cannot do without it, so
              it will be made.
            </Matter>
          ))}
        </Matters>
      )}
      {holes.length === 0 ? (
        <p class="say">No hole is listed yet.</p>
      ) : (
        <DataTable label="Holes" columns={columns} rows={holes} keyOf={(h) => h.id} rowHeads />
      )}
    </>
  )
}
