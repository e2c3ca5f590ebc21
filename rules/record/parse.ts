/** From unknown input to a season record: schema, versions, and what a schema cannot say. What comes out is in its one order. */
import { parseDesign } from '../design/parse.ts'
import { type Issue, issue, type Parsed, parseText, parseWith, plainOf, upgrade } from '../validation.ts'
import { inOneOrder } from './merge.ts'
import { RECORD_LIMITS, type RecordHeader, RecordSchema, type SeasonRecord } from './schema.ts'

const RECORD_FORMAT = 'leadline/record'
const RECORD_VERSION = 1

/** `[n]` turns a record of version n into one of n + 1. Version 1 is the first. */
const migrations: Record<number, (old: Record<string, unknown>) => Record<string, unknown>> = {}

/** Checks a record. Lengths come out quantized to 1e-7 m, entries in order, each once; unknown keys are kept. Never throws. */
export function parseRecord(input: unknown): Parsed<SeasonRecord> {
  const file = upgrade(plainOf(input), RECORD_FORMAT, RECORD_VERSION, migrations)
  if (!file.ok) return file
  const parsed = parseWith(RecordSchema, file.plain, (record) => [
    ...headerIssues(record, ''),
    ...record.others.flatMap((other, i) => headerIssues(other, `others[${i}].`)),
  ])
  return parsed.ok ? { ...parsed, value: inOneOrder(parsed.value) } : parsed
}

/** The same from JSON text. */
export function parseRecordText(text: string): Parsed<SeasonRecord> {
  const json = parseText(text, RECORD_LIMITS.textBytes)
  return json.ok ? parseRecord(json.value) : json
}

function headerIssues({ design, legs }: RecordHeader, path: string): Issue[] {
  const seen = new Set<string>()
  const twice = legs.flatMap(({ id }, i) => {
    if (seen.has(id)) return [issue(`${path}legs[${i}].id`, `"${id}" a second time`, 'ids that differ')]
    seen.add(id)
    return []
  })
  if (!design) return twice
  const parsed = parseDesign(design)
  if (parsed.ok) return twice
  return [
    ...twice,
    ...parsed.issues.map(({ path: at, received, expected }) =>
      issue(`${path}design.${at}`, received, expected),
    ),
  ]
}
