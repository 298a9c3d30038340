import { useSignal } from '@preact/signals'
import { linear } from '../../chart/axis.ts'
import { apart, useWidth } from '../../chart/Plot.tsx'
import type { Path, Row } from '../../form/field.ts'
import { Outputs } from '../../parts/Result.tsx'
import { tickText } from '../../parts/Scale.tsx'
import { shownBy, toShown } from '../../units/quantity.ts'
import { system } from '../../units/system.ts'
import type { ViewProps } from './CalculationPage.tsx'
import { Frame } from './Frame.tsx'
import type { Declaration } from './types.ts'
import { useCalculation } from './useCalculation.ts'
import { outputField, say } from './words.ts'

/** Any two of these fix a state, save a few pairs that the portal refuses with the reason. */
const KNOWN = [
  'dryBulbC',
  'relativeHumidityFraction',
  'wetBulbC',
  'dewPointC',
  'humidityRatioKgPerKg',
  'enthalpyJPerKg',
  'vapourPressurePa',
]
const PLACE = ['altitudeM', 'pressurePa']

/** Two known quantities are chosen first, so that nobody faces seven empty boxes. */
export function MoistAirView({ declaration, house }: ViewProps) {
  const work = useCalculation<Row>(declaration, { belowFreezing: 'OVER_ICE' })
  const { form } = work
  const chosen = useSignal(['dryBulbC', 'relativeHumidityFraction'])
  const place = useSignal('altitudeM')
  const filled = (names: string[]) => names.filter((n) => form.value.value[n] !== undefined)
  // an example brings its own two
  const two = filled(KNOWN).length === 2 ? filled(KNOWN) : chosen.value
  const where = filled(PLACE)[0] ?? place.value
  const label = (name: string) => declaration.inputs.find((f) => f.name === name)?.label ?? name

  function choose(index: number, name: string) {
    const next = [...two]
    next[index] = name
    for (const other of KNOWN) if (!next.includes(other)) form.set([other], undefined)
    chosen.value = next
  }
  function choosePlace(name: string) {
    for (const other of PLACE) if (other !== name) form.set([other], undefined)
    place.value = name
  }
  const hide = (path: Path) => {
    const name = String(path[0])
    return (KNOWN.includes(name) && !two.includes(name)) || (PLACE.includes(name) && name !== where)
  }
  const answer = work.answer.value
  const out = answer?.printed
  return (
    <Frame
      declaration={declaration}
      house={house}
      work={work}
      unitWords={{ IP: '°F, gr/lb, Btu/lb', SI: '°C, g/kg, kJ/kg' }}
      heading={
        out &&
        `This air would begin to wet a surface at ${say(outputField(declaration, 'dewPointC'), out.dewPointC)}.`
      }
      lead={
        out &&
        `At ${say(outputField(declaration, 'dryBulbC'), out.dryBulbC)} it holds ${say(outputField(declaration, 'relativeHumidityFraction'), out.relativeHumidityFraction)} of what it could.`
      }
      before={
        <div class="two-known">
          {two.map((name, i) => (
            <label key={i === 0 ? 'first' : 'second'}>
              {i === 0 ? 'Known' : 'and'}
              <select value={name} onChange={(e) => choose(i, e.currentTarget.value)}>
                {KNOWN.filter((k) => k === name || !two.includes(k)).map((k) => (
                  <option key={k} value={k}>
                    {label(k)}
                  </option>
                ))}
              </select>
            </label>
          ))}
          <label>
            at
            <select value={where} onChange={(e) => choosePlace(e.currentTarget.value)}>
              {PLACE.map((k) => (
                <option key={k} value={k}>
                  {label(k)}
                </option>
              ))}
            </select>
          </label>
        </div>
      }
      extras={{ hide, open: () => true }}
    >
      {(came) => (
        <>
          <Temperatures declaration={declaration} out={came.printed} />
          <Outputs fields={declaration.outputs} record={came.printed} />
        </>
      )}
    </Frame>
  )
}

/** Dry bulb, wet bulb and dew point on one scale: how far the air is from wetting something. */
function Temperatures({ declaration, out }: { declaration: Declaration; out: Row }) {
  const { ref, width } = useWidth<HTMLDivElement>(640)
  const names = ['dewPointC', 'wetBulbC', 'dryBulbC']
  const fields = names.map((n) => outputField(declaration, n))
  const shown = shownBy(fields[0]!.unit!, system.value)
  const values = names.map((n) => toShown(out[n] as number, shown))
  const low = Math.floor((Math.min(...values) - 4) / 5) * 5
  const high = Math.ceil((Math.max(...values) + 4) / 5) * 5
  const axis = linear(low, high, 14, width - 14, width < 500 ? 6 : 10)
  // each name under the one before it where they would run into each other
  const rows = apart(
    values.map((v) => axis.at(v)),
    0,
  )
  return (
    <figure class="drawing">
      <div ref={ref}>
        <svg
          viewBox={`0 0 ${width} 128`}
          width={width}
          height="128"
          role="img"
          aria-label={names.map((n, i) => `${fields[i]!.label} ${say(fields[i]!, out[n])}`).join(', ')}
        >
          <path class="red" stroke-width="2" d={`M${rows[0]} 84H${rows[2]}`} />
          <path class="axis" d={`M14 92H${width - 14}`} />
          {axis.ticks.map((t) => (
            <g key={t}>
              <path class="axis" d={`M${axis.at(t)} 92v6`} />
              <text class="t2" font-size="13" x={axis.at(t)} y="113" text-anchor="middle">
                {tickText(t)}
              </text>
            </g>
          ))}
          {names.map((n, i) => {
            const x = rows[i]!
            const y = 20 + (2 - i) * 20
            const end = x > width * 0.6
            return (
              <g key={n}>
                <path class="axis" d={`M${x} ${y + 4}V92`} />
                <text
                  font-size="13"
                  class={i === 0 ? 'tr halo' : 'halo'}
                  stroke-width="5"
                  x={end ? x - 6 : x + 6}
                  y={y + 2}
                  text-anchor={end ? 'end' : 'start'}
                >
                  {fields[i]!.label.toLowerCase()} {say(fields[i]!, out[n])}
                </text>
              </g>
            )
          })}
        </svg>
      </div>
      <figcaption>A surface colder than the dew point gets wet; the stroke is the room left.</figcaption>
    </figure>
  )
}
