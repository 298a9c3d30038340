import type { ComponentChildren } from 'preact'

/**
 * Hatches for charts (scale 1) and for drawings in millimetres (scale 22). "lim" is ground one must not be on; the
 * others are materials.
 */
export type Hatch = 'lim' | 'conc' | 'eps' | 'grav' | 'earth' | 'gyp' | 'cell' | 'wool' | 'ply' | 'twist'

interface Tile {
  width: number
  height: number
  marks: ComponentChildren
}

const TILES: Record<Hatch, Tile> = {
  lim: { width: 7, height: 7, marks: <path d="M-1 8 8 -1" /> },
  conc: {
    width: 26,
    height: 22,
    marks: (
      <>
        <path d="M4 4l3.4 1-2.6 2.6z" />
        <path d="M16 14l3.6-.6-1.4 3.2z" />
        <path
          stroke-linecap="round"
          stroke-width="1.5"
          d="M12 5h.01M22 4h.01M8 15h.01M23 19h.01M2 20h.01M18 8h.01"
        />
      </>
    ),
  },
  eps: {
    width: 8,
    height: 8,
    marks: (
      <>
        <circle cx="2" cy="2" r="1.5" />
        <circle cx="6" cy="6" r="1.5" />
      </>
    ),
  },
  grav: {
    width: 20,
    height: 14,
    marks: (
      <>
        <ellipse cx="4" cy="4" rx="3.2" ry="2.2" />
        <ellipse cx="13" cy="4.6" rx="4" ry="2.6" />
        <ellipse cx="7.6" cy="10.6" rx="3.8" ry="2.4" />
        <ellipse cx="16.6" cy="10.6" rx="2.4" ry="2" />
      </>
    ),
  },
  earth: { width: 24, height: 24, marks: <path d="M2 10 10 2M5 13 13 5M8 16 16 8M14 22 22 14" /> },
  gyp: {
    width: 5,
    height: 5,
    marks: <path stroke-linecap="round" stroke-width="1.1" d="M1 1.4h.01M3.5 3.6h.01" />,
  },
  cell: {
    width: 15,
    height: 15,
    marks: (
      <path
        stroke-linecap="round"
        d="M1 3q2-2 4 0t3-1M9 8q1.6 2 3.6.4M3 11q2 2 4-.4M11 13.4q2-2.4 3.4-.4M11 2.6q1.4 1.6 3 .2M1 7.4q1 .8 2 0"
      />
    ),
  },
  wool: {
    width: 14,
    height: 9,
    marks: <path stroke-linejoin="miter" d="M0 8 3.5 1.5 7 8 10.5 1.5 14 8" />,
  },
  ply: { width: 6, height: 12, marks: <path d="M3 0v12" /> },
  twist: {
    width: 36,
    height: 14,
    marks: (
      <>
        <path stroke-width="1.4" d="M10 0v14M26 0v14" />
        <path class="strand-line" stroke-width="1.4" d="M18 0q-6 3.5 0 7t0 7M18 0q6 3.5 0 7t0 7" />
      </>
    ),
  },
}

/** The patterns of one drawing; ids are `prefix-lim` and so on. */
export function HatchDefs({
  prefix,
  scale = 1,
  stroke = 1,
}: {
  prefix: string
  scale?: number
  stroke?: number
}) {
  return (
    <defs>
      {(Object.keys(TILES) as Hatch[]).map((name) => {
        const tile = TILES[name]
        return (
          <pattern
            key={name}
            id={`${prefix}-${name}`}
            width={tile.width * scale}
            height={tile.height * scale}
            patternUnits="userSpaceOnUse"
          >
            <g class="hatch" transform={`scale(${scale})`} stroke-width={stroke}>
              {tile.marks}
            </g>
          </pattern>
        )
      })}
    </defs>
  )
}

/** The patterns that charts share, under `k-`; stands once in the page. */
export function HatchSprite() {
  return (
    <svg class="sprite" width="0" height="0" aria-hidden="true" focusable="false">
      <HatchDefs prefix="k" />
    </svg>
  )
}
