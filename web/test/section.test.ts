import { describe, expect, test } from 'vitest'
import { airDepth, geometryOf, MARK_MM, placeMarks, thickness } from '../src/section/geometry.ts'
import type { Assembly, DrawAs, SectionModel } from '../src/section/model.ts'
import { sectionOf } from '../src/section/sectionOf.ts'

const assembly = (label: string, ...layers: [string, number, DrawAs, boolean?][]): Assembly => ({
  label,
  note: '',
  layers: layers.map(([id, thicknessMm, drawAs, air = false]) => ({
    id,
    label: id,
    thicknessMm,
    drawAs,
    air,
  })),
})

const model = (change: Partial<SectionModel> = {}): SectionModel => ({
  name: 'T',
  looking: 'west',
  left: 'North',
  right: 'South',
  form: {
    widthMm: 9000,
    lowHeightMm: 2400,
    highHeightMm: 3800,
    roof: 'SHED',
    storeys: 1,
    basementMm: 0,
    groundMm: 300,
  },
  wall: assembly(
    'Wall',
    ['gypsum', 13, 'gypsum'],
    ['studs', 140, 'loose'],
    ['plywood', 12, 'sheet', true],
    ['wool', 150, 'wool'],
  ),
  roof: assembly(
    'Roof',
    ['gypsum', 13, 'gypsum'],
    ['plywood', 12, 'sheet', true],
    ['rafters', 406, 'loose'],
    ['gap', 50, 'gap'],
    ['metal', 38, 'plain'],
  ),
  slab: assembly('Slab', ['concrete', 100, 'concrete'], ['membrane', 1, 'line', true], ['EPS', 200, 'foam']),
  windows: [],
  equipment: [{ id: 'hood', kind: 'RANGE_HOOD', label: 'range hood', diameterMm: 250 }],
  sensors: [],
  marks: {},
  ...change,
})

const shape = (m: SectionModel, id: string) => geometryOf(m).shapes.find((s) => s.id === id)!

describe('the section', () => {
  test('draws every layer at its thickness, one after the other', () => {
    const xs = ['gypsum', 'studs', 'plywood', 'wool'].map((id) =>
      shape(model(), `wall-left-${id}`).points.map(([x]) => x),
    )
    expect(xs[0]).toEqual([0 - 0, -0, -13, -13].map((v) => expect.closeTo(v, 9)))
    expect(xs[3]!.at(-1)).toBeCloseTo(-(13 + 140 + 12 + 150), 9)
    expect(thickness(model().wall)).toBe(315)
  })

  test('a changed layer moves everything outside of it, and nothing inside', () => {
    const thick = structuredClone(model())
    thick.wall.layers[1]!.thicknessMm = 241
    const before = geometryOf(model())
    const after = geometryOf(thick)
    expect(after.wallMm - before.wallMm).toBe(101)
    expect(shape(thick, 'wall-left-gypsum').points[0]).toEqual(shape(model(), 'wall-left-gypsum').points[0])
    expect(shape(thick, 'wall-left-plywood').points[0]![0]).toBeCloseTo(-254, 9)
    expect(after.redLine[0]!.points[0]![0]).toBeCloseTo(before.redLine[0]!.points[0]![0] - 101, 9)
  })

  test('a roof layer is as thick square to the slope as the record says', () => {
    const [inner, , outer] = shape(model(), 'roof-rafters').points
    const slope = (3800 - 2400) / 9000
    const upright = Math.abs(outer![1] - (inner![1] - slope * (outer![0] - inner![0])))
    expect(upright / Math.hypot(1, slope)).toBeCloseTo(406, 6)
  })

  test('the red line is one closed path through wall, roof and slab', () => {
    const { redLine } = geometryOf(model())
    expect(redLine).toHaveLength(1)
    expect(redLine[0]!.closed).toBe(true)
    const w = airDepth(model().wall)!
    expect(redLine[0]!.points[0]).toEqual([-w, 100.5])
    expect(redLine[0]!.points).toHaveLength(4)
  })

  test('a part without an air layer breaks the line', () => {
    const open = structuredClone(model())
    open.slab.layers[1]!.air = false
    const { redLine } = geometryOf(open)
    expect(redLine.some((run) => run.closed)).toBe(false)
    expect(redLine).toHaveLength(3)
  })

  test('under a gable the ceiling and the red line meet at the ridge', () => {
    const gable = model({ form: { ...model().form, roof: 'GABLE', lowHeightMm: 2500, highHeightMm: 4750 } })
    const g = geometryOf(gable)
    expect(g.ceilingAt(0)).toBe(-2500)
    expect(g.ceilingAt(4500)).toBe(-4750)
    expect(g.ceilingAt(9000)).toBe(-2500)
    expect(g.redLine[0]!.points).toHaveLength(5)
  })

  test('a basement takes the slab down with it', () => {
    const deep = model({ form: { ...model().form, basementMm: 2600 } })
    expect(geometryOf(deep).floorMm).toBe(2600)
    expect(shape(deep, 'slab-concrete').points[0]![1]).toBe(2600)
    expect(geometryOf(deep).shapes.some((s) => s.id === 'basement-wall-left-gypsum')).toBe(true)
  })

  test('the hood goes through the air layer of the roof with a ring of its duct', () => {
    const g = geometryOf(model())
    expect(g.rings).toEqual([{ id: 'hood', at: [5940, expect.closeTo(g.roofAirAt(5940), 9)], radiusMm: 155 }])
  })
})

