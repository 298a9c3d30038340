import type { Listed } from '../../api/schema.d.ts'
import type { Field, Row } from '../../form/field.ts'

/** Where a formula, a limit or a value comes from, and how well it was seen. */
export interface Source {
  citation: string
  status: string
}

/** A line of the list of calculations. */
export type CalculationLine = Listed

export interface WorkedExample {
  id: string
  title: string
  source: string
  status: string
  inputs: Row
}

/** A calculation as it is declared: everything a form and a result need. */
export interface Declaration extends CalculationLine {
  inputs: Field[]
  outputs: Field[]
  equations: { number: number; text: string; mathml: string; source: Source }[]
  sources: Source[]
  cautions: { subject: string; text: string }[]
  /** What outside the project it was tested against. */
  validation: string
  workedExamples: WorkedExample[]
}

export interface Notice {
  code: string
  weight: 'NOTE' | 'ADVICE' | 'REJECTED'
  field: string
  sentence: string
  source: Source
}

/** A computed answer. Nothing is stored. */
export interface Answer<I = Row, O = Row> {
  inputs: I
  output: O
  /** The outputs rounded once to their declared steps: what is shown and what people compare. */
  printed: O
  notices: Notice[]
  /** A notice forbids using it as evidence. */
  rejected: boolean
  /** Six digits that stand for inputs and result. */
  copyCode: string
}

/** A citation with how well it was seen, where that needs saying. */
export function cited(source: Source): string {
  // a kept proof names the status as its constant, a calculation in words
  const status = source.status.toLowerCase().replaceAll('_', ' ')
  return status === 'seen' ? source.citation : `${source.citation} (${status})`
}
