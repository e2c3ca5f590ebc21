/**
 * The season record: what was measured, set, checked, worn and taken out at the lake, year after year. Entries are only ever added: two
 * phones' records are merged by putting their entries together.
 *
 * One source for the types below, the check at the border and `public/schema/record.json`. Lengths in m, elevations over the water
 * surface on the day of the survey (of a dock without one: over the water of the first day), depths positive under water. The names and
 * places of legs are in it as plain data: it opens without the engine, the catalog and the design that it was begun with.
 */
import * as v from 'valibot'
import { BottomSchema } from '../catalog/bottom.ts'
import { DesignSchema } from '../design/schema.ts'
import { quantize } from '../numbers.ts'
import { KINDS } from '../part-kinds.ts'

/** What two records of ordinary use stay far under; a merge that would go over them says so and leaves both as they are. */
export const RECORD_LIMITS = {
  entries: 20_000,
  /** Beginnings that a merged record knows beside its own. */
  others: 100,
  legs: 20_000,
  sections: 5000,
  /** Entries of one subject that were there when another was written. */
  saw: 100,
  photos: 40,
  textBytes: 8 * 1024 * 1024,
  /** Greatest `n`. */
  n: 1_000_000_000,
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
const count = (min: number, max: number, description: string) =>
  v.pipe(v.number(), v.integer(), v.minValue(min), v.maxValue(max), v.description(description))
const text = (max: number, description: string) =>
  v.pipe(v.string(), v.maxLength(max), v.description(description))
const code = (description: string) =>
  v.pipe(v.string(), v.minLength(1), v.maxLength(60), v.description(description))
const id = (description: string) =>
  v.pipe(
    v.string(),
    v.regex(/^[A-Za-z0-9_.~-]{1,80}$/, 'letters, digits, _ . ~ or -, at most 80'),
    v.description(description),
  )
const list = <S extends v.GenericSchema>(item: S, most: number) => v.pipe(v.array(item), v.maxLength(most))

const At = v.pipe(
  v.string(),
  v.regex(
    /^\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d(\.\d{1,6})?)?(Z|[+-]\d\d:\d\d)$/,
    'a date and time such as 2026-06-06T14:05:00Z',
  ),
  v.description("By the device's own clock, which may be wrong: no order hangs on it"),
)
const SeasonSchema = v.pipe(
  v.string(),
  v.regex(/^\d{4}$/, 'a year such as 2026'),
  v.description('Year in which the dock was set up'),
)
const Device = id('Of the phone or computer, made by it at random')
const LegId = id('Leg')
const SectionRef = id('Section')
/** What deck height is held to when the lake stands elsewhere than on the survey day. */
export const KeepSchema = v.picklist(['planned', 'over-water'])

const PhotoSchema = v.looseObject({
  hash: v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/, 'SHA-256 in hex digits')),
  width: count(1, 20_000, 'Pixels'),
  height: count(1, 20_000, 'Pixels'),
  bytes: count(1, 50_000_000, 'Size of the picture, which is kept apart'),
})
const photos = v.optional(list(PhotoSchema, RECORD_LIMITS.photos))

/** A leg as the plan has it; what is not known of an old dock is null. */
const PlannedSchema = v.looseObject({
  bed: meters(-300, 100, 'Elevation of what the pad is to stand on'),
  sd: v.optional(v.nullable(meters(0, 100, 'Standard error of that'))),
  height: meters(-100, 300, 'Sole of the foot pad to the deck surface'),
  frame: meters(-100, 300, "Sole of the foot pad to the frame's top"),
  stock: v.nullable(code("The leg's code in the catalog")),
  length: v.nullable(meters(0, 20, 'Its length')),
  sole: meters(0, 0.2, 'Underside of the pad to where the tube rests'),
  stay: v.optional(meters(0, 20, 'What of the leg must stay over the deck')),
})

const LegNamedSchema = v.looseObject({
  id: LegId,
  number: count(1, RECORD_LIMITS.legs, 'As on the papers'),
  section: v.nullable(SectionRef),
  x: v.nullable(meters(-20_000, 20_000, "Lakeward from the water's edge of the survey day")),
  y: v.nullable(meters(-20_000, 20_000, 'To the left as you look at the lake')),
  side: v.picklist(['left', 'right']),
  aside: v.nullable(meters(0, 20_000, "Off the dock's middle line; null at the edges of the run")),
  bottom: v.nullable(BottomSchema),
  planned: v.nullable(PlannedSchema),
})

const SectionNamedSchema = v.looseObject({
  id: SectionRef,
  ramp: v.optional(v.boolean(), false),
  on: v.nullable(SectionRef),
  lift: v.nullable(number(0, 100_000, 'As carried, kg')),
  people: v.nullable(count(1, 100_000, 'Who lift it')),
})

