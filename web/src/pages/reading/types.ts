import type { Unit } from '../../units/quantity.ts'

export interface Sensor {
  key: string
  label: string
  property: string
  unit: string
  room: string | null
  place: string | null
  instrument: string | null
  accuracy: number | null
  sampleIntervalS: number | null
  version: number
}

/** What sensors observe, with the unit in which clients show it. */
export interface Property {
  id: string
  label: string
  shown: Unit
  min: number
  max: number
}

export interface Bucket {
  at: string
  count: number
  min: number
  mean: number
  max: number
}

/** How long a sensor stayed beyond the limit of its rule. */
export interface Persistence {
  limit: number
  past: 'above' | 'below'
  persistenceS: number
  source: string
  count: number
  peak: number | null
  longestS: number
  stayed: { from: string; to: string; peak: number }[]
  sentence: string
}

export interface ReadingSeries {
  from: string
  to: string
  bucketS: number
  zone: string
  source: 'readings' | 'hours'
  series: {
    sensor: Sensor
    buckets: Bucket[]
    persistence: Persistence | null
    limits: { at: string; limit: number | null }[]
  }[]
}

export interface Refusal {
  line: number
  field: string
  value: string
  reason: string
}

export interface Batch {
  batch: string
  received: number
  accepted: number
  alreadyKnown: number
  refused: number
  empty: number
  refusals: Refusal[]
  rejectsLink: string
}
