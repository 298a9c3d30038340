import type { ComponentChildren } from 'preact'
import { useId } from 'preact/hooks'
import { HatchDefs } from '../parts/Hatches.tsx'
import { Wide } from '../parts/lists.tsx'
import { system } from '../units/system.ts'
import {
  airDepth,
  type Box,
  diameterOf,
  geometryOf,
  MARK_MM,
  overlap,
  type Placed,
  placeMarks,
  type SectionGeometry,
  type Shape,
  sleeves,
  thickness,
  type XY,
  xy,
} from './geometry.ts'
import type { Assembly, DrawAs, SectionModel } from './model.ts'

const TEXT = 175
const LINE = 200

interface SectionDrawingProps {
  model: SectionModel
  /** Whose marks are drawn; none where left out. */
  marksFor?: string
  /** Names and thicknesses of the layers; off where the sheet is about something else. */
  notes?: boolean
}

/** The house cut open, to scale, drawn from its record. */
export function SectionDrawing({ model, marksFor, notes = true }: SectionDrawingProps) {
  const id = useId().replace(/[^\w-]/g, '')
  const g = geometryOf(model)
  const left = g.bounds.left - 1500
  const right = g.bounds.right + (notes ? Math.max(1500, longestNote(model.wall) + 1000) : 900)
  const roofNotes = notes ? roofNotesTop(model, g) : g.bounds.top
  const top = Math.min(g.bounds.top - 500, roofNotes - 260)
  const bottom = g.bounds.bottom + (notes ? 900 : 650)
  const words = labels(model, g)
  const taken: Box[] = words.map(boxOf)
  const marks = marksFor ? (model.marks[marksFor] ?? []) : []
  const anchors = marks.map((m) => anchorOf(m.on, model, g))
  const places = placeMarks(anchors, taken, [left, top, right, bottom])
  return (
    <figure class="drawing section">
      <Wide label="Section drawing">
        <svg
          viewBox={`${left} ${top} ${right - left} ${bottom - top}`}
          role="img"
          aria-labelledby={`${id}-t ${id}-d`}
          style={{ '--least': '50rem' }}
        >
          <title id={`${id}-t`}>
            Section through {model.name}
            {model.looking && `, looking ${model.looking}`}, to scale
          </title>
          <desc id={`${id}-d`}>{inWords(model, g)}</desc>
          <HatchDefs prefix={id} scale={22} stroke={0.62} />
          <Ground model={model} g={g} id={id} />
          {g.shapes.map((shape) => (
            <LayerShape key={shape.id} shape={shape} id={id} />
          ))}
          <Storeys model={model} />
          <Windows model={model} g={g} />
          {g.placed.map((placed) => (
            <Machine key={placed.equipment.id} placed={placed} g={g} />
          ))}
          {g.redLine.map((run) => (
            <path
              key={String(run.points[0])}
              class="red red-line"
              stroke-width="42"
              d={path(run.points) + (run.closed ? 'Z' : '')}
            />
          ))}
          {g.rings.map((ring) => (
            <circle
              key={`${ring.id} ${ring.at[1]}`}
              class="red pap"
              stroke-width="26"
              cx={ring.at[0]}
              cy={ring.at[1]}
              r={ring.radiusMm}
            />
          ))}
          {model.sensors.map((sensor) => (
            <g key={sensor.id}>
              <circle class="o pap" stroke-width="16" cx={sensor.at.xMm} cy={sensor.at.yMm} r="62" />
              <circle class="inkf" cx={sensor.at.xMm} cy={sensor.at.yMm} r="20" />
            </g>
          ))}
          {words.map((w) => (
            <text
              key={w.text + w.x}
              class={`${w.quiet ? 't2' : ''} halo`}
              stroke-width="60"
              x={w.x}
              y={w.y}
              font-size={TEXT}
              text-anchor={w.anchor}
            >
              {w.text}
            </text>
          ))}
          {notes && <Notes model={model} g={g} top={roofNotes} />}
          <Levels model={model} g={g} left={left} right={right} top={top} bottom={bottom} />
          <g>
            {marks.map((mark, i) => {
              const [ax, ay] = anchors[i]!
              const [x, y] = places[i]!
              return (
                <g key={mark.number}>
                  <path class="o" stroke-width="14" d={`M${ax} ${ay}L${x} ${y}`} />
                  <circle class="inkf" cx={ax} cy={ay} r="34" />
                  <rect
                    class="o pap"
                    stroke-width="24"
                    x={x - MARK_MM / 2}
                    y={y - MARK_MM / 2}
                    width={MARK_MM}
                    height={MARK_MM}
                  />
                  <text class="tb" font-size="200" x={x} y={y + 72} text-anchor="middle">
                    {mark.number}
                  </text>
                </g>
              )
            })}
          </g>
        </svg>
      </Wide>
      <figcaption>
        Drawn from the record, to scale; machines stand in their usual places, the ground{' '}
        {depthWords(model.form.groundMm)} below the floor.
        {model.windows.length > 0 &&
          ' One window a storey stands for all: as tall as they would be in one row along that wall.'}{' '}
        The red line is the air layer; a ring is a hole through it with its own seal. A ringed dot is a
        sensor.
      </figcaption>
    </figure>
  )
}

