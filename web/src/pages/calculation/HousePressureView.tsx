import { root } from '../../chart/axis.ts'
import { spread, useWidth } from '../../chart/Plot.tsx'
import type { Row } from '../../form/field.ts'
import { DataTable } from '../../parts/lists.tsx'
import { Outputs, OutputValue, RowsOf } from '../../parts/Result.tsx'
import { tickText } from '../../parts/Scale.tsx'
import { StateWord } from '../../parts/Status.tsx'
import type { ViewProps } from './CalculationPage.tsx'
import { Frame } from './Frame.tsx'
import type { Answer, Declaration } from './types.ts'
import { useCalculation } from './useCalculation.ts'
import { outputField, say, sayFigure, saySet, unitWord } from './words.ts'

interface Combination extends Row {
  id: string
  running: string
  housePressurePa: number
  coupledPressurePa: number
  failedPressurePa: number
  failedCoupledPressurePa: number
  stoppedPressurePa: number
  verdict: string
  coupledVerdict: string
  failedVerdict: string
}

interface Pressure extends Row {
  worst: string
  housePressurePa: number
  coupledPressurePa: number
  limitPa: number
  failedLimitPa: number
  verdict: string
  coupledVerdict: string
  combinations: Combination[] & Row[]
  devices: Row[]
  makeUpUnits: Row[]
}

/** Every combination of what can run, worst first, against both limits. */
export function HousePressureView({ declaration, house }: ViewProps) {
  const work = useCalculation<Pressure>(declaration)
  const answer = work.answer.value
  return (
    <Frame
      declaration={declaration}
      house={house}
      work={work}
      title="House pressure"
      heading={answer && finding(declaration, answer.printed)}
      lead={answer && needed(declaration, answer)}
    >
      {(came) => <Result declaration={declaration} out={came.printed} />}
    </Frame>
  )
}

function finding(declaration: Declaration, out: Pressure): string {
  const field = outputField(declaration, 'housePressurePa')
  const low = Math.min(out.coupledPressurePa, out.housePressurePa)
  const high = Math.max(out.coupledPressurePa, out.housePressurePa)
  const range =
    sayFigure(field, low) === sayFigure(field, high)
      ? say(field, high)
      : `${sayFigure(field, low)} to ${say(field, high)}`
  const limit = saySet(outputField(declaration, 'limitPa'), out.limitPa)
  const what = out.worst === 'nothing' ? 'With nothing running' : `With ${listed(out.worst)} running`
  const sits =
    high < 0
      ? `the house would sit above outdoors by ${say(field, -low)}`
      : `the house would sit ${range} below outdoors`
  if (out.verdict === 'PASSES') return `${what}, ${sits}. The limit of ${limit} holds.`
  if (out.coupledVerdict === 'FAILS') return `${what}, ${sits}. The limit is ${limit}.`
  if (out.coupledVerdict === 'PASSES')
    return `${what}, ${sits}: within ${limit} only because its fans stall against the house.`
  return `${what}, ${sits}: not proven against the limit of ${limit}.`
}

/** "Range hood, Bath fan" as a sentence takes it: "range hood and bath fan". */
function listed(names: string): string {
  const all = names
    .split(', ')
    .map((n) => (/^[A-Z][a-z]/.test(n) ? n.charAt(0).toLowerCase() + n.slice(1) : n))
  return all.length < 2 ? all.join('') : `${all.slice(0, -1).join(', ')} and ${all.at(-1)}`
}

function needed(declaration: Declaration, answer: Answer<Row, Pressure>): string {
  const out = answer.printed
  const need = say(outputField(declaration, 'makeUpNeededM3PerS'), out.makeUpNeededM3PerS)
  const limit = saySet(outputField(declaration, 'limitPa'), out.limitPa)
  const units = (answer.inputs.makeUpUnits as Row[] | undefined) ?? []
  const has = units.reduce((sum, u) => sum + ((u.airflowM3PerS as number) ?? 0), 0)
  const now = say(outputField(declaration, 'makeUpNeededM3PerS'), has)
  if (!((out.makeUpNeededM3PerS as number) > 0)) return `It holds ${limit} without any make-up air.`
  return `To hold ${limit} at rated flows the make-up air must bring ${need} in all; ${has > 0 ? `${now} is entered` : 'none is entered'}.`
}

