/** `leadline sheet` as a person or a back end uses it. */
import { execFileSync, spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { demoDesign } from '../../rules/index.ts'
import { Unusable } from '../../src/cli/files.ts'
import { sheet } from '../../src/cli/sheet.ts'

let folder: string
let demo: string
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'leadline-'))
  demo = join(folder, 'demo.json')
  writeFileSync(demo, JSON.stringify(demoDesign))
})
afterAll(() => {
  rmSync(folder, { recursive: true })
})

const TODAY = '2026-05-01'
const starts = (bytes: Uint8Array, count: number): string =>
  Buffer.from(bytes.subarray(0, count)).toString('latin1')

describe('leadline sheet', () => {
  it.each([
    ['pdf', '%PDF-'],
    ['svg', '<svg '],
    ['dxf', '0\nSECTION'],
    ['glb', 'glTF'],
    ['usdz', 'PK'],
  ])('writes %s by the ending of the file, the same bytes for the same day', async (format, start) => {
    const args = [demo, '--out', `dock.${format}`, '--by', 'A. Person']
    const [one, two] = [await sheet(args, TODAY), await sheet([...args, '--date', TODAY], '2030-01-01')]
    expect(starts(one.bytes, start.length)).toBe(start)
    expect(one.bytes.length).toBeGreaterThan(2000)
    expect(Buffer.compare(one.bytes, two.bytes)).toBe(0)
    expect(one.code).toBe(0)
  })

  it.each(['packet', 'packing', 'cards', 'labels', 'set-up', 'autumn', 'survey', 'quote'])(
    'writes the paper that is asked for: %s',
    async (what) => {
      const { bytes } = await sheet([demo, '--out', 'x.pdf', '--what', what], TODAY)
      const again = await sheet([demo, '--out', 'x.pdf', '--what', what], TODAY)
      expect(starts(bytes, 5)).toBe('%PDF-')
      expect(Buffer.compare(bytes, again.bytes)).toBe(0)
    },
  )

  it('writes the same from a process of its own, to a file or to standard output', () => {
    const out = join(folder, 'dock.pdf')
    const leadline = (args: string[]) =>
      execFileSync('npx', ['tsx', 'src/cli/main.ts', 'sheet', demo, '--date', TODAY, ...args], {
        maxBuffer: 1e8,
      })
    leadline(['--out', out])
    const piped = leadline(['--out', '-', '--format', 'pdf'])
    expect(Buffer.compare(readFileSync(out), piped)).toBe(0)
  })

  it.each([
    [
      ['--out', 'dock.doc'],
      '--out: "dock.doc"; expected a name that ends in .pdf, .svg, .dxf, .glb, .usdz, or --format',
    ],
    [[], '--out: missing; expected the file to write'],
    [['--out', 'd.pdf', '--size', 'b5'], '--size: "b5"; expected letter, a4, tabloid, a3'],
    [['--out', 'd.pdf', '--units', 'cubits'], '--units: "cubits"; expected imperial or metric'],
    [
      ['--out', 'd.pdf', '--what', 'poem'],
      '--what: "poem"; expected packet, drawing, packing, cards, labels, set-up, autumn, survey, quote',
    ],
    [['--out', 'd.pdf', '--date', 'May'], '--date: "May"; expected a day as 2026-05-01'],
    [['--out', 'd.pdf', '--date', '2026-13-01'], '--date: "2026-13-01"; expected a day as 2026-05-01'],
  ])('says what is wrong with %j', async (args, line) => {
    await expect(sheet([demo, ...args], TODAY)).rejects.toThrow(new Unusable([line]))
  })

  it('ends with 2 where the file cannot be written, and says which', () => {
    const { status, stderr } = spawnSync(
      'npx',
      ['tsx', 'src/cli/main.ts', 'sheet', demo, '--out', join(folder, 'no', 'such', 'dock.svg')],
      { encoding: 'utf8' },
    )
    expect(status).toBe(2)
    expect(stderr).toMatch(/dock\.svg: cannot be written \(ENOENT\); expected a place that can/)
  })

  it('ends with 1 where the dock must not be built, and writes it all the same, with that on it', async () => {
    const deep = join(folder, 'deep.json')
    const soundings = [0, 5, 12, 20].map((distance) => ({ distance, depth: distance * 0.4 }))
    writeFileSync(deep, JSON.stringify({ ...demoDesign, site: { ...demoDesign.site, soundings } }))
    const { code, bytes } = await sheet([deep, '--out', 'x.svg'], TODAY)
    expect(code).toBe(1)
    expect(Buffer.from(bytes).toString()).toContain('This dock must not be built as drawn')
  })
})