const path = (points: XY[]) =>
  points
    .map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${Math.round(x * 10) / 10} ${Math.round(y * 10) / 10}`)
    .join('')

const FILL: Record<DrawAs, string | undefined> = {
  gypsum: 'gyp',
  loose: 'cell',
  wool: 'wool',
  foam: 'eps',
  sheet: undefined,
  wood: undefined,
  concrete: 'conc',
  gravel: 'grav',
  gap: undefined,
  line: undefined,
  plain: undefined,
}

function LayerShape({ shape, id }: { shape: Shape; id: string }) {
  const d = `${path(shape.points)}Z`
  if (shape.drawAs === 'line')
    return <path class="o" stroke-width="12" d={path(shape.points.slice(0, shape.points.length / 2))} />
  const hatch = FILL[shape.drawAs]
  const solid = shape.drawAs === 'sheet' || shape.drawAs === 'wood' || shape.drawAs === 'concrete'
  return (
    <g data-layer={shape.id}>
      <path class={solid ? 'o cut' : 'o pap'} stroke-width="10" d={d} />
      {hatch && <path d={d} fill={`url(#${id}-${hatch})`} />}
    </g>
  )
}

function Ground({ model, g, id }: { model: SectionModel; g: SectionGeometry; id: string }) {
  const y = model.form.groundMm
  const width = model.form.widthMm
  const edge = airDepth(model.wall) ?? 0
  const deep = Math.max(y + 350, g.floorMm + g.slabMm)
  const d = `M${g.bounds.left - 600} ${y}H${-edge}V${deep}H${g.bounds.left - 600}zM${width + edge} ${y}H${g.bounds.right + 600}V${deep}H${width + edge}z`
  return (
    <>
      <path d={d} fill={`url(#${id}-earth)`} />
      <path
        class="o"
        stroke-width="26"
        d={`M${g.bounds.left - 600} ${y}H${-edge}M${width + edge} ${y}H${g.bounds.right + 600}`}
      />
    </>
  )
}

function Storeys({ model }: { model: SectionModel }) {
  const { storeys, lowHeightMm, widthMm, basementMm } = model.form
  const floors = Array.from(
    { length: Math.max(0, storeys - 1) },
    (_, i) => (-lowHeightMm * (i + 1)) / storeys,
  )
  if (basementMm > 0) floors.push(0)
  return (
    <>
      {floors.map((y) => (
        <g key={y}>
          <path class="o cut" stroke-width="12" d={`M0 ${y}H${widthMm}V${y + 40}H0z`} />
          <path class="o" stroke-width="10" d={`M0 ${y + 300}H${widthMm}`} />
        </g>
      ))}
    </>
  )
}

