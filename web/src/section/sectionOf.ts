import type { Row } from '../form/field.ts'
import { figure } from '../units/quantity.ts'
import type { System } from '../units/system.ts'
import { thickness } from './geometry.ts'
import type { Assembly, DrawAs, Equipment, Layer, SectionModel } from './model.ts'

/** The parts of a record that the section is drawn from, each the `document` of its part; any may be missing. */
export interface SectionParts {
  enclosure?: Row
  air?: Row
  heat?: Row
  water?: Row
  sensors?: Row
}

const HATCHES: Record<string, DrawAs> = {
  BOARD: 'gypsum',
  PANEL: 'sheet',
  MEMBRANE: 'line',
  FIBRE: 'loose',
  CAVITY: 'gap',
  CONCRETE: 'concrete',
  GRAVEL: 'gravel',
  METAL: 'plain',
  CLADDING: 'wood',
}

/** Not in the record: how deep a basement is drawn, and how far the ground lies below the floor. */
const BASEMENT_MM = 2400
const GROUND_MM = 300

const rows = (row: Row | undefined, name: string): Row[] => (row?.[name] as Row[] | undefined) ?? []
const group = (row: Row | undefined, name: string): Row | undefined =>
  (row?.[name] as Row | null | undefined) ?? undefined
const num = (row: Row, name: string): number => (typeof row[name] === 'number' ? (row[name] as number) : 0)

/**
 * The section of a house from its record; undefined where the enclosure says too little to draw: its form, and a wall,
 * a roof and a slab with layers.
 */
export function sectionOf(name: string, parts: SectionParts, system: System): SectionModel | undefined {
  const form = group(parts.enclosure, 'form')
  const assemblies = rows(parts.enclosure, 'assemblies')
  const wall = assemblyOf(assemblies, 'WALL', 'Wall')
  const roof = assemblyOf(assemblies, 'ROOF', 'Roof')
  const slab = assemblyOf(assemblies, 'SLAB', 'Slab')
  if (!form || !wall || !roof || !slab) return undefined
  const shed = form.roofKind !== 'GABLE'
  const widthMm = num(form, 'widthM') * 1000
  const highHeightMm = num(form, 'highWallHeightM') * 1000
  const outer = widthMm + 2 * thickness(wall)
  return {
    name,
    looking: '',
    left: shed ? 'low side' : '',
    right: shed ? 'high side' : '',
    form: {
      widthMm,
      lowHeightMm: num(form, 'lowWallHeightM') * 1000,
      highHeightMm,
      roof: shed ? 'SHED' : 'GABLE',
      storeys: num(form, 'storeyCount') || 1,
      basementMm: form.basement === true ? BASEMENT_MM : 0,
      groundMm: GROUND_MM,
    },
    wall,
    roof,
    slab,
    basementWall: assemblyOf(assemblies, 'BASEMENT_WALL', 'Basement wall'),
    windows: windowsOf(parts.enclosure, form, system),
    equipment: equipmentOf(parts, system),
    sensors: rows(parts.sensors, 'places').map((place) => ({
      id: String(place.id),
      label: String(place.quantity ?? place.label ?? ''),
      at: {
        xMm: num(place, 'xFraction') * outer - thickness(wall),
        yMm: -num(place, 'yFraction') * highHeightMm,
      },
    })),
    marks: {},
  }
}

/** Where a window ends at the top and may begin at the bottom, from the floor of its storey. */
const HEAD_MM = 2150
const LEAST_SILL_MM = 150
const UNDER_CEILING_MM = 250

/**
 * The record keeps all windows as one area, so one window a storey stands for them in the right wall: as tall as all of
 * them would be in one row along that wall. More glass in the record is a taller window.
 */
