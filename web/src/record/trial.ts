import type { ValueChange } from './types.ts'

/** Values tried and not saved, kept for this window while somebody looks at what they would reach. */
export interface Trial {
  title: string
  changes: ValueChange[]
  /** The decision and its alternative that it comes from. */
  decision?: string
  alternative?: string
  /** Why, as far as it was typed already. */
  reason?: string
  /** The page it came from. */
  back: string
  backWords: string
}

const key = (house: string) => `oakum.trial.${house}`

export function keepTrial(house: string, trial: Trial) {
  sessionStorage.setItem(key(house), JSON.stringify(trial))
}

export function trialOf(house: string): Trial | undefined {
  const kept = sessionStorage.getItem(key(house))
  return kept ? (JSON.parse(kept) as Trial) : undefined
}

export function dropTrial(house: string) {
  sessionStorage.removeItem(key(house))
}