function Windows({ model, g }: { model: SectionModel; g: SectionGeometry }) {
  // the frame stands in the plane of the air layer, so that the red line runs through it unbroken
  const deep = Math.min(Math.max(airDepth(model.wall) ?? g.wallMm * 0.45, 70), g.wallMm - 70)
  return (
    <>
      {model.windows.map((w) => {
        const inner = w.side === 'left' ? -g.wallMm : model.form.widthMm
        const x = w.side === 'left' ? -deep : inner + deep
        return (
          <g key={`${w.side} ${w.sillMm}`}>
            <rect class="pap" x={inner} y={-w.headMm} width={g.wallMm} height={w.headMm - w.sillMm} />
            <rect class="cut" stroke-width="12" x={x - 60} y={-w.headMm} width="120" height="90" />
            <rect class="cut" stroke-width="12" x={x - 60} y={-w.sillMm - 90} width="120" height="90" />
            <path
              class="o"
              stroke-width="9"
              d={`M${x - 30} ${-w.headMm + 90}V${-w.sillMm - 90}M${x} ${-w.headMm + 90}V${-w.sillMm - 90}M${x + 30} ${-w.headMm + 90}V${-w.sillMm - 90}`}
            />
            <path
              class="o"
              stroke-width="12"
              d={`M${inner} ${-w.sillMm}H${inner + g.wallMm}M${inner} ${-w.headMm}H${inner + g.wallMm}`}
            />
          </g>
        )
      })}
    </>
  )
}

/** A machine in outline, with what of it passes through the envelope. */
function Machine({ placed, g }: { placed: Placed; g: SectionGeometry }): ComponentChildren {
  const { equipment, foot } = placed
  const [x, y] = foot
  const r = diameterOf(equipment) / 2
  const outside = -g.wallMm - 40
  switch (equipment.kind) {
    case 'RANGE_HOOD': {
      const roof = g.roofTopAt(x) - 330
      return (
        <g>
          <path class="o pap" stroke-width="18" d={`M${x - r} ${y - 350}V${roof}H${x + r}V${y - 350}z`} />
          <path
            class="o pap"
            stroke-width="18"
            d={`M${x - 610} ${y}H${x + 610}V${y - 90}L${x + 180} ${y - 350}H${x - 180}L${x - 610} ${y - 90}z`}
          />
          <path
            class="o pap"
            stroke-width="16"
            d={`M${x - r - 95} ${roof}h${2 * r + 190}l-60 -130h-${2 * r + 70}z`}
          />
          <g class="o2" stroke-width="9">
            <path d={`M${x - 1000} -900H${x + 1000}V0M${x - 1000} -900V0M${x - 1000} -860H${x + 1000}`} />
          </g>
        </g>
      )
    }
    case 'MAKE_UP_UNIT': {
      const mid = y - 185
      return (
        <g>
          <path
            class="o pap"
            stroke-width="16"
            d={`M${outside} ${mid - r}H${x - 500}V${mid + r}H${outside}z`}
          />
          <path
            class="o pap"
            stroke-width="16"
            d={`M${x + 500} ${mid - r}H${x + 3000}V${mid + r}H${x + 500}z`}
          />
          <path class="o pap" stroke-width="18" d={`M${x - 500} ${y}V${y - 370}H${x + 500}V${y}z`} />
          <path
            class="o2"
            stroke-width="11"
            d={`M${x - 340} ${y - 370}v370M${x - 340} ${y - 330}l80 60-80 60 80 60-80 60 80 60M${x + 100} ${y - 310}v260M${x + 180} ${y - 310}v260M${x + 260} ${y - 310}v260`}
          />
          <circle class="o2" stroke-width="12" cx={x - 90} cy={mid} r="110" />
          <Hood at={outside} y={mid} r={r} />
          <path class="o" stroke-width="14" d={`M${x + 3000} ${mid - r - 20}v${2 * r + 40}`} />
        </g>
      )
    }
    case 'VENTILATOR':
      return (
        <g>
          {sleeves(equipment, foot).map((s) => (
            <g key={s}>
              <path
                class="o pap"
                stroke-width="14"
                d={`M${outside} ${s - r}H${x - 350}V${s + r}H${outside}z`}
              />
              <Hood at={outside} y={s} r={r} />
            </g>
          ))}
          <path class="o pap" stroke-width="18" d={`M${x - 350} ${y}v-620h700v620z`} />
          <path
            class="o2"
            stroke-width="11"
            d={`M${x} ${y - 560}l230 250-230 250-230-250zM${x - 115} ${y - 435}l230 250M${x + 115} ${y - 435}l-230 250`}
          />
        </g>
      )
    case 'AIR_HANDLER':
      return (
        <g>
          <path class="o pap" stroke-width="18" d={`M${x - 330} ${y - 170}v-1480h660v1480z`} />
          <path
            class="o"
            stroke-width="12"
            d={`M${x - 290} ${y - 170}V${y}M${x + 290} ${y - 170}V${y}M${x - 330} ${y - 700}h660M${x - 330} ${y - 573}h660M${x - 330} ${y - 1230}h660`}
          />
          <path class="o" stroke-width="13" d={`M${x - 330} ${y - 578}${'l33 -117 33 117'.repeat(10)}`} />
          <circle class="o2" stroke-width="12" cx={x} cy={y - 965} r="190" />
          <path class="o2" stroke-width="12" d={`M${x} ${y - 1155}v380M${x - 190} ${y - 965}h380`} />
        </g>
      )
    case 'WATER_HEATER':
      return (
        <g>
          <path class="o pap" stroke-width="16" d={`M${x - 390} ${y - 110}v90h780v-90`} />
          <path class="o pap" stroke-width="18" d={`M${x - 300} ${y - 60}v-1500q300 -140 600 0v1500z`} />
          <path class="o2" stroke-width="11" d={`M${x - 300} ${y - 1180}h600`} />
          <path
            class="o pap"
            stroke-width="14"
            d={`M${x - 390} ${y - 66}L${outside - 200} ${y - 34}v28L${x - 390} ${y - 38}z`}
          />
        </g>
      )
    case 'PASSIVE_OPENING':
      return (
        <g>
          <path class="o pap" stroke-width="16" d={`M${outside} ${y - r}H120V${y + r}H${outside}z`} />
          <path class="o" stroke-width="12" d={`M40 ${y - r}l-60 ${2 * r}`} />
          <Hood at={outside} y={y} r={r} />
        </g>
      )
    case 'OUTDOOR_UNIT':
      return (
        <g>
          <path class="o pap" stroke-width="16" d={`M${x - 400} ${y - 300}v-850h800v850z`} />
          <path class="o2" stroke-width="12" d={`M${x - 320} ${y - 300}V${y}M${x + 320} ${y - 300}V${y}`} />
          <circle class="o2" stroke-width="12" cx={x} cy={y - 725} r="300" />
          <path class="o2" stroke-width="12" d={`M${x + 400} ${y - 600}H${-g.wallMm}`} />
        </g>
      )
  }
}

