import { useSignal } from '@preact/signals'
import { useId } from 'preact/hooks'
import { useResource } from '../../api/resource.ts'
import { Matter, Matters } from '../../parts/lists.tsx'
import { NothingYet, Of } from '../../parts/Says.tsx'
import { DifferenceWords } from '../../record/Difference.tsx'
import { housePath } from '../../record/record.ts'
import type { House, Part, ValueDifference } from '../../record/types.ts'
import { timeWords } from '../../units/days.ts'

/** The revisions of a part, and what differs between any two of them. */
export function History({ house, part, revision }: { house: House; part: string; revision: number }) {
  const path = `${housePath(house.id)}/parts/${part}`
  const revisions = useResource<Part[]>(`${path}/revisions`)
  return (
    <Of resource={revisions}>
      {(list) =>
        list.length === 0 ? (
          <NothingYet>Nobody has saved this part yet.</NothingYet>
        ) : (
          <>
            {revision > 1 && <Compare house={house} part={part} revisions={newestFirst(list)} />}
            <Matters label="Revisions">
              {newestFirst(list).map((r) => (
                <Matter
                  key={r.revision}
                  mark={<span class="note">Revision {r.revision}</span>}
                  note={`${r.madeBy}, ${timeWords(r.madeAt ?? undefined, house.timeZone)}`}
                >
                  {r.reason}
                </Matter>
              ))}
            </Matters>
          </>
        )
      }
    </Of>
  )
}

const newestFirst = (list: Part[]) => [...list].sort((a, b) => b.revision - a.revision)

function Compare({ house, part, revisions }: { house: House; part: string; revisions: Part[] }) {
  const from = useSignal(revisions[1]!.revision)
  const to = useSignal(revisions[0]!.revision)
  const differences = useResource<ValueDifference[]>(
    `${housePath(house.id)}/parts/${part}/differences?from=${from.value}&to=${to.value}`,
  )
  return (
    <div class="compare">
      <div class="pair">
        <Pick label="From revision" value={from.value} of={revisions} onPick={(n) => (from.value = n)} />
        <Pick label="to" value={to.value} of={revisions} onPick={(n) => (to.value = n)} />
      </div>
      <Of resource={differences}>
        {(list) =>
          list.length === 0 ? (
            <p class="say">These two say the same.</p>
          ) : (
            <ul class="typed">
              {list.map((d) => (
                <li key={d.path} class="rev">
                  <DifferenceWords difference={d} />
                </li>
              ))}
            </ul>
          )
        }
      </Of>
    </div>
  )
}

function Pick({
  label,
  value,
  of,
  onPick,
}: {
  label: string
  value: number
  of: Part[]
  onPick: (revision: number) => void
}) {
  const id = useId()
  return (
    <p class="pick">
      <label for={id}>{label}</label>
      <select id={id} value={value} onChange={(e) => onPick(Number(e.currentTarget.value))}>
        {of.map((r) => (
          <option key={r.revision} value={r.revision}>
            {r.revision}
          </option>
        ))}
      </select>
    </p>
  )
}
