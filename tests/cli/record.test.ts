/** `leadline record`: records put together, told, on paper, as data; and what it refuses. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { nextYear, parseRecord, type SeasonRecord } from '../../rules/record/index.ts'
import { parseArguments } from '../../src/cli/args.ts'
import { Unusable } from '../../src/cli/files.ts'
import { recordCommand } from '../../src/cli/record.ts'
import { run } from '../../src/cli/run.ts'
import { phone, taken, write } from '../support/records.ts'
import { ownFolder } from './support/folder.ts'

const EXAMPLE = join(import.meta.dirname, '../rules/golden/record-v1.json')
const example = (): SeasonRecord => taken(parseRecord(JSON.parse(readFileSync(EXAMPLE, 'utf8'))))
const { file } = ownFolder()
let one: string
let other: string
beforeAll(() => {
  one = file('one.json', example())
  const b = phone(example(), 'phone-z')
  write(b, { kind: 'note', text: 'From the other phone.' }, '2026')
  other = file('other.json', b.record)
})

const asked = (...args: string[]) => recordCommand(parseArguments(['record', ...args]), '2027-05-01')
const out = async (...args: string[]): Promise<string> => {
  const made = await asked(...args)
  if (!('out' in made)) throw new Error('a file')
  return made.out
}
const refused = async (...args: string[]): Promise<string> => {
  try {
    await asked(...args)
  } catch (error) {
    if (error instanceof Unusable) return error.lines.join('\n')
    throw error
  }
  return ''
}

describe('leadline record', () => {
  it('tells how each leg stood in the latest season in which any was set', async () => {
    const lines = (await out(one, '--units', 'metric')).split('\n')
    expect(lines[0]).toBe('As set: Quillet Cove, season 2026')
    // Leg 6 of the file: set at 1.1565 m, and 12 mm longer in July.
    expect(lines.find((line) => /^ +6 /.test(line))).toMatch(/ 1\.17 m .* 2026-07-05 {2}Ann$/)
    expect(lines).toContain('  4 × deck clip, lost')
  })

  it('tells next year by leg: what was washed out is measured, the leg longer by as much less what it went up in July', async () => {
    const text = await out(one, '--what', 'next-year', '--level', '-0.12m', '--units', 'metric')
    const rows = text.split('\n').filter((line) => /^ +\d+ /.test(line))
    expect(rows).toHaveLength(10)
    // 60 mm of scour, 12 mm of them made up for already.
    expect(rows[5]).toContain('0.05 m longer')
    expect(rows[5]).toContain('0.06 m washed out since 2026')
    for (const [i, row] of rows.entries()) if (i !== 5) expect(row).toContain('as it was')
    const data = JSON.parse(await out(one, '--what', 'next-year', '--level', '-0.12m', '--json'))
    expect(data.legs[5].by).toBeCloseTo(0.048, 6)
    expect(data.legs).toEqual(JSON.parse(JSON.stringify(nextYear(example(), { level: -0.12 }).legs)))
  })

  it('tells it for a deck that stays where it stood, goes with the water, or goes back to the plan', async () => {
    // In 2026 the deck went 0.2 up with the lake; in 2027 the lake is 0.1 under the survey's.
    const on = phone({ ...example(), entries: [] }, 'phone-z')
    const { deckHeight, legs } = on.record
    const [leg] = legs
    write(on, { kind: 'level', level: 0.2, from: 'said', keep: 'over-water' }, '2026')
    const set = { leg: leg!.id, stock: null, height: 1, level: 0.2, keep: 'over-water' } as const
    write(on, { kind: 'set', ...set, how: 'measured' }, '2026')
    const risen = file('risen.json', on.record)
    const next = async (...keep: string[]) => {
      const told = JSON.parse(await out(risen, '--what', 'next-year', '--level=-0.1m', ...keep, '--json'))
      return [told.deck - deckHeight!, told.legs[0].by].map((value) => Number(value.toFixed(6)))
    }
    expect(await next('--keep', 'as-last')).toEqual([0.2, 0])
    expect(await next('--keep', 'planned')).toEqual([0, -0.2])
    expect(await next('--keep', 'over-water')).toEqual([-0.1, -0.3])
    const text = await out(risen, '--what', 'next-year', '--level=-0.1m', '--keep', 'as-last')
    expect(text).toContain('The deck stays where it stood last')
  })

  it('puts records together, in either order the same, and writes them as one', async () => {
    const made = await Promise.all([
      asked(one, other, '--out', 'all.json'),
      asked(other, one, '--out', 'all.json'),
    ])
    const [a, b] = made.map((each) => ('bytes' in each ? Buffer.from(each.bytes).toString() : ''))
    expect(a).toBe(b)
    const both = taken(parseRecord(JSON.parse(a!)))
    expect(both.entries).toHaveLength(example().entries.length + 1)
    expect(await out(one, other)).toContain('From the other phone.')
  })

  it.each(['as-built', 'take-out', 'reorder', 'next-year'])(
    'writes %s as a paper, the same bytes for the same day',
    async (what) => {
      const args = [
        one,
        '--what',
        what,
        '--out',
        'x.pdf',
        '--by',
        'A. Person',
        ...(what === 'next-year' ? ['--level=-7in'] : []),
      ]
      const [a, b] = await Promise.all([asked(...args), asked(...args)])
      if (!('bytes' in a && 'bytes' in b)) throw new Error('no file')
      expect(Buffer.from(a.bytes.subarray(0, 5)).toString('latin1')).toBe('%PDF-')
      expect(Buffer.compare(a.bytes, b.bytes)).toBe(0)
      const svg = await asked(...args.map((arg) => (arg === 'x.pdf' ? 'x.svg' : arg)))
      expect('bytes' in svg && Buffer.from(svg.bytes).toString()).toContain('Quillet Cove')
    },
  )

  it('tells what is learned, of records of any docks', async () => {
    const text = await out(one, other, '--what', 'learned', '--units', 'metric')
    expect(text).toContain('From 2 records\n')
    expect(text).toMatch(/20 legs measured at 2 docks/)
    expect(JSON.parse(await out(one, '--what', 'learned', '--json'))).toMatchObject({
      records: 1,
      settling: [{ bottom: 'sand', count: 10 }],
    })
  })

  it('opens one without its design, and says nothing of a shop that has nothing to do with it', async () => {
    const bare = file('bare.json', { ...example(), design: null, catalog: null, dock: null })
    expect(await out(bare)).toContain('As set: Quillet Cove, season 2026')
    const svg = await asked(bare, '--out', 'x.svg')
    expect('bytes' in svg && Buffer.from(svg.bytes).toString()).not.toContain('invented shop')
  })

  it('refuses in one line what it cannot use', async () => {
    const strange = file('strange.json', { ...example(), id: 'another', dock: null, others: [] })
    expect(await refused(one, strange)).toMatch(/strange\.json: of another dock than .*; expected/)
    expect(await refused(one, '--what', 'next-year')).toMatch(/^--level: missing; expected/)
    expect(await refused(one, '--what', 'next-year', '--level', 'low')).toMatch(/^--level: "low"; expected/)
    expect(await refused(one, '--level', '1')).toMatch(/^--level: "1"; expected none/)
    expect(await refused(one, '--what', 'quote')).toMatch(/^--what: "quote"; expected as-built/)
    expect(await refused(one, '--season', '26')).toMatch(/^--season: "26"; expected/)
    expect(await refused(one, '--keep', 'deck')).toMatch(/^--keep: "deck"; expected/)
    expect(await refused(one, '--out', 'x.dxf')).toMatch(/^--out: "x\.dxf"; expected/)
    expect(await refused()).toMatch(/^record: no file/)
  })

  it('leadline check knows it', () => {
    const { code, out } = run(['check', EXAMPLE])
    expect([code, out]).toEqual([
      0,
      `${EXAMPLE}: ok, a season record of ${example().entries.length} entries\n`,
    ])
    const broken = file('broken.json', { ...example(), entries: [{ kind: 'set' }] })
    expect(run(['check', broken])).toMatchObject({
      code: 2,
      err: expect.stringContaining('entries[0].id: missing'),
    })
  })
})
