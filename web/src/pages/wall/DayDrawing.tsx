import { DeclaredForm } from '../../form/DeclaredForm.tsx'
import type { Row } from '../../form/field.ts'
import type { Form } from '../../form/form.ts'
import { NothingYet } from '../../parts/Says.tsx'
import type { House } from '../../record/types.ts'
import type { Unit } from '../../units/quantity.ts'
import { shownBy, toShown } from '../../units/quantity.ts'
import { system } from '../../units/system.ts'
import type { Day } from '../../wall/day.ts'
import type { Strip } from '../../wall/Strips.tsx'
import { apart, number, symbol, unitOf, words } from '../../wall/say.ts'
import type { AssemblySheet } from '../../wall/types.ts'
import { WallDrawing } from '../../wall/WallDrawing.tsx'
import { dewPointReader, humidityOf, type ProfilePoint, wallModel } from '../../wall/wallModel.ts'
import type { Declaration } from '../calculation/types.ts'

/** What the steady day says, as a colleague would. */
export function dayFinding(
  day: Day | undefined,
  declaration: Declaration,
): { finding?: string; lead?: string } {
  if (!day) return {}
  const unit = unitOf(declaration.outputs, 'leakPlaneC')
  const out = day.answer.printed
  const outdoor = words(day.climate.outdoorC as number, unit, 0.1)
  const place = out.leakPlace.replace(' / ', ' meets ')
  const room = out.leakPlaneC - out.indoorDewPointC
  const water = unitOf(declaration.outputs, 'condensedPerDayKgPerM2')
  const finding =
    out.condensedPerDayKgPerM2 > 0
      ? `At ${outdoor} outdoors vapour condenses in it: ${words(out.condensedPerDayKgPerM2, water, 0.0001)} a day.`
      : room >= 0
        ? `At ${outdoor} outdoors nothing condenses in it, not even indoor air that leaks.`
        : `At ${outdoor} outdoors no vapour condenses by diffusion; indoor air that leaks in does.`
  const share = unitOf(declaration.outputs, 'allowedIndoorHumidityFraction')
  const lead = `Where ${place} it is ${words(out.leakPlaneC, unit, 0.1)}, ${apart(Math.abs(room), unit, 0.1)} ${
    room >= 0 ? 'above' : 'below'
  } the dew point of the room air. A steady day with ${words(day.climate.indoorHumidityFraction as number, share)} indoors; at ${words(out.allowedIndoorHumidityFraction, share)} that place would just stay dry.`
  return { finding, lead }
}

/** Temperature, dew point and humidity of a profile, in the units of the day. */
export function stripsOf(profile: ProfilePoint[], celsius: Unit): Strip[] {
  const shown = shownBy(celsius, system.value)
  const dewPoint = dewPointReader(profile)
  return [
    {
      id: 'temperature',
      unit: shown.symbol,
      curves: [
        {
          words: 'temperature',
          is: 'main',
          points: profile.map((p) => ({ depthM: p.depthM, value: toShown(p.temperatureC, shown) })),
        },
        {
          words: 'dew or frost point',
          is: 'dash',
          points: profile.flatMap((p) => {
            const dew = dewPoint(p.vapourPa)
            return dew === undefined ? [] : [{ depthM: p.depthM, value: toShown(dew, shown) }]
          }),
        },
      ],
    },
    {
      id: 'humidity',
      unit: '% RH',
      min: 0,
      max: 100,
      curves: [
        {
          words: 'humidity',
          is: 'ink',
          points: profile.map((p) => ({ depthM: p.depthM, value: 100 * humidityOf(p) })),
        },
      ],
      limit: { value: 80, words: '80 % for long lets mould grow' },
    },
  ]
}

export function DayDrawing({
  sheet,
  house,
  day,
  declaration,
  thickness,
}: {
  sheet: AssemblySheet
  house: House
  day: Day | undefined
  declaration: Declaration
  thickness: Unit
}) {
  const model = wallModel(sheet)
  if (!model)
    return <NothingYet>None of its layers has a thickness yet, so there is nothing to draw.</NothingYet>
  const celsius = unitOf(declaration.outputs, 'leakPlaneC')
  const share = unitOf(declaration.outputs, 'allowedIndoorHumidityFraction')
  const said = dayFinding(day, declaration)
  return (
    <WallDrawing
      model={model}
      title={`${sheet.label} of ${house.id}, cut ${sheet.kind === 'WALL' || sheet.kind === 'BASEMENT_WALL' ? 'level' : 'upright'}, to scale`}
      says={[said.finding, said.lead].filter(Boolean).join(' ') || 'Layers from inside to outside.'}
      strips={day ? stripsOf(day.profile, celsius) : []}
      thicknessWords={(m) => number(m, thickness)}
      inAll={`${symbol(thickness)}, ${number(model.totalM, thickness)} in all`}
      caption={
        day
          ? `Steady: indoors ${words(day.climate.indoorC as number, celsius, 0.1)} and ${words(day.climate.indoorHumidityFraction as number, share)}, outdoors ${words(day.climate.outdoorC as number, celsius, 0.1)}; between the framing, in dry materials. All drawings share this width. The carmine layer stops air; short dashes are the membrane for water, long ones that for vapour.`
          : 'The carmine layer stops air; short dashes are the membrane for water, long ones that for vapour.'
      }
    />
  )
}

/** The air on both sides, as the record says it and to be typed over. */
export function DayForm({ form, record }: { form: Form; record: Row }) {
  return (
    <details class="open-up no-print">
      <summary>
        <span>
          <b>Another day</b>
        </span>
        <span class="note">what is drawn follows as you type; nothing is saved</span>
      </summary>
      <div class="inside narrow">
        <DeclaredForm
          form={form}
          extras={{
            origin: (path) => {
              const name = String(path.at(-1))
              return form.get(path) === record[name] ? 'as the page began, from the record' : 'typed here'
            },
          }}
        />
      </div>
    </details>
  )
}
