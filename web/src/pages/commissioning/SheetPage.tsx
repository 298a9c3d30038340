import { useResource } from '../../api/resource.ts'
import { Quantity } from '../../parts/Quantity.tsx'
import { Cautions } from '../../parts/Result.tsx'
import { NothingYet, Of } from '../../parts/Says.tsx'
import { StateWord } from '../../parts/Status.tsx'
import { house as houseLine } from '../../shell/house.ts'
import type { PageProps } from '../../shell/routes.ts'
import { Sheet } from '../../shell/Sheet.tsx'
import { me } from '../../shell/session.ts'
import { dayWords, timeWords } from '../../units/days.ts'
import { Compare, figureOf, Scales, Under } from './Compare.tsx'
import { Curves } from './Curves.tsx'
import { Measure } from './Measure.tsx'
import type { Measurement, SheetShown } from './types.ts'

function finding(sheet: SheetShown): string {
  const m = leading(sheet.measurements)
  if (!m) return `${sheet.title}: not measured yet.`
  const judged = m.outcome.values.filter((v) => v.verdict)
  const worst =
    judged.find((v) => v.verdict === 'FAILS') ?? judged.find((v) => v.verdict === 'NOT_PROVEN') ?? judged[0]
  const word = m.outcome.verdictLabel
  if (!worst) return `${sheet.title}: ${word}.`
  return `${sheet.title}, ${worst.label.charAt(0).toLowerCase()}${worst.label.slice(1)}: ${figureOf(worst)}. ${m.occasion === 'AS_LEFT' ? 'As left it' : 'As found it'} ${
    word.startsWith('not proven') ? `is ${word}` : word
  }.`
}

/** The measurement that speaks for a sheet: the latest as-left one, else the latest. */
const leading = (all: Measurement[]) => all.find((m) => m.occasion === 'AS_LEFT') ?? all[0]

/** One setting-to-work sheet: design, as-found and as-left side by side, and what is measured now. */
export default function SheetPage({ house = '', sheet = '' }: PageProps) {
  const one = useResource<SheetShown>(
    `/houses/${encodeURIComponent(house)}/setting-to-work/${encodeURIComponent(sheet)}`,
  )
  const line = houseLine.value
  const data = one.data.value
  return (
    <Sheet
      over={
        <>
          {house} {line?.name} ·{' '}
          <a href={`/houses/${house}/setting-to-work`}>setting to work (commissioning)</a>
        </>
      }
      heading={data ? finding(data) : 'Setting to work'}
      title={data?.title ?? 'Setting to work'}
      block={[
        ['House', `${house} ${line?.name ?? ''}`],
        ['Sheet', data?.title ?? ''],
        ['Record as of', dayWords(me.value?.today)],
      ]}
    >
      <Of resource={one}>
        {(s) => {
          const left = s.measurements.find((m) => m.occasion === 'AS_LEFT')
          const found = s.measurements.find(
            (m) => m.occasion === 'AS_FOUND' && (!left || m.takenAt <= left.takenAt),
          )
          const shown = [found, left].filter((m): m is Measurement => m !== undefined)
          const older = s.measurements.filter((m) => !shown.includes(m))
          return (
            <>
              <section aria-labelledby="measured">
                <h2 id="measured">Measured beside designed</h2>
                {shown.length === 0 ? (
                  <NothingYet>Nothing is measured yet. The first step: {s.steps[0]}</NothingYet>
                ) : (
                  <>
                    <Compare found={found} left={left} zone={line?.timeZone} />
                    <Scales found={found} left={left} />
                    {s.sheet === 'tightness' && (
                      <Curves
                        measurement={left ?? found!}
                        netVolumeM3={line?.netVolumeM3}
                        zone={line?.timeZone}
                      />
                    )}
                    {shown.map((m) => (
                      <Under
                        key={m.id}
                        sheet={s}
                        measurement={m}
                        zone={line?.timeZone}
                        onChange={() => void one.reload()}
                      />
                    ))}
                  </>
                )}
                <Cautions cautions={s.cautions} />
                {older.length > 0 && (
                  <details class="open-up">
                    <summary>
                      <span>
                        <b>Earlier measurements</b>
                      </span>
                      <span class="note">{older.length}</span>
                    </summary>
                    <div class="inside">
                      <ul class="matters">
                        {older.map((m) => (
                          <li key={m.id}>
                            <div>
                              <StateWord state={m.outcome.verdict} />
                            </div>
                            <div>
                              <p>
                                {m.occasionLabel}, {timeWords(m.takenAt, line?.timeZone)}:{' '}
                                {m.outcome.values
                                  .filter((v) => v.verdict)
                                  .map((v) => `${v.label} ${figureOf(v)}`)
                                  .join('; ')}
                              </p>
                            </div>
                          </li>
                        ))}
                      </ul>
                    </div>
                  </details>
                )}
              </section>
              <section aria-labelledby="design">
                <h2 id="design">What the design says</h2>
                {s.design.length === 0 ? (
                  <NothingYet>
                    The record has no design value for this sheet yet. What is measured is kept all the same.
                  </NothingYet>
                ) : (
                  <dl class="facts">
                    {s.design.map((d) => (
                      <div key={d.name + d.label}>
                        <dt>{d.label}</dt>
                        <dd>
                          <Quantity value={d.value} unit={d.unit} from={`${d.sourceLabel} · ${d.origin}`} />
                        </dd>
                      </div>
                    ))}
                  </dl>
                )}
              </section>
              {s.actions.includes('measure') && <Measure sheet={s} onKept={() => one.reload()} />}
            </>
          )
        }}
      </Of>
    </Sheet>
  )
}
