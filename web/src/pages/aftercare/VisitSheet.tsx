import { useSignal } from '@preact/signals'
import { useId } from 'preact/hooks'
import { post } from '../../api/http.ts'
import { Problem } from '../../api/problem.ts'
import { sendPhoto } from '../../offline/photos.ts'
import { flush } from '../../offline/queue.ts'
import { PhotoInput } from '../../parts/Photo.tsx'
import { Wrong } from '../../parts/Says.tsx'
import { Status } from '../../parts/Status.tsx'
import { Thumbs } from '../../parts/Thumbs.tsx'
import { dayWords } from '../../units/days.ts'
import { figure, parseNumber } from '../../units/quantity.ts'
import { type FilterFollowUp, sizeWords, type Visit } from './types.ts'

/** What is taken along and looked at, on paper or on a phone. */
export function VisitSheet({ visit, filters }: { visit: Visit; filters: FilterFollowUp[] }) {
  return (
    <div class="visit-sheet">
      <dl class="facts">
        <div>
          <dt>why</dt>
          <dd>{visit.label}</dd>
        </div>
        <div>
          <dt>day</dt>
          <dd>
            {visit.plannedOn ? dayWords(visit.plannedOn) : 'not planned'}, due before {dayWords(visit.dueOn)}
          </dd>
        </div>
        {filters.map((f) => (
          <div key={f.filter}>
            <dt>take along</dt>
            <dd>
              <b>{sizeWords(f)}</b>, {f.grade}
              {f.shelfPlace && `, shelf ${f.shelfPlace}`}
              <span class="from">
                filter load {figure(f.load, 2)}; clean mark {figure(f.cleanHighPa, 1)} Pa at high,{' '}
                {figure(f.cleanLowPa, 1)} Pa at low; design {figure(f.designHighPa, 1)} and{' '}
                {figure(f.designLowPa, 1)} Pa
              </span>
            </dd>
          </div>
        ))}
      </dl>
      {filters.map((f) => (
        <table key={f.filter} class="t blanks">
          <caption>{f.inHouse}</caption>
          <thead>
            <tr>
              <th scope="col">Pa</th>
              <th scope="col">at high flow</th>
              <th scope="col">at low flow</th>
            </tr>
          </thead>
          <tbody>
            <tr>
              <th scope="row">as-found</th>
              <td />
              <td />
            </tr>
            <tr>
              <th scope="row">as-left</th>
              <td />
              <td />
            </tr>
            <tr>
              <th scope="row">design</th>
              <td>{figure(f.designHighPa, 1)}</td>
              <td>{figure(f.designLowPa, 1)}</td>
            </tr>
          </tbody>
        </table>
      ))}
      {filters.length > 0 && (
        <ul class="look-list">
          <li>Fan off at its disconnect before the rack is opened.</li>
          <li>Old filter: a photo of both faces with the date.</li>
          <li>Size and arrow read off the new filter; the arrow points to the fan.</li>
          <li>Rack shut tight; fan speed as it was.</li>
          <li>Anything seen: water, noise, smell.</li>
        </ul>
      )}
    </div>
  )
}

interface ClosingProps {
  visit: Visit
  filters: FilterFollowUp[]
  today: string
  onClosed: (visit: Visit) => void
}

const DROPS = [
  ['asFound.highPa', 'as-found, high flow'],
  ['asFound.lowPa', 'as-found, low flow'],
  ['asLeft.highPa', 'as-left, high flow'],
  ['asLeft.lowPa', 'as-left, low flow'],
] as const

