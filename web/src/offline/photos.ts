import type { TakenPhoto } from '../parts/Photo.tsx'
import { send } from './queue.ts'

/** What is written on a photo's location card, beside its house and its day. */
export interface PhotoCard {
  card: string
  place?: string
  /** For the person, while it waits: 'Photo for "Rack shut tight"'. */
  words: string
}

/** Keeps a photo on this device and sends it before whatever names it. Answers its id. */
export async function sendPhoto(
  house: string,
  photo: TakenPhoto,
  { card, place, words }: PhotoCard,
): Promise<string> {
  const clientId = crypto.randomUUID()
  await send({
    clientId,
    method: 'POST',
    path: `/houses/${encodeURIComponent(house)}/photos`,
    body: { clientId, place: place ?? '', card, takenAt: photo.takenAt },
    file: { field: 'file', name: `${clientId}.jpg`, blob: photo.blob },
    words,
  })
  return clientId
}
