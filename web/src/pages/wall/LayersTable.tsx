import { Wide } from '../../parts/lists.tsx'
import type { Day } from '../../wall/day.ts'
import { number, symbol, thicknessText, unitOf } from '../../wall/say.ts'
import type { AssemblySheet, LayerValue, SheetLayer, SheetResult } from '../../wall/types.ts'
import type { Declaration } from '../calculation/types.ts'

interface Counted {
  id: string
  resistanceM2KPerW: number
  framingFraction: number
}

/** Layers from inside to outside: what each measures, holds back and controls, and where its values come from. */
export function LayersTable({
  sheet,
  resistance,
  result,
  day,
  declaration,
}: {
  sheet: AssemblySheet
  resistance: Declaration
  result: SheetResult | undefined
  day: Day | undefined
  declaration: Declaration
}) {
  const counted = new Map(
    ((result?.answer?.printed.layers as unknown as Counted[] | undefined) ?? []).map((l) => [l.id, l]),
  )
  const units = {
    d: unitOf(resistance.inputs, 'layers.thicknessM'),
    lambda: unitOf(resistance.inputs, 'layers.conductivityWPerMK'),
    r: unitOf(resistance.outputs, 'resistanceM2KPerW'),
    sd: unitOf(resistance.inputs, 'layers.sdDryM'),
    t: unitOf(declaration.outputs, 'leakPlaneC'),
  }
  const known = (l: SheetLayer, name: string) => l.values.find((v) => v.name === name)?.value
  const shown = (v: number | undefined, unit: typeof units.d, step = 0) =>
    v === undefined || Number.isNaN(v) ? '–' : number(v, unit, step)
  return (
    <div class="with-margin layers">
      <h2>Layers, inside to outside</h2>
      <Wide label="Layers">
        <table class="t">
          <thead>
            <tr>
              <th scope="col" class="n">
                no.
              </th>
              <th scope="col">layer</th>
              <Head words="thickness" unit={symbol(units.d)} />
              <Head words="λ" unit={symbol(units.lambda)} />
              <Head words="R" unit={symbol(units.r)} />
              <Head words="s_d dry to wet" unit={symbol(units.sd)} />
              <Head words="outer face" unit={symbol(units.t)} />
              <th scope="col">control</th>
            </tr>
          </thead>
          <tbody>
            {sheet.layers.map((l, i) => {
              const [dry, wet] = [known(l, 'sdDryM'), known(l, 'sdWetM')]
              const controls = l.controls.map((c) => (c.second ? `${c.label}, second` : c.label))
              return (
                <tr key={l.id} class={l.controls.some((c) => c.control === 'AIR' && !c.second) ? 'key' : ''}>
                  <td class="n">{i + 1}</td>
                  <th scope="row">
                    {l.label}
                    <span class="sub">{l.materialLabel ?? l.material}</span>
                    {(l.framingFraction ?? 0) > 0 && (
                      <span class="sub">framing over {Math.round(100 * l.framingFraction!)} % of it</span>
                    )}
                    {sourcesOf(l.values).map((s) => (
                      <span key={s} class="sub">
                        {s}
                      </span>
                    ))}
                  </th>
                  <td class="n">{thicknessText(l.thicknessM, units.d)}</td>
                  <td class="n">{shown(known(l, 'conductivityWPerMK'), units.lambda)}</td>
                  <td class="n">{shown(counted.get(l.id)?.resistanceM2KPerW, units.r)}</td>
                  <td class="n">
                    {dry === undefined
                      ? '–'
                      : wet === undefined || wet === dry
                        ? shown(dry, units.sd)
                        : `${shown(dry, units.sd)} to ${shown(wet, units.sd)}`}
                  </td>
                  <td class="n">{shown(day?.outerFaceC.get(l.id), units.t, 0.1)}</td>
                  <td>{controls.join(', ')}</td>
                </tr>
              )
            })}
          </tbody>
        </table>
      </Wide>
      <div class="margin">
        <p>
          <b>R</b> between the framing; framing is counted in the whole below.
        </p>
        <p>
          <b>s_d</b> is the thickness of still air that holds back as much vapour, by dry and wet cup.
        </p>
        <p>
          <b>Outer face</b> on the day that is drawn. Layers in moving outdoor air count as outdoors.
        </p>
      </div>
    </div>
  )
}

const Head = ({ words, unit }: { words: string; unit: string }) => (
  <th scope="col" class="n">
    {words}
    <span class="sub">{unit}</span>
  </th>
)

const SHORT: Record<string, string> = {
  conductivityWPerMK: 'λ',
  thermalResistanceM2KPerW: 'R',
  sdDryM: 's_d',
  sdWetM: 's_d',
}

/** Values of the table that came from one place stand together: "λ, s_d: typed in the record". */
export function sourcesOf(values: LayerValue[]): string[] {
  const by = new Map<string, Set<string>>()
  for (const v of values.filter((one) => SHORT[one.name])) {
    const from = v.source === 'house record' ? v.status : `${v.source} (${v.status})`
    by.set(from, (by.get(from) ?? new Set()).add(SHORT[v.name]!))
  }
  return [...by].map(([from, names]) => `${[...names].join(', ')}: ${from}`)
}
