import { type Column, DataTable } from '../../parts/lists.tsx'
import { Status } from '../../parts/Status.tsx'
import { Strips } from '../../wall/Strips.tsx'
import { number, shownAs, symbol, unitOf, words } from '../../wall/say.ts'
import type { SheetResult } from '../../wall/types.ts'
import { YearChart } from '../../wall/YearChart.tsx'
import type { Declaration } from '../calculation/types.ts'

interface Month {
  month: string
  condensedKgPerM2: number
  evaporatedKgPerM2: number
  storedKgPerM2: number
}

interface Point {
  depthM: number
  temperatureC: number
  saturationPa: number
  vapourPa: number
}

export interface MonthlyOutput {
  verdict: string
  mostKgPerM2: number
  mostIn: string | null
  leftKgPerM2: number
  planes: { id: string; place: string; mostKgPerM2: number; leftKgPerM2: number }[]
  months: Month[]
  drawnMonth: string
  points: Point[]
}

/** Water that diffusion brings month by month, and the dew-point drawing of the month in which most comes. */
export function MonthlyWater({ result, declaration }: { result: SheetResult; declaration: Declaration }) {
  const answer = result.answer
  if (!answer) {
    return (
      <section>
        <h2>{result.title}</h2>
        <p class="say">
          <b>Not computed.</b> {result.refusal}
        </p>
      </section>
    )
  }
  const out = answer.printed as unknown as MonthlyOutput
  const water = unitOf(declaration.outputs, 'mostKgPerM2')
  const pressure = unitOf(declaration.outputs, 'points.saturationPa')
  const depth = unitOf(declaration.outputs, 'points.depthM')
  const option = (name: string, id: string) =>
    declaration.outputs.find((f) => f.name === name)?.options.find((o) => o.id === id)?.label ??
    id.toLowerCase()
  const monthWord = (id: string) => option('drawnMonth', id)
  const says =
    out.planes.length === 0
      ? 'No month brings condensation inside it.'
      : `Most water, ${words(out.mostKgPerM2, water, 0.001)}, lies in it at the end of ${out.mostIn ? monthWord(out.mostIn) : 'the year'}; ${
          out.leftKgPerM2 > 0
            ? `${words(out.leftKgPerM2, water, 0.001)} is left after the year.`
            : 'all of it dries.'
        }`
  const last = out.points.at(-1)?.depthM ?? 0
  const columns: Column<Month>[] = [
    { head: 'month', cell: (m) => monthWord(m.month) },
    ...(
      [
        ['condensed', 'condensedKgPerM2'],
        ['evaporated', 'evaporatedKgPerM2'],
        ['lies in it at its end', 'storedKgPerM2'],
      ] as const
    ).map(
      ([head, name]): Column<Month> => ({
        head,
        unit: symbol(water),
        figures: true,
        cell: (m) => number(m[name], water, 0.001),
      }),
    ),
  ]
  return (
    <section>
      <h2>{result.title}</h2>
      <p class="say">
        <Status is={out.leftKgPerM2 > 0 ? 'over' : out.planes.length > 0 ? 'look' : 'stands'}>
          {option('verdict', out.verdict)}
        </Status>{' '}
        {says}
      </p>
      <figure class="drawing">
        <Strips
          label={`Dew-point drawing, ${monthWord(out.drawnMonth)}`}
          says={`Vapour pressure against saturation through the layers in ${monthWord(out.drawnMonth)}. ${says}`}
          lengthM={last}
          strips={[
            {
              id: 'pressure',
              unit: symbol(pressure),
              min: 0,
              curves: [
                {
                  words: 'saturation',
                  is: 'ink',
                  points: out.points.map((p) => ({
                    depthM: p.depthM,
                    value: shownAs(p.saturationPa, pressure),
                  })),
                },
                {
                  words: 'vapour pressure',
                  is: 'main',
                  points: out.points.map((p) => ({ depthM: p.depthM, value: shownAs(p.vapourPa, pressure) })),
                },
              ],
            },
          ]}
          foot={`inside to outside, ${words(last, depth)}; ${monthWord(out.drawnMonth)}`}
        />
        <figcaption>
          Where the two lines touch, vapour condenses. Steady months: no air leakage, rain, sun or stored
          water.
        </figcaption>
      </figure>
      {out.planes.length > 0 && out.months.length > 0 && (
        <>
          <figure class="drawing">
            <YearChart
              title="Water in it at the end of each month"
              says={says}
              unit={symbol(water)}
              min={0}
              steps={out.months.length - 1}
              curves={[
                {
                  words: 'water in it',
                  is: 'main',
                  values: out.months.map((m) => shownAs(m.storedKgPerM2, water)),
                },
              ]}
              marks={out.months.map((m, at) => ({ at, words: monthWord(m.month).slice(0, 3) }))}
            />
          </figure>
          <details class="open-up">
            <summary>
              <span>
                <b>Show as a table</b>
              </span>
              <span class="note">{out.months.length} months</span>
            </summary>
            <div class="inside">
              <DataTable
                label="Water by month"
                columns={columns}
                rows={out.months}
                keyOf={(m) => m.month}
                rowHeads
              />
            </div>
          </details>
        </>
      )}
    </section>
  )
}