function windowsOf(enclosure: Row | undefined, form: Row, system: System): SectionModel['windows'] {
  const areaM2 = num(group(enclosure, 'windows') ?? {}, 'areaM2')
  const lengthM = num(form, 'lengthM')
  if (areaM2 <= 0 || lengthM <= 0) return []
  const storeys = num(form, 'storeyCount') || 1
  const wallM = form.roofKind === 'GABLE' ? num(form, 'lowWallHeightM') : num(form, 'highWallHeightM')
  const storeyMm = (wallM * 1000) / storeys
  const tallMm = Math.min((areaM2 / lengthM / storeys) * 1000, storeyMm - UNDER_CEILING_MM - LEAST_SILL_MM)
  const area = system === 'SI' ? `${figure(areaM2, 0)} m²` : `${figure(areaM2 / 0.3048 ** 2, 0)} ft²`
  return Array.from({ length: storeys }, (_, i) => {
    const head = Math.min(Math.max(HEAD_MM, LEAST_SILL_MM + tallMm), storeyMm - UNDER_CEILING_MM)
    return {
      side: 'right' as const,
      sillMm: i * storeyMm + head - tallMm,
      headMm: i * storeyMm + head,
      label: i === 0 ? `windows ${area}` : '',
    }
  })
}

function assemblyOf(assemblies: Row[], kind: string, label: string): Assembly | undefined {
  const found = assemblies.find((a) => a.kind === kind && rows(a, 'layers').length > 0)
  return found && { label, note: '', layers: rows(found, 'layers').map(layerOf) }
}

/** How a layer is hatched, from what the record says of it; rigid insulation is foam or wool by its material. */
export function hatchOf(drawAs: unknown, material: string): DrawAs {
  const rigid = /polystyrene|foam|polyiso|eps|xps/.test(material.toLowerCase()) ? 'foam' : 'wool'
  return HATCHES[String(drawAs)] ?? rigid
}

function layerOf(layer: Row): Layer {
  return {
    id: String(layer.id),
    label: String(layer.label ?? layer.material ?? ''),
    thicknessMm: num(layer, 'thicknessM') * 1000,
    drawAs: hatchOf(layer.drawAs, String(layer.material ?? '')),
    air: rows(layer, 'controls').some((c) => c.control === 'AIR' && c.second !== true),
  }
}

const flowWords = (m3PerS: number, system: System) =>
  system === 'SI' ? `${figure(m3PerS * 3600, 0)} m³/h` : `${figure((m3PerS * 60) / 0.3048 ** 3, 0)} cfm`

function equipmentOf(parts: SectionParts, system: System): Equipment[] {
  const all: Equipment[] = []
  for (const device of rows(parts.air, 'exhaust')) {
    if (device.kind !== 'RANGE_HOOD') continue
    const note = flowWords(num(device, 'ratedFlowM3PerS'), system)
    all.push({ id: String(device.id), kind: 'RANGE_HOOD', label: 'range hood', note })
  }
  for (const unit of rows(parts.air, 'makeUp')) {
    all.push({
      id: String(unit.id),
      kind: 'MAKE_UP_UNIT',
      label: 'make-up air',
      note: flowWords(num(unit, 'flowM3PerS'), system),
      diameterMm: num(unit, 'ductDiameterM') * 1000 || undefined,
    })
  }
  for (const opening of rows(parts.air, 'passiveOpenings')) {
    all.push({
      id: String(opening.id),
      kind: 'PASSIVE_OPENING',
      label: String(opening.label ?? 'passive opening').toLowerCase(),
      diameterMm: num(opening, 'diameterM') * 1000 || undefined,
    })
  }
  if (group(parts.air, 'ventilation'))
    all.push({ id: 'ventilation', kind: 'VENTILATOR', label: 'ventilation' })
  if (group(parts.air, 'airHandler')) {
    const filter = rows(parts.air, 'filters')[0]
    const size = filter && ['widthM', 'heightM', 'depthM'].map((n) => num(filter, n))
    const note = size
      ?.map((m) => (system === 'SI' ? (m * 1000).toFixed(0) : (m / 0.0254).toFixed(0)))
      .join('×')
    all.push({ id: 'airHandler', kind: 'AIR_HANDLER', label: 'air handler', note })
  }
  const heater = group(parts.water, 'heater')
  if (heater) {
    const litres = num(heater, 'storageL')
    const note =
      litres === 0
        ? undefined
        : system === 'SI'
          ? `${litres.toFixed(0)} L`
          : `${(litres / 3.785411784).toFixed(0)} gal`
    all.push({ id: 'heater', kind: 'WATER_HEATER', label: 'water heater', note })
  }
  if (group(parts.heat, 'heatPump')) all.push({ id: 'heatPump', kind: 'OUTDOOR_UNIT', label: 'heat pump' })
  return all
}
