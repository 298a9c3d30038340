import { Fact, Facts } from '../../parts/lists.tsx'
import { Quantity } from '../../parts/Quantity.tsx'
import { unitOf } from '../../wall/say.ts'
import type { SheetResult } from '../../wall/types.ts'
import type { Declaration } from '../calculation/types.ts'

/** The U-value with both limits of the combined method, and the two handbook methods beside it. */
export function Resistance({
  declaration,
  result,
}: {
  declaration: Declaration
  result: SheetResult | undefined
}) {
  if (!result) return null
  const answer = result.answer
  if (!answer) {
    return (
      <section>
        <h2>U-value</h2>
        <p class="say">
          <b>Not computed.</b> {result.refusal}
        </p>
      </section>
    )
  }
  const q = (name: string, step: number, from?: string) => (
    <Quantity
      value={answer.printed[name] as number}
      unit={unitOf(declaration.outputs, name)}
      step={step}
      from={from}
      both={name === 'uValueWPerM2K'}
    />
  )
  return (
    <section>
      <h2>U-value</h2>
      <Facts>
        <Fact name="With corrections">
          {q(
            'uValueWPerM2K',
            0.001,
            `computed: ${declaration.title.toLowerCase()}, version ${declaration.version}`,
          )}
        </Fact>
        <Fact name="Thermal resistance, surface to surface">{q('resistanceM2KPerW', 0.01)}</Fact>
        <Fact name="Upper and lower limit">
          {q('upperLimitM2KPerW', 0.01)} · {q('lowerLimitM2KPerW', 0.01)}
          <span class="from">
            the mean is at most {(100 * (answer.printed.errorFraction as number)).toFixed(1)} % off
          </span>
        </Fact>
        <Fact name="Added by fasteners, by gaps">
          {q('fastenersWPerM2K', 0.0001)} · {q('gapsWPerM2K', 0.0001)}
        </Fact>
        <Fact name="By parallel path, by isothermal planes">
          {q('parallelPathWPerM2K', 0.001)} · {q('isothermalPlanesWPerM2K', 0.001)}
          <span class="from">the handbook's two ways, without corrections</span>
        </Fact>
      </Facts>
    </section>
  )
}
