import { expect, test } from 'vitest'
import type { Field } from '../src/form/field.ts'
import { fromProof } from '../src/pages/calculation/fromHouse.ts'
import type { Proof } from '../src/record/types.ts'

const field = (name: string, kind: Field['kind'], fields: Field[] = []) =>
  ({ name, kind, label: name, fields, options: [] }) as unknown as Field

const FIELDS = [
  field('altitudeM', 'NUMBER'),
  field('devices', 'ROWS', [
    field('id', 'TEXT'),
    field('airflowM3PerS', 'NUMBER'),
    field('alwaysRuns', 'YES_NO'),
  ]),
]

const PROOF = {
  title: 'Make-up air',
  inputs: {
    altitudeM: '2350.0',
    'devices[hood].id': 'hood',
    'devices[hood].airflowM3PerS': '0.1888',
    'devices[hood].alwaysRuns': 'false',
    'devices[hood].gone': '7',
    'devices[bath].id': 'bath',
    'devices[bath].airflowM3PerS': '0.04',
  },
  relied: [
    { path: 'house.altitudeM', input: 'altitudeM', value: '2350.0' },
    { path: 'air.exhaust[hood].ratedFlowM3PerS', input: 'devices[hood].airflowM3PerS', value: '0.1888' },
  ],
  differences: [
    { path: 'air.exhaust[hood].ratedFlowM3PerS', label: '', unit: null, old: '0.1888', new: '0.2832' },
  ],
} as unknown as Proof

test("a form opened from a house holds what its proof relied on, as today's record says it", () => {
  const from = fromProof(PROOF, FIELDS)
  expect(from.inputs).toEqual({
    altitudeM: 2350,
    devices: [
      { id: 'hood', airflowM3PerS: 0.2832, alwaysRuns: false },
      { id: 'bath', airflowM3PerS: 0.04 },
    ],
  })
  expect(from.origin(['devices', 0, 'airflowM3PerS'])).toBe('from the record, air')
  expect(from.origin(['altitudeM'])).toBe('from the record, house')
  expect(from.origin(['devices', 0, 'id'])).toBeUndefined()
})
