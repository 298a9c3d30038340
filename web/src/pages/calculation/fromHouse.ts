import { createContext } from 'preact'
import { type Field, type Path, pointer, type Row, type Value, withValue } from '../../form/field.ts'
import type { Proof } from '../../record/types.ts'
import { fieldOf } from '../../record/values.ts'

/** What a form begins with where it is opened from a house: the inputs of a proof, with today's record in them. */
export interface FromHouse {
  /** Whose inputs these are: "Make-up air". */
  title: string
  inputs: Row
  /** Where the value of a field came from; nothing where the house says nothing about it. */
  origin: (path: Path) => string | undefined
}

export const FromHouseContext = createContext<FromHouse | undefined>(undefined)

/** The inputs of a proof as a form takes them: what it relied on stands as the record says it today. */
export function fromProof(proof: Proof, fields: Field[]): FromHouse {
  const relied = new Map(proof.relied.map((r) => [r.input, r]))
  const texts = new Map(Object.entries(proof.inputs))
  for (const [input, { path }] of relied) {
    const moved = proof.differences.find((d) => d.path === path)
    if (moved?.new != null) texts.set(input, moved.new)
  }
  const place = rowsInOrder()
  const origins = new Map<string, string>()
  let inputs: Row = {}
  for (const [input, text] of texts) {
    const path = place(input)
    const value = inputOf(fieldOf(fields, input), text)
    if (value !== undefined) inputs = withValue(inputs, path, value)
    const from = relied.get(input)
    if (from) origins.set(pointer(path), originOf(from.path))
  }
  return { title: proof.title, inputs, origin: (path) => origins.get(pointer(path)) }
}

const originOf = (path: string) =>
  path.startsWith('results.')
    ? 'computed in another proof of this house'
    : `from the record, ${path.split('.')[0]}`

/** Turns pointers into places; a row that is named by its id gets the next number of its list. */
function rowsInOrder(): (input: string) => Path {
  const keys = new Map<string, string[]>()
  return (input) => {
    const path: Path = []
    for (const [, name, key] of input.matchAll(/([^.[\]]+)|\[([^\]]*)\]/g)) {
      if (name !== undefined) {
        path.push(name)
        continue
      }
      const list = pointer(path)
      const known = keys.get(list) ?? []
      if (!known.includes(key!)) known.push(key!)
      keys.set(list, known)
      path.push(known.indexOf(key!))
    }
    return path
  }
}

function inputOf(field: Field | undefined, text: string): Value {
  switch (field?.kind) {
    case 'NUMBER':
    case 'INTEGER': {
      const value = Number(text)
      return text.trim() !== '' && Number.isFinite(value) ? value : undefined
    }
    case 'YES_NO':
      return text === 'true' ? true : text === 'false' ? false : undefined
    case 'TEXT':
    case 'CHOICE':
      return text
    default:
      return undefined
  }
}
