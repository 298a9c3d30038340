import type { Field, Row, Value } from '../form/field.ts'
import { isRow } from '../form/field.ts'
import type { Fastener } from './types.ts'
import type { DrawnAssembly } from './wallModel.ts'

/** What a calculation takes out of a record: fields of the same name, and no others. */
export function pick(fields: Field[], row: Row): Row {
  const taken: Row = {}
  for (const field of fields) {
    const value = row[field.name]
    if (value === undefined || value === null) continue
    taken[field.name] =
      field.kind === 'ROWS'
        ? (value as Row[]).map((one) => pick(field.fields, one))
        : field.kind === 'GROUP' && isRow(value)
          ? pick(field.fields, value)
          : value
  }
  return taken
}

/** An assembly as it stands in a form, for the drawing; what is not typed yet is left open. */
export function drawnOf(assembly: Row): DrawnAssembly {
  const rows = (value: Value): Row[] => (Array.isArray(value) ? (value as Row[]) : [])
  const text = (value: Value) => (typeof value === 'string' ? value : '')
  const number = (value: Value) => (typeof value === 'number' ? value : undefined)
  return {
    cladding: isRow(assembly.cladding) ? assembly.cladding : null,
    fasteners: rows(assembly.fasteners).map(
      (f): Fastener => ({
        id: text(f.id),
        label: text(f.label),
        lengthM: number(f.lengthM) ?? null,
        throughLayerId: text(f.throughLayerId) || null,
      }),
    ),
    layers: rows(assembly.layers).map((l, i) => ({
      id: text(l.id) || `row ${i}`,
      label: text(l.label),
      material: text(l.material),
      thicknessM: number(l.thicknessM) ?? 0,
      drawAs: text(l.drawAs),
      controls: rows(l.controls).flatMap((c) =>
        typeof c.control === 'string' ? [{ control: c.control as 'AIR', second: c.second === true }] : [],
      ),
      ventilation: text(l.ventilation) || null,
      framingFraction: number(l.framingFraction) ?? null,
    })),
  }
}

/** A short name that no row has yet. */
export function freshId(rows: Row[], stem = 'layer'): string {
  const taken = new Set(rows.map((r) => r.id))
  for (let n = rows.length + 1; ; n++) if (!taken.has(`${stem}${n}`)) return `${stem}${n}`
}

/** The role added to a layer, or taken from it; "second" where the layer only helps. */
export function withControl(controls: Row[], control: string, as: 'none' | 'first' | 'second'): Row[] {
  const others = controls.filter((c) => c.control !== control)
  if (as === 'none') return others
  return [...others, as === 'second' ? { control, second: true } : { control }]
}
