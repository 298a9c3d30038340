/**
 * What the section drawing is drawn from: a plain description of one house cut open, in millimetres. Origin at the
 * finished floor and the inner face of the left wall; x to the right, y downward, so that heights are negative.
 * `sectionOf` makes it from the parts of the house record; anything else may be filled in by hand.
 */
export interface SectionModel {
  /** "H1 Saddle Spruce". */
  name: string
  /** Which way one looks, and what lies left and right: "west", "North", "South"; empty where that is not known. */
  looking: string
  left: string
  right: string
  form: SectionForm
  /** Layers from inside to outside. */
  wall: Assembly
  roof: Assembly
  /** Layers from the floor downward. */
  slab: Assembly
  /** Where there is a basement; the wall's own layers are taken where this is missing. */
  basementWall?: Assembly
  /** Windows in the left or right wall, from the finished floor; what stands beside one, where anything does. */
  windows: { side: 'left' | 'right'; sillMm: number; headMm: number; label?: string }[]
  equipment: Equipment[]
  sensors: Sensor[]
  /** Numbered squares by role; only one role's are drawn. Numbers are those of the list beside. */
  marks: Record<string, RoleMark[]>
}

export interface SectionForm {
  /** Inside, from wall to wall. */
  widthMm: number
  /** Floor to ceiling at the left wall; at both walls under a gable. */
  lowHeightMm: number
  /** Floor to ceiling at the right wall; at the ridge under a gable. */
  highHeightMm: number
  roof: 'SHED' | 'GABLE'
  storeys: number
  /** Basement floor below the ground floor; 0 for none. */
  basementMm: number
  /** Ground below the finished floor. */
  groundMm: number
}

export interface Assembly {
  /** Wall, Roof, Slab. */
  label: string
  /** "R-42" or "U 0.13"; empty for none. */
  note: string
  layers: Layer[]
}

/** How a material is hatched; "gap" is air, "line" a membrane or foil without thickness to see. */
export type DrawAs =
  | 'gypsum'
  | 'loose'
  | 'wool'
  | 'foam'
  | 'sheet'
  | 'wood'
  | 'concrete'
  | 'gravel'
  | 'gap'
  | 'line'
  | 'plain'

export interface Layer {
  id: string
  label: string
  thicknessMm: number
  drawAs: DrawAs
  /** The layer that stops air: the red line runs through it. */
  air: boolean
}

export type EquipmentKind =
  | 'RANGE_HOOD'
  | 'MAKE_UP_UNIT'
  | 'VENTILATOR'
  | 'AIR_HANDLER'
  | 'WATER_HEATER'
  | 'PASSIVE_OPENING'
  | 'OUTDOOR_UNIT'

/** Something drawn in its usual place, unless a place is given. */
export interface Equipment {
  id: string
  kind: EquipmentKind
  label: string
  /** A second line, such as a size. */
  note?: string
  /** The middle of its foot, or of its underside where it hangs. */
  at?: Point
  /** Duct or pipe to outdoors. */
  diameterMm?: number
}

export interface Sensor {
  id: string
  label: string
  at: Point
}

export interface RoleMark {
  number: number
  /** Id of an equipment or a sensor, or wall, roof, slab. */
  on: string
}

export interface Point {
  xMm: number
  yMm: number
}
