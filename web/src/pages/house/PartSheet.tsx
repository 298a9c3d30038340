import { effect, useComputed, useSignal } from '@preact/signals'
import { useEffect, useMemo } from 'preact/hooks'
import { useLocation } from 'preact-iso'
import { call, get } from '../../api/http.ts'
import { Problem } from '../../api/problem.ts'
import { DeclaredForm } from '../../form/DeclaredForm.tsx'
import type { Row } from '../../form/field.ts'
import { Form } from '../../form/form.ts'
import { Choose } from '../../parts/Choose.tsx'
import { Reason } from '../../parts/Reason.tsx'
import { Wrong } from '../../parts/Says.tsx'
import { OldAndNew } from '../../record/Difference.tsx'
import { housePath } from '../../record/record.ts'
import { keepTrial } from '../../record/trial.ts'
import type { House, Part, PartType } from '../../record/types.ts'
import { changesBetween, fieldOf, labelOf, withoutNulls } from '../../record/values.ts'
import { Sheet } from '../../shell/Sheet.tsx'
import { chooseUnits } from '../../shell/session.ts'
import { dayWords, timeWords } from '../../units/days.ts'
import { system } from '../../units/system.ts'
import { LayersEditor } from '../wall/LayersEditor.tsx'
import { asChanges, draftOf, dropDraft, keepDraft, ontoTheirs, otherRows } from './draft.ts'
import { History } from './History.tsx'

interface PartSheetProps {
  house: House
  type: PartType
  part: Part
  /** The entity tag of what was read. */
  tag: string | null
}

