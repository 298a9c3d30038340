import { signal } from '@preact/signals'

export type Scheme = 'device' | 'light' | 'dark'

const KEPT = 'oakum.scheme'
const kept = localStorage.getItem(KEPT)

/** Light or dark: as the device has it, unless somebody chose. */
export const scheme = signal<Scheme>(kept === 'light' || kept === 'dark' ? kept : 'device')

/** Site pages are light whatever was chosen: they are read in the sun. */
const always = signal<'light' | undefined>(undefined)

export function chooseScheme(next: Scheme) {
  scheme.value = next
  if (next === 'device') localStorage.removeItem(KEPT)
  else localStorage.setItem(KEPT, next)
  apply()
}

export function keepLight(light: boolean) {
  always.value = light ? 'light' : undefined
  apply()
}

export function apply() {
  const now = always.value ?? (scheme.value === 'device' ? undefined : scheme.value)
  if (now) document.documentElement.dataset.scheme = now
  else delete document.documentElement.dataset.scheme
}
