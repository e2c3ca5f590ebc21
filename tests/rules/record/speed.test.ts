/** A record of a season, and one far beyond any dock's life: each stays quick. */
import { expect, it } from 'vitest'
import {
  addEntry,
  entryFor,
  mergeRecords,
  nextYear,
  parseRecord,
  type SeasonRecord,
  seasonState,
} from '../../../rules/record/index.ts'
import { begun, phone, taken, write } from '../../support/records.ts'

function grown(entries: number): SeasonRecord {
  const base = begun()
  const legs = base.legs.map(({ id }) => id)
  const list = Array.from({ length: entries }, (_, i) => ({
    ...{
      id: `e-${i}`,
      at: '2026-06-06T08:00:00Z',
      device: `d${i % 2}`,
      n: i + 1,
      kind: 'set',
      how: 'measured',
    },
    ...{ season: String(2026 + Math.floor((i * 10) / entries)), leg: legs[i % legs.length]!, stock: null },
    ...{ height: 1 + (i % 7) / 100, level: 0, saw: i >= legs.length ? [`e-${i - legs.length}`] : [] },
  }))
  return taken(parseRecord({ ...base, entries: list }))
}

/** Processor time, ms: what else runs on the machine is of no account. */
const best = (task: () => unknown): number => {
  let least = Number.POSITIVE_INFINITY
  for (let i = 0; i < 3; i++) {
    const begin = process.cpuUsage()
    task()
    const { user, system } = process.cpuUsage(begin)
    least = Math.min(least, (user + system) / 1000)
  }
  return least
}

it.each([
  // A few times what was measured: for a slower machine.
  [200, 60],
  [10_000, 1500],
])('%i entries', (entries, limit) => {
  const record = grown(entries)
  const other = phone(record, 'other')
  write(other, { kind: 'note', text: 'there' })
  const entry = entryFor(
    record,
    { kind: 'note', text: 'here' },
    { id: 'x', device: 'y', at: '2026-06-06T08:00:00Z' },
  )
  const took = {
    parse: best(() => parseRecord(record)),
    merge: best(() => mergeRecords(record, other.record)),
    entry: best(() =>
      entryFor(
        record,
        { kind: 'step', key: 'a', done: true },
        { id: 'x', device: 'y', at: '2026-06-06T08:00:00Z' },
      ),
    ),
    add: best(() => addEntry(record, entry)),
    state: best(() => seasonState(record)),
    next: best(() => nextYear(record, { level: 0 })),
  }
  if (process.env.LEADLINE_TOLD) process.stdout.write(`${entries} ${JSON.stringify(took)}\n`)
  for (const [what, ms] of Object.entries(took)) expect(ms, what).toBeLessThan(limit)
})
