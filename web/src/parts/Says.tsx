import type { ComponentChildren } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import type { Problem } from '../api/problem.ts'
import type { Resource } from '../api/resource.ts'

/** Nothing here yet: what is missing, and the first step. */
export function NothingYet({ children }: { children: ComponentChildren }) {
  return <p class="say">{children}</p>
}

/**
 * Something is being read or computed. Nothing shows for 300 ms; then the place is hatched at its final size, with how
 * far it is.
 */
export function Waiting({ what = 'Reading the record.', onStop }: { what?: string; onStop?: () => void }) {
  const [late, setLate] = useState(false)
  useEffect(() => {
    const timer = setTimeout(() => setLate(true), 300)
    return () => clearTimeout(timer)
  }, [])
  if (!late) return null
  return (
    <div role="status">
      <div class="wait" />
      <p class="note">
        {what}{' '}
        {onStop && (
          <button type="button" class="plain" onClick={onStop}>
            Stop
          </button>
        )}
      </p>
    </div>
  )
}

const OUTCOME: Record<number, string> = {
  0: 'No signal.',
  403: 'Not for this account.',
  404: 'Not found.',
  409: 'Not done.',
  412: 'Not saved.',
  422: 'Refused.',
  429: 'Too many tries.',
}

/** A refusal: the outcome first, then why, then the way on. */
export function Wrong({
  problem,
  outcome,
  onAgain,
  children,
}: {
  problem: Problem
  outcome?: string
  onAgain?: () => void
  children?: ComponentChildren
}) {
  return (
    <div class="say wrong" role="alert">
      <p>
        <b>{outcome ?? OUTCOME[problem.status] ?? 'It went wrong.'}</b> {problem.message}{' '}
        {onAgain && (
          <button type="button" class="plain" onClick={onAgain}>
            Try again
          </button>
        )}
      </p>
      {children}
    </div>
  )
}

/** What a resource has: its matter, or waiting, or why not. What came before stays while it is read again. */
export function Of<T>({
  resource,
  what,
  children,
}: {
  resource: Resource<T>
  what?: string
  children: (data: T) => ComponentChildren
}) {
  const data = resource.data.value
  const problem = resource.problem.value
  return (
    <>
      {problem && <Wrong problem={problem} onAgain={() => void resource.reload()} />}
      {data === undefined ? !problem && <Waiting what={what} /> : children(data)}
    </>
  )
}
