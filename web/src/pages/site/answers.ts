import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import { sendPhoto } from '../../offline/photos.ts'
import { onSent, outbox, send } from '../../offline/queue.ts'
import { putOn, removeFrom, takeFrom } from '../../offline/store.ts'
import type { TakenPhoto } from '../../parts/Photo.tsx'
import type { AnswerSent, Check, CheckRow } from './types.ts'

const checkPath = (house: string, code: string) =>
  `/houses/${encodeURIComponent(house)}/cover-checks/${encodeURIComponent(code)}`

/** Where the answers of a row are sent. */
const answersPath = (check: Check, row: CheckRow) =>
  `${checkPath(check.houseId, check.code)}/rows/${encodeURIComponent(row.id)}/answers`

/** What somebody put beside a row before pressing an answer; kept on the device, so that an empty battery loses nothing. */
export interface Draft {
  text: string
  note: string
  photos: string[]
}

const draftKey = (check: Check, row: CheckRow) => `draft ${check.houseId} ${check.code} ${row.id}`

export const keepDraft = (check: Check, row: CheckRow, draft: Draft) =>
  putOn('kept', draftKey(check, row), draft)
export const dropDraft = (check: Check, row: CheckRow) => removeFrom('kept', draftKey(check, row))
export const draftOf = (check: Check, row: CheckRow) => takeFrom<Draft>('kept', draftKey(check, row))

/** A photo for a row, sent before the answer that names it. */
export const sendRowPhoto = (check: Check, row: CheckRow, photo: TakenPhoto) =>
  sendPhoto(check.houseId, photo, {
    place: row.place ?? '',
    card: `${check.title}: ${row.lookAt}`,
    words: `Photo for "${row.lookAt}"`,
  })

/** Keeps an answer on this device and sends it when there is signal. */
export async function sendAnswer(
  check: Check,
  row: CheckRow,
  said: Omit<AnswerSent, 'clientId' | 'takenAt'>,
): Promise<AnswerSent> {
  const body: AnswerSent = { ...said, clientId: crypto.randomUUID(), takenAt: new Date().toISOString() }
  await send({
    clientId: body.clientId,
    method: 'POST',
    path: answersPath(check, row),
    body,
    words: `Cover check ${check.number}, "${row.lookAt}"${row.place ? ` ${row.place}` : ''}`,
  })
  return body
}

/** The last answer to a row that the portal has not told us of yet: it waits here, or was sent a moment ago. */
export type Pending = Map<string, AnswerSent>

/** What this device holds of a check: pending answers by row, and a way to add one at once. */
export function usePending(check: Check, reload: () => Promise<void>) {
  const sent = useSignal<Pending>(new Map())
  const path = checkPath(check.houseId, check.code)
  useEffect(
    () =>
      onSent((item) => {
        if (item.path.startsWith(`${path}/`)) void reload()
      }),
    [path, reload],
  )
  const pending: Pending = new Map()
  const known = new Set(check.rows.flatMap((r) => r.answers.map((a) => a.id)))
  const rejected = new Set(outbox.value.filter((w) => w.refused).map((w) => w.clientId))
  for (const row of check.rows) {
    const mine = outbox.value.filter((w) => w.path === answersPath(check, row))
    const answers = mine.map((w) => w.body as AnswerSent)
    const own = sent.value.get(row.id)
    if (own && !answers.some((a) => a.clientId === own.clientId)) answers.push(own)
    const last = answers.filter((a) => !known.has(a.clientId) && !rejected.has(a.clientId)).at(-1)
    if (last) pending.set(row.id, last)
  }
  const add = (row: string, answer: AnswerSent) => {
    sent.value = new Map(sent.value).set(row, answer)
  }
  return { pending, add }
}
