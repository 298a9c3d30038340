import { useSignal } from '@preact/signals'
import { useEffect, useId } from 'preact/hooks'
import { outbox } from '../../offline/queue.ts'
import { NumberPad } from '../../parts/NumberPad.tsx'
import { PhotoInput } from '../../parts/Photo.tsx'
import { Status } from '../../parts/Status.tsx'
import { Thumbs } from '../../parts/Thumbs.tsx'
import { timeWords } from '../../units/days.ts'
import { editable, fromShown, parseNumber, print, shownBy, toShown } from '../../units/quantity.ts'
import { system } from '../../units/system.ts'
import {
  type Draft,
  draftOf,
  dropDraft,
  keepDraft,
  type Pending,
  sendAnswer,
  sendRowPhoto,
} from './answers.ts'
import { AcceptRow, AddPlace } from './ChangeCheck.tsx'
import { type Answer, type AnswerSent, answerWords, type Check, type CheckRow, capital } from './types.ts'

interface RowsProps {
  check: Check
  zone?: string
  pending: Pending
  onAnswer: (row: string, answer: AnswerSent) => void
  /** The check as the portal answered a change of it. */
  onCheck: (next: Check) => void
}

/** The rows of a cover check; those that repeat by place stand under one question. */
export function CheckRows(props: RowsProps) {
  const { check, pending } = props
  const groups = new Map<string, CheckRow[]>()
  for (const row of check.rows) groups.set(row.templateRow, [...(groups.get(row.templateRow) ?? []), row])
  const firstOpen = check.rows.find((r) => isOpen(r, pending))
  return (
    <>
      {[...groups.entries()].map(([template, rows]) => (
        <section key={template} class="check" id={`row-${template}`} tabIndex={-1}>
          <h2>{rows[0]!.lookAt}</h2>
          <p class="why">{rows[0]!.because}</p>
          {rows.length > 1 || rows[0]!.place ? (
            <Places {...props} rows={rows} />
          ) : (
            <Row {...props} row={rows[0]!} pending={pending.get(rows[0]!.id)} first={firstOpen === rows[0]} />
          )}
        </section>
      ))}
    </>
  )
}

/** Whether somebody must still look here. */
const isOpen = (row: CheckRow, pending: Pending) => row.stop !== null && !pending.has(row.id)

function valueWords(row: CheckRow, value: number | null | undefined): string {
  if (!row.number || value === null || value === undefined) return ''
  const { text, symbol } = print(value, row.number.unit, system.value)
  return `${text}\u202f${symbol}`.trim()
}

/** One question at several places: what was read at each, and the keys of the one that is open. */
function Places({ check, rows, zone, pending, onAnswer, onCheck }: RowsProps & { rows: CheckRow[] }) {
  const worst = rows.find((r) => r.counting?.judged === 'NOT_RIGHT') ?? rows.find((r) => isOpen(r, pending))
  const open = useSignal<string | undefined>(worst?.id)
  const next = (after: CheckRow) => rows.find((r) => r !== after && isOpen(r, pending))?.id ?? after.id
  return (
    <ul class="places">
      {rows.map((row) => {
        const mine = pending.get(row.id)
        const value = mine ? mine.value : row.counting?.value
        const here = open.value === row.id
        return (
          <li key={row.id}>
            <button
              type="button"
              class="place"
              aria-expanded={here}
              onClick={() => {
                open.value = here ? undefined : row.id
              }}
            >
              <span>{capital(row.place ?? row.lookAt)}</span>
              <span class="q">
                {value !== null && value !== undefined ? (
                  <b>{valueWords(row, value)}</b>
                ) : mine || row.counting ? (
                  answerWords[(mine?.answer ?? row.counting?.judged)!]
                ) : (
                  <i>not read</i>
                )}
              </span>
            </button>
            {here && (
              <Row
                check={check}
                row={row}
                zone={zone}
                pending={mine}
                onAnswer={(id, answer) => {
                  onAnswer(id, answer)
                  // the next open place, so that a round of readings needs no searching
                  if (answer.answer === 'RIGHT') open.value = next(row)
                }}
                onCheck={onCheck}
                first
              />
            )}
          </li>
        )
      })}
      {check.actions.includes('add-place') && (
        <li>
          <AddPlace
            check={check}
            templateRow={rows[0]!.templateRow}
            onAdded={(next, place) => {
              open.value = next.rows.find(
                (r) => r.place === place && r.templateRow === rows[0]!.templateRow,
              )?.id
              onCheck(next)
            }}
          />
        </li>
      )}
    </ul>
  )
}

