export interface LoadPoint {
  on: string
  load: number
}

/** Where one filter stands. */
export interface FilterFollowUp {
  house: string
  houseName: string
  place: string
  filter: string
  inHouse: string
  size: string
  count: number
  grade: string
  shelfPlace: string | null
  fittedOn: string
  cleanHighPa: number
  cleanLowPa: number
  designHighPa: number
  designLowPa: number
  load: number
  loadOn: string
  slopePerWeek: number | null
  standing: string
  windowOpensOn: string | null
  dueOn: string
  dueBecause: string
  latestOn: string
  dueEarliestOn: string
  dueLatestOn: string
  fillingEarly: boolean
  fillingEarlySince: string | null
  bend: Bend | null
  windowLoad: number
  changeLoad: number
  reason: string
  loads: LoadPoint[]
  version: number
  actions: string[]
}

/** A change of slope, and what the record knows about those days. */
export interface Bend {
  afterOn: string
  byOn: string
  slopeBeforePerWeek: number
  slopeSincePerWeek: number
  asBeforeDueOn: string
  explainedBy: { onFrom: string; onTo: string; what: string }[]
}

export interface Visit {
  id: string
  house: string
  kind: 'filter' | '30-days' | '11-months' | '24-months'
  label: string
  dueOn: string
  plannedOn: string | null
  round: string | null
  filters: string[]
  closedOn: string | null
  version: number
  actions: string[]
}

export interface ProposedRound {
  place: string
  day: string
  weekday: string
  filters: FilterFollowUp[]
  also: { house: string; what: string; dueOn: string }[]
  reasons: string[]
  remarks: string[]
}

export interface KeptRound {
  id: string
  place: string
  day: string
  weekday: string
  visits: Visit[]
}

export interface RoundList {
  today: string
  proposed: ProposedRound[]
  kept: KeptRound[]
  later: FilterFollowUp[]
  actions: string[]
}

export interface StockLine {
  size: string
  grade: string
  shelfPlace: string | null
  onShelf: number
  need: number
  spare: number
  windowsLater: number
  order: number
  houses: string[]
  version: number | null
}

export interface StockList {
  until: string
  items: StockLine[]
  actions: string[]
}

export const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)

/** "16x25x4" with the sign that the trade reads. */
export const sizeWords = (f: { size: string; count: number }) =>
  `${f.count}\u00a0×\u00a0${f.size.replaceAll('x', '×')}`

/** "Wed 20 May", with the year where it is another one than today's. */
export function shortDay(iso: string, today: string, weekday = true): string {
  return new Intl.DateTimeFormat('en-GB', {
    weekday: weekday ? 'short' : undefined,
    day: 'numeric',
    month: 'short',
    year: iso.slice(0, 4) === today.slice(0, 4) ? undefined : 'numeric',
    timeZone: 'UTC',
  })
    .format(new Date(iso))
    .replace(',', '')
}
