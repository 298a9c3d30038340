import type { ComponentChildren } from 'preact'
import { placeOf } from '../../record/place.ts'
import type { HouseRecord } from '../../record/record.ts'
import type { Decision } from '../../record/types.ts'
import type { Role } from '../../shell/session.ts'

/** Something on the drawing that one role looks for. */
export interface Mark {
  /** Id of a machine or a sensor, or wall, roof, slab. */
  on: string
  title: ComponentChildren
  says?: ComponentChildren
  /** A state that the portal names in capitals. */
  state?: string
  href?: string
}

export const MARK_ROLES: Role[] = ['DESIGNER', 'PRINCIPAL', 'SITE_LEAD', 'MECHANICAL_CONTRACTOR', 'OWNER']

/** Office and consultant have no marks of their own: what the designer sees tells them most. */
export const marksOf = (role: Role | undefined): Role =>
  role && MARK_ROLES.includes(role) ? role : 'DESIGNER'

const SETTLED = 'APPROVED'
const MOST = 7

/** The marks of one role, at most as many as one takes in. */
export function marksFor(role: Role, record: HouseRecord, decisions: Decision[]): Mark[] {
  const own = role === 'DESIGNER' || role === 'PRINCIPAL' ? decided(role, record, decisions) : []
  const taken = new Set(own.map((m) => m.on))
  return [...own, ...fixed(role, record, decisions).filter((m) => !taken.has(m.on))].slice(0, MOST)
}

/** Where on the drawing a decision is about, or nothing. */
export function placeOfDecision(decision: Decision, record: HouseRecord): string | undefined {
  const paths = [...decision.governs, ...decision.alternatives.flatMap((a) => a.changes.map((c) => c.path))]
  return paths.map((path) => placeOf(path, record)).find(Boolean)
}

function decided(role: Role, record: HouseRecord, decisions: Decision[]): Mark[] {
  return decisions
    .filter((d) => d.state !== SETTLED && (role === 'DESIGNER' || d.approvers.includes(role)))
    .flatMap((d) => {
      const on = placeOfDecision(d, record)
      return on
        ? [{ on, title: d.title, state: d.state, href: `/houses/${record.house.id}/decisions/${d.code}` }]
        : []
    })
}

type Rows = { id: string; label: string; [name: string]: unknown }[]

/** What a role always wants to find, with its numbers from the record. */
function fixed(role: Role, record: HouseRecord, decisions: Decision[]): Mark[] {
  const { parts, say } = record
  const air = (parts.air?.document ?? {}) as Record<string, Rows & Record<string, number>>
  const rows = (name: string): Rows => (air[name] as Rows | undefined) ?? []
  const hoods = rows('exhaust').filter((e) => e.kind === 'RANGE_HOOD')
  const units = rows('makeUp')
  const filter = rows('filters')[0]
  const handler = air.airHandler
  const fresh = air.ventilation
  const water = parts.water?.document
  const membrane = parts.enclosure?.document.membrane as
    | { label: string; sunLimitDays: number; permanentSun: boolean }
    | undefined
  const open = (on: string) => decisions.find((d) => d.state !== SETTLED && placeOfDecision(d, record) === on)
  const at = (path: string, value: unknown) => (typeof value === 'number' ? say(path, value) : '–')
  const marks: (Mark | false | undefined | null)[] = []
  switch (role) {
    case 'DESIGNER':
      marks.push(
        ...hoods.map((h) => ({
          on: h.id,
          title: h.label,
          says: at('air.exhaust.ratedFlowM3PerS', h.ratedFlowM3PerS),
        })),
        ...units.map((u) => ({
          on: u.id,
          title: u.label,
          says: `${at('air.makeUp.flowM3PerS', u.flowM3PerS)} through ${at('air.makeUp.ductDiameterM', u.ductDiameterM)}`,
        })),
        membrane && { on: 'wall', title: 'Wall', says: membrane.label },
      )
      break
    case 'PRINCIPAL':
      marks.push(
        ...units.map((u) => ({
          on: u.id,
          title: u.label,
          says: `${at('air.makeUp.flowM3PerS', u.flowM3PerS)}; the house may sit at ${at('air.limits.housePressurePa', air.limits?.housePressurePa)}`,
        })),
      )
      break
    case 'SITE_LEAD':
      marks.push(
        ...units.map((u) => {
          const unsettled = open(u.id)
          return {
            on: u.id,
            title: 'Sleeve of the make-up air',
            says: unsettled
              ? `Not settled: ${unsettled.title}. Do not frame this opening yet.`
              : `${at('air.makeUp.ductDiameterM', u.ductDiameterM)}, sealed where it passes the red line.`,
            state: unsettled && 'HELD',
          }
        }),
        ...hoods.map((h) => ({
          on: h.id,
          title: 'Hood duct',
          says: 'Passes the red line in the roof: its own seal, seen before it is covered.',
        })),
        !!water?.heater && {
          on: 'heater',
          title: 'Drain of the pan',
          says: 'Its sleeve sits low in the wall: looked at before the slab and the wall close.',
        },
        { on: 'slab', title: 'Membrane under the slab', says: 'Laps and every pipe sealed before the pour.' },
        membrane && {
          on: 'wall',
          title: membrane.label,
          says: membrane.permanentSun
            ? 'Made for permanent sun.'
            : `At most ${membrane.sunLimitDays} days in the sun.`,
        },
      )
      break
    case 'MECHANICAL_CONTRACTOR':
      marks.push(
        filter && {
          on: 'airHandler',
          title: filter.label,
          says: `${String(filter.grade)}; clean drop at most ${at('air.limits.cleanDropPa', air.limits?.cleanDropPa)}`,
        },
        handler && {
          on: 'airHandler',
          title: 'Air handler',
          says: `${at('air.airHandler.highFlowM3PerS', handler.highFlowM3PerS)} high, ${at('air.airHandler.lowFlowM3PerS', handler.lowFlowM3PerS)} all the time`,
        },
        ...units.map((u) => ({
          on: u.id,
          title: u.label,
          says: `${at('air.makeUp.flowM3PerS', u.flowM3PerS)}, duct ${at('air.makeUp.ductDiameterM', u.ductDiameterM)}, heater ${at('air.makeUp.heaterRatedW', u.heaterRatedW)}`,
          state: open(u.id)?.state,
        })),
        fresh && {
          on: 'ventilation',
          title: 'Energy-recovery ventilator (ERV)',
          says: `${at('air.ventilation.supplyM3PerS', fresh.supplyM3PerS)} in, ${at('air.ventilation.exhaustM3PerS', fresh.exhaustM3PerS)} out`,
        },
        ...hoods.map((h) => ({
          on: h.id,
          title: h.label,
          says: at('air.exhaust.ratedFlowM3PerS', h.ratedFlowM3PerS),
          state: open(h.id)?.state,
        })),
      )
      break
    default:
      marks.push(
        ...units.map((u) => ({
          on: u.id,
          title: 'A mild breeze here when the kitchen fan runs is right.',
          says: 'Keep its hood outside free of snow.',
        })),
        filter && {
          on: 'airHandler',
          title: 'Your filter sits here.',
          says: 'We know when it is full, and bring one.',
        },
        !!water?.heater && { on: 'heater', title: 'A pan under the water heater leads a leak outside.' },
        ...hoods.map((h) => ({
          on: h.id,
          title: 'The kitchen fan.',
          says: 'Cook on the back burners: it catches more.',
        })),
      )
  }
  return marks.filter((m): m is Mark => !!m)
}
