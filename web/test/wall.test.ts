import { describe, expect, test } from 'vitest'
import { lineOf, ringOf, stationsOf } from '../src/pages/joins/ring.ts'
import type { Break, JoinsAssembly, JoinsHole, JoinsJunction } from '../src/pages/joins/types.ts'
import { sourcesOf } from '../src/pages/wall/LayersTable.tsx'
import { dayOf } from '../src/wall/day.ts'
import {
  bindingsOf,
  byLayer,
  dayOfYearWords,
  firstSentence,
  isAbout,
  monthMarks,
  nearestToLimit,
  proofKeyOf,
} from '../src/wall/run.ts'
import { drawnOf, freshId, pick, withControl } from '../src/wall/typed.ts'
import {
  cutLayers,
  type DrawnAssembly,
  dewPointReader,
  facesAtDepth,
  LEFT,
  notePlaces,
  RIGHT,
  wallModel,
} from '../src/wall/wallModel.ts'

type DrawnLayer = DrawnAssembly['layers'][number]

const layer = (
  id: string,
  thicknessM: number,
  drawAs: string,
  more: Partial<DrawnLayer> = {},
): DrawnLayer => ({
  id,
  label: id,
  material: id,
  thicknessM,
  drawAs,
  controls: [],
  ...more,
})

const assembly = (more: Partial<DrawnAssembly> = {}): DrawnAssembly => ({
  cladding: null,
  fasteners: [],
  layers: [
    layer('gypsum', 0.013, 'BOARD'),
    layer('studs', 0.14, 'FIBRE', { framingFraction: 0.2 }),
    layer('plywood', 0.012, 'PANEL', { controls: [{ control: 'AIR', second: false }] }),
    layer('membrane', 0.0006, 'MEMBRANE', { controls: [{ control: 'WATER', second: false }] }),
    layer('wool', 0.15, 'RIGID'),
    layer('cavity', 0.038, 'CAVITY', { ventilation: 'WELL' }),
  ],
  ...more,
})

describe('the drawing of an assembly', () => {
  test('draws layers at their thickness, end to end', () => {
    const model = wallModel(assembly())!
    const scale = (RIGHT - LEFT) / model.totalM
    for (const l of model.layers) expect(l.x1 - l.x0).toBeCloseTo(l.thicknessM * scale, 9)
    expect(model.layers[0]!.x0).toBe(LEFT)
    expect(model.layers.at(-1)!.x1).toBeCloseTo(RIGHT, 9)
  })

  test('runs the red line through the layer that stops air, and through none where the record names none', () => {
    const model = wallModel(assembly())!
    const plywood = model.layers.find((l) => l.id === 'plywood')!
    expect(model.red).toBeCloseTo((plywood.x0 + plywood.x1) / 2, 9)
    const second = { control: 'AIR' as const, second: true }
    const none = wallModel(assembly({ layers: [layer('membrane', 0.01, 'PANEL', { controls: [second] })] }))!
    expect(none.red).toBeUndefined()
  })

  test('shows wood where layers are framed, and battens in a ventilated cavity behind a cladding only', () => {
    const wooden = (a: DrawnAssembly) => wallModel(a)!.layers.flatMap((l) => (l.wood ? [l.id] : []))
    expect(wooden(assembly())).toEqual(['studs'])
    expect(wooden(assembly({ cladding: { species: 'spruce' } }))).toEqual(['studs', 'cavity'])
  })

  test('draws a screw from the furring outside of its insulation, as deep as it is long', () => {
    const screw = { id: 's', label: 'screw', lengthM: 0.24, throughLayerId: 'wool' }
    const model = wallModel(assembly({ cladding: {}, fasteners: [screw] }))!
    const cavity = model.layers.at(-1)!
    expect(model.screws[0]!.head).toBeCloseTo(cavity.x1, 9)
    expect(model.screws[0]!.tip).toBeCloseTo(model.at(model.totalM - 0.24), 9)
  })

  test('has nothing to draw without a thickness', () => {
    expect(wallModel(assembly({ layers: [layer('a', 0, 'BOARD')] }))).toBeUndefined()
    expect(wallModel(assembly({ layers: [layer('a', Number.NaN, 'BOARD')] }))).toBeUndefined()
  })

  test('stands notes so that no leader runs through a word', () => {
    const layers = wallModel(assembly())!.layers
    const notes = notePlaces(layers)
    for (const note of notes) {
      const end = note.x + 6 + note.text.length * 8
      for (const other of notes) {
        if (other !== note && other.x > note.x && other.x < end) expect(other.row).toBeLessThan(note.row)
      }
    }
  })
})

