import type { HouseRecord } from './record.ts'

/** What of the drawing a path of the record belongs to: a machine, a sensor, or wall, roof, slab; nothing for the rest. */
export function placeOf(path: string, { parts }: HouseRecord): string | undefined {
  const row = /^([\w.]+)\[([^\]]+)\]/.exec(path)
  if (row) {
    const [, list, id] = row
    if (list === 'air.exhaust' || list === 'air.makeUp' || list === 'air.passiveOpenings') return id
    if (list === 'air.filters') return 'airHandler'
    if (list === 'sensors.places') return id
    if (list === 'water.leakPaths') return 'heater'
    if (list === 'enclosure.assemblies') {
      const assemblies = (parts.enclosure?.document.assemblies ?? []) as { id: string; kind: string }[]
      const kind = assemblies.find((a) => a.id === id)?.kind
      return kind === 'ROOF' ? 'roof' : kind === 'SLAB' ? 'slab' : 'wall'
    }
  }
  if (path.startsWith('air.ventilation')) return 'ventilation'
  if (path.startsWith('air.airHandler')) return 'airHandler'
  if (path.startsWith('air.tightness') || path.startsWith('enclosure') || path.startsWith('moisture'))
    return 'wall'
  if (path.startsWith('water')) return 'heater'
  if (path.startsWith('heat.')) return 'heatPump'
  return undefined
}
