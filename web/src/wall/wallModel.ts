import type { DrawAs } from '../section/model.ts'
import { hatchOf } from '../section/sectionOf.ts'
import type { AssemblySheet, LayerControl } from './types.ts'

/** What the drawing of one assembly needs of it; an assembly that is being typed has as much as a saved one. */
export type DrawnAssembly = Pick<AssemblySheet, 'cladding' | 'fasteners'> & {
  layers: {
    id: string
    label: string
    material: string
    thicknessM: number
    drawAs: string
    controls: Pick<LayerControl, 'control' | 'second'>[]
    ventilation?: string | null
    framingFraction?: number | null
  }[]
}

/** Left and right end of the layers in the drawing; what stands beside them has the rest of its width. */
export const LEFT = 120
export const RIGHT = 1180
export const WIDTH = 1310
/** Below this a layer has no thickness to see and is drawn as a line. */
const SEEN_M = 0.002

export interface DrawnLayer {
  id: string
  number: number
  label: string
  drawAs: DrawAs
  /** Inner and outer face along the drawing. */
  x0: number
  x1: number
  thicknessM: number
  /** A membrane or a sheet too thin to see. */
  line: boolean
  /** Cut wood crosses it, in the lower part of the drawing. */
  wood: boolean
  controls: LayerControl['control'][]
  /** It is the layer that stops air: the red line. */
  air: boolean
}

export interface Screw {
  id: string
  label: string
  /** Its head, at the outer side, and its tip. */
  head: number
  tip: number
}

export interface WallModel {
  layers: DrawnLayer[]
  totalM: number
  /** Where a depth from inside lies along the drawing. */
  at(depthM: number): number
  screws: Screw[]
  /** The red line, where the record names an air layer. */
  red: number | undefined
}

/** Where every layer of an assembly lies in its drawing; undefined where nothing has a thickness. */
export function wallModel(assembly: DrawnAssembly): WallModel | undefined {
  const totalM = assembly.layers.reduce((sum, l) => sum + Math.max(0, l.thicknessM || 0), 0)
  if (!(totalM > 0)) return undefined
  const at = (depthM: number) => LEFT + ((RIGHT - LEFT) * depthM) / totalM
  let from = 0
  const layers = assembly.layers.map((l, i): DrawnLayer => {
    const thicknessM = Math.max(0, l.thicknessM || 0)
    const [x0, x1] = [at(from), at(from + thicknessM)]
    from += thicknessM
    const drawAs = hatchOf(l.drawAs, l.material ?? '')
    const vented = l.ventilation === 'WELL' || l.ventilation === 'SLIGHTLY'
    return {
      id: l.id,
      number: i + 1,
      label: l.label || l.material || l.id,
      drawAs,
      x0,
      x1,
      thicknessM,
      line: thicknessM < SEEN_M || drawAs === 'line',
      wood: (l.framingFraction ?? 0) > 0 || (drawAs === 'gap' && vented && assembly.cladding != null),
      controls: l.controls.map((c) => c.control),
      air: l.controls.some((c) => c.control === 'AIR' && !c.second),
    }
  })
  const air = layers.find((l) => l.air)
  return {
    layers,
    totalM,
    at,
    screws: screwsOf(assembly, layers, at, totalM),
    red: air && (air.x0 + air.x1) / 2,
  }
}

/** A screw through insulation has its head on the furring outside of it and reaches as deep as it is long. */
function screwsOf(
  assembly: DrawnAssembly,
  layers: DrawnLayer[],
  at: (depthM: number) => number,
  totalM: number,
): Screw[] {
  return assembly.fasteners.flatMap((f) => {
    const through = layers.findIndex((l) => l.id === f.throughLayerId)
    if (through < 0 || !f.lengthM) return []
    const furring = layers[through + 1]?.wood ? layers[through + 1]! : layers[through]!
    const headM = ((furring.x1 - LEFT) / (RIGHT - LEFT)) * totalM
    return [{ id: f.id, label: f.label, head: furring.x1, tip: at(Math.max(0, headM - f.lengthM)) }]
  })
}

/** A letter of a note in the drawing's measure, widest fallback included. */
const LETTER = 8.6

/**
 * Notes above the drawing, one a layer, each beginning at its leader. A note stands one row over the highest of those
 * whose leaders it would cross, so that no leader runs through a word.
 */
