/**
 * The Design: what was asked for, and the only state there is. Small, serializable, validated; every other number follows from it.
 *
 * One source for the types below, the check at the border and `public/schema/design.json`. Lengths in m, quantized to 1e-7 m
 * where they come in; elevations over the water surface on the day of the survey; depths positive under water.
 */
import * as v from 'valibot'
import { BottomSchema } from '../catalog/schema.ts'
import { quantize } from '../numbers.ts'

/** Most sections of a dock and most soundings of a site: no input hangs a page. */
export const LIMITS = { sections: 5000, soundings: 20_000, extras: 1000, textBytes: 8 * 1024 * 1024 } as const

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
/** Ids of a plan: short, and free of the `.` and `~` that leg and joint ids are made with. */
const id = v.pipe(v.string(), v.regex(/^[A-Za-z0-9_-]{1,40}$/, 'letters, digits, _ or -, at most 40'))

const EdgeSchema = v.picklist(['start', 'end', 'left', 'right'])
const SideSchema = v.picklist(['left', 'right'])

const SoundingSchema = v.looseObject({
  distance: meters(-20_000, 20_000, "From the water's edge along the dock, lakeward positive"),
  offset: v.optional(meters(-20_000, 20_000, 'Off the center line, left positive'), 0),
  depth: meters(-100, 300, 'Under the water surface; negative on the bank'),
  firm: v.optional(meters(-100, 300, 'Depth of firm bottom, where a pushed rod stops')),
  bottom: v.optional(BottomSchema),
  assumed: v.optional(v.pipe(v.boolean(), v.description('Not measured: taken until somebody has'))),
})

const SiteSchema = v.looseObject({
  soundings: v.pipe(v.array(SoundingSchema), v.minLength(1), v.maxLength(LIMITS.soundings)),
  soundingError: v.optional(meters(0, 2, 'One standard deviation of a sounding'), 0.03),
  levels: v.looseObject({
    low: meters(-30, 30, 'Expected low level over the survey day'),
    high: meters(-30, 30, 'Expected high level over the survey day'),
  }),
  bottom: BottomSchema,
  crossSlope: v.optional(number(-2, 2, 'Rise over run; positive = deeper to the left')),
  shore: v.optional(
    v.looseObject({
      kind: v.picklist(['bank', 'wall']),
      height: meters(-5, 30, 'Top of bank or wall over the survey water'),
    }),
  ),
  bearing: v.optional(number(0, 360, 'Compass degrees of lakeward')),
  benchmark: v.optional(
    v.looseObject({
      name: text(120, 'Fixed mark'),
      above: meters(-30, 100, 'Its height over the survey water'),
    }),
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
      v.array(v.picklist(['bottom', 'levels', 'wind'])),
      v.maxLength(3),
      v.description('Nobody has said them yet: what stands there was taken, or nothing is'),
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

const PlanItemSchema = v.looseObject({
  id,
  on: v.nullable(id),
  role: v.optional(v.literal('ramp')),
  edge: v.optional(v.pipe(EdgeSchema, v.description("Host's edge, in the host's own frame"))),
  with: v.optional(v.pipe(EdgeSchema, v.description("The new section's mating edge"))),
  along: v.optional(
    meters(-1000, 1000, "From the host edge's start corner (start and end: left corner) to the mating edge"),
    0,
  ),
  frame: v.optional(code('Frame, where another than the dock’s')),
})

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
  plan: v.optional(v.pipe(v.array(PlanItemSchema), v.minLength(1), v.maxLength(LIMITS.sections))),
  extras: v.optional(
    v.pipe(v.record(v.string(), count(LIMITS.extras, 'How many')), v.maxEntries(LIMITS.extras)),
    {},
  ),
  placed: v.optional(
    v.pipe(
      v.array(
        v.looseObject({
          code: code('Extra of the catalog'),
          section: id,
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
    }),
  ),
  boat: v.optional(
    v.looseObject({
      kind: v.optional(
        v.pipe(
          v.picklist(['fishing', 'runabout', 'pontoon']),
          v.description('What kind of boat it is called; its figures are what counts'),
        ),
      ),
      length: meters(0, 100, 'Length'),
      height: meters(0, 30, 'Height of its side over the water'),
      draught: meters(0, 10, 'Draught'),
      mass: number(0, 1_000_000, 'Mass, kg'),
      side: SideSchema,
    }),
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
    }),
  ),
  catalog: v.optional(
    v.looseObject({ id: text(60, 'Catalog'), version: v.union([text(60, 'Edition'), v.number()]) }),
  ),
  site: SiteSchema,
  dock: DockSchema,
})

export type Design = v.InferOutput<typeof DesignSchema>
export type Site = Design['site']
export type Sounding = Site['soundings'][number]
export type PlanItem = v.InferOutput<typeof PlanItemSchema>
