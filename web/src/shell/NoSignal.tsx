import { signal } from '@preact/signals'
import { waiting } from '../offline/queue.ts'

const online = signal(navigator.onLine)
addEventListener('online', () => (online.value = true))
addEventListener('offline', () => (online.value = false))

/** Says how much waits on this device, and that nothing is lost. */
export function NoSignal() {
  const count = waiting.value
  if (online.value && count === 0) return null
  const what = count === 0 ? 'Nothing is waiting.' : `${count} waiting on this device. Nothing is lost; `
  return (
    <div class="sheet">
      <p class="queue" role="status">
        <b>{online.value ? 'Sending.' : 'No signal.'}</b> {what}
        {count > 0 && (online.value ? 'they are going now.' : 'they go when there is signal.')}
      </p>
    </div>
  )
}
