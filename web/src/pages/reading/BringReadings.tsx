import { useSignal } from '@preact/signals'
import { useId, useRef } from 'preact/hooks'
import { get, post } from '../../api/http.ts'
import { Problem } from '../../api/problem.ts'
import { useResource } from '../../api/resource.ts'
import { DataTable, Fact, Facts } from '../../parts/lists.tsx'
import { Wrong } from '../../parts/Says.tsx'
import { Status } from '../../parts/Status.tsx'
import { figure } from '../../units/quantity.ts'
import type { Batch, Refusal } from './types.ts'

/** How a table is read where its own words do not say it; names are those of the portal's parameters. */
const HOW: [string, string, string][] = [
  ['timeColumn', 'Column with the time', 'at'],
  ['timeFormat', 'Form of the time', 'ISO 8601; or dd.MM.yyyy HH:mm, epoch-s'],
  ['zone', 'Time zone of the file', 'of the time itself; or +02:00'],
  ['delimiter', 'Between the columns', 'found by itself; or comma, semicolon, tab'],
  ['decimal', 'Decimal mark', 'point; or comma'],
  ['headerLine', 'Line with the names', '1'],
  ['missing', 'Text that means "no value"', 'an empty field'],
]

/** Takes a logger's file in: a table or lines of JSON; answers what became of every value. */
export function BringReadings({ house }: { house: string }) {
  const id = useId()
  const base = `/houses/${encodeURIComponent(house)}`
  const maps = useResource<{ items: string[] }>(`${base}/column-maps`)
  const file = useRef<HTMLInputElement>(null)
  const map = useSignal('')
  const how = useSignal<Record<string, string>>({})
  const busy = useSignal(false)
  const batch = useSignal<Batch | undefined>(undefined)
  const all = useSignal<Refusal[] | undefined>(undefined)
  const problem = useSignal<Problem | undefined>(undefined)

  async function submit(event: Event) {
    event.preventDefault()
    const chosen = file.current?.files?.[0]
    if (!chosen) return
    busy.value = true
    problem.value = undefined
    batch.value = undefined
    all.value = undefined
    const query = new URLSearchParams()
    if (map.value) query.set('map', map.value)
    for (const [name, text] of Object.entries(how.value)) if (text.trim()) query.append(name, text.trim())
    const lines = /\.(nd)?jsonl?(\.gz)?$/i.test(chosen.name)
    const body = new Blob([chosen], { type: lines ? 'application/x-ndjson' : 'text/csv' })
    try {
      batch.value = await post<Batch>(`${base}/readings?${query}`, body)
    } catch (thrown) {
      problem.value = Problem.of(thrown)
    } finally {
      busy.value = false
    }
  }

  async function showAll() {
    if (!batch.value) return
    try {
      const found: Refusal[] = []
      let after = -1
      for (;;) {
        const page = await get<{ items: Refusal[]; next: number | null }>(
          `${base}/readings/rejects?batch=${batch.value.batch}&after=${after}`,
        )
        found.push(...page.items)
        if (page.next === null || found.length >= 5000) break
        after = page.next
      }
      all.value = found
    } catch (thrown) {
      problem.value = Problem.of(thrown)
    }
  }

  const b = batch.value
  return (
    <section class="no-print" aria-labelledby={`${id}-h`}>
      <h2 id={`${id}-h`}>Bring readings in</h2>
      <form class="end-acts" onSubmit={(e) => void submit(e)}>
        <label for={`${id}-f`}>
          A logger's file: a table (CSV) or a JSON object a line, as it is or compressed
        </label>
        <input
          id={`${id}-f`}
          ref={file}
          type="file"
          accept=".csv,.txt,.tsv,.json,.jsonl,.ndjson,.gz"
          required
        />
        {(maps.data.value?.items.length ?? 0) > 0 && (
          <>
            <label for={`${id}-m`}>Read as</label>
            <select
              id={`${id}-m`}
              value={map.value}
              onChange={(e) => {
                map.value = e.currentTarget.value
              }}
            >
              <option value="">its column names are the sensors' names</option>
              {maps.data.value?.items.map((name) => (
                <option key={name} value={name}>
                  {name}
                </option>
              ))}
            </select>
          </>
        )}
        <details class="open-up">
          <summary>
            <span>How the table is written</span>
          </summary>
          <div class="inside how">
            {HOW.map(([name, words, usual]) => (
              <div key={name}>
                <label for={`${id}-${name}`}>{words}</label>
                <input
                  id={`${id}-${name}`}
                  value={how.value[name] ?? ''}
                  aria-describedby={`${id}-${name}-h`}
                  onInput={(e) => {
                    how.value = { ...how.value, [name]: e.currentTarget.value }
                  }}
                />
                <p class="note" id={`${id}-${name}-h`}>
                  Left out: {usual}
                </p>
              </div>
            ))}
          </div>
        </details>
        <button type="submit" class="b main" disabled={busy.value}>
          {busy.value ? 'Taking it in' : 'Take it in'}
        </button>
      </form>
      {problem.value && <Wrong problem={problem.value} outcome="Not taken, nothing of it was kept." />}
      {b && (
        <div role="status" class="batch">
          <p>
            {b.refused === 0 ? (
              <Status is="stands">Kept</Status>
            ) : (
              <Status is="look">Kept, with refusals</Status>
            )}
          </p>
          <Facts>
            <Fact name="Came">{count(b.received)}</Fact>
            <Fact name="New and kept">{count(b.accepted)}</Fact>
            <Fact name="Known already">{count(b.alreadyKnown)}</Fact>
            <Fact name="Refused">{count(b.refused)}</Fact>
            <Fact name="Empty fields">{count(b.empty)}</Fact>
          </Facts>
          {b.refusals.length > 0 && (
            <>
              <DataTable
                label="What was refused"
                caption={all.value ? 'What was refused' : `What was refused, the first ${b.refusals.length}`}
                rows={all.value ?? b.refusals}
                keyOf={(r) => `${r.line} ${r.field} ${r.value}`}
                columns={[
                  { head: 'line', figures: true, cell: (r) => r.line },
                  { head: 'column', cell: (r) => r.field || 'the line' },
                  { head: 'value', cell: (r) => r.value },
                  { head: 'why', cell: (r) => r.reason },
                ]}
              />
              {!all.value && b.refused > b.refusals.length && (
                <button type="button" class="b" onClick={() => void showAll()}>
                  Show all {count(b.refused)}
                </button>
              )}
            </>
          )}
        </div>
      )}
    </section>
  )
}

const count = (n: number) => figure(n, 0)