describe('the profile across an assembly', () => {
  test('cuts thick layers, keeps their whole resistance and leaves air and membranes alone', () => {
    const layers = [
      { id: 'board', thicknessM: 0.013 },
      { id: 'air', thicknessM: 0.038, thermalResistanceM2KPerW: 0.16, ventilation: 'NONE' },
      { id: 'wool', thicknessM: 0.15, sdDryM: 0.3, framingFraction: 0.1, framingMaterialId: 'spruce' },
    ]
    const cut = cutLayers(layers)
    const wool = cut.filter((l) => l.id.startsWith('woolx'))
    expect(wool.length).toBeGreaterThan(4)
    expect(wool.reduce((sum, l) => sum + l.thicknessM, 0)).toBeCloseTo(0.15, 12)
    expect(wool.reduce((sum, l) => sum + l.sdDryM!, 0)).toBeCloseTo(0.3, 12)
    expect(wool[0]).not.toHaveProperty('framingFraction')
    expect(cut.filter((l) => l.id === 'air' || l.id === 'board')).toEqual(layers.slice(0, 2))
    expect(new Set(cut.map((l) => l.id)).size).toBe(cut.length)
  })

  test('never asks for more rows than a calculation takes', () => {
    const many = Array.from({ length: 14 }, (_, i) => ({ id: `l${i}`, thicknessM: 0.05 }))
    expect(cutLayers(many).length).toBeLessThanOrEqual(30)
  })

  test('puts a face at each depth', () => {
    const face = (temperatureC: number) => ({ temperatureC, saturationPa: 1, vapourPa: 1 })
    const points = facesAtDepth([{ thicknessM: 0.1 }, { thicknessM: 0.2 }], [face(20), face(10), face(0)])
    expect(points.map((p) => p.depthM)).toEqual([0, 0.1, expect.closeTo(0.3, 12)])
  })

  test('reads a dew point off the pairs that were computed', () => {
    // saturation over water at 0, 10 and 20 °C, Pa (psychrometric tables)
    const at = (temperatureC: number, saturationPa: number) => ({
      depthM: 0,
      temperatureC,
      saturationPa,
      vapourPa: 0,
    })
    const dew = dewPointReader([at(20, 2338), at(10, 1228), at(0, 611)])
    expect(dew(1228)).toBeCloseTo(10, 9)
    // the table has 872 Pa at 5 °C
    expect(dew(872)).toBeCloseTo(5, 0)
    expect(dew(0)).toBeUndefined()
    expect(dewPointReader([])(800)).toBeUndefined()
  })

  test('keeps the outer face of each layer that counts, and none of those in moving outdoor air', () => {
    const faces = [20, 19, -5, -24].map((temperatureC) => ({
      place: '',
      temperatureC,
      saturationPa: 1,
      vapourPa: 1,
    }))
    const counted = [
      { id: 'a', thicknessM: 0.01 },
      { id: 'b', thicknessM: 0.015 },
      { id: 'c', thicknessM: 0.012 },
    ]
    const output = { faces } as never
    const answer = { output, printed: output } as never
    const placed = { placement: {}, layers: [...counted, { id: 'cavity', thicknessM: 0.04 }], counted }
    const day = dayOf(placed as never, {}, answer, answer)
    expect([...day.outerFaceC]).toEqual([
      ['a', 19],
      ['b', -5],
      ['c', -24],
    ])
    expect(day.profile.at(-1)!.depthM).toBeCloseTo(0.037, 12)
  })
})

test('values of a layer that came from one place are said once', () => {
  const value = (name: string, source: string, status: string) =>
    ({ name, label: name, value: 1, unit: {}, source, status }) as never
  expect(
    sourcesOf([
      value('conductivityWPerMK', 'house record', 'typed in the record'),
      value('sdDryM', 'a table', 'seen'),
      value('sdWetM', 'a table', 'seen'),
      value('densityKgPerM3', 'a table', 'seen'),
    ]),
  ).toEqual(['λ: typed in the record', 's_d: a table (seen)'])
})

