/**
 * The Design: what was asked for, and the only state there is. Small, serializable, validated; every other number follows from it.
 *
 * One source for the types below, the check at the border and `public/schema/design.json`. Lengths in m, quantized to 1e-7 m
 * where they come in; elevations over the water surface on the day of the survey; depths positive under water.
 */
import * as v from 'valibot'
import { BottomSchema } from '../catalog/bottom.ts'
import { quantize } from '../numbers.ts'
import { EdgeSchema, MOST_SECTIONS, PlanSchema, SectionId } from '../plan/schema.ts'

/** Most sections of a dock, soundings and obstacles of a site: no input hangs a page. */
export const LIMITS = {
  sections: MOST_SECTIONS,
  soundings: 20_000,
  extras: 1000,
  boats: 20,
  obstacles: 200,
  textBytes: 8 * 1024 * 1024,
} as const

const meters = (min: number, max: number, description: string) =>
  v.pipe(
    v.number(),
    v.minValue(min),
    v.maxValue(max),
    v.description(`${description}, m`),
    v.transform(quantize),
  )
const number = (min: number, max: number, description: string) =>
  v.pipe(v.number(), v.minValue(min), v.maxValue(max), v.description(description))
const count = (max: number, description: string) =>
  v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(max), v.description(description))
const text = (max: number, description: string) =>
  v.pipe(v.string(), v.maxLength(max), v.description(description))
const code = (description: string) =>
  v.pipe(v.string(), v.minLength(1), v.maxLength(60), v.description(description))
const SideSchema = v.picklist(['left', 'right'])

const SoundingSchema = v.looseObject({
  distance: meters(-20_000, 20_000, "From the water's edge along the dock, lakeward positive"),
  offset: v.optional(meters(-20_000, 20_000, 'Off the center line, left positive'), 0),
  depth: meters(-100, 300, 'Under the water surface; negative on the bank'),
  firm: v.optional(meters(-100, 300, 'Depth of firm bottom, where a pushed rod stops')),
  bottom: v.optional(BottomSchema),
  assumed: v.optional(v.pipe(v.boolean(), v.description('Not measured: taken until somebody has'))),
})

const ObstacleSchema = v.looseObject({
  id: SectionId,
  kind: v.picklist(['boulder', 'stump', 'other']),
  x: meters(-20_000, 20_000, 'Middle, lakeward positive'),
  y: meters(-20_000, 20_000, 'Middle, left positive'),
  length: meters(0.02, 30, 'Length'),
  width: meters(0.02, 30, 'Width'),
  height: meters(0.01, 30, 'Top over the bed'),
  heading: v.optional(number(-360, 360, 'Degrees to the left of lakeward'), 0),
})

const Place = v.tuple([meters(-20_000, 20_000, 'Lakeward'), meters(-20_000, 20_000, 'Left')])

/** The most that a lake's rules allow, as somebody was told. */
export const MOST_ALLOWED = {
  reach: v.optional(meters(0.1, 20_000, "Farthest from the water's edge")),
  width: v.optional(meters(0.1, 20_000, 'Widest')),
  area: v.optional(number(0.1, 1_000_000, 'Deck over the lake, m2')),
  depth: v.optional(meters(0.01, 300, 'Deepest at the low level')),
  share: v.optional(number(0.01, 1, 'Of `waterWidth`')),
}

const SideLineSchema = v.looseObject({
  from: Place,
  to: Place,
  distance: v.optional(meters(0, 1000, 'Kept clear'), 0),
})

const SiteLimitsSchema = v.looseObject({
  ...MOST_ALLOWED,
  sides: v.optional(v.pipe(v.array(SideLineSchema), v.maxLength(20))),
})

