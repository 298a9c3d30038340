import type { Finding, LayerControl, RestingProof } from '../../wall/types.ts'

export type Line = 'WATER' | 'AIR' | 'VAPOUR' | 'THERMAL'

export interface ControlLine {
  control: Line
  controlLabel: string
  closed: boolean
  breakCount: number
  pieceCount: number
  sentence: string
}

/** Where a line is open; names one of assembly, junction and hole, or none for a hole that nobody has listed. */
export interface Break {
  id: string
  control: Line
  controlLabel: string
  assembly: string | null
  junction: string | null
  hole: string | null
  coverCheck: string | null
  reason: string
}

export interface JoinsAssembly {
  id: string
  label: string
  kind: 'WALL' | 'ROOF' | 'SLAB' | 'BASEMENT_WALL'
  kindLabel: string
  outsideLabel: string | null
  bounds: boolean
  layers: { id: string; label: string; thicknessM: number; controls: LayerControl[] }[]
  carriers: { control: Line; controlLabel: string; layer: string; layerLabel: string }[]
  findings: Finding[]
}

export interface LinkedCheck {
  code: string
  title: string | null
  state: string | null
  stateLabel: string | null
}

export interface JoinsJunction {
  id: string
  label: string
  kind: string
  kindLabel: string
  from: string
  fromLabel: string
  to: string | null
  toLabel: string | null
  thermalBreak: boolean | null
  joins: {
    control: Line
    controlLabel: string
    state: 'CONTINUOUS' | 'DETAIL' | 'OPEN' | 'NOT_SAID'
    stateLabel: string
    detail: string | null
    holds: boolean
    reason: string | null
  }[]
  coverCheck: LinkedCheck | null
  findings: Finding[]
}

export interface JoinsHole {
  id: string
  label: string
  assembly: string
  assemblyLabel: string
  expected: string | null
  diameterM: number | null
  sealedBy: string | null
  holds: boolean
  reason: string | null
  coverCheck: LinkedCheck | null
}

export interface Joins {
  houseId: string
  lines: ControlLine[]
  breaks: Break[]
  assemblies: JoinsAssembly[]
  junctions: JoinsJunction[]
  holes: JoinsHole[]
  missingHoles: { id: string; label: string; expectedCount: number; namedCount: number }[]
  findings: Finding[]
  proofs: RestingProof[]
  refusal: string | null
  actions: string[]
}
