import { useId } from 'preact/hooks'
import { dayOfYearWords, monthMarks, type TapeDay } from '../../wall/run.ts'

/**
 * A ruled strip of days. One is picked by pointer, by keys, or by its date; the strip is filled as high as the layer is
 * wet, and hatched where it is over its limit.
 */
export function YearTape({
  days,
  values,
  limit,
  here,
  onPick,
  words,
}: {
  days: TapeDay[]
  /** What fills the strip, one a day. */
  values: number[]
  limit?: number
  /** Index of the picked day. */
  here: number
  onPick: (index: number) => void
  words: string
}) {
  const id = useId()
  const most = Math.max(...values, limit ?? 0, 1e-9)
  const least = Math.min(...values)
  const height = (v: number) => 4 + (32 * (v - least)) / (most - least || 1)
  // a year from October has its dates in two runs
  const dates = days.map((d) => d.date).sort()
  const picked = days[here]
  const byDate = (date: string) => {
    const index = days.findIndex((d) => d.date.slice(5) === date.slice(5))
    if (index >= 0) onPick(index)
  }
  return (
    <div class="tape">
      <label for={id}>
        Day of the last year: <b>{picked ? dayOfYearWords(picked.date) : ''}</b>
      </label>
      <div class="strip">
        <svg viewBox={`0 0 ${days.length} 40`} preserveAspectRatio="none" aria-hidden="true">
          {values.map((v, i) => (
            <rect
              key={days[i]!.day}
              class="fill"
              x={i}
              y={40 - height(v)}
              width="1.02"
              height={height(v)}
              fill={limit !== undefined && v > limit ? 'url(#k-lim)' : undefined}
            />
          ))}
        </svg>
        <input
          id={id}
          type="range"
          min={0}
          max={days.length - 1}
          step={1}
          value={here}
          aria-valuetext={picked ? `${dayOfYearWords(picked.date)}, ${words}` : undefined}
          onInput={(e) => onPick(Number(e.currentTarget.value))}
        />
      </div>
      <div class="months" aria-hidden="true">
        {monthMarks(days).map((m) => (
          <span key={m.at} style={{ insetInlineStart: `${(100 * m.at) / Math.max(1, days.length - 1)}%` }}>
            {m.words}
          </span>
        ))}
      </div>
      <label class="by-date">
        by date{' '}
        <input
          type="date"
          value={picked?.date ?? ''}
          min={dates[0]}
          max={dates.at(-1)}
          onChange={(e) => e.currentTarget.value && byDate(e.currentTarget.value)}
        />
      </label>
    </div>
  )
}
