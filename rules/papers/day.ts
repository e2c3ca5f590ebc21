/** Days of the calendar as `YYYY-MM-DD`, without clock or time zone. */

/** A day that is one (no 31st of June). */
export const isDay = (day: string): boolean => /^\d{4}-\d\d-\d\d$/.test(day) && daysAfter(day, 0) === day

/** `days` after a day; the text itself where it is no day. */
export function daysAfter(day: string, days: number): string {
  const [year, month, date] = day.split('-').map(Number)
  const at = new Date(Date.UTC(year ?? Number.NaN, (month ?? Number.NaN) - 1, (date ?? Number.NaN) + days))
  return Number.isNaN(at.getTime()) ? day : at.toISOString().slice(0, 10)
}