/** One part: its values ready to be changed, who gave them, and what they were before. */
export function PartSheet({ house, type, part, tag }: PartSheetProps) {
  const { route } = useLocation()
  const zone = house.timeZone
  const mayChange =
    part.actions.includes('save-part') || (part.part === 'house' && house.actions.includes('change-house'))
  // what is on the record: what was read, until somebody saved
  const now = useSignal({ part, tag })
  const theirs = useSignal<{ by: string; at: string; why: string; before: Row } | undefined>(undefined)
  const reason = useSignal('')
  const problem = useSignal<Problem | undefined>(undefined)
  const reasonMissing = useSignal(false)
  const saved = useSignal('')
  const busy = useSignal(false)
  const kept = useMemo(() => draftOf(house.id, part.part), [house.id, part.part])
  // biome-ignore lint/correctness/useExhaustiveDependencies: the form lives as long as the sheet
  const form = useMemo(() => {
    const base = withoutNulls(part.document)
    const made = new Form(type.fields, base)
    if (kept) made.fill(ontoTheirs(kept.base, kept.typed, base))
    return made
  }, [])
  const base = useComputed(() => new Form(type.fields, withoutNulls(now.value.part.document)).value.value)
  const typed = useComputed(() => changesBetween(base.value, form.value.value))
  useEffect(
    () =>
      effect(() => {
        if (typed.value.length > 0 || otherRows(base.value, form.value.value)) {
          keepDraft(house.id, part.part, { base: base.value, typed: form.value.value })
        } else dropDraft(house.id, part.part)
      }),
    [house.id, part.part, base, typed, form],
  )

  async function save() {
    problem.value = undefined
    saved.value = ''
    reasonMissing.value = reason.value.trim() === ''
    const document = form.read()
    if (!document || reasonMissing.value) {
      toFirstRefusal()
      return
    }
    busy.value = true
    const own = part.part === 'house'
    const path = own ? housePath(house.id) : `${housePath(house.id)}/parts/${part.part}`
    try {
      const answer = await call<Part | House>('PUT', path, {
        body: own
          ? { house: document, reason: reason.value.trim() }
          : { document, reason: reason.value.trim() },
        ifMatch: now.value.tag ?? undefined,
      })
      dropDraft(house.id, part.part)
      const fresh = await get<Part>(`${housePath(house.id)}/parts/${part.part}`)
      now.value = { part: fresh, tag: answer.etag }
      theirs.value = undefined
      form.fill(withoutNulls(fresh.document))
      reason.value = ''
      if (await reachesSomething()) route(`${housePath(house.id)}/changes`)
      else saved.value = `Saved as revision ${fresh.revision}. Nothing that rests on it has changed.`
    } catch (thrown) {
      await refused(Problem.of(thrown))
    } finally {
      busy.value = false
    }
  }

  async function refused(refusal: Problem) {
    if (refusal.status === 412) {
      const read = await call<Part>('GET', `${housePath(house.id)}/parts/${part.part}`)
      const line = part.part === 'house' ? await call<House>('GET', housePath(house.id)) : undefined
      const before = base.value
      const merged = ontoTheirs(before, form.value.value, withoutNulls(read.data.document))
      theirs.value = {
        by: read.data.madeBy ?? '',
        at: read.data.madeAt ?? '',
        why: read.data.reason ?? '',
        before,
      }
      now.value = { part: read.data, tag: (line ?? read).etag }
      form.fill(merged)
    } else if (refusal.status === 422 || refusal.status === 400) {
      form.refuse(withoutPrefix(refusal))
      toFirstRefusal()
    } else problem.value = refusal
  }

  async function reachesSomething(): Promise<boolean> {
    const standing = await get<{ allCurrent: boolean }>(`${housePath(house.id)}/standing`)
    return !standing.allCurrent
  }

  function seeReach() {
    const document = form.read()
    if (!document) {
      toFirstRefusal()
      return
    }
    keepTrial(house.id, {
      title: `${type.title}, as typed`,
      changes: asChanges(part.part, base.value, document),
      reason: reason.value,
      back: `${housePath(house.id)}/record/${part.part}`,
      backWords: `Back to ${type.title}`,
    })
    route(`${housePath(house.id)}/changes/trial`)
  }

  const p = now.value.part
  const rows = otherRows(base.value, form.value.value)
  const touched = typed.value.length > 0 || rows
  return (
    <Sheet
      over={
        <>
          <a href={`${housePath(house.id)}/record`}>Record</a> · {type.title}
        </>
      }
      heading={
        p.madeAt
          ? `${type.title}, as ${p.madeBy} left it on ${dayWords(p.madeAt, zone)}.`
          : `${type.title}: nothing is written yet.`
      }
      title={`${type.title} · ${house.id}`}
      lead={p.reason ? `“${p.reason}”` : undefined}
      block={[
        ['House', `${house.id} ${house.name}`],
        ['Sheet', `Record, ${type.title}`],
        ['Revision', String(p.revision)],
        ['Saved', p.madeAt ? timeWords(p.madeAt, zone) : 'never'],
        ['By', p.madeBy ?? '–'],
      ]}
    >
      <div class="calc record">
        <section aria-labelledby="values">
          <h2 id="values">Values</h2>
          <Choose
            name="page-units"
            legend="Units"
            options={[
              ['IP', 'cfm, in., °F'],
              ['SI', 'm³/h, mm, °C'],
            ]}
            value={system.value}
            onChoose={(units) => void chooseUnits(units)}
          />
          <form
            id="part"
            noValidate
            onSubmit={(e) => {
              e.preventDefault()
              void save()
            }}
          >
            <fieldset class="plain-set" disabled={!mayChange}>
              <legend class="vh">Values of {type.title}</legend>
              <DeclaredForm
                form={form}
                extras={{
                  open: (path) => form.get(path) !== undefined,
                  instead: (path, field) =>
                    part.part === 'enclosure' && path.length === 3 && field.name === 'layers' ? (
                      <LayersEditor form={form} field={field} path={path} />
                    ) : undefined,
                }}
              />
            </fieldset>
          </form>
        </section>
        <div>
          <section aria-labelledby="save">
            <h2 id="save">Save</h2>
            {mayChange ? (
              <div class="save stay">
                {touched && (
                  <>
                    <h3>What you changed</h3>
                    <ul class="typed">
                      {typed.value.slice(0, 12).map((c) => (
                        <li key={c.path} class="rev">
                          {labelOf(type.fields, c.path, form.value.value)}{' '}
                          <OldAndNew
                            old={c.old === undefined ? null : String(c.old)}
                            now={c.now === undefined ? null : String(c.now)}
                            unit={fieldOf(type.fields, c.path)?.unit ?? null}
                          />
                        </li>
                      ))}
                      {typed.value.length > 12 && <li>and {typed.value.length - 12} more</li>}
                    </ul>
                  </>
                )}
                {theirs.value && <Theirs theirs={theirs.value} part={p} type={type} zone={zone} />}
                <Reason
                  label="Reason"
                  value={reason.value}
                  onType={(text) => {
                    reason.value = text
                    if (text.trim()) reasonMissing.value = false
                  }}
                  error={
                    reasonMissing.value ? 'Say why; it stays on the record beside the value.' : undefined
                  }
                  hint="One sentence: what led to it, and who asked."
                />
                {problem.value && <Wrong problem={problem.value} outcome="Not saved." />}
                <p role="status">{saved.value}</p>
                <div class="acts">
                  <button type="submit" form="part" class="b main" disabled={busy.value || !touched}>
                    Save
                  </button>
                  <button type="button" class="b" disabled={!touched || rows} onClick={seeReach}>
                    See what it reaches
                  </button>
                  <button
                    type="button"
                    class="b"
                    disabled={!touched}
                    onClick={() => form.fill(withoutNulls(p.document))}
                  >
                    Put back
                  </button>
                </div>
                <p class="note">
                  {!touched
                    ? 'Change a value to save it.'
                    : rows
                      ? 'Rows came or went: what that reaches is computed once it is saved.'
                      : 'Seeing what it reaches saves nothing.'}
                </p>
              </div>
            ) : (
              <p class="note">This account reads the record; the designer changes it.</p>
            )}
          </section>
          <section aria-labelledby="before">
            <h2 id="before">Before</h2>
            <History key={p.revision} house={house} part={part.part} revision={p.revision} />
          </section>
        </div>
      </div>
    </Sheet>
  )
}

