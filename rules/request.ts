/**
 * A customer's request as it is sent from a page (`leadline/request`), read back by whoever receives it: what comes from a browser can have
 * been changed there, so its figures are worked out again from its own design.
 */
import * as v from 'valibot'
import { assessKit } from './assess-kit.ts'
import type { Catalog } from './catalog/index.ts'
import { parseEnclosing } from './design/enclosed.ts'
import { type Design, LIMITS } from './design/index.ts'
import { deriveKit } from './kit.ts'
import { type Issue, issue, type Parsed, parseText, show } from './validation.ts'

const FORMAT = 'leadline/request'

const text = (least: number, most: number) => v.pipe(v.string(), v.minLength(least), v.maxLength(most))
const code = v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/, '64 hex digits'))

const RequestSchema = v.looseObject({
  format: v.literal(FORMAT),
  version: v.literal(1),
  id: v.pipe(text(1, 100), v.description('The same again is the same request')),
  at: v.pipe(v.string(), v.isoTimestamp('a time as 2026-05-01T12:00:00.000Z')),
  catalog: v.looseObject({ id: text(1, 60), version: text(0, 60) }),
  fingerprint: v.looseObject({ all: code, design: code, catalog: code, engine: text(1, 40) }),
  totals: v.looseObject({
    mass: v.number(),
    price: v.pipe(v.number(), v.integer()),
    currency: text(1, 10),
    heaviestLift: v.number(),
  }),
  contact: v.looseObject({
    name: text(1, 200),
    contact: text(1, 402),
    note: v.optional(text(0, 4000), ''),
    email: v.optional(text(1, 200)),
    phone: v.optional(text(1, 200)),
    place: v.optional(text(1, 200)),
  }),
  consent: v.optional(v.looseObject({ text: text(1, 2000), ticked: v.boolean() })),
  wants: v.optional(v.pipe(v.array(text(1, 60)), v.maxLength(100))),
  link: v.optional(v.pipe(text(1, 20_000), v.regex(/^https?:\/\//, 'an http or https address'))),
  picture: v.optional(
    v.pipe(text(1, 2_000_000), v.regex(/^data:image\/(?:jpeg|png);base64,/, 'a JPEG or PNG as a data URL')),
  ),
  reference: v.optional(text(1, 100)),
  design: v.unknown(),
})

/** A request for a quote, as the page sends it, its design parsed. */
export type RequestFile = v.InferOutput<typeof RequestSchema> & { readonly design: Design }

/** Checks a request for a quote, and the design in it. Never throws. */
export const parseRequest = (input: unknown): Parsed<RequestFile> =>
  parseEnclosing(RequestSchema, FORMAT, input)

/** The same from JSON text. */
export function parseRequestText(json: string): Parsed<RequestFile> {
  const value = parseText(json, LIMITS.textBytes)
  return value.ok ? parseRequest(value.value) : value
}

/** What is another when the design is derived with this catalog; none where all is as it is worked out. */
export function verifyRequest(request: RequestFile, catalog: Catalog): Issue[] {
  const { design } = request
  const { fingerprint, totals } = assessKit(deriveKit(design, catalog))
  const made = { catalog: { id: catalog.id, version: catalog.edition }, fingerprint, totals }
  // What is told first explains what follows: another catalog, another engine, another design.
  const paths = [
    ['catalog', 'id'],
    ['catalog', 'version'],
    ['fingerprint', 'engine'],
    ['fingerprint', 'catalog'],
    ['fingerprint', 'design'],
    ['fingerprint', 'all'],
    ['totals', 'currency'],
    ['totals', 'price'],
    ['totals', 'mass'],
    ['totals', 'heaviestLift'],
  ] as const
  const told = paths.flatMap(([part, key]): Issue[] => {
    const [found, worked] = [request[part], made[part]].map(
      (of) => (of as Readonly<Record<string, unknown>>)[key],
    )
    return found === worked ? [] : [issue(`${part}.${key}`, JSON.stringify(found), JSON.stringify(worked))]
  })
  return [...told, ...consentIssues(request, catalog)]
}

/** A customer agrees to words of the shop's: to others, or to none where it asks for that, they have not. */
function consentIssues({ consent }: RequestFile, { shop }: Catalog): Issue[] {
  const asked = shop?.consent
  if (!asked) return []
  const words = [asked.text, ...Object.values(asked.languages ?? {})]
  if (!consent) return [issue('consent', 'nothing', 'what the shop tells its customers')]
  if (!words.includes(consent.text))
    return [issue('consent.text', show(consent.text), 'the words of shop.consent')]
  return asked.tick && !consent.ticked ? [issue('consent.ticked', 'false', 'true')] : []
}
