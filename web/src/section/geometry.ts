import type { Assembly, DrawAs, Equipment, Layer, Point, SectionForm, SectionModel } from './model.ts'

/** A place in the drawing: x and y in millimetres. */
export type XY = [number, number]

/** One closed shape of a layer. */
export interface Shape {
  id: string
  part: 'wall' | 'roof' | 'slab'
  drawAs: DrawAs
  points: XY[]
}

export interface Ring {
  id: string
  at: XY
  radiusMm: number
}

export interface Placed {
  equipment: Equipment
  /** Middle of the foot, or of the underside where it hangs. */
  foot: XY
  /** Where a mark's leader ends. */
  anchor: XY
}

export interface SectionGeometry {
  shapes: Shape[]
  /** The air layer, one path per unbroken run; one closed path where every part has its air layer. */
  redLine: { points: XY[]; closed: boolean }[]
  rings: Ring[]
  placed: Placed[]
  /** Underside of the ceiling at x. */
  ceilingAt: (x: number) => number
  /** Outer face of the roof at x. */
  roofTopAt: (x: number) => number
  /** Middle of the roof's air layer, or its underside where it has none. */
  roofAirAt: (x: number) => number
  wallMm: number
  roofMm: number
  slabMm: number
  /** Top of the lowest slab: 0, or the basement's floor. */
  floorMm: number
  /** Left, top, right and bottom of the house with its ground. */
  bounds: { left: number; top: number; right: number; bottom: number }
  /** Depth of each layer of wall, roof and slab: from the inner face to the layer's middle. */
  depths: { wall: number[]; roof: number[]; slab: number[] }
}

const OVERHANG = 600
/** Insulation ends over the walls, whatever lies on it. */
const FILLS = new Set<DrawAs>(['loose', 'wool', 'foam'])

export const thickness = (assembly: Assembly): number =>
  assembly.layers.reduce((sum, layer) => sum + layer.thicknessMm, 0)

/** Inner and outer face of each layer, counted from the inner face of the assembly. */
export function faces(assembly: Assembly): [number, number][] {
  let from = 0
  return assembly.layers.map((layer) => {
    const face: [number, number] = [from, from + layer.thicknessMm]
    from += layer.thicknessMm
    return face
  })
}

/** Depth of the middle of the air layer, or nothing where the record has none. */
export function airDepth(assembly: Assembly): number | undefined {
  const index = assembly.layers.findIndex((layer) => layer.air)
  if (index < 0) return undefined
  const [inner, outer] = faces(assembly)[index]!
  return (inner + outer) / 2
}

/** The whole drawing as places: everything follows from the model, so that a changed layer moves by itself. */
export function geometryOf(model: SectionModel): SectionGeometry {
  const { form, wall, roof, slab } = model
  const width = form.widthMm
  const slope = slopeOf(form)
  const steep = Math.hypot(1, slope)
  const ceilingAt = (x: number) => {
    if (form.roof === 'SHED') return -form.lowHeightMm - slope * x
    return -form.highHeightMm + slope * Math.abs(x - width / 2)
  }
  // a layer's thickness is measured square to the slope, its offset straight up
  const up = (depth: number) => depth * steep
  const wallMm = thickness(wall)
  const roofMm = thickness(roof)
  const slabMm = thickness(slab)
  const below = model.basementWall ?? wall
  const floorMm = form.basementMm
  const roofAir = airDepth(roof)
  const roofAirAt = (x: number) => ceilingAt(x) - up(roofAir ?? 0)
  const roofTopAt = (x: number) => ceilingAt(x) - up(roofMm)
  const underAir = roofAirFace(roof)
  const wallTopAt = (x: number) => ceilingAt(x) - up(underAir)

  const shapes: Shape[] = [
    ...slabShapes(slab, width, wall, floorMm),
    ...wallShapes(wall, width, wallTopAt, 0),
    ...(floorMm > 0 ? wallShapes(below, width, () => 0, floorMm, 'basement-') : []),
    ...roofShapes(roof, form, wallMm, (x, depth) => ceilingAt(x) - up(depth)),
  ]
  const placed = place(model, ceilingAt)
  const geometry = {
    shapes,
    placed,
    ceilingAt,
    roofTopAt,
    roofAirAt,
    wallMm,
    roofMm,
    slabMm,
    floorMm,
    depths: { wall: middles(wall), roof: middles(roof), slab: middles(slab) },
  }
  const top = form.roof === 'SHED' ? roofTopAt(width + wallMm + OVERHANG) : roofTopAt(width / 2)
  return {
    ...geometry,
    redLine: redLine(model, roofAirAt),
    rings: rings(model, placed, roofAirAt),
    bounds: {
      left: -wallMm - OVERHANG,
      right: width + wallMm + OVERHANG,
      top,
      bottom: Math.max(floorMm + slabMm, form.groundMm) + 200,
    },
  }
}

