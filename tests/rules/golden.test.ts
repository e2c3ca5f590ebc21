/**
 * Files of every version that ever left a shop still read, and still make the same dock.
 *
 * A golden file is never edited. When a version of the format is added, add a file of the version before it; when the engine's
 * numbers change on purpose, the expected figures below change with a line in the changelog.
 */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { derive, parseCatalogText, parseDesignText } from '../../rules/index.ts'
import { plainOf, upgrade } from '../../rules/validation.ts'

const golden = (name: string): string => readFileSync(join(import.meta.dirname, 'golden', name), 'utf8')

describe('a design and a catalog of version 1', () => {
  const design = parseDesignText(golden('design-v1.json'))
  const catalog = parseCatalogText(golden('catalog-v1.json'))

  it('are read, with all their optional fields kept', () => {
    expect(design.ok && design.notices).toEqual([
      { path: 'shopNote', message: 'not known to this version; kept as it is' },
    ])
    expect(catalog.ok && catalog.notices).toEqual([])
    if (!design.ok) return
    const file = JSON.parse(golden('design-v1.json'))
    const { soundings: given, ...site } = file.site
    expect(design.value).toMatchObject({ ...file, site })
    for (const [i, sounding] of design.value.site.soundings.entries())
      expect(sounding).toMatchObject(given[i])
  })

  it('make the same dock as on the day they were written', () => {
    if (!design.ok || !catalog.ok) throw new Error('not read')
    const dock = derive(design.value, catalog.value)
    expect(dock.fingerprint.design).toBe('cc6c21a36b33a79d9f2a2294c828c7839e1feab35c478a27e0413f1bce35d05b')
    expect(dock.fingerprint.catalog).toBe('3963230bedfac9676f309393245ca8c88b269f8f8606ccc1c0ec45c41a11d906')
    expect(dock.legs.map((leg) => [leg.id, leg.setHeight, leg.stock])).toEqual([
      ['s2.start.left', 0.768777, 1.2192],
      ['s2.start.right', 0.726994, 0.9144],
      ['s2.end.left', 1.152332, 1.524],
      ['s2.end.right', 1.110549, 1.524],
      ['s3.end.left', 1.583497, 1.8288],
      ['s3.end.right', 1.541714, 1.8288],
      ['s4.end.left', 1.74887, 2.1336],
      ['s4.end.right', 1.707087, 2.1336],
      ['s5.end.left', 1.789933, 2.1336],
      ['s5.end.right', 1.74815, 2.1336],
      ['h1.end.left', 1.871075, 2.1336],
      ['h1.end.right', 1.888485, 2.1336],
    ])
    expect(dock.totals).toEqual({
      mass: 515.197,
      price: 714830,
      currency: 'USD',
      heaviestLift: 58.549,
      heaviestSection: 's2',
    })
  })
})

describe('a migration', () => {
  const old = { format: 'leadline/thing', version: 1, height: 2 }
  const migrations = {
    1: ({ height, ...rest }: Record<string, unknown>) => ({ ...rest, version: 2, deck: { height } }),
    2: (file: Record<string, unknown>) => ({ ...file, version: 3, color: 'none' }),
  }

  it('goes step by step to the current version and leaves the old file alone', () => {
    const result = upgrade(plainOf(old), 'leadline/thing', 3, migrations)
    expect(result.ok && result.plain.value).toEqual({
      format: 'leadline/thing',
      version: 3,
      deck: { height: 2 },
      color: 'none',
    })
    expect(old).toEqual({ format: 'leadline/thing', version: 1, height: 2 })
  })

  it('that is missing is told, not skipped', () => {
    const result = upgrade(plainOf(old), 'leadline/thing', 4, migrations)
    expect(result.ok ? '' : result.issues[0]!.path).toBe('version')
  })
})
