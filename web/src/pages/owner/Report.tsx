import { useSignal } from '@preact/signals'
import { useId } from 'preact/hooks'
import { post } from '../../api/http.ts'
import { Problem } from '../../api/problem.ts'
import { useResource } from '../../api/resource.ts'
import type { OfferedSlot, OfferedSlots, OwnerReport } from '../../api/schema.d.ts'
import { sendPhoto } from '../../offline/photos.ts'
import { flush, outbox } from '../../offline/queue.ts'
import { PhotoInput } from '../../parts/Photo.tsx'
import { Cautions } from '../../parts/Result.tsx'
import { Of, Wrong } from '../../parts/Says.tsx'
import { Thumbs } from '../../parts/Thumbs.tsx'
import { holds } from '../../shell/session.ts'
import { dayWords } from '../../units/days.ts'

const MOST_PHOTOS = 10

/** What the owner sees and wants to tell, with photos and one of the times that the office offers; and the answers. */
export function Report({ house, dayOf }: { house: string; dayOf: (iso: string) => string }) {
  const base = `/houses/${encodeURIComponent(house)}/reports`
  const offered = useResource<OfferedSlots>(`${base}/slots`)
  const told = useResource<{ items: OwnerReport[] }>(base)
  return (
    <section aria-labelledby="tell">
      <h2 id="tell">Tell us something</h2>
      <Of resource={offered}>
        {(o) => (
          <>
            <Cautions cautions={o.cautions} />
            {o.actions.includes('report') && (
              <Tell
                house={house}
                base={base}
                slots={o.slots}
                dayOf={dayOf}
                onTold={() => void told.reload()}
              />
            )}
          </>
        )}
      </Of>
      <Of resource={told}>
        {({ items }) =>
          items.length === 0 ? null : (
            <>
              <h3>{holds('OWNER') ? 'What you told us' : 'What was told'}</h3>
              <ul class="plain-list told">
                {items.map((r) => (
                  <Told key={r.id} report={r} dayOf={dayOf} onAnswered={() => void told.reload()} />
                ))}
              </ul>
            </>
          )
        }
      </Of>
    </section>
  )
}

function Told({
  report: r,
  dayOf,
  onAnswered,
}: {
  report: OwnerReport
  dayOf: (iso: string) => string
  onAnswered: () => void
}) {
  return (
    <li>
      <p>
        {dayWords(r.reportedAt)}: {r.what}
        {r.inHouse && ` (${r.inHouse})`}
      </p>
      {r.photos.length > 0 && <Thumbs house={r.house} photos={r.photos} />}
      {r.answer ? (
        <blockquote>
          <p>{r.answer}</p>
          <footer>
            {r.answeredBy}, {dayWords(r.answeredAt ?? undefined)}
          </footer>
        </blockquote>
      ) : (
        <p class="note">
          {r.slot && `Wished: ${dayOf(r.slot.day)}, ${r.slotLabel}. `}
          {r.preference && `${r.preference}. `}To be answered by {dayOf(r.answerBy)}.
        </p>
      )}
      {r.actions.includes('answer-report') && <AnswerForm report={r} onAnswered={onAnswered} />}
    </li>
  )
}

/** The office's answer, and the day on which somebody comes, where somebody must. */
function AnswerForm({ report, onAnswered }: { report: OwnerReport; onAnswered: () => void }) {
  const id = useId()
  const text = useSignal('')
  const day = useSignal(report.slot?.day ?? '')
  const problem = useSignal<Problem | undefined>(undefined)
  const busy = useSignal(false)
  async function answer(event: Event) {
    event.preventDefault()
    busy.value = true
    problem.value = undefined
    try {
      await post(`/houses/${encodeURIComponent(report.house)}/reports/${report.id}/answer`, {
        text: text.value.trim(),
        visitOn: day.value || null,
      })
      onAnswered()
    } catch (thrown) {
      problem.value = Problem.of(thrown)
    } finally {
      busy.value = false
    }
  }
  return (
    <form class="end-acts tell no-print" onSubmit={(e) => void answer(e)}>
      <label for={`${id}-t`}>Answer</label>
      <textarea
        id={`${id}-t`}
        rows={2}
        required
        value={text.value}
        onInput={(e) => (text.value = e.currentTarget.value)}
      />
      <label for={`${id}-d`}>Somebody comes on (may be left out)</label>
      <input
        id={`${id}-d`}
        type="date"
        value={day.value}
        onInput={(e) => (day.value = e.currentTarget.value)}
      />
      {problem.value && <Wrong problem={problem.value} outcome="Not answered." />}
      <button type="submit" class="b" disabled={busy.value || !text.value.trim()}>
        Send the answer
      </button>
    </form>
  )
}

