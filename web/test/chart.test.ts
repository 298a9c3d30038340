import { describe, expect, test } from 'vitest'
import { linear, logarithmic, pathOf, root, roundTicks, roundUp } from '../src/chart/axis.ts'
import { minMax } from '../src/chart/minmax.ts'
import { apart, spread } from '../src/chart/Plot.tsx'

describe('axes', () => {
  test('ends and middle of an even axis', () => {
    const axis = linear(0, 80, 10, 410)
    expect([axis.at(0), axis.at(40), axis.at(80)]).toEqual([10, 210, 410])
  })

  test('on a root axis 5 and 300 both keep room, and zero has its place', () => {
    const axis = root(300, 0, 1000)
    expect(axis.at(0)).toBe(0)
    expect(axis.at(5)).toBeCloseTo(1000 * Math.sqrt(5 / 300), 9)
    expect(axis.at(300)).toBeCloseTo(1000, 9)
    expect(axis.at(-5)).toBeCloseTo(-axis.at(5), 9)
  })

  test('on a logarithmic axis equal ratios are equal lengths', () => {
    const axis = logarithmic(4, 75, 0, 100)
    expect(axis.at(16) - axis.at(8)).toBeCloseTo(axis.at(64) - axis.at(32), 9)
    expect(axis.at(4)).toBe(0)
  })

  test.each([
    [0, 83.5],
    [0, 9.97],
    [-30, 22],
    [0.002, 0.0031],
    [0, 1e5],
  ])('at most six round ticks between %f and %f, all inside', (low, high) => {
    const ticks = roundTicks(low, high)
    expect(ticks.length).toBeGreaterThanOrEqual(2)
    expect(ticks.length).toBeLessThanOrEqual(6)
    for (const t of ticks) expect(t).toBeGreaterThanOrEqual(low - 1e-12)
    for (const t of ticks) expect(t).toBeLessThanOrEqual(high + 1e-9)
  })

  test('the end of a scale is round and not below the value', () => {
    expect(roundUp(83.5)).toBe(100)
    expect(roundUp(8.6)).toBe(10)
    expect(roundUp(100)).toBe(100)
  })
})

describe('drawing many readings together', () => {
  test('a spike of one reading survives, and lows and highs keep their order', () => {
    const times = Float64Array.from({ length: 100_000 }, (_, i) => i)
    const values = Array.from({ length: 100_000 }, (_, i) => Math.sin(i / 5000))
    values[54_321] = 99
    const drawn = minMax(times, values, 0, 100_000, 600)
    expect(drawn.times.length).toBeLessThanOrEqual(1200)
    expect(Math.max(...(drawn.values as number[]))).toBe(99)
    expect(drawn.times[drawn.values.indexOf(99)]).toBe(54_321)
    expect([...drawn.times].sort((a, b) => a - b)).toEqual(drawn.times)
  })

  test('a span without readings is a gap, and few readings are drawn as they are', () => {
    const times = [0, 1, 2, 3, 96, 97, 98, 99]
    const values = [1, 2, 3, 4, 5, 6, 7, 8]
    expect(minMax(times, values, 0, 100, 4).values).toEqual(values)
    expect(minMax(times, values, 0, 100, 3).values).toContain(null)
  })

  test('readings that are not there are not drawn as zero', () => {
    const drawn = minMax([0, 1, 2], [1, null, 3], 0, 2, 10)
    expect(drawn.values).toEqual([1, null, 3])
  })
})

test('a path breaks where a value is missing', () => {
  expect(pathOf([[0, 0], [1, 1], null, [2, 2], [3, Number.NaN], [4, 4]])).toBe('M0 0L1 1M2 2M4 4')
})

test('names at the ends of lines are moved apart but keep their order; ticks too close are left out', () => {
  expect(apart([100, 104, 50], 20)).toEqual([100, 120, 50])
  expect(spread([0, 1, 2, 10], (v) => v * 10, 15)).toEqual([0, 2, 10])
})
