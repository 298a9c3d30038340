/** A series as columns: times, and values where there are any. */
export interface Columns {
  time: Float64Array | number[]
  low: (number | null)[]
  mean: (number | null)[]
  high: (number | null)[]
}

/**
 * The lowest and the highest of each of so many equal spans of time, in the order in which they came, so that a spike
 * of one reading survives however much is drawn together. A span without readings is a gap.
 */
export function minMax(
  times: ArrayLike<number>,
  values: ArrayLike<number | null>,
  from: number,
  to: number,
  spans: number,
): { times: number[]; values: (number | null)[] } {
  const outTimes: number[] = []
  const outValues: (number | null)[] = []
  const start = lowerBound(times, from)
  let end = lowerBound(times, to)
  while (end < times.length && times[end] === to) end++
  if (end - start <= spans * 2) {
    for (let i = start; i < end; i++) {
      outTimes.push(times[i]!)
      outValues.push(values[i] ?? null)
    }
    return { times: outTimes, values: outValues }
  }
  const width = (to - from) / spans
  let i = start
  for (let s = 0; s < spans; s++) {
    const until = s === spans - 1 ? end : lowerBound(times, from + (s + 1) * width)
    let low = -1
    let high = -1
    for (; i < until && i < end; i++) {
      const v = values[i]
      if (v === null || v === undefined || Number.isNaN(v)) continue
      if (low < 0 || v < values[low]!) low = i
      if (high < 0 || v > values[high]!) high = i
    }
    if (low < 0) {
      outTimes.push(from + (s + 0.5) * width)
      outValues.push(null)
      continue
    }
    for (const k of low === high ? [low] : low < high ? [low, high] : [high, low]) {
      outTimes.push(times[k]!)
      outValues.push(values[k]!)
    }
  }
  return { times: outTimes, values: outValues }
}

/** The first place whose time is not before. */
function lowerBound(times: ArrayLike<number>, time: number): number {
  let a = 0
  let b = times.length
  while (a < b) {
    const m = (a + b) >> 1
    if (times[m]! < time) a = m + 1
    else b = m
  }
  return a
}
