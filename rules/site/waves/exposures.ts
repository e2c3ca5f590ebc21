/**
 * Exposure in plain words: wind (m/s) that blows a few times in a season, and open water upwind (m). Figures of our own, chosen to
 * part one kind of lake from the next; a shop or a survey gives better ones. A cove is 100 to 400 m wide, with the wind of a summer storm broken by
 * trees (8 to 10 m/s): its figures are the middle of both, not the widest cove in its strongest wind.
 */
export const EXPOSURES = {
  sheltered: { speed: 9, fetch: 250 },
  small: { speed: 15, fetch: 1800 },
  wide: { speed: 18, fetch: 5000 },
  open: { speed: 22, fetch: 15_000 },
} as const
