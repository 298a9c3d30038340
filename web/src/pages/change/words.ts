import type { ChainOutput, Reach } from '../../record/types.ts'
import { labelWords, valueWords } from '../../record/values.ts'
import { countWord } from '../decision/words.ts'

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)
const lower = (text: string) => text.charAt(0).toLowerCase() + text.slice(1)

/** The numbers of the chain in its order, the ones that people compare. */
export const leading = (reach: Reach): ChainOutput[] =>
  reach.chain.flatMap((link) => link.outputs.filter((o) => o.leading && o.unit))

/** What changed, in a few words: "Range hood, rated flow at 600 cfm". */
function whatChanged(reach: Reach): string {
  const [first, ...rest] = reach.changedValues
  if (!first) return reach.title || 'The record as it is'
  if (rest.length > 0) return `With ${countWord(rest.length + 1, 'value', 'values')} changed`
  return `With ${lower(labelWords(first.label))} at ${valueWords(first.new, first.unit)}`
}

/** The finding: what changed and the first limit that it crosses. */
export function finding(reach: Reach): string {
  if (reach.changedValues.length === 0 && reach.chain.length === 0) {
    return reach.title
      ? 'This reaches nothing that somebody relies on.'
      : 'Everything that somebody approved still rests on the record as it is.'
  }
  const outputs = leading(reach)
  const crossed =
    outputs.find((o) => o.verdict === 'FAILS' && o.oldVerdict !== 'FAILS') ??
    outputs.find((o) => o.verdict === 'FAILS')
  if (crossed) {
    const limit = crossed.limit ? ` The limit is ${valueWords(crossed.limit, crossed.unit)}.` : ''
    return `${whatChanged(reach)}, ${lower(crossed.label)} comes to ${valueWords(crossed.new, crossed.unit)}.${limit}`
  }
  const refused = reach.chain.find((link) => link.refusal)
  if (refused) return `${whatChanged(reach)}, ${lower(refused.title)} cannot be computed.`
  const open = outputs.some((o) => o.verdict === 'NOT_PROVEN')
  return `${whatChanged(reach)}, ${open ? 'one limit is not proven.' : 'every limit holds.'}`
}

/** What it means: bought or built, held, lapsed, to be looked at, waiting. */
export function meaning(reach: Reach): string {
  const all = [...reach.askedNow, ...reach.askedLater]
  const parts: string[] = []
  if (all.length > 0) {
    const built = all.filter((d) => d.alreadyBuilt).length
    const bought = all.filter((d) => d.alreadyBought && !d.alreadyBuilt).length
    if (built === 0 && bought === 0) parts.push('Nothing of it is built and nothing is bought.')
    if (built > 0) parts.push(`${capital(countWord(built, 'decision is', 'decisions are'))} already built.`)
    if (bought > 0)
      parts.push(`${capital(countWord(bought, 'decision is', 'decisions are'))} already bought.`)
  }
  const held = reach.orders.filter((o) => o.state === 'HELD').length
  if (held > 0) parts.push(`${capital(countWord(held, 'order is', 'orders are'))} on hold.`)
  const lapsed = reach.askedNow.filter((d) => d.state === 'LAPSED').length
  const look = reach.askedNow.filter((d) => d.state === 'FRESH_LOOK').length
  const told = [
    lapsed > 0 ? countWord(lapsed, 'approval has lapsed', 'approvals have lapsed') : '',
    look > 0 ? countWord(look, 'needs a fresh look', 'need a fresh look') : '',
  ].filter(Boolean)
  const waits = reach.askedLater.length
  if (told.length > 0) {
    parts.push(
      `${capital(told.join(' and '))}${waits > 0 ? `; ${countWord(waits, 'more waits', 'more wait')} behind them` : ''}.`,
    )
  }
  return parts.join(' ')
}

/** How long it took: "0.3 s". */
export const computedIn = (reach: Reach) =>
  reach.computedInS < 0.05 ? 'less than 0.1 s' : `${reach.computedInS.toFixed(1)} s`
