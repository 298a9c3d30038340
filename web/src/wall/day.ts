import type { Row } from '../form/field.ts'
import type { Answer } from '../pages/calculation/types.ts'
import { cutLayers, facesAtDepth, type ProfilePoint } from './wallModel.ts'

/** The calculation behind the drawn day. */
export const DAY = 'dew-point-of-a-wall'

export interface DayOutput {
  condensedPerDayKgPerM2: number
  leakPlace: string
  leakPlaneC: number
  leakHumidityFraction: number
  leakVerdict: 'PASSES' | 'FAILS' | 'NOT_PROVEN'
  indoorDewPointC: number
  allowedIndoorHumidityFraction: number
  faces: { place: string; temperatureC: number; saturationPa: number; vapourPa: number }[]
}

/** One steady day: the answer, and the profile through the layers. */
export interface Day {
  climate: Row
  answer: Answer<Row, DayOutput>
  profile: ProfilePoint[]
  /** Temperature at the outer face of each layer that counts, by the layer's short name. */
  outerFaceC: Map<string, number>
}

export interface CountedLayer {
  id: string
  thicknessM: number
}

/** What the resistance of the assembly was computed from: layers as the calculations take them. */
export interface Placed {
  placement: Row
  layers: (CountedLayer & Row)[]
  /** Those that count, from inside: without a ventilated layer and what stands before it. */
  counted: CountedLayer[]
}

/** What is asked of the portal for a day: as it is, and with thick layers cut so that the profile shows inside them. */
export function askOf(placed: Placed, climate: Row) {
  const base = { placement: placed.placement, climate }
  const cut = cutLayers(placed.layers)
  return { whole: { ...base, layers: placed.layers }, cut: { ...base, layers: cut } }
}

export function dayOf(
  placed: Placed,
  climate: Row,
  whole: Answer<Row, DayOutput>,
  cut: Answer<Row, DayOutput>,
): Day {
  const counts = new Set(placed.counted.map((l) => l.id))
  const pieces = cutLayers(placed.layers).filter(
    (l) => counts.has(l.id.replace(/x\d+$/, '')) || counts.has(l.id),
  )
  return {
    climate,
    answer: whole,
    profile: facesAtDepth(pieces, cut.output.faces),
    outerFaceC: new Map(
      placed.counted.map((l, i) => [l.id, whole.printed.faces[i + 1]?.temperatureC ?? Number.NaN]),
    ),
  }
}
