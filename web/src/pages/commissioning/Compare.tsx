import { useSignal } from '@preact/signals'
import { post } from '../../api/http.ts'
import { Problem } from '../../api/problem.ts'
import { spaced } from '../../parts/Result.tsx'
import { Wrong } from '../../parts/Says.tsx'
import { Scale } from '../../parts/Scale.tsx'
import { StateWord } from '../../parts/Status.tsx'
import { type Role, roleWord } from '../../shell/session.ts'
import { timeWords } from '../../units/days.ts'
import { print, type Unit } from '../../units/quantity.ts'
import { system } from '../../units/system.ts'
import type { Compared, Measurement, SheetShown } from './types.ts'

const withoutOffset = (unit: Unit): Unit => ({
  ...unit,
  si: { ...unit.si, offset: 0 },
  ip: { ...unit.ip, offset: 0 },
})

/** "0.44 ±0.03 1/h" */
export function figureOf(c: Compared): string {
  const value = print(c.measured, c.unit, system.value)
  const pm = c.uncertainty > 0 ? ` ±${print(c.uncertainty, withoutOffset(c.unit), system.value).text}` : ''
  return `${value.text}${pm}\u202f${value.symbol}`.trim()
}

function limitWords(c: Compared): string {
  const say = (v: number) =>
    `${print(v, c.unit, system.value).text}\u202f${print(v, c.unit, system.value).symbol}`
  if (c.min !== null && c.max !== null) return `from ${say(c.min)} to ${say(c.max)}`
  if (c.max !== null) return `at most ${say(c.max)}`
  if (c.min !== null) return `at least ${say(c.min)}`
  return c.design ? `design ${say(c.design.value)}` : ''
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)

/** Measured beside designed: as-found, then as-left, each with its uncertainty and one of three answers. */
export function Compare({ found, left, zone }: { found?: Measurement; left?: Measurement; zone?: string }) {
  const both = [found, left].filter((m): m is Measurement => m !== undefined)
  const rows = (left ?? found)?.outcome.values ?? []
  const gone = (found?.outcome.values ?? []).filter((v) => !rows.some((r) => same(r, v)))
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section class="wide" tabIndex={0} aria-label="Design, as-found, as-left">
      <table class="t stick top">
        <thead>
          <tr>
            <th scope="col">value</th>
            <th scope="col">design</th>
            {both.map((m) => (
              <th key={m.id} scope="col">
                {m.occasionLabel}
                <span class="sub">{timeWords(m.takenAt, zone)}</span>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {[...rows, ...gone].map((row) => (
            <tr key={row.name + row.label} class={row.verdict ? 'key' : ''}>
              <th scope="row">{row.label}</th>
              <td>
                {limitWords(row) || <span class="sub">shown only</span>}
                {row.design && (
                  <span class="sub">
                    {row.design.sourceLabel}: {row.design.origin}
                  </span>
                )}
              </td>
              {both.map((m) => {
                const v = m.outcome.values.find((x) => same(x, row))
                return (
                  <td key={m.id}>
                    {v ? (
                      <>
                        <span class="q">
                          <b>{figureOf(v)}</b>
                        </span>
                        {v.verdict && v.verdictLabel && (
                          <span class="sub verdict">
                            <StateWord state={v.verdict}>{capital(v.verdictLabel)}</StateWord>
                          </span>
                        )}
                      </>
                    ) : (
                      '–'
                    )}
                  </td>
                )
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}

const same = (a: Compared, b: Compared) => a.name === b.name && a.label === b.label

/** The judged values on their scales: as-found open, as-left in carmine. */
export function Scales({ found, left }: { found?: Measurement; left?: Measurement }) {
  const rows =
    (left ?? found)?.outcome.values.filter((v) => v.verdict && (v.max !== null || v.min !== null)) ?? []
  return (
    <ul class="verdict-scales">
      {rows.slice(0, 6).map((v) => {
        const before = left && found?.outcome.values.find((x) => same(x, v))
        return (
          <li key={v.name + v.label}>
            <p class="note">{v.label}</p>
            <Scale
              label={v.label}
              unit={v.unit}
              before={before?.measured}
              now={v.measured}
              limit={v.max ?? v.min}
              past={v.max !== null ? 'above' : 'below'}
            />
          </li>
        )
      })}
    </ul>
  )
}

interface UnderProps {
  sheet: SheetShown
  measurement: Measurement
  zone?: string
  onChange: () => void
}

/** What keeps a measurement from being proof, with what it was read, and its signature. */
export function Under({ sheet, measurement: m, zone, onChange }: UnderProps) {
  const reason = useSignal('')
  const problem = useSignal<Problem | undefined>(undefined)
  const instrument = m.sent.taken.instrument
  async function sign() {
    problem.value = undefined
    try {
      await post(
        `/houses/${encodeURIComponent(sheet.houseId)}/setting-to-work/${sheet.sheet}/measurements/${m.id}/signature`,
        { reason: reason.value.trim() || null },
      )
      onChange()
    } catch (thrown) {
      problem.value = Problem.of(thrown)
    }
  }
  const passes = m.outcome.verdict === 'PASSES'
  return (
    <div class="under">
      <p>
        <StateWord state={m.outcome.verdict}>
          {capital(m.occasionLabel)}: {m.outcome.verdictLabel}
        </StateWord>
      </p>
      {m.outcome.findings.length > 0 && (
        <ul class="findings">
          {m.outcome.findings.map((f) => (
            <li key={f}>{f}</li>
          ))}
        </ul>
      )}
      {m.outcome.verdict === 'FAILS' && (
        <p>
          It opened a loose end: <a href={`/houses/${sheet.houseId}/loose-ends`}>see the loose ends</a>.
        </p>
      )}
      <p class="from">
        measured by {m.person}, {timeWords(m.takenAt, zone)} · {instrument.description}, number{' '}
        {instrument.serial}, calibrated {instrument.calibratedOn}
        {m.outcome.computed &&
          ` · computed: ${m.outcome.computed.calculation} ${m.outcome.computed.version}, copy code ${spaced(m.outcome.computed.copyCode)}`}
      </p>
      {m.signature && (
        <p class="from">
          signed by {m.signature.person}, {roleWord[m.signature.role as Role]?.toLowerCase()},{' '}
          {timeWords(m.signature.at, zone)}
          {m.signature.reason && `: ${m.signature.reason}`}
        </p>
      )}
      {m.actions.includes('sign-measurement') && (
        <form
          class="end-acts no-print"
          onSubmit={(e) => {
            e.preventDefault()
            void sign()
          }}
        >
          {!passes && (
            <>
              <label for={`${m.id}-why`}>Why it is accepted although it does not pass</label>
              <textarea
                id={`${m.id}-why`}
                rows={2}
                required
                value={reason.value}
                onInput={(e) => {
                  reason.value = e.currentTarget.value
                }}
              />
            </>
          )}
          {problem.value && <Wrong problem={problem.value} outcome="Not signed." />}
          <button type="submit" class="b">
            {passes ? 'Sign what was left' : 'Accept it with this reason'}
          </button>
        </form>
      )}
    </div>
  )
}
