import { computed, signal } from '@preact/signals'
import { call } from '../api/http.ts'
import { Problem } from '../api/problem.ts'
import { allOn, putOn, removeFrom } from './store.ts'

/** Something to send that must not be lost, kept on this device until the portal has acknowledged it. */
export interface Waiting {
  /** Made here; the portal takes the same one only once, however often it is sent. */
  clientId: string
  /** Order of sending. */
  madeAt: number
  method: 'POST' | 'PUT'
  path: string
  /** Sent as JSON; or as a form where a file belongs to it. */
  body?: unknown
  file?: { field: string; name: string; blob: Blob }
  /** The version that the person saw; the portal refuses the change where that moved meanwhile. */
  ifMatch?: string
  /** For the person: "Answer to row 4 of cover check 9". */
  words: string
  /** Why the portal refused it; it stays until somebody has seen that. */
  refused?: string
}

/** Everything that is kept on this device to be sent, oldest first. */
export const outbox = signal<Waiting[]>([])
/** How many wait, without the refused ones. */
export const waiting = computed(() => outbox.value.filter((w) => !w.refused).length)
/** What the portal refused: the person must look at these. */
export const refused = computed(() => outbox.value.filter((w) => w.refused))

async function count() {
  outbox.value = (await allOn<Waiting>('outbox')).sort((a, b) => a.madeAt - b.madeAt)
}

/** Keeps it on this device and sends it as soon as there is signal. Resolves once it is kept. */
export async function send(
  item: Omit<Waiting, 'madeAt' | 'clientId'> & { clientId?: string },
): Promise<string> {
  const clientId = item.clientId ?? crypto.randomUUID()
  await putOn('outbox', clientId, { ...item, clientId, madeAt: Date.now() } satisfies Waiting)
  await count()
  void flush()
  return clientId
}

/** Takes a refused one off this device, after somebody has seen why. */
export async function dismiss(clientId: string): Promise<void> {
  await removeFrom('outbox', clientId)
  await count()
}

const sentListeners = new Set<(item: Waiting) => void>()
/** Calls back after each one that the portal has acknowledged. */
export function onSent(listener: (item: Waiting) => void): () => void {
  sentListeners.add(listener)
  return () => sentListeners.delete(listener)
}

function bodyOf(item: Waiting): unknown {
  if (!item.file) return item.body
  const form = new FormData()
  for (const [name, value] of Object.entries((item.body ?? {}) as Record<string, unknown>))
    form.append(name, String(value))
  form.append(item.file.field, item.file.blob, item.file.name)
  return form
}

/** A phone says "online" before anything gets through, and a portal may be restarting: it is tried again, ever more rarely. */
const FIRST_PAUSE_MS = 2000
const LONGEST_PAUSE_MS = 60_000
let pause = FIRST_PAUSE_MS
let retry: ReturnType<typeof setTimeout> | undefined

let flushing: Promise<void> | undefined

/** Sends what waits, oldest first. Stops where there is no signal; what the portal refused stays, with the reason. */
export function flush(): Promise<void> {
  clearTimeout(retry)
  flushing ??= run().finally(() => {
    flushing = undefined
    if (waiting.value === 0) pause = FIRST_PAUSE_MS
    else {
      retry = setTimeout(() => void flush(), pause)
      pause = Math.min(LONGEST_PAUSE_MS, pause * 2)
    }
  })
  return flushing
}

async function run(): Promise<void> {
  const all = (await allOn<Waiting>('outbox')).filter((w) => !w.refused).sort((a, b) => a.madeAt - b.madeAt)
  for (const item of all) {
    try {
      await call(item.method, item.path, {
        body: bodyOf(item),
        idempotencyKey: item.clientId,
        ifMatch: item.ifMatch,
      })
      await removeFrom('outbox', item.clientId)
      for (const listener of sentListeners) listener(item)
    } catch (thrown) {
      const problem = Problem.of(thrown)
      // no signal, signed out, or the portal itself is in trouble: it goes later, nothing is lost
      if (problem.noSignal || problem.status === 401 || problem.status === 429 || problem.status >= 500) break
      await putOn('outbox', item.clientId, { ...item, refused: problem.message } satisfies Waiting)
    }
    await count()
  }
  await count()
}

/** Begins sending what an earlier visit left, and again whenever the signal comes back. */
export async function startQueue(): Promise<void> {
  if (!('indexedDB' in globalThis)) return
  addEventListener('online', () => {
    pause = FIRST_PAUSE_MS
    void flush()
  })
  await count()
  if (waiting.value > 0) await flush()
}
