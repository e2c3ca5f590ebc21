/**
 * A dock without soundings or a design: nothing is known but what is measured on the day, and what was set last year. Heights are relative
 * to today's water: sole to deck is the depth and what the deck is to stand over the water.
 */

export interface OldLeg {
  readonly leg: string
  /** Length of its tube and thickness of its foot pad, where they are known, m. */
  readonly length?: number
  readonly sole?: number
  /** As it was set last: sole to deck, and the depth there under the water of that day where it was measured, m. */
  readonly last?: { readonly height: number; readonly depth?: number }
}

export interface OldDock {
  readonly legs: readonly OldLeg[]
  /** Deck over the water: as it stood last, and as it is to stand now, m. The same where the deck goes with the water. */
  readonly overLast: number
  readonly over: number
  /** Today's water over that of the last time, m; null: nobody knows, and only measured legs can be told of. */
  readonly risen: number | null
  /** Depths measured today, by leg, m. */
  readonly measured: Readonly<Record<string, number>>
}

export interface OldLegSet {
  readonly leg: string
  /** What the height goes by: measured today; last year's, with the water's rise; or nothing that is known. */
  readonly by: 'measured' | 'last' | 'unknown'
  readonly height: number | null
  /** Against last time: deck up along the leg positive, m. */
  readonly more: number | null
  /** Bed deeper than last time positive (washed out or settled), m. */
  readonly bed: number | null
  readonly aboveDeck: number | null
  /** The tube ends below the deck. */
  readonly short: boolean
}

export const oldDock = ({ legs, over, overLast, risen, measured }: OldDock): OldLegSet[] =>
  legs.map(({ leg, length, sole = 0, last }): OldLegSet => {
    const depth = measured[leg]
    const before = last?.depth ?? (last ? last.height - overLast : null)
    // The bed where it was: so much deeper as the water has risen.
    const taken = depth ?? (before !== null && risen !== null ? before + risen : null)
    const height = taken === null ? null : over + taken
    const aboveDeck = height === null || length === undefined ? null : length + sole - height
    return {
      leg,
      by: depth !== undefined ? 'measured' : taken === null ? 'unknown' : 'last',
      height,
      more: height === null || !last ? null : height - last.height,
      bed: depth === undefined || before === null || risen === null ? null : depth - before - risen,
      aboveDeck,
      short: aboveDeck !== null && aboveDeck < -1e-6,
    }
  })