/** A hood outside the wall that keeps rain and snow out. */
function Hood({ at, y, r }: { at: number; y: number; r: number }) {
  return <path class="o pap" stroke-width="14" d={`M${at} ${y - r - 20}h-90l-120 120v${r + 20}h210z`} />
}

interface Word {
  text: string
  x: number
  y: number
  anchor: 'start' | 'middle' | 'end'
  quiet?: boolean
}

function boxOf(word: Word): Box {
  const long = word.text.length * TEXT * 0.55
  const from = word.anchor === 'start' ? word.x : word.anchor === 'end' ? word.x - long : word.x - long / 2
  return [from - 40, word.y - TEXT, from + long + 40, word.y + 50]
}

/** Names beside the machines, never over them. */
function labels(model: SectionModel, g: SectionGeometry): Word[] {
  const out = -g.wallMm - 330
  const words: Word[] = []
  for (const { equipment: e, foot } of g.placed) {
    const [x, y] = foot
    const add = (text: string | undefined, wx: number, wy: number, anchor: Word['anchor'], quiet = false) => {
      if (text) words.push({ text, x: wx, y: wy, anchor, quiet })
    }
    switch (e.kind) {
      case 'RANGE_HOOD':
        add([e.label, e.note].filter(Boolean).join(', '), x + 700, y - 40, 'start')
        break
      case 'MAKE_UP_UNIT':
        add(e.label, x + 560, y + 140, 'start')
        add(e.note, x + 560, y + 330, 'start', true)
        add('make-up air in', out, y - 130, 'end')
        break
      case 'VENTILATOR':
        add('fresh air in', out, y - 420, 'end')
        add('used air out', out, y - 80, 'end')
        for (const [i, line] of twoLines(e.label).entries()) add(line, x, y + 190 + i * LINE * 0.9, 'middle')
        break
      case 'AIR_HANDLER':
        for (const [i, line] of twoLines(e.label).entries()) add(line, x, y - 1470 + i * LINE * 0.9, 'middle')
        if ((e.note ?? '').length <= 8) add(e.note, x, y - 330, 'middle', true)
        break
      case 'WATER_HEATER':
        for (const [i, line] of twoLines(e.label).entries()) add(line, x, y - 900 + i * LINE, 'middle')
        add(e.note, x, y - 500, 'middle', true)
        break
      case 'PASSIVE_OPENING':
        add(e.label, 180, y + 60, 'start')
        break
      case 'OUTDOOR_UNIT':
        add(e.label, x, y - 1230, 'middle')
        break
    }
  }
  for (const w of model.windows) {
    const [x, anchor] =
      w.side === 'left' ? [150, 'start' as const] : [model.form.widthMm - 150, 'end' as const]
    if (w.label) words.push({ text: w.label, x, y: -(w.sillMm + w.headMm) / 2 + 60, anchor })
  }
  // a sensor's name goes to the side where nothing else is written
  for (const { label, at } of model.sensors) {
    const sides: Word[] = [
      { text: label, x: at.xMm + 110, y: at.yMm + 60, anchor: 'start', quiet: true },
      { text: label, x: at.xMm - 110, y: at.yMm + 60, anchor: 'end', quiet: true },
      { text: label, x: at.xMm, y: at.yMm - 120, anchor: 'middle', quiet: true },
      { text: label, x: at.xMm, y: at.yMm + 250, anchor: 'middle', quiet: true },
    ]
    const taken = [...words.map(boxOf), ...g.placed.map(bodyOf)]
    words.push(sides.find((side) => !taken.some((box) => overlap(boxOf(side), box))) ?? sides[0]!)
  }
  return words
}

