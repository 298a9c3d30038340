import { effect, signal } from '@preact/signals'
import { dismiss, outbox, refused, type Waiting, waiting } from '../offline/queue.ts'

const online = signal(navigator.onLine)
addEventListener('online', () => (online.value = true))
addEventListener('offline', () => (online.value = false))

/** What goes at once is not worth a word that moves the page under somebody's finger. */
const PATIENCE_MS = 3000
const slow = signal(false)
let timer: ReturnType<typeof setTimeout> | undefined
effect(() => {
  const some = waiting.value > 0
  clearTimeout(timer)
  if (some) {
    timer = setTimeout(() => {
      slow.value = true
    }, PATIENCE_MS)
  } else slow.value = false
})

/** "phone" where it is held in a hand. */
const thisDevice = () => (Math.min(innerWidth, screen.width) < 640 ? 'this phone' : 'this device')

function counted(items: Waiting[]): string {
  const photos = items.filter((w) => w.file).length
  const others = items.length - photos
  const parts = [
    others > 0 && `${others} ${others === 1 ? 'entry' : 'entries'}`,
    photos > 0 && `${photos} ${photos === 1 ? 'photo' : 'photos'}`,
  ].filter(Boolean)
  return parts.length > 1 ? `: ${parts.join(', ')}` : ''
}

/** Says how much waits on this device, and that nothing is lost; and what the portal refused of it, with the reason. */
export function NoSignal() {
  const items = outbox.value.filter((w) => !w.refused)
  const count = items.length
  const shown = online.value ? count > 0 && slow.value : true
  return (
    <>
      {shown && (
        <div class="sheet">
          <p class="queue" role="status">
            <b>{online.value ? 'Sending.' : 'No signal.'}</b>{' '}
            {count === 0
              ? 'Nothing is waiting.'
              : `${count} waiting on ${thisDevice()}${counted(items)}. Nothing is lost; ${
                  online.value ? 'they are going now.' : 'they go when there is signal.'
                }`}
          </p>
        </div>
      )}
      {refused.value.map((w) => (
        <div key={w.clientId} class="sheet">
          <div class="queue refused-one" role="alert">
            <p>
              <b>Not taken.</b> {w.words}: {w.refused}
            </p>
            <button type="button" class="b" onClick={() => void dismiss(w.clientId)}>
              I have seen it
            </button>
          </div>
        </div>
      ))}
    </>
  )
}