/** Rise per run of the roof, always positive. */
function slopeOf(form: SectionForm): number {
  const rise = form.highHeightMm - form.lowHeightMm
  return form.roof === 'SHED' ? rise / form.widthMm : rise / (form.widthMm / 2)
}

/** The walls end under the roof's air layer, or under its inner lining where it has none. */
function roofAirFace(roof: Assembly): number {
  const index = roof.layers.findIndex((layer) => layer.air)
  return index < 0 ? 0 : faces(roof)[index]![0]
}

const middles = (assembly: Assembly) => faces(assembly).map(([a, b]) => (a + b) / 2)

function wallShapes(
  wall: Assembly,
  width: number,
  topAt: (x: number) => number,
  footMm: number,
  prefix = '',
): Shape[] {
  return wall.layers.flatMap((layer, i) => {
    const [inner, outer] = faces(wall)[i]!
    const left: XY[] = [
      [-inner, footMm],
      [-inner, topAt(-inner)],
      [-outer, topAt(-outer)],
      [-outer, footMm],
    ]
    const right: XY[] = [
      [width + inner, footMm],
      [width + inner, topAt(width + inner)],
      [width + outer, topAt(width + outer)],
      [width + outer, footMm],
    ]
    return [
      shape(`${prefix}wall-left-${layer.id}`, 'wall', layer, left),
      shape(`${prefix}wall-right-${layer.id}`, 'wall', layer, right),
    ]
  })
}

const shape = (id: string, part: Shape['part'], layer: Layer, points: XY[]): Shape => ({
  id,
  part,
  drawAs: layer.drawAs,
  points,
})

function roofShapes(
  roof: Assembly,
  form: SectionForm,
  wallMm: number,
  at: (x: number, depth: number) => number,
): Shape[] {
  const { widthMm: width } = form
  const air = roof.layers.findIndex((layer) => layer.air)
  const vented = roof.layers.findIndex((layer, i) => i > air && layer.drawAs === 'gap')
  return roof.layers.map((layer, i) => {
    const [inner, outer] = faces(roof)[i]!
    // lining and service space stop at the walls; the air layer and insulation reach over them; the skin hangs over
    const skin = i === roof.layers.length - 1 && !FILLS.has(layer.drawAs)
    const over = vented >= 0 ? i >= vented : skin
    const reach = i < air ? 0 : wallMm + (over ? OVERHANG : 0)
    const xs = [-reach, ...(form.roof === 'GABLE' ? [width / 2] : []), width + reach]
    const points: XY[] = [
      ...xs.map((x): XY => [x, at(x, inner)]),
      ...[...xs].reverse().map((x): XY => [x, at(x, outer)]),
    ]
    return shape(`roof-${layer.id}`, 'roof', layer, points)
  })
}

function slabShapes(slab: Assembly, width: number, wall: Assembly, floorMm: number): Shape[] {
  // the slab carries the wall as far as its air layer
  const reach = airDepth(wall) ?? 0
  return slab.layers.map((layer, i) => {
    const [top, bottom] = faces(slab)[i]!
    return shape(`slab-${layer.id}`, 'slab', layer, [
      [-reach, floorMm + top],
      [width + reach, floorMm + top],
      [width + reach, floorMm + bottom],
      [-reach, floorMm + bottom],
    ])
  })
}

/** One closed path where wall, roof and slab each have an air layer; a break in the record is a break in the line. */
function redLine(model: SectionModel, roofAirAt: (x: number) => number): SectionGeometry['redLine'] {
  const { form, wall, roof, slab } = model
  const width = form.widthMm
  const w = airDepth(wall)
  const r = airDepth(roof)
  const s = airDepth(slab)
  const foot = form.basementMm
  const out = w ?? thickness(wall)
  const roofPart: XY[] = [
    [-out, roofAirAt(-out)],
    ...(form.roof === 'GABLE' ? [[width / 2, roofAirAt(width / 2)] as XY] : []),
    [width + out, roofAirAt(width + out)],
  ]
  const slabPart: XY[] = [
    [width + out, foot + (s ?? 0)],
    [-out, foot + (s ?? 0)],
  ]
  if (w !== undefined && r !== undefined && s !== undefined) {
    return [{ points: [[-out, foot + s], ...roofPart, [width + out, foot + s]], closed: true }]
  }
  const runs: SectionGeometry['redLine'] = []
  if (r !== undefined) runs.push({ points: roofPart, closed: false })
  if (s !== undefined) runs.push({ points: slabPart, closed: false })
  if (w !== undefined) {
    for (const x of [-w, width + w]) {
      runs.push({
        points: [
          [x, foot],
          [x, roofAirAt(x)],
        ],
        closed: false,
      })
    }
  }
  return runs
}