/** Closing a visit with two numbers before and two after; refused where the new filter does not read as designed. */
export function VisitClosing({ visit, filters, today, onClosed }: ClosingProps) {
  const id = useId()
  const doneOn = useSignal(visit.plannedOn && visit.plannedOn <= today ? visit.plannedOn : today)
  const typed = useSignal<Record<string, string>>({})
  const note = useSignal('')
  const photos = useSignal<Record<string, string[]>>({})
  const problem = useSignal<Problem | undefined>(undefined)
  const text = (name: string) => typed.value[name] ?? ''
  const type = (name: string, value: string) => {
    typed.value = { ...typed.value, [name]: value }
  }

  async function submit(event: Event) {
    event.preventDefault()
    problem.value = undefined
    const bad = filters
      .flatMap((f) => DROPS.map(([of, words]) => [`${f.filter} ${of}`, words] as const))
      .filter(([name]) => Number.isNaN(parseNumber(text(name))))
    if (bad.length > 0) {
      problem.value = new Problem(
        422,
        'not-a-number',
        `Type a number in Pa: ${bad.map(([, w]) => w).join('; ')}.`,
      )
      return
    }
    const drop = (f: FilterFollowUp, of: string) => parseNumber(text(`${f.filter} ${of}`))
    try {
      // photos go first, for the closing names them
      await flush()
      onClosed(
        await post<Visit>(`/visits/${visit.id}/closing`, {
          doneOn: doneOn.value,
          filters: filters.map((f) => ({
            filter: f.filter,
            asFound: { highPa: drop(f, 'asFound.highPa'), lowPa: drop(f, 'asFound.lowPa') },
            asLeft: { highPa: drop(f, 'asLeft.highPa'), lowPa: drop(f, 'asLeft.lowPa') },
            sizeReadOff: text(`${f.filter} size`).trim(),
            photos: photos.value[f.filter] ?? [],
          })),
          note: note.value.trim() || null,
        }),
      )
    } catch (thrown) {
      problem.value = Problem.of(thrown)
    }
  }

  return (
    <form class="measure no-print" onSubmit={(e) => void submit(e)}>
      <div class="nums">
        <div class="num words">
          <label for={`${id}-day`}>Done on</label>
          <span class="in">
            <input
              id={`${id}-day`}
              type="date"
              required
              value={doneOn.value}
              onInput={(e) => {
                doneOn.value = e.currentTarget.value
              }}
            />
          </span>
        </div>
      </div>
      {filters.map((f) => (
        <fieldset key={f.filter} class="group">
          <legend>
            {f.inHouse}, {sizeWords(f)}
          </legend>
          <div class="nums">
            {DROPS.map(([of, words]) => (
              <div key={of} class="num">
                <label for={`${id}-${f.filter}-${of}`}>
                  {words}
                  {of.startsWith('asLeft') &&
                    `, design ${figure(of.endsWith('highPa') ? f.designHighPa : f.designLowPa, 1)}`}
                </label>
                <span class="in">
                  <input
                    id={`${id}-${f.filter}-${of}`}
                    inputMode="decimal"
                    autocomplete="off"
                    value={text(`${f.filter} ${of}`)}
                    onInput={(e) => type(`${f.filter} ${of}`, e.currentTarget.value)}
                  />
                  <i>Pa</i>
                </span>
              </div>
            ))}
            <div class="num words">
              <label for={`${id}-${f.filter}-size`}>Size as printed on the new filter</label>
              <span class="in">
                <input
                  id={`${id}-${f.filter}-size`}
                  autocomplete="off"
                  value={text(`${f.filter} size`)}
                  onInput={(e) => type(`${f.filter} size`, e.currentTarget.value)}
                />
              </span>
            </div>
          </div>
          <PhotoInput
            words={
              photos.value[f.filter] ? 'Another photo' : 'Photo of the old filter, both faces with the date'
            }
            onPhoto={async (taken) => {
              const id = await sendPhoto(f.house, taken, {
                place: f.inHouse,
                card: `${visit.label}: ${f.inHouse}`,
                words: `Photo of the filter in ${f.house}`,
              })
              photos.value = { ...photos.value, [f.filter]: [...(photos.value[f.filter] ?? []), id] }
            }}
          />
          {photos.value[f.filter] && <Thumbs house={f.house} photos={photos.value[f.filter]!} />}
        </fieldset>
      ))}
      <div class="end-acts">
        <label for={`${id}-note`}>Anything seen: water, noise, smell</label>
        <textarea
          id={`${id}-note`}
          rows={2}
          value={note.value}
          onInput={(e) => {
            note.value = e.currentTarget.value
          }}
        />
      </div>
      {problem.value && (
        <Wrong problem={problem.value} outcome="Not closed.">
          {problem.value.fields.length > 1 && (
            <ul class="note">
              {problem.value.fields.map((f) => (
                <li key={f.field}>{f.detail}</li>
              ))}
            </ul>
          )}
        </Wrong>
      )}
      <div class="acts">
        <button type="submit" class="b main">
          Close the visit
        </button>
      </div>
    </form>
  )
}

export function VisitState({ visit, today }: { visit: Visit; today: string }) {
  if (visit.closedOn) return <Status is="stands">Closed {dayWords(visit.closedOn)}</Status>
  if (visit.dueOn < today) return <Status is="now">Overdue</Status>
  return <Status is="open">{visit.plannedOn ? `Planned ${dayWords(visit.plannedOn)}` : 'Not planned'}</Status>
}
