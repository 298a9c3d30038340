import type { Approval, Decision } from '../../record/types.ts'
import { type Role, roleWord } from '../../shell/session.ts'
import { dayWords } from '../../units/days.ts'

const COUNT = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten']

/** "two approvals have": a count in words up to ten. */
export function countWord(n: number, one: string, many: string): string {
  return `${COUNT[n] ?? n} ${n === 1 ? one : many}`
}

export const rolesWord = (roles: Role[]) => roles.map((r) => roleWord[r].toLowerCase()).join(', ')

/** The latest approval of each role. */
export const present = (decision: Decision): Approval[] => decision.approvals.filter((a) => !a.replaced)

/** The roles whose approval is missing or no longer holds. */
export function missing(decision: Decision): Role[] {
  const holding = present(decision)
    .filter((a) => a.state === 'STANDS' || a.state === 'CARRIED_OVER')
    .map((a) => a.role)
  return decision.approvers.filter((r) => !holding.includes(r))
}

/** What is missing for a decision, in a sentence. */
export function stateLine(decision: Decision): string {
  const asked = missing(decision)
  const due = decision.dueOn ? `, by ${dayWords(decision.dueOn)}` : ''
  if (decision.chosenAlternative === null) {
    const n = decision.alternatives.length
    return n === 0
      ? `No alternative is written yet${due}.`
      : `${countWord(n, 'alternative is', 'alternatives are')} laid out, none chosen${due}.`.replace(
          /^./,
          (c) => c.toUpperCase(),
        )
  }
  const why = present(decision).flatMap((a) => a.reasons)[0]
  const ask = asked.length > 0 ? `Asked: ${rolesWord(asked)}${due}.` : ''
  return why ? `${why.charAt(0).toUpperCase()}${why.slice(1)}. ${ask}`.trim() : ask
}

/** The chosen alternative, or nothing. */
export const chosen = (decision: Decision) =>
  decision.alternatives.find((a) => a.id === decision.chosenAlternative)
