import type { Row } from '../form/field.ts'
import type { Answer } from '../pages/calculation/types.ts'
import type { ProofState } from '../record/types.ts'
import type { Unit } from '../units/quantity.ts'

export interface LayerControl {
  control: 'WATER' | 'AIR' | 'VAPOUR' | 'THERMAL' | 'DRAIN' | 'RAIN'
  label: string
  /** It only helps; another layer is counted on. */
  second: boolean
}

/** One value of a layer with where it comes from. */
export interface LayerValue {
  name: string
  label: string
  value: number
  unit: Unit
  source: string
  status: string
}

/** One layer of an assembly, from inside. */
export interface SheetLayer {
  id: string
  label: string
  material: string
  materialId: string | null
  materialLabel: string | null
  thicknessM: number
  drawAs: string
  controls: LayerControl[]
  ventilation: string | null
  openingM2PerM: number | null
  framingMaterialId: string | null
  framingFraction: number | null
  bottomEdge: string | null
  values: LayerValue[]
}

export interface Finding {
  id: string
  weight: string
  weightLabel: string
  about: string
  sentence: string
  reason: string
  source: string
}

export interface RestingProof {
  key: string
  title: string
  calculation: string | null
  assembly: string | null
  issue: number
  state: ProofState
  copyCode: string
}

export interface SheetResult {
  calculation: string
  title: string
  answer: (Answer & { cautions: { subject: string; text: string }[] }) | null
  refusal: string | null
}

export interface Fastener {
  id: string
  label: string
  lengthM: number | null
  throughLayerId: string | null
}

/** One assembly for its page. */
export interface AssemblySheet {
  houseId: string
  id: string
  label: string
  kind: string
  kindLabel: string
  outside: string | null
  outsideLabel: string | null
  bounds: boolean
  areaM2: number
  azimuthDeg: number | null
  tiltDeg: number | null
  heightM: number | null
  layers: SheetLayer[]
  cladding: Row | null
  fasteners: Fastener[]
  results: SheetResult[]
  findings: Finding[]
  sunDaysUsed: number | null
  proofs: RestingProof[]
  junctions: string[]
  actions: string[]
}
