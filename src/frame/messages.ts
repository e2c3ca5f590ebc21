/**
 * What a page and a planner in a frame of it say to each other, each message an object with `leadline: 1`. What comes from the page is checked
 * here to the last key; designs and catalogs in it are checked by the element, as all that are given to it.
 */
import * as v from 'valibot'

const ID = v.pipe(v.string(), v.minLength(1), v.maxLength(80))
const px = v.pipe(v.number(), v.minValue(0), v.maxValue(1e6))

/** The element looks at what is in it. */
const anything = v.pipe(
  v.unknown(),
  v.check((value) => !Array.isArray(value)),
  v.record(v.string(), v.unknown()),
)
const word = v.optional(v.pipe(v.string(), v.maxLength(80)))

/** Attributes that a page may set from outside; null takes one off. */
const ATTRIBUTES = v.pipe(
  v.unknown(),
  v.check((value) => !Array.isArray(value)),
  v.strictObject({
    units: v.optional(v.nullable(v.picklist(['imperial', 'metric']))),
    lang: v.optional(v.nullable(v.pipe(v.string(), v.maxLength(35)))),
    theme: v.optional(v.nullable(v.picklist(['auto', 'light', 'dark']))),
    mode: v.optional(v.nullable(v.picklist(['full', 'compact']))),
    audience: v.optional(v.nullable(v.picklist(['customer', 'shop', 'crew']))),
    'hide-price': v.optional(v.nullable(v.literal(''))),
  }),
)

const leadline = v.literal(1)

export const FROM_PAGE = v.variant('type', [
  /** Opens the talk: before it nothing is told. `takes`: requests for a quote are the page's. */
  v.strictObject({ leadline, type: v.literal('hello'), takes: v.boolean() }),
  v.strictObject({
    leadline,
    type: v.literal('set'),
    attributes: v.optional(ATTRIBUTES),
    design: v.optional(anything),
    catalog: v.optional(anything),
  }),
  /** What of the frame is in sight, px from its upper and its lower edge. */
  v.strictObject({ leadline, type: v.literal('seen'), top: px, bottom: px }),
  v.strictObject({ leadline, type: v.literal('ask'), id: ID, what: v.literal('reset') }),
  v.strictObject({ leadline, type: v.literal('ask'), id: ID, what: v.literal('design') }),
  v.strictObject({
    leadline,
    type: v.literal('ask'),
    id: ID,
    what: v.literal('snapshot'),
    width: v.optional(px),
    height: v.optional(px),
  }),
  v.strictObject({
    leadline,
    type: v.literal('ask'),
    id: ID,
    what: v.literal('export'),
    /** Its values are checked where the file is made. */
    wanted: v.strictObject({ format: v.string(), what: word, date: word, size: word, by: word }),
  }),
  v.strictObject({
    leadline,
    type: v.literal('receipt'),
    id: ID,
    received: v.boolean(),
    reference: v.optional(v.pipe(v.string(), v.maxLength(80))),
  }),
])

export type FromPage = v.InferOutput<typeof FROM_PAGE>

/** Null: nothing that we know, and nothing to answer. */
export function messageIn(data: unknown): FromPage | null {
  const read = v.safeParse(FROM_PAGE, data)
  return read.success ? read.output : null
}

/** Exact origins, as in `https://shop.example`, that a list names; whatever is none is left out: no wildcards, no `null`. */
export const originsIn = (list: string): ReadonlySet<string> =>
  new Set(
    list.split(/\s+/).filter((one) => {
      try {
        return /^https?:[^*]+$/.test(one) && new URL(one).origin === one
      } catch {
        return false
      }
    }),
  )
