import { useResource } from '../../api/resource.ts'
import { Of } from '../../parts/Says.tsx'
import { timeWords } from '../../units/days.ts'
import { LeakagePlot, type Tightness } from '../calculation/LeakagePlot.tsx'
import type { Declaration } from '../calculation/types.ts'
import type { Measurement } from './types.ts'

/** The curves of a kept tightness test, drawn from what was computed when it was kept. */
export function Curves({
  measurement,
  netVolumeM3,
  zone,
}: {
  measurement: Measurement
  netVolumeM3: number | undefined
  zone?: string
}) {
  const declaration = useResource<Declaration>('/calculations/tightness-test')
  const printed = measurement.outcome.computed?.printed as Tightness | undefined
  if (!printed?.depressurised && !printed?.pressurised) return null
  const limit = measurement.outcome.values.find((v) => v.name === 'ach50NetPerH')?.max
  const target =
    typeof limit === 'number' && netVolumeM3 !== undefined ? (limit * netVolumeM3) / 3600 : undefined
  return (
    <Of resource={declaration} what="Drawing the curves.">
      {(d) => (
        <>
          <h3>
            Flow against pressure, {measurement.occasionLabel} {timeWords(measurement.takenAt, zone)}
          </h3>
          <LeakagePlot declaration={d} out={printed} target={target} />
        </>
      )}
    </Of>
  )
}
