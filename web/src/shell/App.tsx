import { signal } from '@preact/signals'
import type { ComponentChildren } from 'preact'
import { useEffect } from 'preact/hooks'
import { ErrorBoundary, LocationProvider, Route, Router, useLocation } from 'preact-iso'
import { HatchSprite } from '../parts/Hatches.tsx'
import { ShapeSprite } from '../parts/Status.tsx'
import { Head } from './Head.tsx'
import { openHouse } from './house.ts'
import { NoSignal } from './NoSignal.tsx'
import { ROUTES } from './routes.ts'
import { Sheet } from './Sheet.tsx'
import { SignIn } from './SignIn.tsx'
import { Start } from './Start.tsx'
import { holds, me } from './session.ts'

/** What could not be drawn: a chunk that did not come, or a fault of ours. */
const broken = signal<Error | undefined>(undefined)

export function App() {
  return (
    <LocationProvider>
      {/* biome-ignore lint/a11y/useValidAnchor: it goes to a place in the page; the router must not take it */}
      <a class="skip" href="#main" onClick={toMain}>
        To the page
      </a>
      <ShapeSprite />
      <HatchSprite />
      <Body />
    </LocationProvider>
  )
}

function toMain(event: Event) {
  event.preventDefault()
  document.getElementById('main')?.focus()
}

function Body() {
  if (me.value === undefined) return <Blank />
  if (me.value === null) return <SignIn />
  return (
    <>
      <Head />
      <NoSignal />
      <Pages />
    </>
  )
}

/** While the portal is asked who is here. */
function Blank() {
  return <main id="main" class="sheet" aria-busy="true" />
}

function Pages() {
  const { path } = useLocation()
  const inHouse = /^\/houses\/([^/]+)/.exec(path)?.[1]
  useEffect(() => {
    void openHouse(inHouse && decodeURIComponent(inHouse))
  }, [inHouse])
  // biome-ignore lint/correctness/useExhaustiveDependencies: another path is another try
  useEffect(() => {
    broken.value = undefined
  }, [path])
  if (broken.value) return <Broken error={broken.value} />
  return (
    <ErrorBoundary onError={(error) => (broken.value = error)}>
      <Router>
        <Route path="/" component={Start} />
        {ROUTES.filter((r) => !r.roles || holds(...r.roles)).map((r) => (
          <Route key={r.path} path={r.path} component={r.page} />
        ))}
        <Route default component={NotThere} />
      </Router>
    </ErrorBoundary>
  )
}

function Broken({ error }: { error: Error }) {
  const missing = /import|fetch|load/i.test(error.message)
  return (
    <Plain heading="This sheet could not be drawn.">
      <p class="say">
        {missing ? 'A piece of it did not come; there may be no signal, or a newer version.' : error.message}{' '}
        <button type="button" class="plain" onClick={() => location.reload()}>
          Load it again
        </button>
      </p>
    </Plain>
  )
}

function NotThere() {
  return (
    <Plain heading="There is no such sheet, or it is not for this account.">
      <p class="say">
        <a href="/">To your start page</a>
      </p>
    </Plain>
  )
}

function Plain({ heading, children }: { heading: string; children: ComponentChildren }) {
  return (
    <Sheet heading={heading} block={[['Sheet', 'none']]}>
      {children}
    </Sheet>
  )
}
