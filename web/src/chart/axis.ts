/** One-line scales and their ticks. A scale takes a value to a place along an axis. */
export interface Axis {
  at(value: number): number
  ticks: number[]
}

const STEPS = [1, 2, 2.5, 5, 10]

/** At most `most` round values from `low` to `high`, ends included where they are round. */
export function roundTicks(low: number, high: number, most = 6): number[] {
  if (!(high > low)) return [low]
  const raw = (high - low) / Math.max(1, most - 1)
  const power = 10 ** Math.floor(Math.log10(raw))
  const step = (STEPS.find((s) => s * power >= raw * (1 - 1e-9)) ?? 10) * power
  const ticks: number[] = []
  for (let i = Math.ceil(low / step - 1e-9); i * step <= high + step * 1e-9; i++) {
    ticks.push(Number((i * step).toPrecision(12)))
  }
  return ticks
}

/** The smallest round value at or above, for the end of an axis. */
export function roundUp(value: number, most = 6): number {
  if (!(value > 0)) return 1
  const raw = value / (most - 1)
  const power = 10 ** Math.floor(Math.log10(raw))
  const step = (STEPS.find((s) => s * power >= raw * (1 - 1e-9)) ?? 10) * power
  return Number((Math.ceil(value / step - 1e-9) * step).toPrecision(12))
}

/** Even steps: from `low` at place `a` to `high` at place `b`. */
export function linear(low: number, high: number, a: number, b: number, most = 6): Axis {
  const k = (b - a) / (high - low || 1)
  return { at: (v) => a + (v - low) * k, ticks: roundTicks(low, high, most) }
}

/** Equal ratios are equal lengths; for leakage curves, whose law is then a straight line. */
export function logarithmic(low: number, high: number, a: number, b: number): Axis {
  const k = (b - a) / (Math.log(high) - Math.log(low))
  const ticks: number[] = []
  for (let e = Math.floor(Math.log10(low)); e <= Math.ceil(Math.log10(high)); e++) {
    for (const m of [1, 2, 3, 4, 5, 6, 8]) {
      const v = Number((m * 10 ** e).toPrecision(12))
      if (v >= low * (1 - 1e-9) && v <= high * (1 + 1e-9)) ticks.push(v)
    }
  }
  return { at: (v) => a + (Math.log(Math.max(v, low * 1e-6)) - Math.log(low)) * k, ticks }
}

/** Small values stay readable beside large ones; zero has a place. Negative values mirror. */
export function root(high: number, a: number, b: number): Axis {
  const k = (b - a) / Math.sqrt(high)
  const wanted = [0, 1, 2, 5, 10, 20, 50, 100, 200, 300, 500, 1000, 2000, 5000]
  const apart = Math.abs(b - a) / 14
  const ticks: number[] = []
  let last = Number.NEGATIVE_INFINITY
  for (const v of wanted) {
    const place = Math.sqrt(v) * Math.abs(k)
    if (v <= high && place - last >= apart) {
      ticks.push(v)
      last = place
    }
  }
  return { at: (v) => a + Math.sign(v) * Math.sqrt(Math.abs(v)) * k, ticks }
}

/** Points as a path; null breaks the line. */
export function pathOf(points: ([number, number] | null)[]): string {
  let d = ''
  let pen = 'M'
  for (const p of points) {
    if (!p || !Number.isFinite(p[0]) || !Number.isFinite(p[1])) {
      pen = 'M'
      continue
    }
    d += `${pen}${round(p[0])} ${round(p[1])}`
    pen = 'L'
  }
  return d
}

const round = (v: number) => Math.round(v * 10) / 10
