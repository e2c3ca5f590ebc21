/** The reading of sizes can fail: it counts what a page really loads, and lets no chunk by without a budget. */
import { randomBytes } from 'node:crypto'
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { type Budgets, faultsOf, readSizes } from '../../src/build/size.ts'

let dist: string

/** A kilobyte or so that do not get smaller. */
const weight = (): string => `export const filling="${randomBytes(1000).toString('base64')}"\n`

function page(files: Record<string, string>): void {
  mkdirSync(join(dist, 'leadline'), { recursive: true })
  for (const [name, text] of Object.entries(files)) writeFileSync(join(dist, name), text)
}

beforeEach(() => {
  dist = mkdtempSync(join(tmpdir(), 'leadline-size-'))
  page({
    'leadline.js': 'export{a}from"./leadline/app-AbCd1234.js";',
    'leadline/app-AbCd1234.js': `import"./base-0-_a1b2c.js";export const a=()=>import("./scene-AbCd1234.js");${weight()}`,
    'leadline/base-0-_a1b2c.js': weight(),
    'leadline/scene-AbCd1234.js': `import"./app-AbCd1234.js";import"./solids-AbCd1234.js";${weight()}`,
    'leadline/solids-AbCd1234.js': weight(),
    'leadline/keep--a-Fdfu9.js': `import"./base-0-_a1b2c.js";${weight()}`,
  })
})
afterEach(() => rmSync(dist, { recursive: true, force: true }))

const budgets: Budgets = { first: 3000, all: 5500, chunks: { keep: 1500 } }
const names = (files: readonly string[]): string[] => files.map((file) => basename(file)).sort()

describe('the sizes of a page', () => {
  it('are those of what it loads first, of that with the scene, and of each chunk that comes later', () => {
    const { first, all, chunks } = readSizes(dist, budgets)
    expect(names(first.files)).toEqual(['app-AbCd1234.js', 'base-0-_a1b2c.js', 'leadline.js'])
    expect(names(all.files)).toEqual([...names(first.files), 'scene-AbCd1234.js', 'solids-AbCd1234.js'])
    expect(chunks.map(({ name }) => name)).toEqual(['keep'])
    expect(first.bytes).toBeGreaterThan(1900)
    expect(all.bytes).toBeGreaterThan(3900)
    expect(faultsOf(readSizes(dist, budgets))).toEqual([])
  })

  it('has the catalog editor by itself, where it is built', () => {
    expect(readSizes(dist, budgets).editor).toBeNull()
    page({ 'catalog-editor.js': weight() })
    expect(readSizes(dist, { ...budgets, editor: 1500 }).editor!.bytes).toBeGreaterThan(900)
    expect(faultsOf(readSizes(dist, { ...budgets, editor: 1500 }))).toEqual([])
    expect(faultsOf(readSizes(dist, { ...budgets, editor: 900 }))[0]).toMatch(
      /^the catalog editor: .* over its budget of 900$/,
    )
    expect(faultsOf(readSizes(dist, budgets))[0]).toMatch(/^the catalog editor: .*no budget$/)
  })

  it.each([
    ['before the first picture', { ...budgets, first: 1800 }],
    ['all with the 3D scene', { ...budgets, all: 3800 }],
    ['keep', { ...budgets, chunks: { keep: 900 } }],
  ])('over a budget are told: %s', (name, limits) => {
    const faults = faultsOf(readSizes(dist, limits))
    expect(faults).toHaveLength(1)
    expect(faults[0]).toMatch(new RegExp(`^${name}: \\d+ bytes, \\d+ over its budget`))
  })

  it('without a budget are told, and a budget without a chunk too', () => {
    expect(faultsOf(readSizes(dist, { ...budgets, chunks: { kept: 1500 } }))).toEqual([
      expect.stringMatching(/^keep: \d+ bytes, and no budget$/),
      'kept: a budget, and no chunk',
    ])
  })

  it('of a page without its scene are no sizes', () => {
    rmSync(join(dist, 'leadline/scene-AbCd1234.js'))
    expect(() => readSizes(dist, budgets)).toThrow('no scene chunk')
  })
})
