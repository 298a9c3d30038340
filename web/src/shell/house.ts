import { signal } from '@preact/signals'
import { get } from '../api/http.ts'
import type { HouseView } from '../api/schema.d.ts'

/** The house whose pages are open; undefined on pages of the firm. */
export const house = signal<HouseView | undefined>(undefined)

let asked: string | undefined

/** Opens the line of a house in the head, or closes it. */
export async function openHouse(id: string | undefined): Promise<void> {
  if (id === asked && (id === undefined || house.peek()?.id === id)) return
  asked = id
  if (house.peek()?.id !== id) house.value = undefined
  if (id === undefined) return
  try {
    const line = await get<HouseView>(`/houses/${encodeURIComponent(id)}`)
    if (asked === id) house.value = line
  } catch {
    // the page itself says what it could not read; the head only stays without its line
  }
}
