export type Span = 'day' | 'week' | 'month' | 'year' | 'own'

const DAYS: Record<Exclude<Span, 'own'>, number> = { day: 1, week: 7, month: 31, year: 365 }

/** The instant at which a day begins by the clocks of a place. */
export function startOfDay(day: string, zone: string): Date {
  const utc = Date.parse(`${day}T00:00:00Z`)
  const shift = (at: number) => {
    const parts = new Intl.DateTimeFormat('en-US', {
      timeZone: zone,
      timeZoneName: 'longOffset',
    }).formatToParts(at)
    const text = parts.find((p) => p.type === 'timeZoneName')?.value ?? 'GMT'
    const [, sign = '+', hours = '0', minutes = '0'] = /GMT([+-])(\d+):?(\d+)?/.exec(text) ?? []
    return (sign === '-' ? -1 : 1) * (Number(hours) * 60 + Number(minutes)) * 60_000
  }
  // the offset of the instant itself may differ from that of midnight in UTC
  return new Date(utc - shift(utc - shift(utc)))
}

const plusDays = (day: string, days: number) =>
  new Date(Date.parse(`${day}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10)

/** From and to of a span that ends with today at the house, or with the last of somebody's own days. */
export function spanEnding(
  span: Span,
  own: [string, string],
  today: string,
  zone: string,
): [string, string] | undefined {
  const [from, last] = span === 'own' ? own : [plusDays(today, 1 - DAYS[span]), today]
  if (!from || !last || from > last) return undefined
  return [startOfDay(from, zone).toISOString(), startOfDay(plusDays(last, 1), zone).toISOString()]
}
