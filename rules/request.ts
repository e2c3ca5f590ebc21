/**
 * A customer's request as it is sent from a page (`leadline/request`), read back by whoever receives it: what comes from a browser can have
 * been changed there, so its figures are worked out again from its own design.
 */
import * as v from 'valibot'
import { assessKit } from './assess-kit.ts'
import type { Catalog } from './catalog/index.ts'
import { type Design, LIMITS, parseDesign } from './design/index.ts'
import { deriveKit } from './kit.ts'
import { type Issue, issue, type Parsed, parseText, parseWith, plainOf, upgrade } from './validation.ts'

const FORMAT = 'leadline/request'
const VERSION = 1

const text = (least: number, most: number) => v.pipe(v.string(), v.minLength(least), v.maxLength(most))
const code = v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/, '64 hex digits'))

const RequestSchema = v.looseObject({
  format: v.literal(FORMAT),
  version: v.literal(VERSION),
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
  contact: v.looseObject({ name: text(1, 200), contact: text(1, 200), note: v.optional(text(0, 4000), '') }),
  design: v.unknown(),
})

export type RequestFile = v.InferOutput<typeof RequestSchema> & { readonly design: Design }

/** Never throws. */
export function parseRequest(input: unknown): Parsed<RequestFile> {
  const file = upgrade(plainOf(input), FORMAT, VERSION, {})
  if (!file.ok) return file
  const parsed = parseWith(RequestSchema, file.plain, () => [])
  if (!parsed.ok) return parsed
  const design = parseDesign(parsed.value.design)
  if (!design.ok)
    return {
      ok: false,
      issues: design.issues.map((one): Issue => ({ ...one, path: `design${one.path && `.${one.path}`}` })),
    }
  return { ...parsed, notices: file.plain.notices, value: { ...parsed.value, design: design.value } }
}

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
  return paths.flatMap(([part, key]): Issue[] => {
    const [found, worked] = [request[part], made[part]].map(
      (of) => (of as Readonly<Record<string, unknown>>)[key],
    )
    return found === worked ? [] : [issue(`${part}.${key}`, JSON.stringify(found), JSON.stringify(worked))]
  })
}
