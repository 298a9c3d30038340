import type { Field, Row } from '../form/field.ts'
import type { Notice } from '../pages/calculation/types.ts'
import type { Role } from '../shell/session.ts'
import type { Unit } from '../units/quantity.ts'

/** A house as everybody who may see it sees it. */
export interface House {
  id: string
  name: string
  place: string
  latitudeDeg: number
  longitudeDeg: number
  altitudeM: number
  timeZone: string
  stage: string
  floorAreaM2: number
  netVolumeM3: number
  volumeWithFloorsM3: number
  envelopeAreaM2: number
  bedroomCount: number
  designOutdoorC: number
  version: number
  actions: string[]
}

export interface Page<T> {
  items: T[]
  next: string | null
}

/** What stands in a part, as it is declared. */
export interface PartType {
  part: string
  title: string
  fields: Field[]
}

/** One part in one revision. */
export interface Part {
  part: string
  title: string
  /** 0 where nobody has saved it yet. */
  revision: number
  document: Row
  madeBy: string | null
  madeAt: string | null
  reason: string | null
  actions: string[]
}

/** One value in two states of the record, as text. */
export interface ValueDifference {
  path: string
  label: string
  unit: Unit | null
  old: string | null
  new: string | null
}

export type ProofState = 'CURRENT' | 'INPUTS_CHANGED' | 'WAITING'
export type Verdict = 'PASSES' | 'FAILS' | 'NOT_PROVEN'

/** One number of a printed result, as text. */
export interface ProofOutput {
  name: string
  label: string
  symbol: string
  unit: Unit | null
  value: string | null
  limit: string | null
  verdict: Verdict | null
  leading: boolean
}

/** One issue of a proof. */
export interface Proof {
  key: string
  title: string
  kind: 'COMPUTED' | 'SUBMITTED'
  issue: number
  /** Null on an issue that a later one replaced. */
  state: ProofState | null
  calculation: string | null
  calculationVersion: string
  bindings: { input: string; path: string | null; value: string | null; origin: string }[]
  /** What it relied on: path of the record, input it went into, the value then. */
  relied: { path: string; input: string; value: string }[]
  /** Every input by pointer. */
  inputs: Record<string, string>
  outputs: ProofOutput[]
  /** Every printed result by pointer. */
  results: Record<string, string>
  notices: Notice[]
  submission: {
    method: string
    inputsHash: string
    text: string
    signedAs: string
    results: { name: string; label: string; unit: string; value: number; limit: number | null }[]
  } | null
  copyCode: string
  madeBy: string
  madeAt: string
  reason: string
  differences: ValueDifference[]
  newVersion: string | null
  waitingFor: string[]
  actions: string[]
}

/** One line of a house's history: a part or a proof that was saved, an approval given or withdrawn. */
export interface ChangeEntry {
  houseId: string
  kind: 'PART' | 'PROOF' | 'APPROVAL' | 'WITHDRAWAL'
  /** The part, the proof or the decision. */
  key: string
  /** The revision or the issue; 0 for approvals. */
  number: number
  title: string
  who: string
  when: string
  why: string
  values: ValueDifference[]
  /** Whether something still rests on an older value than this change set. */
  open: boolean
}

/** One value that is to become another. */
export interface ValueChange {
  path: string
  value: number | string | boolean | null
}

/** One way to decide. */
export interface Alternative {
  id: string
  title: string
  /** What the record would say with it. */
  changes: ValueChange[]
  note: string
}

export type DecisionState = 'OPEN' | 'PARTLY_APPROVED' | 'APPROVED' | 'FRESH_LOOK' | 'LAPSED'
export type ApprovalState = 'STANDS' | 'CARRIED_OVER' | 'FRESH_LOOK' | 'LAPSED' | 'WITHDRAWN'
export type OrderState = 'ORDERED' | 'HELD' | 'BOUGHT' | 'BUILT'

export interface OrderLine {
  id: string
  title: string
  state: OrderState
  note: string
}

export interface Approval {
  id: string
  role: Role
  person: string
  at: string
  state: ApprovalState
  copyCode: string
  /** Why it does not stand as it was given. */
  reasons: string[]
  /** Why it was given although something failed, or null. */
  exceptionReason: string | null
  /** What failed then. */
  failing: string[]
  alreadyBought: boolean
  alreadyBuilt: boolean
  /** Whether the same role has approved again since. */
  replaced: boolean
  withdrawnAt: string | null
  withdrawnBy: string | null
  withdrawnReason: string | null
}

export interface Decision {
  code: string
  title: string
  question: string
  group: string
  chosenAlternative: string | null
  alternatives: Alternative[]
  reason: string
  proofs: string[]
  approvers: Role[]
  outsideApprovers: string[]
  safetyList: boolean
  governs: string[]
  orders: OrderLine[]
  arrows: { to: string; title: string; hard: boolean; because: string; trigger: string; inHouse: boolean }[]
  state: DecisionState
  approvals: Approval[]
  comments: { id: string; person: string; at: string; text: string }[]
  dueOn: string | null
  copyCode: string
  /** What fails in the proofs behind it, and whether approving then needs a written exception. */
  failing: { sentence: string; needsException: boolean }[]
  version: number
  actions: string[]
}

export interface ChangedValue extends ValueDifference {
  /** Who gave it its present value; null for a value of a trial. */
  who: string | null
  when: string | null
  reason: string | null
}

/** One number of a proof, as it was relied on or approved, and as it comes out now. */
export interface ChainOutput {
  name: string
  label: string
  symbol: string
  unit: Unit | null
  old: string | null
  new: string | null
  limit: string | null
  oldVerdict: Verdict | null
  verdict: Verdict | null
  leading: boolean
}

export interface ChainLink {
  proofKey: string
  title: string
  issue: number
  calculation: string | null
  state: ProofState
  inputs: ValueDifference[]
  outputs: ChainOutput[]
  refusal: string | null
  decisions: string[]
}

export interface ReachedDecision {
  code: string
  title: string
  state: 'LAPSED' | 'FRESH_LOOK' | 'WAITING'
  safetyList: boolean
  asked: Role[]
  outside: string[]
  because: string[]
  /** Code of the decision that must be settled first; null for those asked now. */
  when: string | null
  again: boolean
  alreadyBought: boolean
  alreadyBuilt: boolean
  dueOn: string | null
}

export interface ReachedOrder {
  decision: string
  id: string
  title: string
  state: OrderState
  note: string
}

/** What a change reaches: the record as it is, or as it would be in a trial. */
export interface Reach {
  houseId: string
  title: string
  changedValues: ChangedValue[]
  chain: ChainLink[]
  moved: { code: string; title: string }[]
  askedNow: ReachedDecision[]
  askedLater: ReachedDecision[]
  /** Arrows whose source moved too little to ask anybody. */
  quiet: { from: string; to: string; title: string; sentence: string }[]
  orders: ReachedOrder[]
  copyCode: string
  computedInS: number
  actions: string[]
}

/** Trials side by side. */
export interface Comparison {
  nothingElse: Reach
  trials: Reach[]
  rows: {
    proofKey: string
    proofTitle: string
    name: string
    label: string
    unit: Unit | null
    approved: string | null
    /** The record as it is, then each trial. */
    cells: { value: string | null; limit: string | null; verdict: Verdict | null }[]
  }[]
}
