/** Season records as phones write them: each device with its own clock, each entry added to what that device has. */
import { type Design, demoCatalog, demoDesign, projectOf } from '../../rules/index.ts'
import {
  addEntry,
  beginRecord,
  entryFor,
  mergeRecords,
  type Said,
  type SeasonRecord,
} from '../../rules/record/index.ts'
import { deriveAtOnce } from './at-once.ts'

export const projectFor = (design: Design = demoDesign) =>
  projectOf(design, demoCatalog, deriveAtOnce(design, demoCatalog))

/** A record of the demo, or of another design. */
export const begun = (design: Design = demoDesign): SeasonRecord =>
  beginRecord(projectFor(design), { id: 'rec-1', device: 'phone-a', at: '2026-06-06T08:00:00Z' })

/** One phone, and what it has. */
export interface Phone {
  readonly device: string
  record: SeasonRecord
  /** Of its clock, ms. */
  now: number
  written: number
}

export const phone = (record: SeasonRecord, device: string, at = '2026-06-06T09:00:00Z'): Phone => ({
  device,
  record,
  now: Date.parse(at),
  written: 0,
})

/** Writes an entry and adds it; throws where the border refuses it. */
export function write(on: Phone, said: Said, season?: string): string {
  const id = `${on.device}-${++on.written}`
  on.now += 60_000
  const at = new Date(on.now).toISOString()
  const entry = entryFor(on.record, said, {
    id,
    device: on.device,
    at,
    ...(season !== undefined && { season }),
  })
  on.record = taken(addEntry(on.record, entry))
  return id
}

export const merged = (a: SeasonRecord, b: SeasonRecord): SeasonRecord => taken(mergeRecords(a, b))

export function taken<T>(parsed: { ok: true; value: T } | { ok: false; issues: readonly unknown[] }): T {
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues.slice(0, 3)))
  return parsed.value
}
