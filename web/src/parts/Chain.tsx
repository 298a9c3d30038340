import { type ComponentChildren, Fragment } from 'preact'
import { print, type Unit } from '../units/quantity.ts'
import { system } from '../units/system.ts'
import { Scale } from './Scale.tsx'

/** One link of what a change reaches. */
export interface Link {
  name: string
  /** Where it came from: "computed · House pressure 1.2". */
  from?: ComponentChildren
  unit: Unit
  old: number | null
  now: number | null
  step?: number
  limit?: number | null
  limitWord?: string
  past?: 'above' | 'below'
  /** The seam is torn where a limit is crossed. */
  torn?: boolean
  /** Its verdict, under the name. */
  says?: ComponentChildren
  /** A sentence over this link: "If the make-up air follows, from 380 to 570 cfm". */
  before?: ComponentChildren
}

interface ChainProps {
  label: string
  links: Link[]
  /** Over the columns of old and new figures. */
  heads: { old: string; now: string }
}

/** The seam as the chain of what a change reaches: whole where a link holds, torn where a limit is crossed. */
export function Chain({ label, links, heads }: ChainProps) {
  return (
    <ol class="chain" aria-label={label}>
      <li class="heads" aria-hidden="true">
        <i />
        <span class="start">along the chain</span>
        <span>{heads.old}</span>
        <span>{heads.now}</span>
        <span class="start">on its scale; the hatched side is past the limit</span>
      </li>
      {links.map((link, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: links keep their order, and two may have one name
        <Fragment key={i}>
          {link.before && (
            <li class="mid">
              <Strand />
              <p>{link.before}</p>
            </li>
          )}
          <li>
            <Strand first={i === 0} last={i === links.length - 1} torn={link.torn} />
            <div class="name">
              <b>{link.name}</b>
              {link.from && <span class="note">{link.from}</span>}
              {link.says ?? (link.torn && <span class="vh">past its limit</span>)}
            </div>
            <Side word="was" value={link.old} link={link} />
            <Side word="now" value={link.now} link={link} />
            <div class="sc">
              <Scale
                label={link.name}
                unit={link.unit}
                before={link.old}
                now={link.now}
                limit={link.limit}
                limitWord={link.limitWord}
                past={link.past}
              />
            </div>
          </li>
        </Fragment>
      ))}
    </ol>
  )
}

function Side({ word, value, link }: { word: 'was' | 'now'; value: number | null; link: Link }) {
  const shown = value === null ? { text: '–', symbol: '' } : print(value, link.unit, system.value, link.step)
  return (
    <div class={word === 'was' ? 'old q' : 'new q'}>
      <span class="vh">{word} </span>
      <b>{shown.text}</b>&#8239;<i>{shown.symbol}</i>
    </div>
  )
}

/** Two planks with twisted strand between, the height of the row. */
function Strand({ first, last, torn }: { first?: boolean; last?: boolean; torn?: boolean }) {
  return (
    <svg class="strand" aria-hidden="true" focusable="false">
      <rect class="pap" width="36" height="100%" />
      <rect width="36" height="100%" fill="url(#k-twist)" />
      {first && <rect class="pap" width="36" height="50%" />}
      {last && <rect class="pap" y="50%" width="36" height="50%" />}
      <svg y="50%" overflow="visible" aria-hidden="true">
        {first && <circle cx="18" cy="0" r="8" class="redf" />}
        {last && !torn && <path class="o" stroke-width="2.4" d="M5 0h26" />}
        {torn && (
          <>
            <path class="pap" d="M0-12l5-5 8 7 8-7 8 6 7-5v34l-7-6-7 7-8-8-7 6-7-7z" />
            <path class="o" stroke-width="2" d="M3-14l3-3 7 7 8-7 8 6 4-4" />
            {!last && <path class="o" stroke-width="2" d="M3 12l4-2 7 7 7-6 8 8 4-4" />}
          </>
        )}
      </svg>
    </svg>
  )
}
