import { useSignal } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import { Problem } from '../api/problem.ts'
import { Wrong } from '../parts/Says.tsx'
import { Seam } from './Head.tsx'
import { signIn, signInProblem } from './session.ts'

/** The one page without a running head. */
export function SignIn() {
  const account = useRef<HTMLInputElement>(null)
  const password = useRef<HTMLInputElement>(null)
  const busy = useSignal(false)
  useEffect(() => {
    document.title = 'Sign in · Oakum'
  }, [])
  async function submit(event: Event) {
    event.preventDefault()
    busy.value = true
    signInProblem.value = undefined
    try {
      await signIn(account.current!.value.trim(), password.current!.value)
    } catch (thrown) {
      signInProblem.value = Problem.of(thrown)
      password.current?.focus()
    } finally {
      busy.value = false
    }
  }
  const problem = signInProblem.value
  return (
    <main id="main" tabIndex={-1} class="sheet sign-in">
      <p class="wordmark">
        <Seam />
        Oakum
      </p>
      <h1>One record of the house, from design through warranty.</h1>
      <form onSubmit={submit}>
        <div class="field one">
          <label for="account">Account</label>
          <div class="in">
            <input
              id="account"
              ref={account}
              autocomplete="username"
              autocapitalize="none"
              spellcheck={false}
              required
            />
          </div>
        </div>
        <div class="field one">
          <label for="password">Password</label>
          <div class="in">
            <input id="password" ref={password} type="password" autocomplete="current-password" required />
          </div>
        </div>
        {problem && <Wrong problem={problem} outcome={problem.noSignal ? 'No signal.' : 'Not signed in.'} />}
        <div class="acts">
          <button type="submit" class="b main" disabled={busy.value}>
            Sign in
          </button>
        </div>
      </form>
    </main>
  )
}
