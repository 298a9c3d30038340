import { useSignal } from '@preact/signals'
import { useEffect, useId } from 'preact/hooks'
import { post, put } from '../../api/http.ts'
import { Problem } from '../../api/problem.ts'
import { sendPhoto } from '../../offline/photos.ts'
import { onSent, outbox, send } from '../../offline/queue.ts'
import { PhotoInput } from '../../parts/Photo.tsx'
import { Wrong } from '../../parts/Says.tsx'
import { Status } from '../../parts/Status.tsx'
import { Thumbs } from '../../parts/Thumbs.tsx'
import { type Role, roleWord } from '../../shell/session.ts'
import { dayWords } from '../../units/days.ts'
import { daysAfter } from './Clocks.tsx'
import type { LooseEnd } from './types.ts'

const MENDERS: Role[] = ['SITE_LEAD', 'MECHANICAL_CONTRACTOR', 'PRINCIPAL', 'DESIGNER', 'OFFICE_MANAGER']

const closingOf = (e: LooseEnd) => `${pathOf(e)}/closing`

const pathOf = (e: LooseEnd) => `/houses/${encodeURIComponent(e.houseId)}/loose-ends/${e.id}`

/** Loose ends, each with who mends it and by when; open ones can be moved and closed. */
export function LooseEndList({ items, onChange }: { items: LooseEnd[]; onChange: () => void }) {
  useEffect(
    () => onSent((item) => items.some((e) => item.path === closingOf(e)) && onChange()),
    [items, onChange],
  )
  const waits = (e: LooseEnd) => outbox.value.some((w) => w.path === closingOf(e) && !w.refused)
  return (
    <ul class="matters">
      {items.map((e) => (
        <li key={e.id}>
          <div>
            {e.closed ? (
              <Status is="stands">Closed</Status>
            ) : waits(e) ? (
              <Status is="wait">Closing waits on this device</Status>
            ) : e.overdue ? (
              <Status is="now">Overdue</Status>
            ) : (
              <Status is="open">By {dayWords(e.dueOn).replace(/ \d{4}$/, '')}</Status>
            )}
          </div>
          <div>
            <p>{e.title}</p>
            <p class="note">
              {e.because && `${e.because} `}
              {roleWord[e.ownerRole as Role] ?? e.ownerRole}
              {e.overdue && !e.closed && `, was due ${dayWords(e.dueOn)}`}
              {e.origin === 'COVER_CHECK' && ' · from a cover check'}
              {e.origin === 'SETTING_TO_WORK' && ' · from setting to work'}
            </p>
            {e.closed && (
              <p class="note">
                {e.closedBy}, {dayWords(e.closedAt ?? undefined)}: {e.closeReason}
                {e.asLeft && ` · as left: ${e.asLeft}`}
              </p>
            )}
            {!e.closed && !waits(e) && e.actions.length > 0 && <Acts end={e} onChange={onChange} />}
          </div>
        </li>
      ))}
    </ul>
  )
}