interface TellProps {
  house: string
  base: string
  slots: OfferedSlot[]
  dayOf: (iso: string) => string
  onTold: () => void
}

function Tell({ house, base, slots, dayOf, onTold }: TellProps) {
  const id = useId()
  const what = useSignal('')
  const where = useSignal('')
  const wish = useSignal('')
  const slot = useSignal<OfferedSlot | undefined>(undefined)
  const photos = useSignal<string[]>([])
  const missing = useSignal(false)
  const problem = useSignal<Problem | undefined>(undefined)
  const said = useSignal('')
  const busy = useSignal(false)
  async function tell(event: Event) {
    event.preventDefault()
    missing.value = what.value.trim() === ''
    said.value = ''
    problem.value = undefined
    if (missing.value) return
    busy.value = true
    try {
      // photos go first, for the report names them
      await flush()
      if (outbox.value.some((w) => photos.value.includes(w.clientId)))
        throw new Problem(
          0,
          'no-signal',
          'The photos have not gone yet. Everything stays here; try again later.',
        )
      const made = await post<OwnerReport>(base, {
        what: what.value.trim(),
        inHouse: where.value.trim() || null,
        preference: wish.value.trim() || null,
        photos: photos.value,
        slot: slot.value ? { day: slot.value.day, half: slot.value.half } : null,
      })
      what.value = ''
      where.value = ''
      wish.value = ''
      slot.value = undefined
      photos.value = []
      said.value = `We have it. We answer by ${dayOf(made.answerBy)}.`
      onTold()
    } catch (thrown) {
      problem.value = Problem.of(thrown)
    } finally {
      busy.value = false
    }
  }
  return (
    <form class="end-acts tell" noValidate onSubmit={(e) => void tell(e)}>
      <label for={`${id}-w`}>What do you see, hear or smell?</label>
      <textarea
        id={`${id}-w`}
        rows={3}
        value={what.value}
        aria-invalid={missing.value && !what.value.trim() ? 'true' : undefined}
        aria-errormessage={missing.value && !what.value.trim() ? `${id}-e` : undefined}
        onInput={(e) => (what.value = e.currentTarget.value)}
      />
      {missing.value && !what.value.trim() && (
        <p class="says" id={`${id}-e`} role="alert">
          <b>Not sent.</b> Say in a few words what it is.
        </p>
      )}
      <label for={`${id}-p`}>Where in the house? (may be left out)</label>
      <input
        id={`${id}-p`}
        autocomplete="off"
        maxLength={200}
        value={where.value}
        onInput={(e) => (where.value = e.currentTarget.value)}
      />
      {photos.value.length < MOST_PHOTOS && (
        <PhotoInput
          words={photos.value.length > 0 ? 'Another photo' : 'Take a photo of it'}
          onPhoto={async (taken) => {
            photos.value = [
              ...photos.value,
              await sendPhoto(house, taken, { card: 'told by the owner', words: 'Your photo' }),
            ]
          }}
        />
      )}
      {photos.value.length > 0 && <Thumbs house={house} photos={photos.value} />}
      {slots.length > 0 && (
        <fieldset class="times">
          <legend>When may we come, if we must?</legend>
          {[undefined, ...slots].map((s) => {
            const key = s ? `${s.day} ${s.half}` : 'none'
            return (
              <label key={key}>
                <input
                  type="radio"
                  name={`${id}-s`}
                  checked={slot.value === s}
                  onChange={() => (slot.value = s)}
                />{' '}
                <span>{s ? `${dayOf(s.day)}, ${s.halfLabel}` : 'Ask me first'}</span>
                {s && <span class="note"> {s.because}</span>}
              </label>
            )
          })}
        </fieldset>
      )}
      <label for={`${id}-x`}>Anything else we should know? (may be left out)</label>
      <input
        id={`${id}-x`}
        autocomplete="off"
        maxLength={500}
        value={wish.value}
        onInput={(e) => (wish.value = e.currentTarget.value)}
      />
      {problem.value && (
        <Wrong problem={problem.value} outcome={problem.value.noSignal ? 'No signal.' : 'Not sent.'} />
      )}
      <p role="status" class="say">
        {said.value}
      </p>
      <button type="submit" class="b main" disabled={busy.value}>
        Send it to the office
      </button>
    </form>
  )
}
