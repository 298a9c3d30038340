import { useSignal } from '@preact/signals'
import { useResource } from '../../api/resource.ts'
import { DataTable } from '../../parts/lists.tsx'
import { spaced } from '../../parts/Result.tsx'
import { NothingYet, Of } from '../../parts/Says.tsx'
import { StateWord } from '../../parts/Status.tsx'
import { housePath } from '../../record/record.ts'
import type { House, Proof } from '../../record/types.ts'
import { valueWords } from '../../record/values.ts'
import type { PageProps } from '../../shell/routes.ts'
import { Sheet } from '../../shell/Sheet.tsx'
import { me } from '../../shell/session.ts'
import { dayWords } from '../../units/days.ts'
import { countWord } from '../decision/words.ts'
import { Submit } from './Submit.tsx'

/** Every proof of a house with how it stands; a consultant submits evidence here. */
export default function ProofsPage({ house = '' }: PageProps) {
  const line = useResource<House>(housePath(house))
  const proofs = useResource<Proof[]>(`${housePath(house)}/proofs`)
  const zone = line.data.value?.timeZone
  const list = proofs.data.value
  const mayMake = line.data.value?.actions.includes('make-proof')
  const kept = useSignal('')
  return (
    <Sheet
      over="Proofs"
      heading={list ? finding(list) : 'Proofs'}
      title={`Proofs · ${house}`}
      block={[
        ['House', line.data.value ? `${house} ${line.data.value.name}` : house],
        ['Sheet', 'Proofs'],
        ['Record as of', dayWords(me.value?.today)],
        ['Proofs', String(list?.length ?? '')],
      ]}
    >
      <p class="no-print">
        <a href={`${housePath(house)}/calculations`}>Calculations filled from this house</a>
      </p>
      <p role="status" class="say">
        {kept.value}
      </p>
      <Of resource={proofs}>
        {(all) =>
          all.length === 0 ? (
            <NothingYet>
              No proof is kept yet. A decision rests on proofs: computed from the record, or submitted by a
              consultant.
            </NothingYet>
          ) : (
            <DataTable
              label="Proofs"
              rows={all}
              keyOf={(p) => p.key}
              rowHeads
              columns={[
                {
                  head: 'Proof',
                  by: (p) => p.title,
                  cell: (p) => <a href={`${housePath(house)}/proofs/${p.key}`}>{p.title}</a>,
                },
                {
                  head: 'State',
                  by: (p) => p.state ?? '',
                  cell: (p) => p.state && <StateWord state={p.state} />,
                },
                {
                  head: 'Says',
                  cell: (p) => {
                    const lead =
                      p.outputs.find((o) => o.leading && o.limit !== null) ??
                      p.outputs.find((o) => o.leading && o.unit)
                    return lead ? (
                      <>
                        <span class="q">{valueWords(lead.value, lead.unit)}</span>
                        <span class="sub">
                          {lead.label.toLowerCase()}
                          {lead.limit !== null && `, limit ${valueWords(lead.limit, lead.unit)}`}
                        </span>
                      </>
                    ) : (
                      '–'
                    )
                  },
                },
                {
                  head: 'Issue',
                  figures: true,
                  cell: (p) => p.issue,
                },
                {
                  head: 'By',
                  by: (p) => p.madeAt,
                  cell: (p) => (
                    <>
                      {p.madeBy}
                      <span class="sub">{dayWords(p.madeAt, zone)}</span>
                    </>
                  ),
                },
              ]}
            />
          )
        }
      </Of>
      {mayMake && list && (
        <Submit
          house={house}
          proofs={list}
          onDone={(proof) => {
            kept.value = `“${proof.title}” is kept as issue ${proof.issue}, copy code ${spaced(proof.copyCode)}.`
            window.scrollTo(0, 0)
            void proofs.reload()
          }}
        />
      )}
    </Sheet>
  )
}

function finding(proofs: Proof[]): string {
  const moved = proofs.filter((p) => p.state === 'INPUTS_CHANGED').length
  const wait = proofs.filter((p) => p.state === 'WAITING').length
  if (proofs.length === 0) return 'No proof is kept yet.'
  if (moved + wait === 0) return 'Every proof still rests on what the record says.'
  const parts = [
    moved > 0
      ? countWord(moved, 'proof rests on a value that has changed', 'proofs rest on values that have changed')
      : '',
    wait > 0 ? countWord(wait, 'proof waits for another', 'proofs wait for others') : '',
  ].filter(Boolean)
  const text = `${parts.join('; ')}.`
  return text.charAt(0).toUpperCase() + text.slice(1)
}
