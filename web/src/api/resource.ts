import { type ReadonlySignal, signal } from '@preact/signals'
import { useEffect, useMemo } from 'preact/hooks'
import { call } from './http.ts'
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

/** Reads a path of the portal, without a component. */
export function resource<T>(path: string): Resource<T> & { stop(): void } {
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
      const answer = await call<T>('GET', path, { signal: mine.signal })
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
export function useResource<T>(path: string): Resource<T> {
  const r = useMemo(() => resource<T>(path), [path])
  useEffect(() => {
    void r.reload()
    return r.stop
  }, [r])
  return r
}