/** What a machine's outline covers. */
function bodyOf({ equipment, foot: [x, y] }: Placed): Box {
  const [half, high] = BODIES[equipment.kind]
  return [x - half, y - high, x + half, y]
}

/** Half the width and the height of each outline. */
const BODIES: Record<Placed['equipment']['kind'], [number, number]> = {
  RANGE_HOOD: [610, 350],
  MAKE_UP_UNIT: [500, 370],
  VENTILATOR: [350, 620],
  AIR_HANDLER: [330, 1650],
  WATER_HEATER: [390, 1640],
  PASSIVE_OPENING: [120, 100],
  OUTDOOR_UNIT: [400, 1150],
}

function twoLines(text: string): string[] {
  const gap = text.indexOf(' ')
  return gap < 0 ? [text] : [text.slice(0, gap), text.slice(gap + 1)]
}

function anchorOf(on: string, model: SectionModel, g: SectionGeometry): XY {
  const machine = g.placed.find((p) => p.equipment.id === on)
  if (machine) return machine.anchor
  const sensor = model.sensors.find((s) => s.id === on)
  if (sensor) return xy(sensor.at)
  const width = model.form.widthMm
  if (on === 'roof') return [width * 0.45, g.roofAirAt(width * 0.45)]
  if (on === 'slab') return [width * 0.6, g.floorMm + g.slabMm / 2]
  return [width + g.wallMm / 2, -1500]
}

/** Room that the words of an assembly's layers need. */
function longestNote(assembly: Assembly): number {
  const letters = assembly.layers.map(
    (layer, i) => layerWords(assembly, i).length * (layer.air ? 1.1 : 1) + (layer.air ? 15 : 0),
  )
  return Math.max(...letters, assembly.label.length + assembly.note.length + 10) * TEXT * 0.58
}

