import { useRef } from 'preact/hooks'
import { useLocation } from 'preact-iso'
import { Choose } from '../parts/Choose.tsx'
import { system } from '../units/system.ts'
import { house } from './house.ts'
import { contentsOf, firmPages } from './routes.ts'
import { chooseScheme, scheme } from './scheme.ts'
import { chooseUnits, firstRole, holds, me, roleWord, signOut } from './session.ts'

/** The running head: the firm's line, and the line of the house whose sheet this is, with its contents. */
export function Head() {
  const { path } = useLocation()
  const who = me.value
  if (!who) return null
  const pages = firmPages((roles) => holds(...roles))
  return (
    <header class="head sheet">
      <p class="print-only running">
        {who.firmName}
        {house.value && ` · house book of ${house.value.id} ${house.value.name}`}
      </p>
      <div class="head-firm">
        <a class="wordmark" href="/">
          <Seam />
          Oakum
        </a>
        <nav aria-label="Firm">
          <ul>
            {pages.map(({ href, words }) => (
              <li key={href}>
                <a href={href} aria-current={isWithin(path, href) ? 'page' : undefined}>
                  {words}
                </a>
              </li>
            ))}
          </ul>
        </nav>
        <Who />
      </div>
      <HouseLineOf path={path} />
    </header>
  )
}

function isWithin(path: string, href: string): boolean {
  return href === '/' ? path === '/' : path === href || path.startsWith(`${href}/`)
}

function HouseLineOf({ path }: { path: string }) {
  const line = house.value
  const contents = useRef<HTMLElement>(null)
  if (!line) return <div class="head-house" />
  const pages = contentsOf(line.id, (roles) => holds(...roles))
  // a cover check is opened from the site's page and belongs to it
  const at = path.replace('/cover-checks/', '/site/')
  // the longest path that holds where we are is the current one
  const here = pages
    .filter(({ href }) => isWithin(at, href))
    .reduce((best, { href }) => (href.length > best.length ? href : best), '')
  return (
    <div class="head-house">
      <p class="house-name">
        <b>{line.id}</b>
        {line.name}
        <span>
          {line.stageLabel} · {line.place}
        </span>
      </p>
      <button type="button" class="b contents-button" popovertarget="contents">
        Contents
      </button>
      <nav
        id="contents"
        class="contents"
        popover="auto"
        ref={contents}
        aria-label={`${line.id} ${line.name}`}
      >
        <ul>
          {pages.map(({ href, words }) => (
            <li key={href}>
              <a
                href={href}
                aria-current={href === here ? 'page' : undefined}
                onClick={() => contents.current?.matches(':popover-open') && contents.current.hidePopover()}
              >
                {words}
              </a>
            </li>
          ))}
        </ul>
      </nav>
    </div>
  )
}

/** Who is signed in, and what is theirs to choose: units, light or dark, signing out. */
function Who() {
  const who = me.value
  const role = firstRole.value
  if (!who) return null
  return (
    <div class="who">
      <button type="button" class="plain" popovertarget="mine">
        {role ? roleWord[role] : who.displayName}
        <span> · {who.firmName}</span>
      </button>
      <div id="mine" popover="auto" class="mine">
        <p>
          <b>{who.displayName}</b>
        </p>
        <Choose
          name="units"
          legend="Units"
          options={[
            ['IP', 'cfm, in., °F'],
            ['SI', 'm³/h, mm, °C'],
          ]}
          value={system.value}
          onChoose={(units) => void chooseUnits(units)}
        />
        <Choose
          name="scheme"
          legend="Paper"
          options={[
            ['device', 'as the device'],
            ['light', 'light'],
            ['dark', 'dark'],
          ]}
          value={scheme.value}
          onChoose={chooseScheme}
        />
        <div class="acts">
          <button type="button" class="b" onClick={() => void signOut()}>
            Sign out
          </button>
        </div>
      </div>
    </div>
  )
}

/** The firm mark: two planks with twisted strand between. */
export function Seam() {
  return (
    <svg viewBox="0 0 36 16" aria-hidden="true" fill="none" stroke="currentColor" stroke-width="1.6">
      <path d="M0 2.2h36M0 13.8h36" />
      <path
        class="strand-line"
        d="M0 8c3-5 6-5 9 0s6 5 9 0 6-5 9 0 6 5 9 0M0 8c3 5 6 5 9 0s6-5 9 0 6 5 9 0 6-5 9 0"
      />
    </svg>
  )
}