function Result({ declaration, out }: { declaration: Declaration; out: Pressure }) {
  const pressure = outputField(declaration, 'combinations.housePressurePa')
  const rows = out.combinations as Combination[]
  const verdict = outputField(declaration, 'combinations.verdict')
  const interlock = outputField(declaration, 'combinations.interlock')
  const flow = outputField(declaration, 'combinations.netExhaustM3PerS')
  const figure = (name: keyof Combination & string) => (c: Combination) => sayFigure(pressure, c[name])
  return (
    <>
      <Strips
        rows={rows}
        marks={[
          { of: (c) => c.housePressurePa, words: 'at rated flows', shape: 'full' },
          { of: (c) => c.coupledPressurePa, words: 'with fan curves', shape: 'open' },
        ]}
        limit={out.limitPa}
        title="Make-up air working"
      />
      <Strips
        rows={rows}
        marks={[
          { of: (c) => c.failedPressurePa, words: 'at rated flows', shape: 'full' },
          { of: (c) => c.failedCoupledPressurePa, words: 'with fan curves', shape: 'open' },
          { of: (c) => c.stoppedPressurePa, words: 'after the interlock has acted', shape: 'bar' },
        ]}
        limit={out.failedLimitPa}
        title="Make-up air failed"
      />
      <DataTable
        label="Every combination of what can run"
        caption="Every combination of what can run, worst first"
        rows={rows}
        keyOf={(c) => c.id}
        isKey={(c) => c.id === rows[0]?.id}
        rowHeads
        columns={[
          {
            head: 'what runs',
            cell: (c) => (
              <span class="what-runs">
                {c.running}
                <span class="sub">
                  make-up failed: <OutputValue field={interlock} value={c.interlock} />
                </span>
              </span>
            ),
          },
          {
            head: 'net exhaust',
            unit: unitWord(flow),
            figures: true,
            cell: (c) => sayFigure(flow, c.netExhaustM3PerS),
          },
          {
            head: 'house pressure',
            unit: 'Pa, at rated flows',
            figures: true,
            cell: (c) => <b>{figure('housePressurePa')(c)}</b>,
          },
          { head: 'with fan curves', unit: 'Pa', figures: true, cell: figure('coupledPressurePa') },
          {
            head: `limit ${saySet(pressure, out.limitPa)}`,
            cell: (c) => <Both rated={c.verdict} curves={c.coupledVerdict} />,
          },
          { head: 'make-up failed', unit: 'Pa', figures: true, cell: figure('failedPressurePa') },
          { head: 'with fan curves', unit: 'Pa', figures: true, cell: figure('failedCoupledPressurePa') },
          {
            head: `limit ${saySet(pressure, out.failedLimitPa)}`,
            cell: (c) => <OutputValue field={verdict} value={c.failedVerdict} />,
          },
          {
            head: 'once the interlock has acted',
            unit: 'Pa',
            figures: true,
            cell: figure('stoppedPressurePa'),
          },
        ]}
      />
      <MakeUp declaration={declaration} out={out} />
      <RowsOf field={outputField(declaration, 'devices')} rows={out.devices} />
      <Outputs
        fields={declaration.outputs}
        record={out}
        hide={['worst', 'combinations', 'devices', 'makeUpUnits']}
      />
    </>
  )
}

/** One word where both answers agree, both with their reasons where they don't. */
function Both({ rated, curves }: { rated: string; curves: string }) {
  if (rated === curves) return <StateWord state={rated} />
  return (
    <>
      <StateWord state={rated} />
      <span class="sub">
        with fan curves: {curves === 'PASSES' ? 'passes' : curves === 'FAILS' ? 'fails' : 'not proven'}
      </span>
    </>
  )
}

function MakeUp({ declaration, out }: { declaration: Declaration; out: Pressure }) {
  const field = outputField(declaration, 'makeUpUnits')
  return (
    <>
      {out.makeUpUnits.map((unit) => (
        <div key={String(unit.id)} class="result-group">
          <h3>{String(unit.label || unit.id)}</h3>
          <dl class="facts">
            {field.fields
              .filter((f) => f.name !== 'id' && f.name !== 'label' && unit[f.name] !== undefined)
              .map((f) => (
                <div key={f.name}>
                  <dt>{f.label}</dt>
                  <dd>
                    <OutputValue field={f} value={unit[f.name]} />
                  </dd>
                </div>
              ))}
          </dl>
        </div>
      ))}
    </>
  )
}

interface StripMark {
  of: (c: Combination) => number
  words: string
  shape: 'full' | 'open' | 'bar'
}

interface StripsProps {
  rows: Combination[]
  marks: StripMark[]
  limit: number
  title: string
}

const ROW = 46

