import type { ComponentChildren, FunctionComponent } from 'preact'
import { useMemo } from 'preact/hooks'
import { useResource } from '../../api/resource.ts'
import { Of } from '../../parts/Says.tsx'
import { housePath } from '../../record/record.ts'
import type { Proof } from '../../record/types.ts'
import { Sheet } from '../../shell/Sheet.tsx'
import { FilterView } from './FilterView.tsx'
import { FromHouseContext, fromProof } from './fromHouse.ts'
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
    const view = <View key={id} declaration={came} house={house} />
    return house ? (
      <Filled house={house} declaration={came}>
        {view}
      </Filled>
    ) : (
      view
    )
  }
  return <Coming>{<Of resource={declaration}>{() => null}</Of>}</Coming>
}

const Coming = ({ children }: { children: ComponentChildren }) => (
  <Sheet heading="Calculation" block={[['Sheet', 'Calculation']]}>
    {children}
  </Sheet>
)

/** Opened from a house: its form begins with what the house's proof of this calculation holds, where there is one. */
function Filled({
  house,
  declaration,
  children,
}: {
  house: string
  declaration: Declaration
  children: ComponentChildren
}) {
  const proofs = useResource<Proof[]>(`${housePath(house)}/proofs`)
  const came = proofs.data.value
  const asked = new URLSearchParams(location.search).get('proof')
  const from = useMemo(() => {
    const own = came?.filter((p) => p.calculation === declaration.id) ?? []
    const proof = own.find((p) => p.key === asked) ?? own[0]
    return proof && fromProof(proof, declaration.inputs)
  }, [came, declaration, asked])
  if (!came) return <Coming>{<Of resource={proofs}>{() => null}</Of>}</Coming>
  return <FromHouseContext.Provider value={from}>{children}</FromHouseContext.Provider>
}