function Acts({ end, onChange }: { end: LooseEnd; onChange: () => void }) {
  const id = useId()
  const open = useSignal<'close' | 'move' | undefined>(undefined)
  const reason = useSignal('')
  const asLeft = useSignal('')
  const photo = useSignal<string | undefined>(undefined)
  const title = useSignal(end.title)
  const role = useSignal(end.ownerRole)
  const due = useSignal(end.dueOn)
  const problem = useSignal<Problem | undefined>(undefined)
  const ifMatch = `"${end.version}"`
  async function act(work: () => Promise<unknown>) {
    problem.value = undefined
    try {
      await work()
      open.value = undefined
      onChange()
    } catch (thrown) {
      problem.value = Problem.of(thrown)
    }
  }
  /** Kept on this device first: a basement has no signal. */
  const close = () =>
    act(() =>
      send({
        method: 'POST',
        path: closingOf(end),
        body: { reason: reason.value, asLeft: asLeft.value.trim() || null, afterPhoto: photo.value ?? null },
        ifMatch,
        words: `Closing "${end.title}"`,
      }),
    )
  const move = () =>
    act(() => put(pathOf(end), { title: title.value, ownerRole: role.value, dueOn: due.value }, { ifMatch }))
  return (
    <div class="end-acts">
      <div class="acts">
        {end.actions.some((a) => a.startsWith('close')) && (
          <button
            type="button"
            class="b"
            aria-expanded={open.value === 'close'}
            onClick={() => {
              open.value = open.value === 'close' ? undefined : 'close'
            }}
          >
            Close it
          </button>
        )}
        {end.actions.some((a) => a.startsWith('change')) && (
          <button
            type="button"
            class="b"
            aria-expanded={open.value === 'move'}
            onClick={() => {
              open.value = open.value === 'move' ? undefined : 'move'
            }}
          >
            Another day or role
          </button>
        )}
      </div>
      {open.value === 'close' && (
        <form
          onSubmit={(e) => {
            e.preventDefault()
            void close()
          }}
        >
          <label for={`${id}-r`}>What was done</label>
          <textarea
            id={`${id}-r`}
            rows={2}
            required
            value={reason.value}
            onInput={(e) => {
              reason.value = e.currentTarget.value
            }}
          />
          <label for={`${id}-l`}>As left, such as a value read afterwards</label>
          <input
            id={`${id}-l`}
            value={asLeft.value}
            onInput={(e) => {
              asLeft.value = e.currentTarget.value
            }}
          />
          <PhotoInput
            words={
              photo.value
                ? 'Photo taken; another one'
                : `Photo of how it is now${end.wantsAfterPhoto ? ' (wanted)' : ''}`
            }
            onPhoto={async (taken) => {
              photo.value = await sendPhoto(end.houseId, taken, {
                card: end.title,
                words: `Photo for "${end.title}"`,
              })
            }}
          />
          {photo.value && <Thumbs house={end.houseId} photos={[photo.value]} />}
          <button type="submit" class="b main">
            Close this loose end
          </button>
        </form>
      )}
      {open.value === 'move' && (
        <form
          onSubmit={(e) => {
            e.preventDefault()
            void move()
          }}
        >
          <label for={`${id}-t`}>What is open</label>
          <textarea
            id={`${id}-t`}
            rows={2}
            required
            value={title.value}
            onInput={(e) => {
              title.value = e.currentTarget.value
            }}
          />
          <label for={`${id}-w`}>Who mends it</label>
          <RoleChoice id={`${id}-w`} value={role.value} onChoose={(r) => (role.value = r)} />
          <label for={`${id}-d`}>By when</label>
          <input
            id={`${id}-d`}
            type="date"
            required
            value={due.value}
            onInput={(e) => {
              due.value = e.currentTarget.value
            }}
          />
          <button type="submit" class="b main">
            Keep
          </button>
        </form>
      )}
      {problem.value && (
        <Wrong problem={problem.value} outcome={problem.value.noSignal ? 'No signal.' : 'Not saved.'} />
      )}
    </div>
  )
}

function RoleChoice({
  id,
  value,
  onChoose,
}: {
  id: string
  value: string
  onChoose: (role: string) => void
}) {
  return (
    <select id={id} value={value} onChange={(e) => onChoose(e.currentTarget.value)}>
      {MENDERS.map((r) => (
        <option key={r} value={r}>
          {roleWord[r]}
        </option>
      ))}
    </select>
  )
}

/** Something that somebody saw and that must not be forgotten. */
export function NewLooseEnd({ house, today, onMade }: { house: string; today: string; onMade: () => void }) {
  const id = useId()
  const title = useSignal('')
  const role = useSignal<string>('SITE_LEAD')
  const due = useSignal(daysAfter(today, 7))
  const problem = useSignal<Problem | undefined>(undefined)
  async function submit(event: Event) {
    event.preventDefault()
    problem.value = undefined
    try {
      await post(
        `/houses/${encodeURIComponent(house)}/loose-ends`,
        {
          title: title.value,
          because: null,
          ownerRole: role.value,
          dueOn: due.value,
          wantsAfterPhoto: false,
        },
        { idempotencyKey: crypto.randomUUID() },
      )
      title.value = ''
      onMade()
    } catch (thrown) {
      problem.value = Problem.of(thrown)
    }
  }
  return (
    <form class="end-acts" onSubmit={(e) => void submit(e)}>
      <label for={`${id}-t`}>What is open, in one sentence</label>
      <textarea
        id={`${id}-t`}
        rows={2}
        required
        value={title.value}
        onInput={(e) => {
          title.value = e.currentTarget.value
        }}
      />
      <label for={`${id}-w`}>Who mends it</label>
      <RoleChoice id={`${id}-w`} value={role.value} onChoose={(r) => (role.value = r)} />
      <label for={`${id}-d`}>By when</label>
      <input
        id={`${id}-d`}
        type="date"
        required
        value={due.value}
        onInput={(e) => {
          due.value = e.currentTarget.value
        }}
      />
      {problem.value && <Wrong problem={problem.value} outcome="Not saved." />}
      <button type="submit" class="b">
        Add a loose end
      </button>
    </form>
  )
}