/** Each combination on one scale whose roots are even, so that 5 Pa and 300 Pa both read. */
function Strips({ rows, marks, limit, title }: StripsProps) {
  const { ref, width } = useWidth<HTMLDivElement>(720)
  const narrow = width < 620
  const left = narrow ? 10 : Math.min(260, width * 0.34)
  const right = width - 30
  const values = rows.flatMap((c) => marks.map((m) => m.of(c)))
  const high = Math.max(10, limit * 2, ...values) * 1.02
  const lowest = Math.min(0, ...values)
  // a house above outdoors needs room left of zero
  const zero =
    lowest < 0 ? left + (right - left) * (Math.sqrt(-lowest) / (Math.sqrt(-lowest) + Math.sqrt(high))) : left
  const axis = root(high, zero, right)
  const top = 24
  const row = narrow ? ROW + 10 : ROW
  const bottom = top + rows.length * row
  const x = (v: number) => axis.at(v)
  const words = rows
    .map((c) => `${c.running}: ${marks.map((m) => `${m.words} ${m.of(c).toFixed(1)} Pa`).join(', ')}`)
    .join('. ')
  return (
    <figure class="drawing strips">
      <figcaption>
        <b>{title}.</b>{' '}
        {marks.map((m, i) => (
          <span key={m.words}>
            {i > 0 && ' · '}
            <svg class="key-mark" viewBox="-8 -8 16 16" aria-hidden="true">
              <MarkShape shape={m.shape} x={0} y={0} />
            </svg>{' '}
            {m.words}
          </span>
        ))}
      </figcaption>
      <div ref={ref}>
        <svg
          viewBox={`0 0 ${width} ${bottom + 44}`}
          width={width}
          height={bottom + 44}
          role="img"
          aria-label={`${title}. Limit ${limit} Pa. ${words}`}
        >
          <rect
            x={x(limit)}
            y={top - 8}
            width={Math.max(0, right - x(limit))}
            height="8"
            fill="url(#k-lim)"
          />
          <path class="axis" stroke-width="2" d={`M${x(limit)} ${top - 8}V${bottom}`} />
          <text font-size="13" class="halo" stroke-width="5" x={x(limit)} y={top - 12} text-anchor="middle">
            limit {tickText(limit)} Pa
          </text>
          {spread(axis.ticks, x, 26).map((t) => (
            <g key={t}>
              <path class="grid" d={`M${x(t)} ${top}V${bottom}`} />
              <path class="axis" d={`M${x(t)} ${bottom}v6`} />
              <text class="t2" font-size="13" x={x(t)} y={bottom + 20} text-anchor="middle">
                {tickText(t)}
              </text>
            </g>
          ))}
          {rows.map((c, i) => {
            const y = top + i * row + (narrow ? row - 18 : row / 2)
            const places = marks.map((m) => x(m.of(c)))
            return (
              <g key={c.id}>
                <path class="grid" d={`M0 ${top + (i + 1) * row}H${right}`} />
                <text font-size="13" x="0" y={narrow ? y - 18 : y + 4.5}>
                  {shorten(c.running, narrow ? width / 7 : left / 7.2)}
                </text>
                <path
                  class="o2"
                  stroke-width="1.4"
                  d={`M${Math.min(...places)} ${y}H${Math.max(...places)}`}
                />
                {[...marks].reverse().map((m) => (
                  <MarkShape key={m.words} shape={m.shape} x={x(m.of(c))} y={y} main={i === 0} />
                ))}
                <text
                  class={i === 0 ? 'tr halo' : 't2 halo'}
                  stroke-width="5"
                  font-size="13"
                  x={Math.min(Math.max(...places), right - 34) + 11}
                  y={y - 7}
                >
                  {marks[0]!.of(c).toFixed(1)}
                </text>
              </g>
            )
          })}
          <path class="axis" d={`M${Math.min(x(0), left)} ${bottom}H${right}`} />
          <text class="t2" font-size="13" x={right} y={bottom + 40} text-anchor="end">
            {narrow ? 'Pa below outdoors (root scale)' : 'house pressure below outdoors, Pa (root scale)'}
          </text>
        </svg>
      </div>
    </figure>
  )
}

function MarkShape({
  shape,
  x,
  y,
  main,
}: {
  shape: StripMark['shape']
  x: number
  y: number
  main?: boolean
}) {
  if (shape === 'full') return <circle class={main ? 'redf' : 'inkf'} cx={x} cy={y} r="5.5" />
  if (shape === 'open')
    return <rect class="o open-mark" stroke-width="2" x={x - 4.5} y={y - 4.5} width="9" height="9" />
  return <path class="o" stroke-width="3" d={`M${x} ${y - 7}v14`} />
}

function shorten(text: string, letters: number): string {
  const most = Math.max(8, Math.floor(letters))
  return text.length <= most ? text : `${text.slice(0, most - 1)}…`
}
