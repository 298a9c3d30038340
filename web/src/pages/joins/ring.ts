import { pathOf } from '../../chart/axis.ts'
import type { Break, Joins, JoinsAssembly, Line } from './types.ts'

export type XY = [number, number]

/** One face of the volume in the scheme, clockwise from its lower left corner. */
export interface Side {
  assembly: string
  from: XY
  to: XY
}

/** Something that stands on the line: a junction, a hole, or a hole that nobody has named. */
export interface Station {
  id: string
  kind: 'junction' | 'hole' | 'missing'
  at: XY
  /** Along the ring, from its beginning. */
  along: number
}

const LEFT = 250
const RIGHT = 850
const TOP = 120
const BOTTOM = 520
const GROUND = 360

const lengthOf = (s: Side) => Math.hypot(s.to[0] - s.from[0], s.to[1] - s.from[1])

/** The faces around the conditioned volume: walls left and right, roofs over them, slabs below. */
export function ringOf(assemblies: JoinsAssembly[]): Side[] {
  const of = (kind: JoinsAssembly['kind']) => assemblies.filter((a) => a.bounds && a.kind === kind)
  const [walls, below, roofs, slabs] = [of('WALL'), of('BASEMENT_WALL'), of('ROOF'), of('SLAB')]
  const shared = (all: JoinsAssembly[], right: boolean) =>
    all.length < 2 ? all : all.filter((_, i) => i % 2 === (right ? 1 : 0))
  const edge = below.length > 0 && walls.length > 0 ? GROUND : below.length > 0 ? TOP : BOTTOM
  const column = (x: number, right: boolean): Side[] => [
    ...run(shared(below, right), [x, BOTTOM], [x, edge]),
    ...run(shared(walls, right), [x, below.length > 0 ? edge : BOTTOM], [x, TOP]),
  ]
  const turned = (sides: Side[]) => [...sides].reverse().map((s) => ({ ...s, from: s.to, to: s.from }))
  return [
    ...column(LEFT, false),
    ...run(roofs, [LEFT, TOP], [RIGHT, TOP]),
    ...turned(column(RIGHT, true)),
    ...run([...slabs].reverse(), [RIGHT, BOTTOM], [LEFT, BOTTOM]),
  ]
}

/** Several assemblies share one face in equal parts. */
function run(all: JoinsAssembly[], from: XY, to: XY): Side[] {
  const point = (share: number): XY => [
    from[0] + (to[0] - from[0]) * share,
    from[1] + (to[1] - from[1]) * share,
  ]
  return all.map((a, i) => ({
    assembly: a.id,
    from: point(i / all.length),
    to: point((i + 1) / all.length),
  }))
}

/** A place along the ring. */
export function pointAt(ring: Side[], along: number): XY {
  let rest = along
  for (const side of ring) {
    const length = lengthOf(side)
    if (rest <= length) {
      const share = length === 0 ? 0 : rest / length
      return [
        side.from[0] + (side.to[0] - side.from[0]) * share,
        side.from[1] + (side.to[1] - side.from[1]) * share,
      ]
    }
    rest -= length
  }
  return ring.at(-1)?.to ?? [0, 0]
}

export const around = (ring: Side[]) => ring.reduce((sum, s) => sum + lengthOf(s), 0)

/**
 * Where junctions and holes stand. A junction of two faces stands at the corners where they meet; several of the same
 * two share those corners. What belongs to one face alone is spread along it, and so is a hole that nobody has named,
 * for nobody has said where it goes.
 */
