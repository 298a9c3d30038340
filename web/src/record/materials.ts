import { type Resource, useResource } from '../api/resource.ts'
import type { MaterialJson, MaterialPage, MaterialValueJson } from '../api/schema.d.ts'
import { editable, figure, shownBy } from '../units/quantity.ts'
import { system } from '../units/system.ts'
import { HARD } from './values.ts'

/** A material that layers may name. */
export type Material = MaterialJson

/** As many as the portal gives at once: those that come with it, and 500 of the firm's own. */
const MOST = 500

/**
 * The materials that layers may name: those that come with the portal first, then the firm's own by name.
 *
 * @param all also own ones that are superseded or withdrawn
 */
export const useMaterials = (all = false): Resource<MaterialPage> =>
  useResource<MaterialPage>(`/materials?limit=${MOST}${all ? '&all=true' : ''}`)

/** A number that is known of a material, by its field: `conductivityWPerMK`. */
export function numberOf(material: Material, field: string): number | undefined {
  const value = material.properties.flatMap((p) => p.values).find((v) => v.field === field)?.value
  return typeof value === 'number' ? value : undefined
}

/** A value in the units of the day, as the data sheet says it: curves point by point. */
export function materialValueWords(value: MaterialValueJson): string {
  if (value.choice) return value.choice
  const unit = value.unit
  if (!unit) return ''
  const symbol = shownBy(unit, system.value).symbol
  const end = symbol ? `${HARD}${symbol}` : ''
  if (typeof value.value === 'number') return editable(value.value, unit, system.value) + end
  const words = value.points.map(({ humidityFraction, value: at }) => {
    const text = editable(at, unit, system.value) + end
    return value.points.length === 1 ? text : `${text} at ${figure(humidityFraction * 100, 0)}${HARD}%`
  })
  return words.join(', ')
}

/** The materials in whose name, short name, properties or sources every one of the words stands. */
export function withWords(materials: Material[], words: string): Material[] {
  const wanted = words.toLowerCase().split(/\s+/).filter(Boolean)
  return materials.filter((m) => {
    const said = [m.label, m.id, ...m.properties.flatMap((p) => [p.label, p.source])].join(' ').toLowerCase()
    return wanted.every((word) => said.includes(word))
  })
}