const header = {
  id: id('Made at random when the record is begun'),
  name: v.optional(text(200, 'What the dock is called'), ''),
  /** Check code, as on the papers. */
  dock: v.nullable(
    v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/, 'a check code of 64 hex digits'), v.description('Dock')),
  ),
  design: v.nullable(DesignSchema),
  catalog: v.nullable(v.looseObject({ id: text(60, 'Catalog'), edition: text(60, 'Its edition') })),
  stake: v.nullable(
    v.looseObject({
      name: text(120, 'What distances start from'),
      x: meters(-20_000, 20_000, "Lakeward from the water's edge of the survey day"),
    }),
  ),
  mark: v.optional(
    v.nullable(
      v.looseObject({
        name: text(120, 'Fixed mark that levels are measured from'),
        above: meters(-100, 100, 'Its height over the survey water'),
      }),
    ),
    null,
  ),
  deckHeight: v.nullable(meters(-5, 10, 'Planned deck surface over the survey water')),
  /** Deck surface over the frame's top. */
  rise: v.nullable(meters(0, 0.3, "Deck surface over the frame's top")),
  legs: list(LegNamedSchema, RECORD_LIMITS.legs),
  sections: v.pipe(
    list(SectionNamedSchema, RECORD_LIMITS.sections),
    v.description('In the order in which they are set up'),
  ),
  made: v.looseObject({ at: At, device: Device }),
}
const HeaderSchema = v.looseObject(header)

const entry = {
  id: id('Made at random'),
  at: At,
  device: Device,
  n: count(
    1,
    RECORD_LIMITS.n,
    'One more than the greatest in the record when it was written: order goes by it',
  ),
  season: SeasonSchema,
  by: v.optional(text(120, 'Who')),
  saw: v.optional(
    v.pipe(
      list(id('Entry'), RECORD_LIMITS.saw),
      v.description('Latest entries of the same subject that the writer had: this one stands in their place'),
    ),
  ),
}

const DeckAt = meters(-30, 30, 'Deck surface over the survey water, where `keep` does not tell it')

const LevelEntry = v.looseObject({
  ...entry,
  kind: v.literal('level'),
  level: meters(-30, 30, "The lake's surface over the survey water"),
  from: v.picklist(['mark', 'stake', 'leg', 'said', 'survey']),
  mark: v.optional(text(120, 'Mark or stake that it was measured from, or that was read beside')),
  leg: v.optional(v.pipe(LegId, v.description('It was found from the depth there'))),
  down: v.optional(meters(-100, 100, 'From the mark down to the water, as measured')),
  waves: v.optional(
    v.looseObject({
      high: meters(-100, 100, 'Highest reading in ten seconds'),
      low: meters(-100, 100, 'Lowest'),
    }),
  ),
  sd: v.optional(meters(0, 10, 'Its standard error')),
  keep: KeepSchema,
  deck: v.optional(DeckAt),
})

const SoundingEntry = v.looseObject({
  ...entry,
  kind: v.literal('sounding'),
  leg: v.optional(LegId),
  x: v.optional(meters(-20_000, 20_000, 'Where it is not at a leg: lakeward')),
  y: v.optional(meters(-20_000, 20_000, 'Left')),
  depth: meters(-100, 300, 'Under the water of the day'),
  level: v.nullable(meters(-30, 30, 'Of that water over the survey water; null = not known')),
  how: v.pipe(
    v.picklist(['measured', 'to-frame', 'as-planned']),
    v.description('as-planned: nobody measured; counted nowhere as measured'),
  ),
  bottom: v.optional(BottomSchema),
})

const SetEntry = v.looseObject({
  ...entry,
  kind: v.literal('set'),
  leg: LegId,
  stock: v.nullable(code("The leg's code in the catalog; null = not known")),
  length: v.optional(v.nullable(meters(0, 20, 'Its length'))),
  height: meters(-100, 300, 'Sole of the foot pad to the deck surface'),
  frame: v.optional(meters(-100, 300, "Sole of the foot pad to the frame's top")),
  depth: v.optional(meters(-100, 300, 'Under the water of the day')),
  level: v.nullable(meters(-30, 30, 'Of that water over the survey water; null = not known')),
  keep: v.optional(KeepSchema),
  deck: v.optional(DeckAt),
  braces: v.optional(
    list(
      v.looseObject({
        code: code('Of the brace'),
        end: v.picklist(['low', 'high']),
        up: meters(-1, 300, 'Its hole over the sole'),
      }),
      8,
    ),
  ),
  how: v.picklist(['measured', 'as-planned', 'by-check']),
  sunk: v.optional(meters(-2, 10, 'How far the foot went into the bottom since it was first set')),
})

