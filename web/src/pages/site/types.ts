import type { Unit } from '../../units/quantity.ts'

export type CheckState = 'STOPPED' | 'OPEN' | 'TO_SIGN' | 'SIGNED'
export type Answer = 'RIGHT' | 'NOT_RIGHT' | 'NOT_HERE'

export interface RowStop {
  row: string
  lookAt: string
  place: string | null
  reason: string
}

export interface LapsedApproval {
  decision: string
  title: string
  because: string
}

export interface CheckListed {
  code: string
  number: number
  title: string
  coveredBy: string
  state: CheckState
  stateLabel: string
  rowCount: number
  answeredCount: number
  stops: RowStop[]
  lapsed: LapsedApproval[]
  waitsFor: string | null
}

export interface ChecksOfHouse {
  checks: CheckListed[]
  notYetMade: { code: string; title: string; coveredBy: string; rowCount: number }[]
  actions: string[]
}

export interface NumberAsked {
  quantity: string
  unit: Unit
  min: number | null
  max: number | null
  lowest: number
  highest: number
}

export interface RowAnswer {
  id: string
  round: number
  answer: Answer
  judged: Answer
  judgedLabel: string
  counts: boolean
  value: number | null
  note: string
  at: string
  person: string
  photos: string[]
  accepted: { reason: string; person: string; at: string } | null
}

export interface CheckRow {
  id: string
  templateRow: string
  place: string | null
  lookAt: string
  acceptWhen: string
  because: string
  number: NumberAsked | null
  photoRule: string
  photoLabel: string
  leastPhotos: number
  seenBy: string[]
  signedBy: string
  source: string
  counting: RowAnswer | null
  answers: RowAnswer[]
  stop: string | null
}

export interface Check extends CheckListed {
  houseId: string
  copyCode: string
  rows: CheckRow[]
  signatures: { role: string; person: string; at: string; copyCode: string; stands: boolean }[]
  cautions: { subject: string; text: string }[]
  actions: string[]
}

export interface Clock {
  id: string
  label: string
  startedOn: string
  limitDays: number
  limitSource: string
  plannedOn: string | null
  stoppedOn: string | null
  today: string
  daysUsed: number
  plannedDay: number | null
  daysToSpare: number
  daysOver: number
  wantedDays: number
  lastDay: string
  tellOn: string
  told: boolean
  state: string
  stateLabel: string
  sentence: string
  version: number
  actions: string[]
}

export interface LooseEnd {
  id: string
  houseId: string
  title: string
  because: string
  ownerRole: string
  dueOn: string
  overdue: boolean
  origin: 'COVER_CHECK' | 'SETTING_TO_WORK' | 'PERSON'
  originKey: string
  wantsAfterPhoto: boolean
  openedBy: string
  openedAt: string
  closed: boolean
  closedBy: string | null
  closedAt: string | null
  closeReason: string | null
  asLeft: string | null
  afterPhoto: string | null
  version: number
  actions: string[]
}

/** What the device sends for a row. */
export interface AnswerSent {
  clientId: string
  answer: Answer
  value: number | null
  note: string | null
  photos: string[]
  takenAt: string
  repeatOf: string | null
}

export const answerWords: Record<Answer, string> = {
  RIGHT: 'Seen, right',
  NOT_RIGHT: 'Not right',
  NOT_HERE: 'Not in this house',
}

export const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)
