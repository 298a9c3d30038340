import { type ReadonlySignal, signal } from '@preact/signals'
import { useEffect, useMemo } from 'preact/hooks'
import { type Answer, call } from './http.ts'
import { Problem } from './problem.ts'

/** Something read from the portal: what came last stays while it is read again. */
export interface Resource<T> {
  data: ReadonlySignal<T | undefined>
  problem: ReadonlySignal<Problem | undefined>
  loading: ReadonlySignal<boolean>
  /** The entity tag of what came last. */
  etag: ReadonlySignal<string | null>
  reload(): Promise<void>
  /** Puts in its place what a change answered with. */
  set(data: T, etag?: string | null): void
}

type Read<T> = (path: string, signal: AbortSignal) => Promise<Answer<T>>

const one = <T>(path: string, signal: AbortSignal) => call<T>('GET', path, { signal })

/** A whole list that comes in pages. */
export async function everyPage<T>(path: string, signal: AbortSignal): Promise<Answer<{ items: T[] }>> {
  const items: T[] = []
  let next: string | null = null
  do {
    const from: string = next === null ? '' : `&cursor=${encodeURIComponent(next)}`
    const page: { items: T[]; next: string | null } = (
      await call<{ items: T[]; next: string | null }>('GET', `${path}?limit=200${from}`, { signal })
    ).data
    items.push(...page.items)
    next = page.next
  } while (next !== null)
  return { data: { items }, etag: null }
}

/** Reads a path of the portal, without a component. */
export function resource<T>(path: string, read: Read<T> = one): Resource<T> & { stop(): void } {
  const data = signal<T | undefined>(undefined)
  const problem = signal<Problem | undefined>(undefined)
  const loading = signal(true)
  const etag = signal<string | null>(null)
  let running: AbortController | undefined
  async function reload() {
    running?.abort()
    const mine = new AbortController()
    running = mine
    loading.value = true
    try {
      const answer = await read(path, mine.signal)
      if (running !== mine) return
      data.value = answer.data
      etag.value = answer.etag
      problem.value = undefined
      loading.value = false
    } catch (thrown) {
      if (running !== mine || mine.signal.aborted) return
      problem.value = Problem.of(thrown)
      loading.value = false
    }
  }
  return {
    data,
    problem,
    loading,
    etag,
    reload,
    set(next, tag = null) {
      data.value = next
      etag.value = tag
    },
    stop: () => running?.abort(),
  }
}

/** Reads a path of the portal while the component stands; another path is read anew. */
export function useResource<T>(path: string, read: Read<T> = one): Resource<T> {
  const r = useMemo(() => resource<T>(path, read), [path, read])
  useEffect(() => {
    void r.reload()
    return r.stop
  }, [r])
  return r
}

/** Reads a list that comes in pages, all of it. */
export const useList = <T>(path: string): Resource<{ items: T[] }> => useResource(path, everyPage<T>)
