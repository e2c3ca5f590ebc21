/** Days as a language writes them. Not in the first load. */
import type { Language } from './language.ts'

const DAY = /^\d{4}-\d{2}-\d{2}$/

/** `May 1, 2026`, `01.05.2026`. @param day `2026-05-01`; what is none is told as it is */
export function dayIn(day: string, { tag }: Language): string {
  const at = DAY.test(day) ? Date.parse(`${day}T00:00:00Z`) : Number.NaN
  return Number.isNaN(at)
    ? day
    : new Intl.DateTimeFormat(tag, { dateStyle: 'medium', timeZone: 'UTC' }).format(at)
}