export function stationsOf(
  ring: Side[],
  joins: Pick<Joins, 'junctions' | 'holes' | 'missingHoles'>,
): Station[] {
  const starts: number[] = []
  ring.reduce((sum, s) => {
    starts.push(sum)
    return sum + lengthOf(s)
  }, 0)
  const met = new Map<string, number[]>()
  ring.forEach((side, i) => {
    const before = ring[(i + ring.length - 1) % ring.length]!
    const key = [before.assembly, side.assembly].sort().join(' ')
    if (before.assembly !== side.assembly) met.set(key, [...(met.get(key) ?? []), starts[i]!])
  })
  const stations: Station[] = []
  const put = (id: string, kind: Station['kind'], along: number) =>
    stations.push({ id, kind, along, at: pointAt(ring, along) })
  const alone: { id: string; kind: Station['kind']; assembly: string }[] = []
  for (const j of joins.junctions) {
    const key = [j.from, j.to ?? ''].sort().join(' ')
    const corners = met.get(key)
    if (!corners) {
      alone.push({ id: j.id, kind: 'junction', assembly: j.from })
      continue
    }
    const same = joins.junctions.filter((o) => [o.from, o.to ?? ''].sort().join(' ') === key)
    const mine =
      same.length > 1
        ? corners.filter((_, c) => c % same.length === same.indexOf(j) % corners.length)
        : corners
    for (const along of mine) put(j.id, 'junction', along)
    if (mine.length === 0) alone.push({ id: j.id, kind: 'junction', assembly: j.from })
  }
  const firstWall = ring[0]?.assembly
  for (const h of joins.holes) alone.push({ id: h.id, kind: 'hole', assembly: h.assembly })
  for (const m of joins.missingHoles) {
    if (firstWall) alone.push({ id: m.id, kind: 'missing', assembly: firstWall })
  }
  const by = new Map<string, typeof alone>()
  for (const one of alone) by.set(one.assembly, [...(by.get(one.assembly) ?? []), one])
  for (const [assembly, all] of by) {
    const sides = ring.flatMap((s, i) => (s.assembly === assembly ? [i] : []))
    all.forEach((one, k) => {
      const side = sides[k % Math.max(1, sides.length)]
      if (side === undefined) return
      const onSide = Math.ceil((all.length - (k % sides.length)) / sides.length)
      const share = (Math.floor(k / sides.length) + 1) / (onSide + 1)
      put(one.id, one.kind, starts[side]! + share * lengthOf(ring[side]!))
    })
  }
  return stations
}

/** Half the width of a break in a line. */
const GAP = 13

/** One control's line around the volume as one path, open wherever the record leaves it open. */
export function lineOf(
  ring: Side[],
  stations: Station[],
  breaks: Break[],
  control: Line,
): { d: string; closed: boolean } {
  const mine = breaks.filter((b) => b.control === control)
  const whole = around(ring)
  const open: [number, number][] = []
  let start = 0
  for (const side of ring) {
    const length = lengthOf(side)
    const bare = mine.some((b) => b.assembly === side.assembly && !b.junction && !b.hole)
    if (bare) open.push([start, start + length])
    start += length
  }
  for (const s of stations) {
    const broken = mine.some(
      (b) =>
        (s.kind === 'junction' && b.junction === s.id) ||
        (s.kind === 'hole' && b.hole === s.id) ||
        (s.kind === 'missing' && isUnnamed(b) && b.id.endsWith(`-${s.id}`)),
    )
    if (broken) open.push([s.along - GAP, s.along + GAP])
  }
  const runs = closedRuns(open, whole)
  if (runs.length === 0) return { d: '', closed: false }
  if (open.length === 0) {
    return { d: `${pathOf(ring.map((s) => s.from))}Z`, closed: true }
  }
  return { d: runs.map(([a, b]) => pathOf(pointsBetween(ring, a, b, whole))).join(''), closed: false }
}

/** A break of a hole that is expected and not listed. */
export const isUnnamed = (b: Break) => !b.junction && !b.hole && !b.assembly

/** What is left of the ring between its open stretches, in order; a run may go past the ring's beginning. */
function closedRuns(open: [number, number][], whole: number): [number, number][] {
  if (open.length === 0) return [[0, whole]]
  const sorted = open
    .map(([a, b]): [number, number] => (a < 0 ? [a + whole, b + whole] : [a, b]))
    .sort((x, y) => x[0] - y[0])
  const merged: [number, number][] = []
  for (const [a, b] of sorted) {
    const last = merged.at(-1)
    if (last && a <= last[1]) last[1] = Math.max(last[1], b)
    else merged.push([a, b])
  }
  return merged.flatMap(([, end], i): [number, number][] => {
    const next = merged[i + 1]?.[0] ?? merged[0]![0] + whole
    return next - end > 1 ? [[end, next]] : []
  })
}

function pointsBetween(ring: Side[], from: number, to: number, whole: number): XY[] {
  const points: XY[] = [pointAt(ring, from % whole)]
  for (let lap = 0; lap < 2; lap++) {
    let start = lap * whole
    for (const side of ring) {
      if (start > from && start < to) points.push(side.from)
      start += lengthOf(side)
    }
  }
  points.push(pointAt(ring, to % whole === 0 ? whole : to % whole))
  return points
}
