/** The published JSON Schemas are those of the code, and an independent validator (ajv, draft 2020-12) agrees with the engine on them. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { Ajv2020 } from 'ajv/dist/2020.js'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { demoCatalog, demoDesign, parseDesign } from '../../rules/index.ts'
import { packagingOf } from '../../rules/papers/packaging.ts'
import { SCHEMA_FOLDER, schemaFiles } from '../../src/build/schemas.ts'
import { anyCase } from '../support/arbitraries.ts'
import { metricCatalog } from '../support/catalogs.ts'

const files = schemaFiles()
const ajv = new Ajv2020({ strict: true, allErrors: true, strictTypes: false, strictTuples: false })
const isDesign = ajv.compile(JSON.parse(files['design.json']!))
const isCatalog = ajv.compile(JSON.parse(files['catalog.json']!))

describe('public/schema', () => {
  it.each(Object.keys(files))('%s is what the code makes', (name) => {
    expect(readFileSync(join(SCHEMA_FOLDER, name), 'utf8')).toBe(files[name])
  })

  it('takes the demo, both catalogs, and random designs', () => {
    expect(isDesign(demoDesign), JSON.stringify(isDesign.errors)).toBe(true)
    expect(isCatalog(demoCatalog), JSON.stringify(isCatalog.errors)).toBe(true)
    expect(isCatalog(metricCatalog), JSON.stringify(isCatalog.errors)).toBe(true)
    for (const { design } of fc.sample(anyCase, { seed: 5, numRuns: 300 }))
      expect(isDesign(design), JSON.stringify(isDesign.errors)).toBe(true)
  })

  it('refuses what the engine refuses, where a schema can say it', () => {
    const changes: [string, unknown][] = [
      ['site', 5],
      ['site.bottom', 'lava'],
      ['site.soundings', []],
      ['dock.sections', 0],
      ['dock.deckHeight', 99],
      ['dock.head', { shape: 'spiral', sections: 1 }],
      ['dock.extras', { bumper: -1 }],
      ['version', 2],
      ['name', 7],
    ]
    for (const [path, value] of changes) {
      const design = structuredClone(demoDesign) as unknown as Record<string, Record<string, unknown>>
      const [a, b] = path.split('.')
      if (b) design[a!]![b] = value
      else (design as Record<string, unknown>)[a!] = value
      expect(isDesign(design), path).toBe(false)
      expect(parseDesign(design).ok, path).toBe(false)
    }
  })

  it('describes every field of the two files that a shop or a site fills in', () => {
    const text = files['catalog.json']!
    for (const name of Object.keys(demoCatalog.rules)) expect(text).toContain(`"${name}"`)
  })
})

describe('public/guide/catalog.md', () => {
  it('tells of every rule with the demo shop’s value', () => {
    const guide = readFileSync(join(SCHEMA_FOLDER, '../guide/catalog.md'), 'utf8').replace(/ +/g, ' ')
    for (const [name, rule] of Object.entries(demoCatalog.rules) as [
      string,
      { value: unknown; unit: string; description: string },
    ][]) {
      const value = typeof rule.value === 'object' ? 'by bottom' : String(rule.value)
      expect(guide).toContain(
        `| \`${name}\` | ${value} ${rule.unit} | ${rule.description} |`.replace(/ +/g, ' '),
      )
    }
  })

  it('tells how the demo shop packs, what it goes by where it is silent, and its bands and tax', () => {
    const guide = readFileSync(join(SCHEMA_FOLDER, '../guide/catalog.md'), 'utf8').replace(/ +/g, ' ')
    const { packing: stated, quote, ...silent } = demoCatalog
    const [here, absent] = [packagingOf(demoCatalog), packagingOf(silent)]
    for (const name of ['person', 'bag', 'carton', 'bundle'] as const)
      expect(guide).toMatch(
        new RegExp(`\\| \`${name}\` \\| [^|]+ \\| ${here[name] / 1000} \\| ${absent[name] / 1000} \\|`),
      )
    expect(guide).toContain(`| ${here.pieces} | ${absent.pieces} |`)
    expect(guide).toContain(`| ${here.long} | ${absent.long} |`)
    for (const name of ['bundled', 'loose'] as const) {
      expect(guide).toContain(`| ${stated![name]!.map((kind) => `\`${kind}\``).join(', ')} | the same |`)
      expect(absent[name]).toEqual(new Set(stated![name]))
    }
    const last = quote!.freight!.at(-1)!
    expect(guide).toContain(`four bands, to ${last.mass} kg and ${last.longest} m`)
    expect(guide).toContain(`| ${quote!.tax!.share * 100} % on parts and options |`)
    expect(quote!.freight).toHaveLength(4)
    expect(quote!.terms).toHaveLength(3)
  })
})
