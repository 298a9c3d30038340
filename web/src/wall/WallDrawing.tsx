import { useId } from 'preact/hooks'
import { HatchDefs } from '../parts/Hatches.tsx'
import { Wide } from '../parts/lists.tsx'
import type { DrawAs } from '../section/model.ts'
import { type Strip, StripChart, stripsHeight } from './Strips.tsx'
import { type DrawnLayer, notePlaces, RIGHT, type WallModel, WIDTH } from './wallModel.ts'

const ROW = 22
const WALL = 250
/** Cut wood stands in the lower part, so that fill and framing both show. */
const WOOD = 92

const FILL: Partial<Record<DrawAs, string>> = {
  gypsum: 'gyp',
  wool: 'wool',
  foam: 'eps',
  concrete: 'conc',
  gravel: 'grav',
  sheet: 'ply',
}

interface WallDrawingProps {
  model: WallModel
  /** "Wall of H1, cut level": the name of the drawing for readers. */
  title: string
  /** What it shows, in a sentence. */
  says: string
  /** Curves under the wall, over the same depth. */
  strips?: Strip[]
  caption?: string
  /** What the layers measure in all, worded. */
  inAll: string
  thicknessWords(m: number): string
  /** The narrowest that it is drawn; below, it moves sideways. */
  least?: string
}

/** A wall, roof or floor cut once, to scale, with what was computed across it drawn under the same layers. */
export function WallDrawing({
  model,
  title,
  says,
  strips = [],
  caption,
  inAll,
  thicknessWords,
  least = '66rem',
}: WallDrawingProps) {
  const id = useId().replace(/[^\w-]/g, '')
  const notes = notePlaces(model.layers)
  const rows = Math.max(...notes.map((n) => n.row)) + 1
  const top = rows * ROW + 16
  const bottom = top + WALL
  const under = bottom + 62
  const width = Math.max(WIDTH, ...notes.map((n) => n.x + 24 + n.text.length * 8.6))
  const height = under + stripsHeight(strips)
  return (
    <figure class="drawing wall-drawing">
      <Wide label={title}>
        <svg
          viewBox={`0 0 ${width} ${height}`}
          role="img"
          aria-labelledby={`${id}-t ${id}-d`}
          style={{ '--least': least }}
        >
          <title id={`${id}-t`}>{title}</title>
          <desc id={`${id}-d`}>{says}</desc>
          <HatchDefs prefix={id} />
          <text class="tx" x="0" y={top + 24} font-size="15">
            indoors
          </text>
          <text class="tx" x={RIGHT + 16} y={top + 24} font-size="15">
            outdoors
          </text>
          {model.layers.map((l) => (
            <LayerBand key={l.id} layer={l} id={id} top={top} bottom={bottom} />
          ))}
          {model.layers
            .filter((l) => l.wood)
            .map((l) => (
              <g key={l.id} data-wood={l.id}>
                <rect
                  class="o pap"
                  stroke-width="1.6"
                  x={l.x0}
                  y={bottom - WOOD}
                  width={l.x1 - l.x0}
                  height={WOOD}
                />
                <path
                  class="o2"
                  stroke-width=".9"
                  d={`M${l.x0} ${bottom - WOOD}L${l.x1} ${bottom}M${l.x1} ${bottom - WOOD}L${l.x0} ${bottom}`}
                />
              </g>
            ))}
          {model.screws.map((s) => (
            <path
              key={s.id}
              class="o"
              stroke-width="2.2"
              d={`M${s.head} ${bottom - WOOD / 2}H${s.tip}M${s.head} ${bottom - WOOD / 2 - 11}v22`}
            />
          ))}
          {model.layers
            .filter((l) => l.line)
            .map((l) => (
              <MembraneLine key={l.id} layer={l} top={top} bottom={bottom} />
            ))}
          {model.red !== undefined && (
            <path class="red" stroke-width="5" d={`M${model.red} ${top - 4}V${bottom + 4}`} />
          )}
          <LayerNotes notes={notes} top={top} layers={model.layers} />
          <Dimensions model={model} y={bottom + 16} inAll={inAll} words={thicknessWords} />
          {strips.length > 0 &&
            faces(model).map((x) => (
              <path
                key={x}
                class="grid"
                stroke-dasharray="2 4"
                d={`M${x} ${under}V${under + stripsHeight(strips) - 20}`}
              />
            ))}
          {strips.map((strip, i) => (
            <StripChart
              key={strip.id}
              strip={strip}
              at={model.at}
              top={under + stripsHeight(strips.slice(0, i))}
            />
          ))}
        </svg>
      </Wide>
      {caption && <figcaption>{caption}</figcaption>}
    </figure>
  )
}

