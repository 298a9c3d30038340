import type { FunctionComponent } from 'preact'
import { useResource } from '../../api/resource.ts'
import { Of } from '../../parts/Says.tsx'
import { Sheet } from '../../shell/Sheet.tsx'
import { FilterView } from './FilterView.tsx'
import { GenericView } from './GenericView.tsx'
import { HousePressureView } from './HousePressureView.tsx'
import { MoistAirView } from './MoistAirView.tsx'
import { TightnessView } from './TightnessView.tsx'
import type { Declaration } from './types.ts'

export interface ViewProps {
  declaration: Declaration
  house?: string
}

/** Calculations whose result wants more than a list; the others are drawn from their declaration alone. */
const OWN_VIEWS: Record<string, FunctionComponent<ViewProps>> = {
  'moist-air-state': MoistAirView,
  'tightness-test': TightnessView,
  'house-pressure': HousePressureView,
  'filter-sizing': FilterView,
}

/** One calculation, whichever it is. */
export default function CalculationPage({ id = '', house }: { id?: string; house?: string }) {
  const declaration = useResource<Declaration>(`/calculations/${encodeURIComponent(id)}`)
  const came = declaration.data.value
  if (came && came.id === id) {
    const View = OWN_VIEWS[id] ?? GenericView
    return <View key={id} declaration={came} house={house} />
  }
  return (
    <Sheet heading="Calculation" block={[['Sheet', 'Calculation']]}>
      <Of resource={declaration}>{() => null}</Of>
    </Sheet>
  )
}
