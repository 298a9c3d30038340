import type { Row, Value } from '../form/field.ts'
import type { ProofOutput, ValueDifference, Verdict } from '../record/types.ts'
import { leaves } from '../record/values.ts'

/** The calculation of years of moisture; its runs are jobs. */
export const YEARS = 'wall-moisture'

/** Where one input of a run comes from. */
export interface BindingSent {
  input: string
  path?: string | null
  value?: Value | null
  origin?: string
  fields?: Record<string, string>
}

export type JobState = 'WAITING' | 'RUNNING' | 'DONE' | 'FAILED' | 'CANCELLED'

export interface Job {
  id: string
  title: string
  state: JobState
  doneFraction: number
  step: string
  failure: string | null
  actions: string[]
}

/** A long run in short. */
export interface Simulation {
  id: string
  title: string
  calculation: string
  version: string
  comparison: string | null
  state: JobState
  doneFraction: number
  step: string
  failure: string | null
  partial: boolean
  outputs: ProofOutput[]
  inputsChanged: ValueDifference[]
  newVersion: string | null
  bindings: BindingSent[]
  askedBy: string
  askedAt: string
  actions: string[]
}

/** One layer of the result. Shares are water by dry mass. */
export interface LayerWater {
  id: string
  label: string
  peakFraction?: number
  peakOn?: string
  worstPeakFraction?: number
  everPeakFraction?: number
  leastFraction?: number
  limitFraction?: number
  roomLeftFraction?: number
  driesTowards?: string
  mouldIndex?: number
  thirtyDayFraction?: number
  overLimitD?: number
  decayFraction?: number
  verdict?: Verdict
}

export interface YearsOutput {
  inWords: string
  verdict: Verdict
  woodPeakFraction?: number
  woodLimitFraction: number
  mouldIndex?: number
  mouldLimit: number
  frostH: number
  yearsToBalanceCount?: number
  layers: LayerWater[]
  runOffKgPerM2: number
  waterError: number
  heatError: number
}

export interface TapeDay {
  day: number
  date: string
  layerWaterFraction: number[]
  layerPeakFraction: number[]
}

export interface Tape {
  layers: { id: string; label: string; fromM: number; thicknessM: number }[]
  days: TapeDay[]
  dayCount: number
  profileFromDay: number | null
  profileToDay: number | null
  partial: boolean
}

/** The construction at one hour of a day, one value a cell from inside. */
export interface DayProfile {
  day: number
  date: string
  hourOfDay: number
  depthM: number[]
  temperatureC: number[]
  humidityFraction: number[]
  vapourPressurePa: number[]
  waterKgPerM3: number[]
}

export const ended = (state: JobState) => state === 'DONE' || state === 'FAILED' || state === 'CANCELLED'

/** A calculation as the portal fills it for an assembly of a house. */
export interface HouseInputs {
  bindings: BindingSent[]
  inputs: Row
  missing: string[]
}

/**
 * The bindings of a run: those that the portal fills in as long as nobody typed another value, so that a changed record
 * is seen, and everything else as it was typed. The layers are always those of the record.
 */
export function bindingsOf(filled: Pick<HouseInputs, 'bindings' | 'inputs'>, typed: Row): BindingSent[] {
  const same = (name: string) => JSON.stringify(typed[name]) === JSON.stringify(filled.inputs[name])
  const kept = filled.bindings.filter((b) => {
    const name = b.input.split(/[.[]/)[0]!
    return name === 'layers' || same(name)
  })
  const names = new Set(kept.map((b) => b.input.split(/[.[]/)[0]))
  const own = leaves(Object.fromEntries(Object.entries(typed).filter(([name]) => !names.has(name))))
  return [...kept, ...own.map(({ path, value }): BindingSent => ({ input: path, value, origin: 'typed' }))]
}

/** Whether a run is about an assembly. */
export const isAbout = (run: Pick<Simulation, 'calculation' | 'bindings'>, assembly: string) =>
  run.calculation === YEARS &&
  run.bindings.some((b) => b.path?.startsWith(`enclosure.assemblies[${assembly}]`))

/** The key of the proof that keeps an assembly's years: a small letter and up to 39 letters or digits. */
export function proofKeyOf(assembly: string): string {
  const plain = assembly.replace(/[^A-Za-z0-9]/g, '')
  return `years${plain.charAt(0).toUpperCase()}${plain.slice(1)}`.slice(0, 40)
}

/** The first sentence of a text, and the rest. */
export function firstSentence(text: string): [string, string] {
  const end = /[.!?](?=\s)/.exec(text)
  return end ? [text.slice(0, end.index + 1), text.slice(end.index + 1).trim()] : [text, '']
}

/** Steps at which a month begins, with its name; of a run over years only Januaries and Julies. */
export function monthMarks(days: { date: string }[]): { at: number; words: string }[] {
  const every = days.length > 500
  return days.flatMap((d, at) => {
    const [, month, day] = d.date.split('-').map(Number)
    if (day !== 1 || (every && month !== 1 && month !== 7)) return []
    return [{ at, words: MONTHS[month! - 1]! }]
  })
}

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec']

/** "14 Feb" for a day in a year that stands for any year. */
export function dayOfYearWords(date: string): string {
  const [, month, day] = date.split('-').map(Number)
  return `${day} ${MONTHS[(month ?? 1) - 1]}`
}

/** A value that jumps between layers, such as water: level to the faces of its layer, and broken between two. */
export function byLayer(
  depthM: number[],
  values: number[],
  layers: Tape['layers'],
): { depthM: number; value: number | null }[] {
  return layers.flatMap((layer) => {
    const [from, to] = [layer.fromM, layer.fromM + layer.thicknessM]
    const cells = depthM.flatMap((d, i) => (d > from && d < to ? [{ depthM: d, value: values[i]! }] : []))
    if (cells.length === 0) return []
    return [
      { depthM: from, value: cells[0]!.value },
      ...cells,
      { depthM: to, value: cells.at(-1)!.value },
      { depthM: to, value: null },
    ]
  })
}

/** The layer in which least room is left to its limit; the wettest one where none has a limit. */
export function nearestToLimit(layers: LayerWater[]): LayerWater | undefined {
  const limited = layers.filter((l) => typeof l.roomLeftFraction === 'number')
  if (limited.length > 0)
    return limited.reduce((a, b) => (a.roomLeftFraction! <= b.roomLeftFraction! ? a : b))
  return layers
    .filter((l) => typeof l.peakFraction === 'number')
    .reduce<LayerWater | undefined>((a, b) => (a && a.peakFraction! >= b.peakFraction! ? a : b), undefined)
}

/** One change of a trial: an input of the run, or a value of one of its layers. */
export interface TrialSent {
  title: string
  changes: BindingSent[]
}