const faces = (model: WallModel) => [...new Set(model.layers.flatMap((l) => [l.x0, l.x1]))]

function LayerBand({
  layer: l,
  id,
  top,
  bottom,
}: {
  layer: DrawnLayer
  id: string
  top: number
  bottom: number
}) {
  if (l.line) return null
  const box = { x: l.x0, y: top, width: l.x1 - l.x0, height: bottom - top }
  const solid = l.drawAs === 'sheet' || l.drawAs === 'wood' || l.drawAs === 'concrete' || l.drawAs === 'plain'
  const hatch = FILL[l.drawAs]
  return (
    <g data-layer={l.id}>
      <rect class={solid ? 'o cut' : 'o pap'} stroke-width="1.5" {...box} />
      {hatch && <rect {...box} fill={`url(#${id}-${hatch})`} />}
      {l.drawAs === 'loose' && <path class="o2" stroke-width="1" d={loops(l.x0, l.x1, top, bottom)} />}
      {l.drawAs === 'wood' && (
        <path
          class="o2"
          stroke-width=".9"
          d={`M${l.x0} ${top}L${l.x1} ${bottom}M${l.x1} ${top}L${l.x0} ${bottom}`}
        />
      )}
    </g>
  )
}

/** Loose fill: strands that turn back and forth between the faces, as many as the layer is wide for. */
function loops(x0: number, x1: number, top: number, bottom: number): string {
  const strands = Math.max(1, Math.round((x1 - x0) / 60))
  const wide = (x1 - x0) / strands
  const step = 17
  let d = ''
  for (let s = 0; s < strands; s++) {
    const [a, b] = [x0 + s * wide, x0 + (s + 1) * wide]
    d += `M${a} ${top}`
    for (let y = top; y + 2 * step <= bottom; y += 2 * step) {
      d += `C${a} ${y + step} ${b} ${y} ${b} ${y + step}S${a} ${y + step} ${a} ${y + 2 * step}`
    }
  }
  return d
}

/** A membrane: dashed; the one for water with short dashes, the one for vapour with long ones, others plain. */
function MembraneLine({ layer: l, top, bottom }: { layer: DrawnLayer; top: number; bottom: number }) {
  const dash = l.controls.includes('WATER') ? '2 4' : l.controls.includes('VAPOUR') ? '9 5' : undefined
  return (
    <path
      data-layer={l.id}
      class="o"
      stroke-width="2.8"
      stroke-dasharray={dash}
      d={`M${(l.x0 + l.x1) / 2} ${top}V${bottom}`}
    />
  )
}

function LayerNotes({
  notes,
  top,
  layers,
}: {
  notes: { x: number; row: number; text: string }[]
  top: number
  layers: DrawnLayer[]
}) {
  return (
    <>
      {notes.map((n, i) => {
        const y = top - 12 - n.row * ROW
        const air = layers[i]!.air
        return (
          <g key={n.text}>
            <path class={air ? 'red' : 'o2'} stroke-width="1" d={`M${n.x} ${y - 4}V${top + 10}`} />
            <circle class={air ? 'redf' : 'inkf'} cx={n.x} cy={top + 10} r="2.6" />
            <text class={air ? 'tr halo' : 'halo'} stroke-width="5" font-size="14" x={n.x + 6} y={y}>
              {n.text}
            </text>
          </g>
        )
      })}
    </>
  )
}

/** Thicknesses under the wall, for the layers wide enough to carry a figure. */
function Dimensions({
  model,
  y,
  inAll,
  words,
}: {
  model: WallModel
  y: number
  inAll: string
  words: (m: number) => string
}) {
  return (
    <g font-size="14">
      {model.layers
        .filter((l) => l.x1 - l.x0 > 26)
        .map((l) => (
          <g key={l.id}>
            <path class="o" d={`M${l.x0} ${y - 6}v12M${l.x1} ${y - 6}v12M${l.x0} ${y}H${l.x1}`} />
            <text class="halo" stroke-width="6" text-anchor="middle" x={(l.x0 + l.x1) / 2} y={y + 5}>
              {words(l.thicknessM)}
            </text>
          </g>
        ))}
      <text class="t2" x={RIGHT + 16} y={y + 5}>
        {inAll}
      </text>
    </g>
  )
}
