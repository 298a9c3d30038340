import type { Unit } from '../../units/quantity.ts'

export type Verdict = 'PASSES' | 'FAILS' | 'NOT_PROVEN'
export type Occasion = 'AS_FOUND' | 'AS_LEFT'

export interface DesignValue {
  name: string
  label: string
  unit: Unit
  value: number
  source: string
  sourceLabel: string
  path: string | null
  origin: string
}

export interface Compared {
  name: string
  label: string
  unit: Unit
  measured: number
  uncertainty: number
  min: number | null
  max: number | null
  design: DesignValue | null
  verdict: Verdict | null
  verdictLabel: string | null
}

export interface Caution {
  subject: string
  text: string
}

export interface Instrument {
  description: string
  serial: string
  calibratedOn: string
  flowAccuracyFraction: number
  pressureAccuracyFraction: number
  pressureAccuracyPa: number
}

export interface Measurement {
  id: string
  sheet: string
  occasion: Occasion
  occasionLabel: string
  takenAt: string
  receivedAt: string
  person: string
  sent: { taken: { instrument: Instrument; note?: string | null } } & Record<string, unknown>
  outcome: {
    verdict: Verdict
    verdictLabel: string
    values: Compared[]
    findings: string[]
    computed: {
      calculation: string
      version: string
      copyCode: string
      printed: Record<string, unknown>
    } | null
  }
  signature: { role: string; person: string; reason: string; at: string } | null
  cautions: Caution[]
  actions: string[]
}

export interface SheetUnits {
  pressure: Unit
  drop: Unit
  airflow: Unit
  temperature: Unit
  wind: Unit
  time: Unit
  share: Unit
  airChanges: Unit
}

export interface SheetShown {
  houseId: string
  sheet: 'tightness' | 'filter-drop' | 'house-pressure'
  title: string
  purpose: string
  instrument: string
  steps: string[]
  design: DesignValue[]
  measurements: Measurement[]
  cautions: Caution[]
  units: SheetUnits
  actions: string[]
}

export interface SheetListed {
  sheet: string
  title: string
  measurementCount: number
  occasion: Occasion | null
  verdict: Verdict | null
  verdictLabel: string | null
  takenAt: string | null
  signed: boolean
}
