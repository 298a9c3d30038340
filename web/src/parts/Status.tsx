import type { ComponentChildren } from 'preact'

/** The shapes of the sprite. A shape never stands without its word. */
export type Shape =
  | 'stands'
  | 'carried'
  | 'look'
  | 'lapsed'
  | 'withdrawn'
  | 'hold'
  | 'wait'
  | 'open'
  | 'changed'
  | 'now'
  | 'over'
  | 'under'
  | 'note'
  | 'stop'

/** A status: the word, with its shape before it. The shape alone says nothing, so it is hidden from readers. */
export function Status({ is, children }: { is: Shape; children: ComponentChildren }) {
  return (
    <span class="st">
      <ShapeMark is={is} />
      {children}
    </span>
  )
}

export function ShapeMark({ is }: { is: Shape }) {
  return (
    <svg class="sh" aria-hidden="true" focusable="false">
      <use href={`#s-${is}`} />
    </svg>
  )
}

/** The sprite; stands once in the page. The shapes come from a seam seen end on: filled, slipped, open. */
export function ShapeSprite() {
  return (
    <svg class="sprite" width="0" height="0" aria-hidden="true" focusable="false">
      <defs>
        <symbol id="s-stands" viewBox="0 0 16 16">
          <rect class="f" stroke="none" x="2" y="2" width="12" height="12" />
        </symbol>
        <symbol id="s-carried" viewBox="0 0 16 16">
          <rect x="1.1" y="5.5" width="5" height="5" />
          <path d="M6 8h3.2" />
          <rect class="f" stroke="none" x="8.6" y="4.3" width="7.4" height="7.4" />
        </symbol>
        <symbol id="s-look" viewBox="0 0 16 16">
          <circle cx="8" cy="8" r="6" />
        </symbol>
        <symbol id="s-lapsed" viewBox="0 0 16 16">
          <path d="M5 1.6h9.4v5H5zM1.6 9.4H11v5H1.6z" />
        </symbol>
        <symbol id="s-withdrawn" viewBox="0 0 16 16">
          <rect x="2" y="2" width="12" height="12" />
          <path d="M2 14 14 2" />
        </symbol>
        <symbol id="s-hold" viewBox="0 0 16 16">
          <path d="M2.4 1.4v13.2M13.6 1.4v13.2" stroke-width="2.2" />
          <rect class="f" stroke="none" x="5.4" y="5.4" width="5.2" height="5.2" />
        </symbol>
        <symbol id="s-wait" viewBox="0 0 16 16">
          <rect x="2" y="2" width="12" height="12" stroke-dasharray="2.4 2.4" />
        </symbol>
        <symbol id="s-open" viewBox="0 0 16 16">
          <rect x="2" y="2" width="12" height="12" />
        </symbol>
        <symbol id="s-changed" viewBox="0 0 16 16">
          <rect x="2" y="2" width="12" height="12" />
          <path class="f" stroke="none" d="M2 2v12h12z" />
        </symbol>
        <symbol id="s-now" viewBox="0 0 16 16">
          <path class="f" stroke="none" d="M8 .4 15.6 8 8 15.6 .4 8z" />
        </symbol>
        <symbol id="s-over" viewBox="0 0 16 16">
          <path d="M1 9.5h14M8 15.4V1.6M4.2 5.4 8 1.6l3.8 3.8" />
        </symbol>
        <symbol id="s-under" viewBox="0 0 16 16">
          <path d="M1 3.4h14" />
          <rect class="f" stroke="none" x="4.6" y="7.4" width="6.8" height="6.8" />
        </symbol>
        <symbol id="s-note" viewBox="0 0 16 16">
          <path d="M1.5 8h13" stroke-width="3" />
        </symbol>
        <symbol id="s-stop" viewBox="0 0 16 16">
          <path d="M10 2.4H2.4v11.2H10" />
          <path d="M13.8 1.4v13.2" stroke-width="3.2" />
        </symbol>
      </defs>
    </svg>
  )
}

const SHAPE_OF: Record<string, Shape> = {
  // proofs
  CURRENT: 'stands',
  INPUTS_CHANGED: 'changed',
  WAITING: 'wait',
  // approvals
  STANDS: 'stands',
  APPROVED: 'stands',
  PARTLY_APPROVED: 'open',
  CARRIED_OVER: 'carried',
  FRESH_LOOK: 'look',
  LAPSED: 'lapsed',
  WITHDRAWN: 'withdrawn',
  // comparisons
  PASSES: 'under',
  FAILS: 'over',
  NOT_PROVEN: 'look',
  // orders
  HELD: 'hold',
  // alerts
  NOTE: 'note',
  SOON: 'look',
  NOW: 'now',
  // anything that has not begun
  NOT_YET: 'open',
}

const WORD_OF: Record<string, string> = {
  INPUTS_CHANGED: 'Inputs changed',
  CARRIED_OVER: 'Carried over',
  FRESH_LOOK: 'Fresh look',
  NOT_PROVEN: 'Not proven',
  NOT_YET: 'Not yet',
  HELD: 'On hold',
}

/** The status of a state that the portal names in capitals, such as INPUTS_CHANGED. */
export function StateWord({ state, children }: { state: string; children?: ComponentChildren }) {
  const plain = state.replaceAll('_', ' ').toLowerCase()
  const word = WORD_OF[state] ?? plain.charAt(0).toUpperCase() + plain.slice(1)
  return <Status is={SHAPE_OF[state] ?? 'open'}>{children ?? word}</Status>
}
