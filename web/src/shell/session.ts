import { computed, signal } from '@preact/signals'
import { get, post, put, remove, whenSignedOut } from '../api/http.ts'
import { Problem } from '../api/problem.ts'
import type { Held, Me } from '../api/schema.d.ts'
import { system } from '../units/system.ts'

export type Role = Held['role']

export const roleWord: Record<Role, string> = {
  PRINCIPAL: 'Principal',
  DESIGNER: 'Designer',
  SITE_LEAD: 'Site lead',
  MECHANICAL_CONTRACTOR: 'Mechanical contractor',
  OFFICE_MANAGER: 'Office manager',
  OWNER: 'Owner',
  CONSULTANT: 'Consultant',
}

/** Who is signed in: undefined until the portal has answered, null where nobody is. */
export const me = signal<Me | null | undefined>(undefined)
export const signInProblem = signal<Problem | undefined>(undefined)

export const roles = computed(() => new Set((me.value?.roles ?? []).map((r) => r.role)))
/** The role by which a page is chosen where somebody holds several: the first one given. */
export const firstRole = computed<Role | undefined>(() => me.value?.roles[0]?.role)

const KEPT = 'oakum.me'

function came(answer: Me) {
  me.value = answer
  system.value = answer.units
  localStorage.setItem(KEPT, JSON.stringify(answer))
}

function gone() {
  me.value = null
  localStorage.removeItem(KEPT)
  // what this person read is not for the next one on this device
  navigator.serviceWorker?.controller?.postMessage('forget')
}

/** Asks the portal who is signed in. Without signal whoever was here last may go on with what is on this device. */
export async function askWho(): Promise<void> {
  whenSignedOut(gone)
  try {
    came(await get<Me>('/me'))
  } catch (thrown) {
    const problem = Problem.of(thrown)
    const kept = localStorage.getItem(KEPT)
    if (problem.noSignal && kept) {
      const last = JSON.parse(kept) as Me
      me.value = last
      system.value = last.units
    } else {
      me.value = null
      if (problem.status !== 401) signInProblem.value = problem
    }
  }
}

export async function signIn(account: string, password: string): Promise<void> {
  came(await post<Me>('/session', { account, password }))
}

export async function signOut(): Promise<void> {
  try {
    await remove('/session')
  } finally {
    gone()
  }
}

/** Shows the other units at once and tells the portal, which keeps the choice. */
export async function chooseUnits(units: 'SI' | 'IP'): Promise<void> {
  system.value = units
  try {
    came(await put<Me>('/me/units', { units }))
  } catch (thrown) {
    if (!Problem.of(thrown).noSignal) throw thrown
  }
}

/** Whether somebody holds one of these roles, for the firm or for any house. */
export function holds(...wanted: Role[]): boolean {
  return wanted.some((role) => roles.value.has(role))
}