export function notePlaces(layers: DrawnLayer[]): { x: number; row: number; text: string }[] {
  const placed: { x: number; row: number; text: string }[] = []
  for (const l of [...layers].reverse()) {
    const text = `${l.number} ${l.label}`
    const x = (l.x0 + l.x1) / 2
    const end = x + 14 + text.length * LETTER
    const crossed = placed.filter((p) => p.x < end).map((p) => p.row)
    placed.push({ x, row: crossed.length === 0 ? 0 : Math.max(...crossed) + 1, text })
  }
  return placed.reverse()
}

/** One place across the wall: what the portal computed there. */
export interface ProfilePoint {
  depthM: number
  temperatureC: number
  saturationPa: number
  vapourPa: number
}

/** Relative humidity at a point: vapour pressure over saturation there. */
export const humidityOf = (p: ProfilePoint) => Math.min(1, p.vapourPa / p.saturationPa)

/**
 * The temperature at which a vapour pressure would be saturated, read off the pairs of temperature and saturation that
 * the portal computed across the same wall (straight in the logarithm between them and beyond their ends).
 */
export function dewPointReader(points: ProfilePoint[]): (vapourPa: number) => number | undefined {
  const pairs = [...new Map(points.map((p) => [p.saturationPa, p.temperatureC]))].sort((a, b) => a[0] - b[0])
  if (pairs.length < 2) return () => undefined
  return (vapourPa) => {
    if (!(vapourPa > 0)) return undefined
    let i = pairs.findIndex(([p]) => p >= vapourPa)
    if (i < 0) i = pairs.length - 1
    const [lowP, lowC] = pairs[Math.max(0, i - 1)]!
    const [highP, highC] = i === 0 ? pairs[1]! : pairs[i]!
    const share = Math.log(vapourPa / lowP) / Math.log(highP / lowP)
    return lowC + share * (highC - lowC)
  }
}

/** How many pieces a layer is cut into, so that what bends inside it is drawn as it bends. */
const PIECES = 12
const CUT_FROM_M = 0.02
const MOST_ROWS = 30

interface LayerRow {
  id: string
  thicknessM: number
  thermalResistanceM2KPerW?: number
  sdDryM?: number
  sdWetM?: number
  ventilation?: string
  framingMaterialId?: string
  framingFraction?: number
  framingConductivityWPerMK?: number
}

/**
 * The same layers with thick ones cut into equal pieces, as a calculation takes them: what it answers at the faces
 * between pieces is the profile inside the layer, between the framing. Air is not cut, for its resistance does not
 * follow its thickness.
 */
export function cutLayers<T extends LayerRow>(layers: T[]): T[] {
  const isCut = (l: T) => !l.ventilation && l.thicknessM >= CUT_FROM_M
  const cuts = layers.filter(isCut).length
  const pieces = cuts === 0 ? 1 : Math.min(PIECES, 1 + Math.floor((MOST_ROWS - layers.length) / cuts))
  const share = (v: number | undefined) => (v === undefined ? undefined : v / pieces)
  return layers.flatMap((l) =>
    !isCut(l) || pieces < 2
      ? [l]
      : Array.from({ length: pieces }, (_, i) => {
          const piece: T = { ...l, id: `${l.id}x${i}`, thicknessM: l.thicknessM / pieces }
          for (const name of ['thermalResistanceM2KPerW', 'sdDryM', 'sdWetM'] as const) {
            if (l[name] !== undefined) piece[name] = share(l[name]) as T[typeof name]
          }
          delete piece.framingMaterialId
          delete piece.framingFraction
          delete piece.framingConductivityWPerMK
          return piece
        }),
  )
}

/** The faces that a calculation answered, at their depths: one more than the layers that count, from inside. */
export function facesAtDepth(
  layers: { thicknessM: number }[],
  faces: { temperatureC: number; saturationPa: number; vapourPa: number }[],
): ProfilePoint[] {
  let depthM = 0
  return faces.map((f, i) => {
    if (i > 0) depthM += layers[i - 1]?.thicknessM ?? 0
    return { depthM, temperatureC: f.temperatureC, saturationPa: f.saturationPa, vapourPa: f.vapourPa }
  })
}
