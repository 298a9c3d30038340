import { afterEach, expect, test } from 'vitest'
import type { MaterialJson, MaterialValueJson } from '../src/api/schema.d.ts'
import { materialValueWords, numberOf, withWords } from '../src/record/materials.ts'
import { system } from '../src/units/system.ts'

const W_PER_M_K = {
  ucum: 'W/(m.K)',
  si: { symbol: 'W/(m·K)', factor: 1, offset: 0, digits: 3 },
  ip: { symbol: 'Btu·in/(h·ft²·°F)', factor: 6.933472, offset: 0, digits: 2 },
}
const ONE = {
  ucum: '1',
  si: { symbol: '', factor: 1, offset: 0, digits: 2 },
  ip: { symbol: '', factor: 1, offset: 0, digits: 2 },
}

const conductivity = {
  field: 'conductivityWPerMK',
  label: 'Conductivity',
  unit: W_PER_M_K,
  value: 0.0412,
  choice: null,
  points: [],
} as unknown as MaterialValueJson

const resistance = {
  field: 'resistanceFactors',
  label: 'Vapour resistance factor',
  unit: ONE,
  value: null,
  choice: null,
  points: [
    { humidityFraction: 0.25, value: 5 },
    { humidityFraction: 0.75, value: 3.5 },
  ],
} as unknown as MaterialValueJson

const material = (id: string, label: string, source: string) =>
  ({
    id,
    label,
    properties: [
      { property: 'CONDUCTIVITY', label: 'conductivity', source, values: [conductivity] },
      { property: 'VAPOUR_RESISTANCE', label: 'vapour resistance', source, values: [resistance] },
    ],
  }) as unknown as MaterialJson

afterEach(() => {
  system.value = 'SI'
})

test('a value keeps the digits of its data sheet, in the units of the day', () => {
  system.value = 'SI'
  expect(materialValueWords(conductivity)).toMatch(/^0\.0412\sW\/\(m·K\)$/)
  system.value = 'IP'
  expect(materialValueWords(conductivity)).toMatch(/^0\.28566\sBtu/)
})

test('a curve is told point by point', () => {
  expect(materialValueWords(resistance).replace(/\s/g, ' ')).toBe('5 at 25 %, 3.5 at 75 %')
})

test('materials are found by every word, in their names and sources', () => {
  const all = [
    material('plywood', 'Plywood', 'ISO 10456, table 3'),
    material('own-hemp@0', 'Hemp board', 'data sheet of March'),
  ]
  const found = (words: string) => withWords(all, words).map((m) => m.id)
  expect(found('')).toHaveLength(2)
  expect(found('SHEET hemp')).toEqual(['own-hemp@0'])
  expect(found('hemp 10456')).toEqual([])
  expect(numberOf(all[0]!, 'conductivityWPerMK')).toBe(0.0412)
  expect(numberOf(all[0]!, 'densityKgPerM3')).toBeUndefined()
})
