import { useResource } from '../../api/resource.ts'
import { Matter, Matters } from '../../parts/lists.tsx'
import { NothingYet, Of } from '../../parts/Says.tsx'
import { StateWord } from '../../parts/Status.tsx'
import { housePath } from '../../record/record.ts'
import type { Proof } from '../../record/types.ts'
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
      over={house ? `${house} · calculations` : 'Calculations'}
      title="Calculations"
      heading="Each is declared once: what goes in, its limits, its equations and their sources."
      lead={
        <>
          Nothing computed here is kept. A result becomes a proof on the page of its decision. What layers are
          made of stands under <a href="/materials">Materials</a>.
        </>
      }
      block={[
        ['Sheet', 'Calculations'],
        ['Day', dayWords(me.value?.today)],
      ]}
    >
      {house && <OfHouse house={house} base={base} />}
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

/** What the house's own proofs fill in. */
function OfHouse({ house, base }: { house: string; base: string }) {
  const proofs = useResource<Proof[]>(`${housePath(house)}/proofs`)
  return (
    <section>
      <h2>Filled from {house}</h2>
      <Of resource={proofs}>
        {(all) => {
          const own = all.filter((p) => p.calculation)
          return own.length === 0 ? (
            <NothingYet>
              No proof of this house is computed yet; each form below begins empty.{' '}
              <a href={`${housePath(house)}/proofs`}>Make a proof</a>
            </NothingYet>
          ) : (
            <Matters>
              {own.map((p) => (
                <Matter
                  key={p.key}
                  mark={p.state && <StateWord state={p.state} />}
                  note={`${p.relied.length} values from the record`}
                >
                  <a href={`${base}/${p.calculation}?proof=${encodeURIComponent(p.key)}`}>{p.title}</a>
                </Matter>
              ))}
            </Matters>
          )
        }}
      </Of>
      <h2>Every calculation</h2>
    </section>
  )
}
