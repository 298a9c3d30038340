/** "14 May 2026" for an ISO day or instant; an instant is told by the clocks of the place. */
export function dayWords(iso: string | undefined, zone?: string): string {
  if (!iso) return ''
  const plain = /^\d{4}-\d{2}-\d{2}$/.test(iso)
  const format = new Intl.DateTimeFormat('en-GB', {
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    timeZone: plain ? 'UTC' : zone,
  })
  return format.format(new Date(iso))
}

/** "14 May 2026, 09:20" by the clocks of the place. */
export function timeWords(iso: string | undefined, zone?: string): string {
  if (!iso) return ''
  const format = new Intl.DateTimeFormat('en-GB', {
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
    timeZone: zone,
  })
  return format.format(new Date(iso)).replace(' at ', ', ')
}
