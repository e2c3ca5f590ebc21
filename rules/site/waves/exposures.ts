/**
 * Exposure in plain words: wind (m/s) that blows a few times in a season, and open water upwind (m). Figures of our own, chosen to
 * part one kind of lake from the next; a shop or a survey gives better ones.
 */
export const EXPOSURES = {
  sheltered: { speed: 10, fetch: 400 },
  small: { speed: 15, fetch: 1800 },
  wide: { speed: 18, fetch: 5000 },
  open: { speed: 22, fetch: 15_000 },
} as const