const CheckEntry = v.looseObject({
  ...entry,
  kind: v.literal('check'),
  readings: v.optional(
    list(v.looseObject({ leg: LegId, down: meters(-10, 30, 'Deck surface down to the water') }), 1000),
  ),
  bubble: v.optional(
    list(
      v.looseObject({
        section: SectionRef,
        along: v.optional(number(-1, 1, 'Fall lakeward over length')),
        across: v.optional(number(-1, 1, 'Fall to the left over length')),
      }),
      1000,
    ),
  ),
  level: v.optional(v.nullable(meters(-30, 30, 'Of the water over the survey water'))),
  moves: v.optional(
    list(
      v.looseObject({
        leg: LegId,
        by: meters(-10, 10, 'Longer from sole to deck; shorter negative'),
        turns: v.optional(number(-1000, 1000, 'Of its screw')),
      }),
      1000,
    ),
  ),
  hangs: v.optional(list(LegId, 1000)),
  verdict: v.picklist(['level', 'moves', 'unsure']),
})

const WearEntry = v.looseObject({
  ...entry,
  kind: v.literal('wear'),
  part: v.picklist(KINDS),
  code: v.optional(v.nullable(code('In the catalog'))),
  leg: v.optional(LegId),
  section: v.optional(SectionRef),
  what: v.picklist(['bent', 'worn', 'cracked', 'lost', 'corroded', 'other']),
  count: count(1, 10_000, 'How many'),
  order: v.pipe(v.boolean(), v.description('To be ordered again')),
  note: v.optional(text(2000, 'In words')),
  photos,
})

const NoteEntry = v.looseObject({
  ...entry,
  kind: v.literal('note'),
  text: text(20_000, 'In words'),
  leg: v.optional(LegId),
  section: v.optional(SectionRef),
  photos,
})

const OutEntry = v.looseObject({
  ...entry,
  kind: v.literal('out'),
  leg: v.optional(LegId),
  section: v.optional(v.pipe(SectionRef, v.description('Neither leg nor section: the whole dock'))),
  stored: v.optional(text(400, 'Where it lies')),
  marks: v.optional(text(400, 'What was written on it')),
  sunk: v.optional(meters(-2, 10, 'How far the foot stood in the bottom')),
})

const StepEntry = v.looseObject({
  ...entry,
  kind: v.literal('step'),
  key: v.pipe(text(200, 'Step or line of the work order, or a caution'), v.minLength(1)),
  done: v.boolean(),
})

const VoidEntry = v.looseObject({
  ...entry,
  kind: v.literal('void'),
  voids: v.pipe(
    list(id('Entry'), 1000),
    v.minLength(1),
    v.description(
      'Entries that do not hold; they stay in the record. Of a void itself: what it took back holds again',
    ),
  ),
  why: v.optional(text(2000, 'In words')),
})

export const EntrySchema = v.variant('kind', [
  LevelEntry,
  SoundingEntry,
  SetEntry,
  CheckEntry,
  WearEntry,
  NoteEntry,
  OutEntry,
  StepEntry,
  VoidEntry,
])

export const RecordSchema = v.looseObject({
  format: v.literal('leadline/record'),
  version: v.literal(1),
  ...header,
  others: v.optional(
    v.pipe(
      list(HeaderSchema, RECORD_LIMITS.others),
      v.description('How the records that were merged into this one were begun, where that differs'),
    ),
    [],
  ),
  entries: list(EntrySchema, RECORD_LIMITS.entries),
})

/** Called so because `Record` is a type of the language. */
export type SeasonRecord = v.InferOutput<typeof RecordSchema>
/** How a record was begun. */
export type RecordHeader = v.InferOutput<typeof HeaderSchema>
/** A leg as a record knows it, with or without a design. Places in m. */
export type LegNamed = v.InferOutput<typeof LegNamedSchema>
/** How a leg was planned when the record began, m. */
export type LegPlanned = v.InferOutput<typeof PlannedSchema>
/** A section as a record knows it: masses in kg. */
export type SectionNamed = v.InferOutput<typeof SectionNamedSchema>
/** A picture that an entry speaks of; its bytes are kept apart. */
export type Photo = v.InferOutput<typeof PhotoSchema>
/** What stays when the lake stands otherwise than planned: the deck where it was planned, or its height over the water. */
export type Keep = v.InferOutput<typeof KeepSchema>
/** One thing that was done, measured or seen: never changed once it is written. */
export type Entry = v.InferOutput<typeof EntrySchema>
/** What an entry tells of. */
export type EntryKind = Entry['kind']
/** Of one kind. */
export type EntryOf<K extends EntryKind> = Extract<Entry, { kind: K }>