const SiteSchema = v.looseObject({
  soundings: v.pipe(v.array(SoundingSchema), v.minLength(1), v.maxLength(LIMITS.soundings)),
  soundingError: v.optional(meters(0, 2, 'One standard deviation of a sounding'), 0.03),
  levels: v.looseObject({
    low: meters(-30, 30, 'Expected low level over the survey day'),
    high: meters(-30, 30, 'Expected high level over the survey day'),
  }),
  bottom: BottomSchema,
  obstacles: v.optional(v.pipe(v.array(ObstacleSchema), v.maxLength(LIMITS.obstacles))),
  limits: v.optional(SiteLimitsSchema),
  waterWidth: v.optional(meters(0.1, 100_000, 'Shore to shore')),
  crossSlope: v.optional(number(-2, 2, 'Rise over run; positive = deeper to the left')),
  shore: v.optional(
    v.looseObject({
      kind: v.picklist(['bank', 'wall']),
      height: meters(-5, 30, 'Top of bank or wall over the survey water'),
    }),
  ),
  origin: v.optional(
    v.looseObject({
      latitude: number(-90, 90, 'Latitude'),
      longitude: number(-180, 180, 'Longitude'),
    }),
  ),
  bearing: v.optional(number(0, 360, 'Compass degrees of lakeward')),
  benchmark: v.optional(
    v.looseObject({
      name: text(120, 'Fixed mark'),
      above: meters(-30, 100, 'Its height over the survey water'),
    }),
  ),
  stake: v.optional(
    v.pipe(
      v.looseObject({
        name: text(120, 'Stake, tree or wall that stays'),
        x: meters(-200, 200, 'Lakeward from the water’s edge on the survey day; behind it negative'),
      }),
      v.description('What distances on the papers start from: the water’s edge moves with the lake'),
    ),
  ),
  wind: v.optional(
    v.looseObject({
      speed: number(0, 80, 'Wind speed, m/s'),
      fetch: meters(0, 1_000_000, 'Open water upwind'),
      depth: v.optional(v.nullable(meters(0, 1000, 'Mean depth along the fetch; null = not depth-limited'))),
      from: v.optional(number(-360, 360, "Degrees off the dock's axis")),
    }),
  ),
  wake: v.optional(meters(0, 5, 'Height of boat wakes')),
  assumed: v.optional(
    v.pipe(
      v.array(v.picklist(['bottom', 'levels', 'levels.high', 'levels.low', 'wind'])),
      v.maxLength(5),
      v.description(
        'Nobody has said them yet: what stands there was taken, or nothing is. levels: neither of the two',
      ),
    ),
  ),
  postPull: v.optional(
    v.pipe(
      v.looseObject({
        force: number(0, 100_000, 'Most that it held without giving way, N'),
        height: meters(0, 10, 'Rope over the bed'),
        embedment: v.optional(meters(0.01, 5, 'How deep that post stood in the bottom')),
        movement: v.optional(meters(0, 2, 'How far it moved under that pull where the rope was')),
        bottom: v.optional(BottomSchema),
      }),
      v.description(
        'An anchor post pulled sideways here with a rope and a scale; stands for what soil gives where the bottom is the same (where absent: as at the site)',
      ),
    ),
  ),
})

const BOAT = {
  kind: v.optional(
    v.pipe(
      v.picklist(['fishing', 'runabout', 'pontoon']),
      v.description('What kind of boat it is called; its figures are what counts'),
    ),
  ),
  length: meters(0, 100, 'Length'),
  beam: v.optional(meters(0, 50, 'Greatest width; absent: 0.35 of its length')),
  height: meters(0, 30, 'Height of its side over the water'),
  draught: meters(0, 10, 'Draught'),
  mass: number(0, 1_000_000, 'Mass, kg'),
}

const pieces = count(1_000_000, 'How many')
const byCode = v.pipe(v.record(v.string(), pieces), v.maxEntries(LIMITS.extras))
const owned = v.optional(byCode)

const ExistingSchema = v.pipe(
  v.looseObject({
    sections: owned,
    legs: v.optional(
      v.pipe(
        v.array(v.looseObject({ stock: meters(0.01, 20, 'Stock length'), count: pieces })),
        v.maxLength(LIMITS.extras),
      ),
    ),
    braces: owned,
    pads: owned,
    panels: owned,
    hooks: owned,
    other: v.optional(
      v.pipe(v.record(v.string(), byCode), v.maxEntries(LIMITS.extras), v.description('By kind and code')),
    ),
  }),
  v.description('Owned already, by code of the catalog: used where it fits, and not charged for'),
)

