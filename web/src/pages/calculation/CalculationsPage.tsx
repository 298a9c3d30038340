import { useResource } from '../../api/resource.ts'
import { Of } from '../../parts/Says.tsx'
import { Sheet } from '../../shell/Sheet.tsx'
import { me } from '../../shell/session.ts'
import { dayWords } from '../../units/days.ts'
import type { CalculationLine } from './types.ts'

/** Every calculation, in the order of the printed book. */
export default function CalculationsPage({ house }: { house?: string }) {
  const list = useResource<CalculationLine[]>('/calculations')
  const base = house ? `/houses/${encodeURIComponent(house)}/calculations` : '/calculations'
  return (
    <Sheet
      over="Calculations"
      title="Calculations"
      heading="Each is declared once: what goes in, its limits, its equations and their sources."
      lead="Nothing computed here is kept. A result becomes a proof on the page of its decision."
      block={[
        ['Sheet', 'Calculations'],
        ['Day', dayWords(me.value?.today)],
      ]}
    >
      <Of resource={list}>
        {(came) => (
          <ul class="matters calculations">
            {came.map((c) => (
              <li key={c.id}>
                <a href={`${base}/${c.id}`}>{c.title}</a>
                <p>
                  {c.purpose} <span class="note">version {c.version}</span>
                </p>
              </li>
            ))}
          </ul>
        )}
      </Of>
    </Sheet>
  )
}
