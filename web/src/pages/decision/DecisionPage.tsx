import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import { useResource } from '../../api/resource.ts'
import { spaced } from '../../parts/Result.tsx'
import { Of, Waiting, Wrong } from '../../parts/Says.tsx'
import { StateWord } from '../../parts/Status.tsx'
import { documentsOf, housePath, useRecord } from '../../record/record.ts'
import type { Decision, Proof, Reach } from '../../record/types.ts'
import { SectionDrawing } from '../../section/SectionDrawing.tsx'
import { sectionOf } from '../../section/sectionOf.ts'
import type { PageProps } from '../../shell/routes.ts'
import { Sheet } from '../../shell/Sheet.tsx'
import { me } from '../../shell/session.ts'
import { dayWords } from '../../units/days.ts'
import { system } from '../../units/system.ts'
import { WaysOn } from '../change/WaysOn.tsx'
import { ProofBody, ProofSummary } from '../proof/ProofBody.tsx'
import { AddAlternative, Alternatives } from './Alternatives.tsx'
import { Approvals, Signatures } from './Approvals.tsx'
import { HangsOnIt, Orders, Said, Touches } from './Around.tsx'
import { ChangeDecision } from './ChangeDecision.tsx'
import { chosen, missing, rolesWord, stateLine } from './words.ts'

/** One decision: what is asked, the ways, the proofs behind it, who approved what, and what it touches. */
export default function DecisionPage({ house = '', code = '' }: PageProps) {
  const at = `${housePath(house)}/decisions/${encodeURIComponent(code)}`
  const read = useResource<Decision>(at)
  const proofs = useResource<Proof[]>(`${housePath(house)}/proofs`)
  const reach = useResource<Reach>(`${housePath(house)}/reach`)
  const { record } = useRecord(house)
  const said = useSignal('')
  const d = read.data.value
  const zone = record?.house.timeZone ?? 'UTC'
  const behind = d ? (proofs.data.value ?? []).filter((p) => d.proofs.includes(p.key)) : []
  function again() {
    for (const one of [read, proofs, reach]) void one.reload()
  }
  const printing = usePrinting()
  const model = record && sectionOf(`${house} ${record.house.name}`, documentsOf(record), system.value)
  if (!d) {
    return (
      <Sheet heading="Decision" block={[['Sheet', 'Decision']]}>
        <Of resource={read}>{() => null}</Of>
      </Sheet>
    )
  }
  const today = (key: string) => reach.data.value?.chain.find((link) => link.proofKey === key)?.outputs
  return (
    <Sheet
      over={[
        `Decision ${d.code}`,
        d.safetyList ? 'safety list' : '',
        `approved by ${[rolesWord(d.approvers), ...d.outsideApprovers].join(', ')}`,
      ]
        .filter(Boolean)
        .join(' · ')}
      heading={finding(d)}
      title={`${d.title} · ${house}`}
      lead={d.question}
      block={[
        ['House', record ? `${house} ${record.house.name}` : house],
        ['Sheet', `Decision ${d.code}, ${d.title}`],
        ['Record as of', dayWords(me.value?.today)],
        ['Copy code', spaced(d.copyCode)],
        ['Rests on', d.proofs.length === 1 ? '1 proof' : `${d.proofs.length} proofs`],
      ]}
    >
      <p class="state-line">
        <StateWord state={d.state} /> <span class="note">{stateLine(d)}</span>{' '}
        {(d.state === 'LAPSED' || d.state === 'FRESH_LOOK') && (
          <a class="note" href={`${housePath(house)}/changes`}>
            See the chain
          </a>
        )}
      </p>
      <p role="status" class="say">
        {said.value}
      </p>
      {printing && model && (
        <div class="print-only">
          <SectionDrawing model={model} notes={false} />
        </div>
      )}
      <Alternatives decision={d} record={record} />
      <WaysOn
        decision={d}
        house={house}
        back={`${housePath(house)}/decisions/${d.code}`}
        backWords={`Back to ${d.title}`}
        heading="Side by side, computed from today's record"
        onTaken={() => {
          said.value = 'Taken: the values are saved, and the proofs computed from them are kept.'
          again()
        }}
      />
      <ChangeDecision
        decision={d}
        at={at}
        tag={read.etag.value}
        onChanged={(next, tag) => {
          read.set(next, tag)
          said.value = 'Saved. Approvals rest on what stands now.'
          void reach.reload()
        }}
        onMoved={() => void read.reload()}
      />
      <AddAlternative decision={d} at={at} record={record} onDone={again} />
      <HangsOnIt decision={d} reach={reach.data.value} />
      <section class="print-page">
        <h2 class={d.proofs.length === 1 ? 'no-print' : ''}>Proofs</h2>
        {proofs.problem.value && <Wrong problem={proofs.problem.value} onAgain={again} />}
        {!proofs.data.value && !proofs.problem.value && <Waiting />}
        {d.proofs.length === 0 && <p class="say">No proof is named for this decision yet.</p>}
        {behind.map((p, i) => (
          <details key={p.key} class="open-up" open={printing || i === 0}>
            <summary>
              <ProofSummary proof={p} today={today(p.key)} />
            </summary>
            <div class="inside">
              <ProofBody proof={p} house={house} zone={zone} today={today(p.key)} shortOnPaper />
              <p class="note no-print">
                <a href={`${housePath(house)}/proofs/${p.key}`}>Its issues, and computing it anew</a>
              </p>
            </div>
          </details>
        ))}
      </section>
      <Approvals
        decision={d}
        at={at}
        zone={zone}
        proofs={behind}
        onChanged={(next, words) => {
          read.set(next)
          said.value = words
          again()
        }}
        onMoved={again}
      />
      <Orders decision={d} at={at} tag={read.etag.value} onChanged={again} />
      <Touches decision={d} house={house} reach={reach.data.value} />
      <Said decision={d} at={at} zone={zone} onSaid={(next) => read.set(next, read.etag.value)} />
      <Signatures decision={d} zone={zone} />
    </Sheet>
  )
}

function finding(d: Decision): string {
  const choice = chosen(d)
  switch (d.state) {
    case 'APPROVED':
      return `${d.title}: ${choice ? `${lower(choice.title)}, approved` : 'approved'}.`
    case 'LAPSED':
      return `${d.title} has lapsed and waits for ${choice ? 'a new approval' : 'a choice'}.`
    case 'FRESH_LOOK':
      return `${d.title} needs a fresh look.`
    default:
      return choice
        ? `${d.title}: ${lower(choice.title)}, waiting for ${rolesWord(missing(d)) || 'an approval'}.`
        : `${d.title} is open.`
  }
}

const lower = (text: string) => text.charAt(0).toLowerCase() + text.slice(1)

/** Whether the sheet is being printed: what only paper shows is drawn then. */
function usePrinting(): boolean {
  const printing = useSignal(matchMedia('print').matches)
  useEffect(() => {
    const media = matchMedia('print')
    const follow = () => (printing.value = media.matches)
    media.addEventListener('change', follow)
    return () => media.removeEventListener('change', follow)
  }, [printing])
  return printing.value
}