const DockSchema = v.looseObject({
  deckHeight: meters(-5, 10, 'Deck surface over the water on the survey day'),
  frame: code('Frame of the catalog'),
  sections: v.optional(
    v.pipe(
      v.number(),
      v.integer(),
      v.minValue(1),
      v.maxValue(LIMITS.sections),
      v.description('Sections of the main run, ramp included'),
    ),
  ),
  ramp: v.optional(v.boolean()),
  start: v.optional(
    v.nullable(meters(-20_000, 20_000, "First standing section's start edge; null = by rule")),
    null,
  ),
  head: v.optional(
    v.looseObject({
      shape: v.picklist(['straight', 'left', 'right', 'tee', 'wide']),
      sections: count(LIMITS.sections, 'Sections of the head'),
    }),
  ),
  plan: v.optional(PlanSchema),
  extras: v.optional(
    v.pipe(v.record(v.string(), count(LIMITS.extras, 'How many')), v.maxEntries(LIMITS.extras)),
    {},
  ),
  placed: v.optional(
    v.pipe(
      v.array(
        v.looseObject({
          code: code('Extra of the catalog'),
          section: SectionId,
          edge: EdgeSchema,
          along: v.optional(meters(0, 1000, "From the edge's start corner (start and end: left corner)"), 0),
        }),
      ),
      v.maxLength(LIMITS.extras),
    ),
  ),
  pad: v.optional(code('Foot pad of the catalog')),
  finish: v.optional(code('Decking of the catalog; absent: the one that the frames carry anyway')),
  reserve: v.optional(meters(0, 5, 'Reserve of leg, added')),
  load: v.optional(number(0, 50_000, 'Deck live load, Pa')),
  bracing: v.optional(
    v.looseObject({
      first: v.optional(SideSchema),
      none: v.optional(v.pipe(v.array(text(120, 'Pair id')), v.maxLength(LIMITS.sections * 2))),
      along: v.optional(
        v.pipe(
          v.picklist(['last', 'all']),
          v.description(
            'Lengthwise braces, of those that the catalog has: the farthest bay of sections that head one way where one fits at both sides, or each bay whose legs have none yet; absent: none',
          ),
        ),
      ),
    }),
  ),
  existing: v.optional(ExistingSchema),
  boat: v.optional(v.looseObject({ ...BOAT, side: SideSchema })),
  boats: v.optional(
    v.pipe(
      v.array(
        v.looseObject({
          id: SectionId,
          ...BOAT,
          section: SectionId,
          edge: EdgeSchema,
          along: v.optional(
            meters(
              0,
              1000,
              "Its middle from the edge's start corner (start and end: left corner); absent: the edge's middle",
            ),
          ),
        }),
      ),
      v.maxLength(LIMITS.boats),
      v.description('Boats at an edge of their own; `boat` is one that keeps to the lake end'),
    ),
  ),
  overrides: v.optional(
    v.pipe(
      v.record(
        v.string(),
        v.looseObject({ stock: v.optional(meters(0.01, 20, 'Stock length of this leg')) }),
      ),
      v.maxEntries(LIMITS.sections * 4),
    ),
  ),
})

export const DesignSchema = v.looseObject({
  format: v.literal('leadline/design'),
  version: v.literal(1),
  name: v.optional(text(200, 'What it is called'), ''),
  job: v.optional(
    v.looseObject({
      customer: v.optional(text(400, 'Customer')),
      order: v.optional(text(400, 'Order')),
      surveyed: v.optional(text(400, 'When the soundings were taken')),
      by: v.optional(text(400, 'Who made it')),
      notes: v.optional(text(20_000, 'Notes')),
      zone: v.optional(text(60, "Where it goes to: a code of the catalog's quote.zones")),
    }),
  ),
  catalog: v.optional(
    v.looseObject({ id: text(60, 'Catalog'), version: v.union([text(60, 'Edition'), v.number()]) }),
  ),
  site: SiteSchema,
  dock: DockSchema,
})

/** What was asked for: the site, the dock, the job. `public/schema/design.json` has each field; lengths are m. */
export type Design = v.InferOutput<typeof DesignSchema>
export type Site = Design['site']
export type Sounding = Site['soundings'][number]
export type Obstacle = NonNullable<Site['obstacles']>[number]
export type SiteLimits = NonNullable<Site['limits']>
export type SideLine = NonNullable<SiteLimits['sides']>[number]