/** Somebody saved this part while I was typing: who, why, what; and that mine is still here. */
function Theirs({
  theirs,
  part,
  type,
  zone,
}: {
  theirs: { by: string; at: string; why: string; before: Row }
  part: Part
  type: PartType
  zone: string
}) {
  const changes = changesBetween(
    theirs.before,
    new Form(type.fields, withoutNulls(part.document)).value.value,
  )
  return (
    <div class="say wrong" role="alert">
      <p>
        <b>Not saved.</b> {theirs.by} saved this part on {timeWords(theirs.at, zone)} while you were typing: “
        {theirs.why}”. What you typed stays on top of it; look at both and save again.
      </p>
      <ul class="typed">
        {changes.map((c) => (
          <li key={c.path}>
            {labelOf(type.fields, c.path, part.document)}{' '}
            <OldAndNew
              old={c.old === undefined ? null : String(c.old)}
              now={c.now === undefined ? null : String(c.now)}
              unit={fieldOf(type.fields, c.path)?.unit ?? null}
            />
          </li>
        ))}
      </ul>
    </div>
  )
}

/** The portal points at fields from the document's own envelope; the form knows them without it. */
function withoutPrefix(problem: Problem): Problem {
  const errors = problem.fields.map((f) => ({
    ...f,
    field: f.field.replace(/^(document|house|air|enclosure|heat|moisture|water|sensors)\./, ''),
  }))
  return new Problem(problem.status, problem.code, problem.message, { ...problem.body, errors })
}

/** Takes the focus to the first refused box, once it is drawn. */
function toFirstRefusal() {
  requestAnimationFrame(() => {
    const box = document.querySelector<HTMLElement>('[aria-invalid="true"]')
    for (let d = box?.closest('details'); d; d = d.parentElement?.closest('details')) d.open = true
    ;(box ?? document.querySelector<HTMLElement>('.says.whole'))?.focus()
  })
}