describe('an assembly that is being typed', () => {
  test('is drawn from as much as is there', () => {
    const drawn = drawnOf({ layers: [{ id: 'a', thicknessM: 0.1, controls: [{ control: 'AIR' }, {}] }, {}] })
    expect(drawn.layers.map((l) => l.thicknessM)).toEqual([0.1, 0])
    expect(wallModel(drawn)!.red).toBeGreaterThan(LEFT)
    expect(wallModel(drawnOf({}))).toBeUndefined()
  })

  test('gives a calculation the fields that it takes and no others', () => {
    const field = (name: string, kind: string, fields: unknown[] = []) => ({ name, kind, fields }) as never
    const taken = pick([field('layers', 'ROWS', [field('id', 'TEXT')]), field('kind', 'CHOICE')], {
      kind: 'WALL',
      areaM2: 12,
      layers: [{ id: 'a', drawAs: 'BOARD' }],
    })
    expect(taken).toEqual({ kind: 'WALL', layers: [{ id: 'a' }] })
  })

  test('a layer is counted on for a control, only helps, or does neither', () => {
    const air = withControl([], 'AIR', 'first')
    expect(air).toEqual([{ control: 'AIR' }])
    expect(withControl(air, 'AIR', 'second')).toEqual([{ control: 'AIR', second: true }])
    expect(withControl(air, 'AIR', 'none')).toEqual([])
  })

  test('a new layer has a short name of its own', () => {
    expect(freshId([{ id: 'layer2' }])).toBe('layer3')
  })
})

describe('the line around the house', () => {
  const face = (id: string, kind: JoinsAssembly['kind']) => ({ id, kind, bounds: true }) as JoinsAssembly
  const faces = [face('wall', 'WALL'), face('roof', 'ROOF'), face('slab', 'SLAB')]
  const junction = (id: string, from: string, to: string | null) => ({ id, from, to }) as JoinsJunction
  const broken = (more: Partial<Break>) =>
    ({ id: 'b', control: 'AIR', assembly: null, junction: null, hole: null, ...more }) as Break
  const ring = ringOf(faces)
  const nothing = { junctions: [], holes: [], missingHoles: [] }
  const pieces = (d: string) => d.split('M').length - 1

  test('goes once around every face and comes back to where it began', () => {
    expect(ring.map((s) => s.assembly)).toEqual(['wall', 'roof', 'wall', 'slab'])
    ring.forEach((side, i) => {
      expect(side.to).toEqual(ring[(i + 1) % ring.length]!.from)
    })
    const cellar = ringOf([...faces, face('below', 'BASEMENT_WALL')])
    expect(cellar.map((s) => s.assembly)).toEqual(['below', 'wall', 'roof', 'wall', 'below', 'slab'])
    cellar.forEach((side, i) => {
      expect(side.to).toEqual(cellar[(i + 1) % cellar.length]!.from)
    })
  })

  test('is one closed path where nothing breaks it', () => {
    expect(lineOf(ring, [], [], 'AIR')).toEqual({ d: expect.stringMatching(/^M.*Z$/), closed: true })
  })

  test('opens where a junction is not joined: at both corners that it stands for', () => {
    const joins = { ...nothing, junctions: [junction('eaves', 'wall', 'roof')] }
    const stations = stationsOf(ring, joins)
    expect(stations).toHaveLength(2)
    const line = lineOf(ring, stations, [broken({ junction: 'eaves' })], 'AIR')
    expect(line.closed).toBe(false)
    expect(pieces(line.d)).toBe(2)
    // another control is not broken by it
    expect(lineOf(ring, stations, [broken({ junction: 'eaves' })], 'WATER').closed).toBe(true)
  })

  test('opens at holes, named or not, and along a face without its layer', () => {
    const joins = {
      ...nothing,
      holes: [{ id: 'hood', assembly: 'wall' } as JoinsHole],
      missingHoles: [{ id: 'tap', label: 'tap', expectedCount: 2, namedCount: 1 }],
    }
    const stations = stationsOf(ring, joins)
    const open = (more: Partial<Break>) => pieces(lineOf(ring, stations, [broken(more)], 'AIR').d)
    expect(open({ hole: 'hood', assembly: 'wall' })).toBe(1)
    expect(open({ id: 'air-unnamed-tap' })).toBe(1)
    expect(
      lineOf(ring, stations, [broken({ hole: 'hood' }), broken({ id: 'air-unnamed-tap' })], 'AIR'),
    ).toEqual(expect.objectContaining({ closed: false }))
    // both walls are open: the line is left over the roof and under the slab
    expect(open({ assembly: 'wall' })).toBe(2)
  })

  test('has no line at all where no face has the layer', () => {
    const all = faces.map((f) => broken({ assembly: f.id }))
    expect(lineOf(ring, [], all, 'AIR')).toEqual({ d: '', closed: false })
  })
})