/** The first line over the roof's layer notes, so high that none of them touches the roof below it. */
function roofNotesTop(model: SectionModel, g: SectionGeometry): number {
  const end = 360 + longestNote(model.roof)
  const ridge = model.form.roof === 'GABLE' ? Math.min(model.form.widthMm / 2, end) : end
  const highest = Math.min(g.roofTopAt(250), g.roofTopAt(ridge))
  return highest - (model.roof.layers.length + 1) * LINE - 200
}

/** Words for a layer: its thickness in the units of the day, then its name. */
function layerWords(assembly: Assembly, i: number): string {
  const { thicknessMm: mm, label } = assembly.layers[i]!
  if (mm < 1) return label
  const size = system.value === 'SI' ? `${round(mm)} mm` : `${inches(mm)} in.`
  return label.startsWith(size.split(' ')[0]!) ? label : `${size} ${label}`
}

const depthWords = (mm: number) =>
  system.value === 'SI' ? `${(mm / 1000).toFixed(1)} m` : `${(mm / 304.8).toFixed(0)} ft`

const round = (mm: number) => (mm < 10 ? mm.toFixed(1) : mm.toFixed(0))
const inches = (mm: number) => Number((mm / 25.4).toFixed(mm < 60 ? 2 : 1)).toString()

const whole = (mm: number) =>
  system.value === 'SI' ? `${mm.toFixed(0)} mm` : `${(mm / 25.4).toFixed(1)} in.`

/** One leader with a dot per layer, the words in the same order. */
function Notes({ model, g, top }: { model: SectionModel; g: SectionGeometry; top: number }) {
  const { form, roof, wall, slab } = model
  const steep = (g.ceilingAt(250) - g.roofTopAt(250)) / (g.roofMm || 1)
  const roofRows = [...roof.layers.keys()].reverse()
  const wx = form.widthMm
  const stack = wx + g.wallMm + 850
  const leaderY = -Math.min(320, form.lowHeightMm / 4)
  const wallTop = leaderY - 500 - wall.layers.length * LINE
  const title = (a: Assembly, mm: number) => `${a.label}  ${[a.note, whole(mm)].filter(Boolean).join(', ')}`
  return (
    <g class="layer-notes">
      <path class="o" stroke-width="9" d={`M250 ${g.ceilingAt(250)}V${top + 80}`} />
      {g.depths.roof.map((d) => (
        <circle key={d} class="inkf" cx="250" cy={g.ceilingAt(250) - d * steep} r="22" />
      ))}
      <text class="tb" font-size={TEXT} x="250" y={top}>
        {title(roof, g.roofMm)}
      </text>
      {roofRows.map((layer, row) => (
        <text
          key={roof.layers[layer]!.id}
          class={roof.layers[layer]!.air ? 'tr' : ''}
          font-size={TEXT}
          x="360"
          y={top + (row + 1) * LINE}
        >
          {layerWords(roof, layer)}
          {roof.layers[layer]!.air ? ': the red line' : ''}
        </text>
      ))}
      <path
        class="o"
        stroke-width="9"
        d={`M${wx + (g.depths.wall[0] ?? 0)} ${leaderY}H${stack}V${wallTop + LINE * 0.3}`}
      />
      {g.depths.wall.map((d) => (
        <circle key={d} class="inkf" cx={wx + d} cy={leaderY} r="22" />
      ))}
      <text class="tb halo" stroke-width="60" font-size={TEXT} x={stack} y={wallTop}>
        {title(wall, g.wallMm)}
      </text>
      {wall.layers.map((layer, row) => (
        <text
          key={layer.id}
          class={layer.air ? 'tr halo' : 'halo'}
          stroke-width="60"
          font-size={TEXT}
          x={stack + 100}
          y={wallTop + (row + 1) * LINE + 30}
        >
          {layerWords(wall, row)}
          {layer.air ? ': red line' : ''}
        </text>
      ))}
      {(() => {
        const y = g.floorMm + g.slabMm + 390
        return (
          <>
            <path
              class="o"
              stroke-width="9"
              d={`M640 ${y - 55}H520V${g.floorMm + (g.depths.slab[0] ?? 0)}`}
            />
            {g.depths.slab.map((d) => (
              <circle key={d} class="inkf" cx="520" cy={g.floorMm + d} r="22" />
            ))}
            <text font-size={TEXT} class="halo" stroke-width="60" x="700" y={y}>
              <tspan class="tb">{title(slab, thickness(slab))}</tspan>
              {'   '}
              {slab.layers.map((_, i) => layerWords(slab, i)).join(' · ')}
            </text>
          </>
        )
      })()}
    </g>
  )
}

