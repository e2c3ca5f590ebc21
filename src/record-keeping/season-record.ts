/** The record as it is kept: what was made at one dock, season after season. */
export interface Entry {
  readonly id: string
  readonly at: string
  readonly device: string
  readonly n: number
  readonly season: string
  readonly kind: string
}

/** An entry before it is written down: its kind and what that has of its own. */
export interface NewEntry {
  readonly kind: string
}

export interface SeasonRecord {
  readonly format: 'leadline/record'
  readonly version: 1
  readonly id: string
  readonly name: string
  readonly entries: readonly Entry[]
}