describe('a run over years', () => {
  const bound = [
    { input: 'layers', path: 'enclosure.assemblies[wall].layers' },
    { input: 'azimuthDeg', path: 'enclosure.assemblies[wall].azimuthDeg' },
  ]

  test('is bound to the record where the record says it, and typed elsewhere', () => {
    const filled = { bindings: bound, inputs: { azimuthDeg: 0, layers: [{ id: 'a' }] } }
    expect(bindingsOf(filled, { azimuthDeg: 0, years: 3 })).toEqual([
      ...bound,
      { input: 'years', value: 3, origin: 'typed' },
    ])
    expect(bindingsOf(filled, { azimuthDeg: 180, indoorCurve: [{ outdoorC: -10 }] })).toEqual([
      bound[0],
      { input: 'azimuthDeg', value: 180, origin: 'typed' },
      { input: 'indoorCurve[0].outdoorC', value: -10, origin: 'typed' },
    ])
  })

  test('belongs to the assembly whose layers it is bound to', () => {
    const run = { calculation: 'wall-moisture', bindings: bound }
    expect(isAbout(run, 'wall')).toBe(true)
    expect(isAbout(run, 'roof')).toBe(false)
    expect(isAbout({ ...run, calculation: 'room-air' }, 'wall')).toBe(false)
  })

  test('says its first sentence as the finding, also where a number has a point', () => {
    expect(firstSentence('It dries. The peak is 13.1 % in March. More.')).toEqual([
      'It dries.',
      'The peak is 13.1 % in March. More.',
    ])
    expect(firstSentence('Peaks at 13.1 % once.')).toEqual(['Peaks at 13.1 % once.', ''])
  })

  test('watches the layer with least room left, and the wettest where none has a limit', () => {
    const layer = (id: string, peakFraction: number, roomLeftFraction?: number) => ({
      id,
      label: id,
      peakFraction,
      roomLeftFraction,
    })
    expect(nearestToLimit([layer('a', 0.3), layer('b', 0.1, 0.08), layer('c', 0.15, 0.05)])?.id).toBe('c')
    expect(nearestToLimit([layer('a', 0.1), layer('b', 0.3)])?.id).toBe('b')
    expect(nearestToLimit([])).toBeUndefined()
  })

  test('draws water level to the faces of its layer and broken between two', () => {
    const layers = [
      { id: 'a', label: 'a', fromM: 0, thicknessM: 0.02 },
      { id: 'membrane', label: 'm', fromM: 0.02, thicknessM: 0 },
      { id: 'b', label: 'b', fromM: 0.02, thicknessM: 0.1 },
    ]
    expect(byLayer([0.01, 0.05, 0.1], [40, 5, 6], layers)).toEqual([
      { depthM: 0, value: 40 },
      { depthM: 0.01, value: 40 },
      { depthM: 0.02, value: 40 },
      { depthM: 0.02, value: null },
      { depthM: 0.02, value: 5 },
      { depthM: 0.05, value: 5 },
      { depthM: 0.1, value: 6 },
      { depthM: expect.closeTo(0.12, 12), value: 6 },
      { depthM: expect.closeTo(0.12, 12), value: null },
    ])
  })

  test('is kept under a key that the portal takes', () => {
    for (const id of ['roof', 'north-wall', 'w'.repeat(60)])
      expect(proofKeyOf(id)).toMatch(/^[a-z][A-Za-z0-9]{0,39}$/)
    expect(proofKeyOf('roof')).toBe('yearsRoof')
  })

  test('marks months by their first days', () => {
    const days = ['2001-10-31', '2001-11-01', '2001-11-02', '2001-12-01'].map((date) => ({ date }))
    expect(monthMarks(days)).toEqual([
      { at: 1, words: 'Nov' },
      { at: 3, words: 'Dec' },
    ])
    expect(dayOfYearWords('2001-02-14')).toBe('14 Feb')
  })
})
