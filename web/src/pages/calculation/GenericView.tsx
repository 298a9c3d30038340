import { Outputs } from '../../parts/Result.tsx'
import type { ViewProps } from './CalculationPage.tsx'
import { Frame } from './Frame.tsx'
import { useCalculation } from './useCalculation.ts'

/** Any calculation, drawn from its declaration alone. */
export function GenericView({ declaration, house }: ViewProps) {
  const work = useCalculation(declaration)
  return (
    <Frame declaration={declaration} house={house} work={work}>
      {(answer) => <Outputs fields={declaration.outputs} record={answer.printed} />}
    </Frame>
  )
}
