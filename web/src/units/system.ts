import { signal } from '@preact/signals'

/** The habit in which numbers are shown. What travels and what is kept is always SI. */
export type System = 'SI' | 'IP'

export const system = signal<System>('SI')

export const other = (s: System): System => (s === 'SI' ? 'IP' : 'SI')
