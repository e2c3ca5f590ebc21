/** What cases of findings are made of: a change of the demo dock, and what a check says of it. */
import { type Catalog, demoDesign } from '../../../rules/index.ts'
import { parsedDesign } from '../../support/arbitraries.ts'

export interface Change {
  readonly site?: Record<string, unknown>
  readonly dock?: Record<string, unknown>
  readonly catalog?: unknown
  /** Of another shop than the demo's. */
  readonly shop?: Catalog
}

/** What a finding says, its figures worked by hand: to 0.05 mm, ids and words exactly. `where`: value by path of the remedy's patch. */
export interface Told {
  readonly parts: readonly string[]
  readonly values: Readonly<Record<string, number | string | readonly string[]>>
  readonly where?: Readonly<Record<string, unknown>> | null
}

export interface Case {
  readonly raise: Change
  readonly neighbor: Change
  /** Of the first finding, where its sizes follow from a line of arithmetic. */
  readonly tells?: Told
  /** One step of the Design helps here, and makes nothing else worse. */
  readonly helped?: true
}

/** By code of the check. */
export type Cases = Readonly<Record<string, Case>>

const { wind: _wind, ...calm } = demoDesign.site
export const calmSite = calm

/** The demo dock without what this engine does not consider yet: nothing is found against it. */
export function designOf({ site, dock, catalog }: Change) {
  return parsedDesign({
    ...demoDesign,
    ...(catalog !== undefined && { catalog }),
    site: { ...calmSite, ...site },
    dock: { ...demoDesign.dock, extras: {}, ...dock },
  })
}

/** Soundings straight down from the water's edge at a slope, behind a bank of 0.3 in 1. */
export const slope = (rise: number, reach = 16): Record<string, unknown> => ({
  soundings: [-3, 0, 2, 4, 6, 8, 10, 12, 14, 16]
    .filter((x) => x <= reach)
    .map((x) => ({ distance: x, depth: x < 0 ? 0.3 * x : rise * x })),
})

/** A level bed, with so much soft bottom over a firm one. */
export const flat = (depth: number, soft = 0): Record<string, unknown> => ({
  soundings: [
    { distance: -3, depth: -0.9 },
    { distance: 0, depth: 0 },
    ...[0.5, 3, 6, 9, 12, 15].map((distance) => ({ distance, depth, firm: depth + soft })),
  ],
})

/** Legs of the demo dock: two where it stands, two at the end of each section. */
export const LEGS = ['s2.start', 's2.end', 's3.end', 's4.end', 's5.end'].flatMap((end) => [
  `${end}.left`,
  `${end}.right`,
])
