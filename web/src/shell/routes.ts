import type { ComponentType } from 'preact'
import { lazy } from 'preact-iso'
import type { Role } from './session.ts'

/** A page is a chunk of its own: nobody loads what only others see. */
export interface Route {
  /** Begins with /houses/:house where the page is about one house. */
  path: string
  page: ComponentType<PageProps>
  /** Its words in the contents of a house, or in the firm's line for pages about no house. */
  contents?: string
  /** Who may see it; everybody where left out. The portal decides every access, this only hides. */
  roles?: Role[]
  /** Site pages are always light, for the sun. */
  site?: boolean
}

/** What every page is given: the parts of its path. */
export interface PageProps {
  house?: string
  /** Calculation. */
  id?: string
  /** Decision. */
  code?: string
  /** Cover check. */
  check?: string
  /** Sheet of setting to work. */
  sheet?: string
  /** Key of a proof. */
  proof?: string
  /** Part of the record. */
  part?: string
  /** Filter of a house. */
  filter?: string
  visit?: string
  round?: string
  /** Wall, roof or floor of a house. */
  assembly?: string
}

/** Those who work on a house, in the office, on site or beside them. */
export const FIRM: Role[] = [
  'PRINCIPAL',
  'DESIGNER',
  'SITE_LEAD',
  'MECHANICAL_CONTRACTOR',
  'OFFICE_MANAGER',
  'CONSULTANT',
]

const OFFICE: Role[] = ['PRINCIPAL', 'OFFICE_MANAGER']

const READERS: Role[] = ['PRINCIPAL', 'DESIGNER', 'SITE_LEAD', 'OFFICE_MANAGER', 'OWNER', 'CONSULTANT']

const SITE: Role[] = ['PRINCIPAL', 'DESIGNER', 'SITE_LEAD', 'MECHANICAL_CONTRACTOR', 'OFFICE_MANAGER']

/**
 * Every page, in the order in which contents list them. A new page is one line here, and its path one line in the
 * portal's list of client routes.
 */
export const ROUTES: Route[] = [
  { path: '/houses', page: lazy(() => import('../pages/house/HousesPage.tsx')), contents: 'Houses' },
  {
    path: '/houses/:house',
    page: lazy(() => import('../pages/house/HousePage.tsx')),
    contents: 'Section',
  },
  {
    path: '/houses/:house/record',
    page: lazy(() => import('../pages/house/RecordPage.tsx')),
    contents: 'Record',
    roles: FIRM,
  },
  {
    path: '/houses/:house/record/:part',
    page: lazy(() => import('../pages/house/RecordPage.tsx')),
    roles: FIRM,
  },
  {
    path: '/houses/:house/walls/:assembly',
    page: lazy(() => import('../pages/wall/WallPage.tsx')),
    roles: FIRM,
  },
  {
    path: '/houses/:house/joins',
    page: lazy(() => import('../pages/joins/JoinsPage.tsx')),
    contents: 'Joins',
    roles: FIRM,
  },
  {
    path: '/houses/:house/decisions',
    page: lazy(() => import('../pages/decision/DecisionsPage.tsx')),
    contents: 'Decisions',
    roles: FIRM,
  },
  {
    path: '/houses/:house/decisions/:code',
    page: lazy(() => import('../pages/decision/DecisionPage.tsx')),
  },
  {
    path: '/houses/:house/changes',
    page: lazy(() => import('../pages/change/ChangesPage.tsx')),
    contents: 'Changes',
    roles: FIRM,
  },
  {
    path: '/houses/:house/changes/trial',
    page: lazy(() => import('../pages/change/TrialPage.tsx')),
    roles: FIRM,
  },
  {
    path: '/houses/:house/proofs',
    page: lazy(() => import('../pages/proof/ProofsPage.tsx')),
    contents: 'Proofs',
    roles: FIRM,
  },
  {
    path: '/houses/:house/proofs/:proof',
    page: lazy(() => import('../pages/proof/ProofPage.tsx')),
    roles: FIRM,
  },
  {
    path: '/houses/:house/calculations',
    page: lazy(() => import('../pages/calculation/CalculationsPage.tsx')),
    roles: FIRM,
  },
  {
    path: '/houses/:house/calculations/:id',
    page: lazy(() => import('../pages/calculation/CalculationPage.tsx')),
    roles: FIRM,
  },
  {
    path: '/rounds',
    page: lazy(() => import('../pages/aftercare/RoundsPage.tsx')),
    contents: 'Rounds',
    roles: OFFICE,
  },
  {
    path: '/rounds/:round',
    page: lazy(() => import('../pages/aftercare/RoundPage.tsx')),
    roles: OFFICE,
  },
  {
    path: '/visits/:visit',
    page: lazy(() => import('../pages/aftercare/VisitPage.tsx')),
    roles: OFFICE,
  },
  {
    path: '/filters/:house/:filter',
    page: lazy(() => import('../pages/aftercare/FilterPage.tsx')),
    roles: READERS,
  },
  {
    path: '/calculations',
    page: lazy(() => import('../pages/calculation/CalculationsPage.tsx')),
    contents: 'Calculations',
    roles: FIRM,
  },
  {
    path: '/calculations/:id',
    page: lazy(() => import('../pages/calculation/CalculationPage.tsx')),
    roles: FIRM,
  },
  {
    path: '/materials',
    page: lazy(() => import('../pages/material/MaterialsPage.tsx')),
    roles: FIRM,
  },
  {
    path: '/houses/:house/site',
    page: lazy(() => import('../pages/site/SitePage.tsx')),
    contents: 'Site',
    roles: SITE,
    site: true,
  },
  {
    path: '/houses/:house/cover-checks/:check',
    page: lazy(() => import('../pages/site/CheckPage.tsx')),
    roles: SITE,
    site: true,
  },
  {
    path: '/houses/:house/loose-ends',
    page: lazy(() => import('../pages/site/LooseEndsPage.tsx')),
    contents: 'Loose ends',
    roles: SITE,
  },
  {
    path: '/houses/:house/setting-to-work',
    page: lazy(() => import('../pages/commissioning/SheetsPage.tsx')),
    contents: 'Setting to work',
    roles: SITE,
  },
  {
    path: '/houses/:house/setting-to-work/:sheet',
    page: lazy(() => import('../pages/commissioning/SheetPage.tsx')),
    roles: SITE,
  },
  {
    path: '/houses/:house/owner',
    page: lazy(() => import('../pages/owner/OwnerPage.tsx')),
    contents: "Owner's page",
    roles: ['OWNER', 'PRINCIPAL', 'OFFICE_MANAGER'],
  },
  {
    path: '/houses/:house/readings',
    page: lazy(() => import('../pages/reading/ReadingsPage.tsx')),
    contents: 'Readings',
    roles: READERS,
  },
]

/** The pages of a house, with their path filled in. */
export function contentsOf(house: string, held: (roles: Role[]) => boolean) {
  return ROUTES.filter(
    (r) => r.path.startsWith('/houses/:house') && r.contents && (!r.roles || held(r.roles)),
  ).map((r) => ({ href: r.path.replace(':house', encodeURIComponent(house)), words: r.contents! }))
}

/** The pages of the firm. */
export function firmPages(held: (roles: Role[]) => boolean) {
  return ROUTES.filter(
    (r) => !r.path.startsWith('/houses/:house') && r.contents && (!r.roles || held(r.roles)),
  ).map((r) => ({ href: r.path, words: r.contents! }))
}
