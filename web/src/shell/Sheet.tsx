import type { ComponentChildren } from 'preact'
import { useEffect, useLayoutEffect, useRef } from 'preact/hooks'
import { keepLight } from './scheme.ts'

interface SheetProps {
  /** Small, above the finding: what kind of sheet this is. */
  over?: ComponentChildren
  /** The finding, as a colleague would say it. */
  heading: ComponentChildren
  /** One paragraph under the finding. */
  lead?: ComponentChildren
  /** For the window's title, where the heading is more than text. */
  title?: string
  /** The title block at the foot: what a drawing would say, at most five entries. */
  block: [string, ComponentChildren][]
  /** "site" for a phone held in one hand in the sun; "owner" for large plain text. */
  kind?: 'sheet' | 'site' | 'owner'
  children?: ComponentChildren
}

let firstSheet = true

/** A page: one finding, its matter, and a title block at the foot. It prints as it stands. */
export function Sheet({ over, heading, lead, title, block, kind = 'sheet', children }: SheetProps) {
  const main = useRef<HTMLElement>(null)
  useLayoutEffect(() => {
    keepLight(kind === 'site')
    return () => keepLight(false)
  }, [kind])
  useEffect(() => {
    // a new sheet takes the focus, so that keyboard and reader begin at its top; the very first one is begun by the browser
    if (!firstSheet) {
      window.scrollTo(0, 0)
      main.current?.focus({ preventScroll: true })
    }
    firstSheet = false
  }, [])
  const windowTitle = title ?? (typeof heading === 'string' ? heading : undefined)
  useEffect(() => {
    document.title = windowTitle ? `${windowTitle} · Oakum` : 'Oakum'
  }, [windowTitle])
  return (
    <>
      <main id="main" tabIndex={-1} ref={main} class={kind}>
        <div class="opening">
          {over && <p class="over">{over}</p>}
          <h1>{heading}</h1>
          {lead && <p class="lead">{lead}</p>}
        </div>
        {children}
      </main>
      <TitleBlock entries={block} kind={kind} />
    </>
  )
}

/** Foot of every sheet, as of every drawing. */
export function TitleBlock({
  entries,
  kind = 'sheet',
}: {
  entries: [string, ComponentChildren][]
  kind?: string
}) {
  return (
    <footer class={kind === 'sheet' ? 'sheet' : `${kind} foot`}>
      <dl class="title-block" style={{ '--entries': entries.length }}>
        {entries.map(([name, words]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{words}</dd>
          </div>
        ))}
      </dl>
    </footer>
  )
}
