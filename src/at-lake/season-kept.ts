/** What was kept of an earlier visit, and whether it still holds: a screen of last year is not opened this year, and a year that somebody said goes with the clock's. */

/** A year that was said, and the clock's year in which it was. */
export const seasonToKeep = (season: string, now: Date): unknown => ({ season, said: now.getFullYear() })

/** Empty: nothing that holds was said. */
export function keptSeason(kept: unknown, now: Date): string {
  const { season, said } = (kept ?? {}) as { readonly season?: unknown; readonly said?: unknown }
  return said === now.getFullYear() && typeof season === 'string' && /^\d{4}$/.test(season) ? season : ''
}

export const pageToKeep = (page: unknown, season: string): unknown => ({ page, of: season })

/** Null: none, or of another season. */
export function keptPage(kept: unknown, season: string): unknown {
  const { page, of } = (kept ?? {}) as { readonly page?: unknown; readonly of?: unknown }
  return of === season ? page : null
}
