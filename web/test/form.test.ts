import { beforeEach, describe, expect, test } from 'vitest'
import { Problem } from '../src/api/problem.ts'
import { type Field, pathOf, pointer, withValue } from '../src/form/field.ts'
import { Form, rangeText } from '../src/form/form.ts'
import { system } from '../src/units/system.ts'

const blank: Field = {
  name: '',
  kind: 'NUMBER',
  label: '',
  symbol: '',
  help: '',
  optional: false,
  unit: undefined,
  min: null,
  max: null,
  minExclusive: false,
  limitSource: '',
  advisedMin: null,
  advisedMax: null,
  advisedSource: '',
  step: 0,
  leading: false,
  limitField: '',
  minRows: 0,
  maxRows: 10,
  maxLength: 0,
  options: [],
  fields: [],
}
const ONE = {
  id: 'ONE' as const,
  ucum: '1',
  si: { symbol: '', factor: 1, offset: 0, digits: 3 },
  ip: { symbol: '', factor: 1, offset: 0, digits: 3 },
}
const FLOW = {
  id: 'CUBIC_METRE_PER_SECOND' as const,
  ucum: 'm3/s',
  si: { symbol: 'm³/h', factor: 3600, offset: 0, digits: 1 },
  ip: { symbol: 'cfm', factor: 60 / 0.028316846592, offset: 0, digits: 0 },
}
const exponent: Field = { ...blank, name: 'exponent', label: 'Exponent', unit: ONE, min: 0.5, max: 1 }
const flow: Field = { ...blank, name: 'airflowM3PerS', label: 'Airflow', unit: FLOW, min: 0, max: 2 }
const id: Field = { ...blank, name: 'id', kind: 'TEXT', maxLength: 12, optional: true }
const devices: Field = { ...blank, name: 'devices', kind: 'ROWS', minRows: 1, fields: [id, flow] }
const fields = [exponent, devices]

beforeEach(() => {
  system.value = 'SI'
})

describe('a form', () => {
  test('keeps SI whatever is typed, and shows the typed text until the units change', () => {
    const form = new Form(fields)
    system.value = 'IP'
    form.type(['devices', 0, 'airflowM3PerS'], flow, '600')
    expect(form.get(['devices', 0, 'airflowM3PerS'])).toBeCloseTo(0.28316846592, 10)
    expect(form.text(['devices', 0, 'airflowM3PerS'], flow)).toBe('600')
    system.value = 'SI'
    expect(form.text(['devices', 0, 'airflowM3PerS'], flow)).toBe('1019.4')
    system.value = 'IP'
    expect(form.text(['devices', 0, 'airflowM3PerS'], flow)).toBe('600')
  })

  test('says what is missing, unreadable and outside, beside each field, and gives nothing to send', () => {
    const form = new Form(fields)
    form.type(['exponent'], exponent, '1.4')
    form.type(['devices', 0, 'airflowM3PerS'], flow, 'six')
    expect(form.read()).toBeUndefined()
    expect(form.errors.value).toEqual({
      exponent: '1.4 is above 1.',
      'devices[0].airflowM3PerS': '“six” is no number.',
    })
    expect(form.text(['devices', 0, 'airflowM3PerS'], flow)).toBe('six')
  })

  test('asks which number a comma means instead of guessing', () => {
    const form = new Form([flow])
    form.type(['airflowM3PerS'], flow, '1,200')
    form.read()
    expect(form.errors.value.airflowM3PerS).toBe('“1,200” could be 1200 or 1.200; write one of them.')
  })

  test('takes a refusal to its field, found by row number or by row id, and the rest over the whole', () => {
    const form = new Form(fields, { exponent: 0.65, devices: [{ id: 'hood', airflowM3PerS: 3 }] })
    form.refuse(
      new Problem(422, 'outside-limits', 'refused', {
        errors: [
          { field: 'devices[hood].airflowM3PerS', value: 3, detail: 'too much' },
          { field: 'nowhere', detail: 'they contradict each other' },
        ],
      }),
    )
    expect(form.errors.value['devices[0].airflowM3PerS']).toBe(
      '10800 m³/h is above 7200 m³/h.'.replace(/(\d) m/g, '$1\u202fm').replace('10800', '10\u202f800'),
    )
    expect(form.errors.value['']).toBe('they contradict each other')
  })

  test('taking a row away moves the rows after it up and keeps their values', () => {
    const form = new Form(fields, {
      exponent: 0.65,
      devices: [{ airflowM3PerS: 0.1 }, { airflowM3PerS: 0.2 }],
    })
    form.type(['devices', 1, 'airflowM3PerS'], flow, '36')
    form.removeRow(['devices'], 0)
    expect(form.get(['devices'])).toEqual([{ airflowM3PerS: 0.01 }])
    expect(form.text(['devices', 0, 'airflowM3PerS'], flow)).toBe('36')
  })

  test('begins with the least rows, and an optional field left empty is left out', () => {
    const form = new Form([devices])
    expect(form.get(['devices'])).toEqual([{}])
    form.type(['devices', 0, 'airflowM3PerS'], flow, '100')
    expect(form.read()).toEqual({ devices: [{ airflowM3PerS: expect.closeTo(100 / 3600, 12) }] })
  })
})

describe('rows', () => {
  const three = () => new Form([devices], { devices: [{ id: 'a' }, { id: 'b' }, { id: 'c' }] })
  const ids = (form: Form) => (form.get(['devices']) as { id?: string }[]).map((r) => r.id)

  test('move, come between and go, and everything else keeps its order', () => {
    const form = three()
    form.moveRow(['devices'], 0, 2)
    expect(ids(form)).toEqual(['b', 'c', 'a'])
    form.moveRow(['devices'], 0, -1)
    form.moveRow(['devices'], 2, 3)
    expect(ids(form)).toEqual(['b', 'c', 'a'])
    form.insertRow(['devices'], 1, { id: 'new' })
    expect(ids(form)).toEqual(['b', 'new', 'c', 'a'])
    form.removeRow(['devices'], 0)
    expect(ids(form)).toEqual(['new', 'c', 'a'])
  })

  test('take what was typed into them along, also what is no number yet', () => {
    const form = three()
    form.type(['devices', 2, 'airflowM3PerS'], flow, '10x')
    form.read()
    form.moveRow(['devices'], 2, 0)
    expect(form.text(['devices', 0, 'airflowM3PerS'], flow)).toBe('10x')
    expect(form.error(['devices', 0, 'airflowM3PerS'])).toContain('10x')
    form.removeRow(['devices'], 0)
    expect(form.text(['devices', 0, 'airflowM3PerS'], flow)).toBe('')
  })
})

describe('pointers', () => {
  test('a pointer and its path are each other', () => {
    const record = { devices: [{ id: 'a' }, { id: 'b' }] }
    expect(pathOf('devices[b].airflowM3PerS', record)).toEqual(['devices', 1, 'airflowM3PerS'])
    expect(pointer(['devices', 1, 'airflowM3PerS'])).toBe('devices[1].airflowM3PerS')
  })

  test('changing one place leaves the record it came from as it was', () => {
    const before = { a: { b: 1 }, rows: [{ x: 1 }] }
    const after = withValue(before, ['rows', 0, 'x'], 2)
    expect(before.rows[0]!.x).toBe(1)
    expect(after).toEqual({ a: { b: 1 }, rows: [{ x: 2 }] })
  })
})

test('limits are worded in the units of the day', () => {
  expect(rangeText(exponent)).toBe('0.5 to 1')
  system.value = 'IP'
  expect(rangeText(flow)).toBe('0 to 4238\u202fcfm')
})
