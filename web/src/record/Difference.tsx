import type { ValueDifference } from './types.ts'
import { bothWords, labelWords } from './values.ts'

/** "Range hood, rated flow 400 600 cfm": the old value struck, the new one bold; readers hear "was … now …". */
export function DifferenceWords({ difference }: { difference: ValueDifference }) {
  const { label, unit, old, new: now } = difference
  return (
    <>
      {labelWords(label)} <OldAndNew old={old} now={now} unit={unit} />
    </>
  )
}

export function OldAndNew({
  old,
  now,
  unit,
}: {
  old: string | null
  now: string | null
  unit: ValueDifference['unit']
}) {
  const [before, after] = bothWords(old, now, unit)
  return (
    <>
      <span class="was q">
        <span class="vh">was </span>
        {before}
      </span>{' '}
      <b class="q">
        <span class="vh">now </span>
        {after}
      </b>
    </>
  )
}