const HANGS: Record<Equipment['kind'], boolean> = {
  RANGE_HOOD: true,
  MAKE_UP_UNIT: true,
  VENTILATOR: true,
  PASSIVE_OPENING: true,
  AIR_HANDLER: false,
  WATER_HEATER: false,
  OUTDOOR_UNIT: false,
}

/** Usual places: machines in a room at the left wall, the hood over the cooktop further in. */
function usualPlace(
  kind: Equipment['kind'],
  n: number,
  model: SectionModel,
  ceiling: (x: number) => number,
): XY {
  switch (kind) {
    case 'VENTILATOR':
      return [500 + n * 900, -1340]
    case 'MAKE_UP_UNIT':
      return [1400, ceiling(0) + 420 + n * 420]
    case 'AIR_HANDLER':
      return [1480 + n * 800, 0]
    case 'WATER_HEATER':
      return [2550 + n * 800, 0]
    case 'RANGE_HOOD':
      return [Math.min(model.form.widthMm, 9000) * 0.66 + n * 1400, -1650]
    case 'PASSIVE_OPENING':
      return [0, -700 - n * 500]
    case 'OUTDOOR_UNIT':
      return [-thickness(model.wall) - 1000 - n * 900, model.form.groundMm]
  }
}

function place(model: SectionModel, ceiling: (x: number) => number): Placed[] {
  const seen: Partial<Record<Equipment['kind'], number>> = {}
  return model.equipment.map((equipment) => {
    const n = seen[equipment.kind] ?? 0
    seen[equipment.kind] = n + 1
    const foot = equipment.at ? xy(equipment.at) : usualPlace(equipment.kind, n, model, ceiling)
    return { equipment, foot, anchor: [foot[0], foot[1] + (HANGS[equipment.kind] ? -150 : -500)] }
  })
}

export const xy = (point: Point): XY => [point.xMm, point.yMm]

/** A ring for each duct or pipe that goes through the air layer. */
function rings(model: SectionModel, placed: Placed[], roofAirAt: (x: number) => number): Ring[] {
  const wallAir = airDepth(model.wall)
  const found: Ring[] = []
  for (const { equipment, foot } of placed) {
    const radius = (equipment.diameterMm ?? USUAL_DIAMETER[equipment.kind]) / 2 + 30
    if (equipment.kind === 'RANGE_HOOD' && airDepth(model.roof) !== undefined) {
      found.push({ id: equipment.id, at: [foot[0], roofAirAt(foot[0])], radiusMm: radius })
    } else if (wallAir !== undefined) {
      for (const y of sleeves(equipment, foot))
        found.push({ id: equipment.id, at: [-wallAir, y], radiusMm: radius })
    }
  }
  return found
}

const USUAL_DIAMETER: Record<Equipment['kind'], number> = {
  RANGE_HOOD: 250,
  MAKE_UP_UNIT: 200,
  VENTILATOR: 160,
  PASSIVE_OPENING: 200,
  AIR_HANDLER: 0,
  WATER_HEATER: 40,
  OUTDOOR_UNIT: 60,
}
export const diameterOf = (equipment: Equipment): number =>
  equipment.diameterMm ?? USUAL_DIAMETER[equipment.kind]

/** Heights at which something passes through the left wall. */
export function sleeves(equipment: Equipment, foot: XY): number[] {
  switch (equipment.kind) {
    case 'VENTILATOR':
      return [foot[1] - 480, foot[1] - 140]
    case 'MAKE_UP_UNIT':
      return [foot[1] - 185]
    case 'PASSIVE_OPENING':
      return [foot[1]]
    case 'WATER_HEATER':
      return [-50]
    default:
      return []
  }
}

/** A box that something takes up: left, top, right, bottom. */
export type Box = [number, number, number, number]

export const overlap = (a: Box, b: Box) => a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3]

export const MARK_MM = 290

/** Places numbered squares beside what they mean: eight directions, nearest first, the first that covers nothing. */
export function placeMarks(anchors: XY[], taken: Box[], within: Box): XY[] {
  const used = [...taken]
  const turns = [-45, -135, 45, 135, -90, 0, 180, 90].map((degrees) => (degrees * Math.PI) / 180)
  return anchors.map(([x, y]) => {
    const half = MARK_MM / 2
    let best: XY = [x + 500, y - 500]
    search: for (const far of [520, 760, 1050, 1400]) {
      for (const turn of turns) {
        const at: XY = [x + far * Math.cos(turn), y + far * Math.sin(turn)]
        const box: Box = [at[0] - half - 20, at[1] - half - 20, at[0] + half + 20, at[1] + half + 20]
        const inside =
          box[0] >= within[0] && box[2] <= within[2] && box[1] >= within[1] && box[3] <= within[3]
        if (inside && !used.some((other) => overlap(box, other))) {
          best = at
          break search
        }
      }
    }
    used.push([best[0] - half, best[1] - half, best[0] + half, best[1] + half])
    return best
  })
}
