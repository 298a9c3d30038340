import { describe, expect, test } from 'vitest'
import {
  ambiguous,
  editable,
  figure,
  fromShown,
  parseNumber,
  print,
  toShown,
  type Unit,
} from '../src/units/quantity.ts'

const AIRFLOW: Unit = {
  ucum: 'm3/s',
  si: { symbol: 'm³/h', factor: 3600, offset: 0, digits: 1 },
  ip: { symbol: 'cfm', factor: 60 / 0.028316846592, offset: 0, digits: 0 },
}
const TEMPERATURE: Unit = {
  ucum: 'Cel',
  si: { symbol: '°C', factor: 1, offset: 0, digits: 1 },
  ip: { symbol: '°F', factor: 1.8, offset: 32, digits: 1 },
}

describe('units', () => {
  test.each([-273.15, -40, 0, 1e-9, 21.3, 1e6])('%f comes back the same through either system', (value) => {
    for (const unit of [AIRFLOW, TEMPERATURE]) {
      for (const shown of [unit.si, unit.ip]) {
        const back = fromShown(toShown(value, shown), shown)
        expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-10 * Math.max(1, Math.abs(value)))
      }
    }
  })

  test('100 cfm is 169.9 m³/h (1 ft = 0.3048 m exactly)', () => {
    const kept = fromShown(100, AIRFLOW.ip)
    expect(print(kept, AIRFLOW, 'SI').text).toBe('169.9')
    expect(kept).toBeCloseTo((100 * 0.3048 ** 3) / 60, 12)
  })

  test('−40 °C is −40 °F, with a real minus', () => {
    expect(print(-40, TEMPERATURE, 'IP')).toEqual({ text: '−40.0', symbol: '°F' })
  })

  test('a printed step sets the digits in the other system too', () => {
    expect(print(0.14158, AIRFLOW, 'IP', 0.0005).text).toBe('300')
    expect(print(0.14158, AIRFLOW, 'IP', 1e-6).text).toBe('300')
    expect(print(83.46, { ...TEMPERATURE }, 'SI', 0.1).text).toBe('83.5')
  })

  test('a field begins with digits that a person would type', () => {
    const kept = fromShown(380, AIRFLOW.ip)
    expect(editable(kept, AIRFLOW, 'IP')).toBe('380')
    expect(parseNumber(editable(-25, TEMPERATURE, 'SI'))).toBe(-25)
    expect(parseNumber(editable(3.2e-7, AIRFLOW, 'SI'))).toBeCloseTo(3.2e-7 * 3600, 10)
    expect(
      editable(fromShown(7710, { symbol: 'ft', factor: 1 / 0.3048, offset: 0, digits: 0 }), AIRFLOW, 'SI'),
    ).not.toContain('e')
  })
})

describe('reading numbers as people type them', () => {
  test.each([
    ['0.65', 0.65],
    ['0,65', 0.65],
    ['−13', -13],
    ['–13', -13],
    ['7 710', 7710],
    ['7\u202f710', 7710],
    ['1.234,5', 1234.5],
    ['1,234.5', 1234.5],
    ['1,234,567.8', 1234567.8],
    ['.5', 0.5],
    ['5.', 5],
    ['1e-3', 0.001],
    ['0,125', 0.125],
  ])('%s', (text, value) => expect(parseNumber(text)).toBeCloseTo(value, 12))

  test.each(['', 'abc', '1.2.3', '1,2,3', '--1', '12 Pa', 'NaN', 'Infinity', '1e', '0x10'])(
    '%j is no number',
    (text) => {
      expect(parseNumber(text)).toBeNaN()
    },
  )

  test('a text that two readers would read apart is not guessed at', () => {
    expect(ambiguous('1,200')).toBe(true)
    expect(parseNumber('1,200')).toBeNaN()
    expect(ambiguous('1,20')).toBe(false)
    expect(ambiguous('12,345.0')).toBe(false)
  })
})

test('figures have thin spaces from five digits, a real minus, and no minus zero', () => {
  expect(figure(2350, 0)).toBe('2350')
  expect(figure(12350.44, 1)).toBe('12\u202f350.4')
  expect(figure(-0.04, 1)).toBe('0.0')
  expect(figure(-0.06, 1)).toBe('−0.1')
  expect(figure(Number.NaN, 1)).toBe('–')
})