interface LevelsProps {
  model: SectionModel
  g: SectionGeometry
  left: number
  right: number
  top: number
  bottom: number
}

/** Heights, width, a scale, and which way is which. */
function Levels({ model, g, left, right, top, bottom }: LevelsProps) {
  const width = model.form.widthMm
  const long = (mm: number) =>
    system.value === 'SI' ? `${(mm / 1000).toFixed(2)} m` : `${(mm / 304.8).toFixed(1)} ft`
  const y = bottom - 250
  const unit = system.value === 'SI' ? 1000 : 304.8 * 3
  const x0 = right - 2300
  return (
    <>
      <g class="o" stroke-width="9">
        <path
          d={`M0 ${y - 90}v180M${width} ${y - 90}v180M0 ${y}H${width}M-45 ${y + 45}l90 -90M${width - 45} ${y + 45}l90 -90`}
        />
      </g>
      <rect class="pap" x={width / 2 - 420} y={y - 90} width="840" height="180" />
      <text font-size={TEXT} x={width / 2} y={y + 62} text-anchor="middle">
        {long(width)}
      </text>
      <path class="o" stroke-width="9" d={`M${width + g.wallMm + 90} 0H${width + g.wallMm + 800}`} />
      <text font-size={TEXT} class="t2 halo" stroke-width="60" x={width + g.wallMm + 420} y="-40">
        ±0
      </text>
      <path
        class="o"
        stroke-width="12"
        d={`M${x0} ${y - 30}h${2 * unit}v60h-${2 * unit}zM${x0 + unit / 2} ${y - 30}v60M${x0 + unit} ${y - 30}v60`}
      />
      <path
        class="inkf"
        d={`M${x0} ${y - 30}h${unit / 2}v60h-${unit / 2}zM${x0 + unit} ${y - 30}h${unit}v60h-${unit}z`}
      />
      <text class="t2" font-size={TEXT} x={x0} y={y - 80} text-anchor="middle">
        0
      </text>
      <text class="t2" font-size={TEXT} x={x0 + 2 * unit} y={y - 80} text-anchor="middle">
        {system.value === 'SI' ? '2 m' : '6 ft'}
      </text>
      <text class="tx" font-size="220" x={left + 60} y={top + 220}>
        {model.left}
      </text>
      <text class="tx" font-size="220" x={right - 60} y={top + 220} text-anchor="end">
        {model.right}
      </text>
    </>
  )
}

/** The drawing in words. */
function inWords(model: SectionModel, g: SectionGeometry): string {
  const { form } = model
  const m = (mm: number) => `${(mm / 1000).toFixed(2)} m`
  const roof =
    form.roof === 'SHED'
      ? `A shed roof, ceiling ${m(form.lowHeightMm)} on the left rising to ${m(form.highHeightMm)} on the right.`
      : `A gable roof, ceiling ${m(form.lowHeightMm)} at the walls and ${m(form.highHeightMm)} under the ridge.`
  const whole = g.redLine.length === 1 && g.redLine[0]!.closed
  const machines = model.equipment.map((e) => e.label).join(', ')
  return [
    `${m(form.widthMm)} wide inside. ${roof}`,
    `Wall ${Math.round(g.wallMm)} mm, roof ${Math.round(g.roofMm)} mm.`,
    whole
      ? `The red line of the air layer is closed, with ${g.rings.length} holes drawn.`
      : 'The red line of the air layer is broken: not every part of the record names its air layer.',
    machines && `Inside: ${machines}.`,
    model.windows[0]?.label && `In the right wall: ${model.windows[0].label}.`,
  ]
    .filter(Boolean)
    .join(' ')
}
