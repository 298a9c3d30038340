import type { Problem } from '../api/problem.ts'
import { type Resource, useResource } from '../api/resource.ts'
import type { Field } from '../form/field.ts'
import type { House, Part, PartType } from './types.ts'
import { fieldOf, valueWords } from './values.ts'

export const PARTS = ['enclosure', 'air', 'heat', 'moisture', 'water', 'sensors'] as const

const READ = ['house', ...PARTS]

/** Everything of a house's record as it is now. */
export interface HouseRecord {
  house: House
  parts: Record<string, Part | undefined>
  types: PartType[]
  /** A value of the record in the units of the day, by its path without row names: `air.makeUp.ductDiameterM`. */
  say(path: string, value: number, step?: number): string
  field(path: string): Field | undefined
}

export const housePath = (house: string) => `/houses/${encodeURIComponent(house)}`

/** Reads the house, its parts and their declarations. */
export function useRecord(house: string): { record?: HouseRecord; problem?: Problem; reload: () => void } {
  const line = useResource<House>(housePath(house))
  const types = useResource<PartType[]>('/part-types')
  // the list of parts never changes, so the hooks keep their order
  // biome-ignore lint/correctness/useHookAtTopLevel: a fixed list
  const parts = READ.map((part) => useResource<Part>(`${housePath(house)}/parts/${part}`))
  const all: Resource<unknown>[] = [line, types, ...parts]
  const problem = all.map((r) => r.problem.value).find(Boolean)
  const reload = () => {
    for (const r of all) void r.reload()
  }
  if (all.some((r) => r.data.value === undefined)) return { problem, reload }
  const declared = types.data.value!
  const field = (path: string) => {
    const [part = '', ...rest] = path.split('.')
    return fieldOf(declared.find((t) => t.part === part)?.fields ?? [], rest.join('.'))
  }
  return {
    problem,
    reload,
    record: {
      house: line.data.value!,
      parts: Object.fromEntries(parts.map((p, i) => [READ[i]!, p.data.value])),
      types: declared,
      field,
      say: (path, value, step) => valueWords(String(value), field(path)?.unit ?? null, field(path), step),
    },
  }
}

/** The parts alone, as the section is drawn from them. */
export const documentsOf = (record: HouseRecord) =>
  Object.fromEntries(Object.entries(record.parts).map(([part, p]) => [part, p?.document]))