interface RowProps {
  check: Check
  row: CheckRow
  zone?: string
  pending?: AnswerSent
  onAnswer: (row: string, answer: AnswerSent) => void
  onCheck: (next: Check) => void
  /** The number pad is open from the start. */
  first?: boolean
}

/** Number first where there is one, then the two keys; photo and note at any time. */
function Row({ check, row, zone, pending, onAnswer, onCheck, first }: RowProps) {
  const id = useId()
  const may = check.actions.includes('answer-row')
  const counting = row.counting
  const now = pending?.answer ?? counting?.judged
  const knownNote = pending ? (pending.note ?? '') : (counting?.note ?? '')
  const knownPhotos = pending ? pending.photos : (counting?.photos ?? [])
  const knownValue = pending ? pending.value : (counting?.value ?? null)
  const unit = row.number?.unit
  const text = useSignal(knownValue !== null && unit ? editable(knownValue, unit, system.value) : '')
  const note = useSignal(knownNote)
  const photos = useSignal<string[]>(knownPhotos)
  const padOpen = useSignal(Boolean(first))
  const fresh = useSignal(true)
  const said = useSignal<string | undefined>(undefined)
  const open = useSignal<'note' | 'when' | undefined>(undefined)
  const toggle = (what: 'note' | 'when') => {
    open.value = open.value === what ? undefined : what
  }

  // biome-ignore lint/correctness/useExhaustiveDependencies: once for each row; what is typed since then stays
  useEffect(() => {
    void draftOf(check, row).then((kept) => {
      if (!kept) return
      text.value = kept.text || text.value
      note.value = kept.note || note.value
      photos.value = [...new Set([...photos.value, ...kept.photos])]
    })
  }, [check.houseId, check.code, row.id])

  const keep = () =>
    void keepDraft(check, row, { text: text.value, note: note.value, photos: photos.value } satisfies Draft)

  const shown = unit && shownBy(unit, system.value)
  const typed = text.value.trim() === '' ? null : parseNumber(text.value)
  const value = typed === null || !shown || Number.isNaN(typed) ? null : fromShown(typed, shown)
  const beyond =
    value !== null && row.number
      ? row.number.max !== null && value > row.number.max
        ? row.number.max
        : row.number.min !== null && value < row.number.min
          ? row.number.min
          : null
      : null

  async function press(answer: Answer) {
    said.value = undefined
    if (row.number && typed !== null && Number.isNaN(typed)) {
      said.value = `"${text.value}" is not a number.`
      return
    }
    if (row.number && answer === 'RIGHT' && value === null) {
      said.value = `Type the number first: ${row.number.quantity}.`
      padOpen.value = true
      return
    }
    if (row.number && value !== null && (value < row.number.lowest || value > row.number.highest)) {
      said.value = `Not taken: ${row.number.quantity} is between ${valueWords(row, row.number.lowest)} and ${valueWords(row, row.number.highest)}.`
      return
    }
    if (answer === 'NOT_HERE' && note.value.trim() === '') {
      open.value = 'note'
      said.value = 'Say in the note why this is not in the house; then press it again.'
      return
    }
    const sent = await sendAnswer(check, row, {
      answer,
      value,
      note: note.value.trim() || null,
      photos: photos.value,
      repeatOf: counting?.id ?? null,
    })
    onAnswer(row.id, sent)
    open.value = undefined
    void dropDraft(check, row)
  }

  const addition =
    (pending || counting) &&
    (note.value.trim() !== knownNote || photos.value.some((p) => !knownPhotos.includes(p)))

  return (
    <div class="row">
      {!row.place && (
        <p class="print-only given">
          <b>{now ? answerWords[now] : 'Not looked at yet'}</b>
          {knownValue !== null && `, ${valueWords(row, knownValue)}`}
        </p>
      )}
      {counting && (
        <p class="note counted">
          {counting.judged === 'NOT_RIGHT' && counting.answer === 'RIGHT'
            ? 'Counts as not right: the number is beyond its limit. '
            : ''}
          {counting.person}, {timeWords(counting.at, zone)}
          {counting.note && `: "${counting.note}"`}
          {counting.accepted && ` · accepted by ${counting.accepted.person}: ${counting.accepted.reason}`}
        </p>
      )}
      {row.stop && counting && <p class="row-stop">{row.stop}</p>}
      {row.number &&
        shown &&
        (padOpen.value && may ? (
          <NumberPad
            label={row.place ? capital(row.place) : capital(row.number.quantity)}
            unit={shown.symbol}
            text={text.value}
            signed={row.number.lowest < 0}
            onType={(next) => {
              // the first key begins a new number; it does not write behind the old one
              const add = fresh.value && next.startsWith(text.value) && next.length === text.value.length + 1
              text.value = add && text.value !== '' ? next.slice(-1) : next
              fresh.value = false
              keep()
            }}
          />
        ) : (
          may && (
            <button
              type="button"
              class="entry entry-key"
              onClick={() => {
                padOpen.value = true
              }}
            >
              <span>{capital(row.number.quantity)}</span>
              <span>
                {text.value ? <b>{text.value}</b> : 'type the number'}&#8239;<i>{shown.symbol}</i>
              </span>
            </button>
          )
        ))}
      {row.number && (
        <p class="limit-words">
          {limitWords(row)}
          {beyond !== null && <b> Beyond the limit: it counts as not right.</b>}
        </p>
      )}
      {may && (
        <fieldset class="answer">
          <legend class="vh">
            {row.lookAt} {row.place}
          </legend>
          {(['RIGHT', 'NOT_RIGHT'] as const).map((answer) => (
            <button
              key={answer}
              type="button"
              aria-pressed={now === answer}
              onClick={() => void press(answer)}
            >
              <span>{answerWords[answer]}</span>
            </button>
          ))}
        </fieldset>
      )}
      {said.value && (
        <p class="row-stop" role="alert">
          {said.value}
        </p>
      )}
      {pending && (
        <p class="waits" role="status">
          <Status is="wait">{words(pending)}</Status>
        </p>
      )}
      {photos.value.length > 0 && <Thumbs house={check.houseId} photos={photos.value} />}
      <div class="tools">
        {may && (
          <>
            <button
              type="button"
              class="tool"
              aria-pressed={now === 'NOT_HERE'}
              onClick={() => void press('NOT_HERE')}
            >
              {answerWords.NOT_HERE}
            </button>
            <PhotoInput
              words={photoWords(row, photos.value.length)}
              onPhoto={async (photo) => {
                photos.value = [...photos.value, await sendRowPhoto(check, row, photo)]
                keep()
              }}
            />
            <button
              type="button"
              class="tool"
              aria-expanded={open.value === 'note'}
              onClick={() => toggle('note')}
            >
              Note
            </button>
          </>
        )}
        <button
          type="button"
          class="tool"
          aria-expanded={open.value === 'when'}
          onClick={() => toggle('when')}
        >
          Right when
        </button>
      </div>
      {open.value === 'when' && (
        <div class="when">
          <p>{row.acceptWhen}</p>
          <p class="note">
            Looked at by the {row.seenBy.join(' or the ')}. {capital(row.photoLabel)}. Source: {row.source}.
          </p>
        </div>
      )}
      {open.value === 'note' && (
        <div class="when">
          <label for={`${id}-n`}>Note: type it, or speak it with the keyboard's microphone</label>
          <textarea
            id={`${id}-n`}
            rows={3}
            value={note.value}
            onInput={(e) => {
              note.value = e.currentTarget.value
              keep()
            }}
          />
        </div>
      )}
      {check.actions.includes('accept-row') &&
        !pending &&
        counting?.judged === 'NOT_RIGHT' &&
        !counting.accepted && <AcceptRow check={check} row={row} onAccepted={onCheck} />}
      {may && addition && now && (
        <button type="button" class="b addition" onClick={() => void press(now)}>
          Keep with "{answerWords[now]}"
        </button>
      )}
    </div>
  )
}

const photoWords = (row: CheckRow, taken: number) =>
  row.leastPhotos > 0 ? `Photo ${taken}/${row.leastPhotos}` : taken > 0 ? `Photo, ${taken}` : 'Photo'

function words(pending: AnswerSent): string {
  const waits = outbox.value.some((w) => w.clientId === pending.clientId)
  return waits
    ? `${answerWords[pending.answer]}: waiting on this phone`
    : `${answerWords[pending.answer]}: sent`
}

function limitWords(row: CheckRow): string {
  const { min, max, unit } = row.number!
  // three figures say a limit in either habit: 64 kg/m³ is 4 lb/ft³
  const short = (v: number) => String(Number(toShown(v, shownBy(unit, system.value)).toPrecision(3)))
  const words = (v: number) => `${short(v)}\u202f${shownBy(unit, system.value).symbol}`.trim()
  if (min !== null && max !== null) return `Right from ${words(min)} to ${words(max)}.`
  if (max !== null) return `Right at ${words(max)} or less.`
  if (min !== null) return `Right at ${words(min)} or more.`
  return 'The number is kept; it has no limit here.'
}