describe('marks', () => {
  test('take the nearest free place and never cover words or each other', () => {
    const words: [number, number, number, number][] = [[5000, -2600, 6000, -2000]]
    const [first, second] = placeMarks(
      [
        [5000, -2000],
        [5000, -2000],
      ],
      words,
      [-3000, -6000, 13000, 2000],
    )
    for (const [x, y] of [first!, second!]) {
      const clear =
        x + MARK_MM / 2 < 5000 || y - MARK_MM / 2 > -2000 || x - MARK_MM / 2 > 6000 || y + MARK_MM / 2 < -2600
      expect(clear).toBe(true)
    }
    expect(Math.hypot(first![0] - second![0], first![1] - second![1])).toBeGreaterThan(MARK_MM)
  })
})

describe('from the record', () => {
  const layer = (id: string, thicknessM: number, drawAs: string, control?: string) => ({
    id,
    label: id,
    material: id,
    thicknessM,
    drawAs,
    controls: control ? [{ control }] : [],
  })
  const enclosure = {
    form: {
      lengthM: 16,
      widthM: 9,
      lowWallHeightM: 2.4,
      highWallHeightM: 3.8,
      storeyCount: 1,
      basement: false,
      roofKind: 'SHED',
    },
    assemblies: [
      { kind: 'WALL', layers: [layer('gypsum', 0.013, 'BOARD'), layer('plywood', 0.012, 'PANEL', 'AIR')] },
      { kind: 'ROOF', layers: [layer('plywood', 0.012, 'PANEL', 'AIR'), layer('rafters', 0.4, 'FIBRE')] },
      {
        kind: 'SLAB',
        layers: [layer('membrane', 0.0003, 'MEMBRANE', 'AIR'), layer('expanded polystyrene', 0.2, 'RIGID')],
      },
    ],
  }

  test('metres become millimetres, controls the red line, materials their hatches', () => {
    const section = sectionOf('H1', { enclosure }, 'SI')!
    expect(section.form).toMatchObject({
      widthMm: 9000,
      lowHeightMm: 2400,
      highHeightMm: 3800,
      roof: 'SHED',
      basementMm: 0,
    })
    expect(section.wall.layers[1]).toMatchObject({ thicknessMm: 12, air: true, drawAs: 'sheet' })
    expect(section.slab.layers[1]!.drawAs).toBe('foam')
    expect(geometryOf(section).redLine[0]!.closed).toBe(true)
  })

  test('all windows of the record stand as one row in the right wall, taller with more glass', () => {
    const glazed = (areaM2: number, form: object = {}) =>
      sectionOf(
        'H1',
        { enclosure: { ...enclosure, form: { ...enclosure.form, ...form }, windows: { areaM2 } } },
        'SI',
      )!.windows
    expect(glazed(26)).toEqual([{ side: 'right', sillMm: 525, headMm: 2150, label: 'windows 26 m²' }])
    const tall = (areaM2: number) => glazed(areaM2)[0]!.headMm - glazed(areaM2)[0]!.sillMm
    expect(tall(13) * 2).toBeCloseTo(tall(26), 9)
    // never through the floor or the ceiling
    expect(glazed(900)[0]).toMatchObject({ sillMm: 150, headMm: 3550 })
    expect(
      glazed(31, { roofKind: 'GABLE', lowWallHeightM: 5.6, lengthM: 10.5, storeyCount: 2 }),
    ).toHaveLength(2)
    expect(glazed(0)).toEqual([])
  })

  test('machines come from their parts with their numbers in the units of the day', () => {
    const air = {
      exhaust: [
        { id: 'rangeHood', kind: 'RANGE_HOOD', ratedFlowM3PerS: 0.28316846592 },
        { id: 'bath', kind: 'BATH_FAN' },
      ],
    }
    const inCfm = sectionOf('H1', { enclosure, air }, 'IP')!
    expect(inCfm.equipment).toEqual([
      { id: 'rangeHood', kind: 'RANGE_HOOD', label: 'range hood', note: '600 cfm' },
    ])
  })

  test('a record without form or without a roof is not drawn', () => {
    expect(sectionOf('H1', { enclosure: { ...enclosure, form: undefined } }, 'SI')).toBeUndefined()
    expect(
      sectionOf('H1', { enclosure: { ...enclosure, assemblies: enclosure.assemblies.slice(0, 1) } }, 'SI'),
    ).toBeUndefined()
  })
})
