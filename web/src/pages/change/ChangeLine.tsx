import type { ComponentChildren } from 'preact'
import { DifferenceWords } from '../../record/Difference.tsx'
import { housePath } from '../../record/record.ts'
import type { ChangeEntry } from '../../record/types.ts'

const SHOWN = 3

/** One change of a house in a line: the values, the part that was written, or what was approved. */
export function ChangeLine({ change, house }: { change: ChangeEntry; house: string }): ComponentChildren {
  const at = housePath(house)
  switch (change.kind) {
    case 'APPROVAL':
    case 'WITHDRAWAL':
      return (
        <>
          {change.kind === 'APPROVAL' ? 'Approved ' : 'Withdrew the approval of '}
          <a href={`${at}/decisions/${change.key}`}>{change.title}</a>
        </>
      )
    case 'PROOF':
      return (
        <>
          <a href={`${at}/proofs/${change.key}`}>{change.title}</a>, issue {change.number}
        </>
      )
    default:
      return <PartLine change={change} href={`${at}/record/${change.key}`} />
  }
}

function PartLine({ change, href }: { change: ChangeEntry; href: string }) {
  if (change.number === 1 || change.values.length === 0) {
    return (
      <>
        <a href={href}>{change.title}</a>
        <span class="note">
          {change.number === 1 ? ', written for the first time' : ', saved again with the same values'}
        </span>
      </>
    )
  }
  const more = change.values.length - SHOWN
  return (
    <>
      {change.values.slice(0, SHOWN).map((v) => (
        <span key={v.path} class="rev block">
          <DifferenceWords difference={v} />
        </span>
      ))}
      {more > 0 && <a href={href}>and {more} more</a>}
    </>
  )
}
