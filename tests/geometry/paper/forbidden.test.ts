/** What was found is on the papers; and a dock that must not be built has no price, no steps and nothing to sign, on paper or in a file. */
import { WebIO } from '@gltf-transform/core'
import { strFromU8, unzipSync } from 'fflate'
import Papa from 'papaparse'
import { describe, expect, it } from 'vitest'
import { dxfOf } from '../../../geometry/export/dxf.ts'
import { glbOf } from '../../../geometry/export/glb.ts'
import { usdzOf } from '../../../geometry/export/usdz.ts'
import { PAPERS, type PaperName } from '../../../geometry/paper/audience.ts'
import type { Paper, Sheet, TextMark } from '../../../geometry/paper/marks.ts'
import { type PaperOf, paperFrom } from '../../../geometry/paper/paper-of.ts'
import { paperOf } from '../../../geometry/sheets/packet.ts'
import {
  type Design,
  demoCatalog,
  demoDesign,
  derive,
  english,
  findingText,
  projectOf,
  remedyText,
} from '../../../rules/index.ts'
import { TABLES, tableCsv } from '../../../src/documents/files/tables.ts'
import { parsedDesign } from '../../support/arbitraries.ts'

const READER = english('imperial')
const DATE = '2026-05-01'
const MONEY = /[$€]|\d[.,]\d\d\b/

const dockWith = (change: Partial<Design['dock']>): Design =>
  parsedDesign({ ...demoDesign, dock: { ...demoDesign.dock, ...change } })
const paperFor = (design: Design): PaperOf =>
  paperFrom(projectOf(design, demoCatalog, derive(design, demoCatalog)), {
    ...READER,
    size: 'letter',
    date: DATE,
    by: '',
  })
/** Twelve sections reach where no leg is long enough. */
const forbidden = paperFor(dockWith({ sections: 12 }))
/** Without its braces: warnings, and nothing that forbids it. */
const warned = paperFor(
  dockWith({ bracing: { none: ['s3.end', 's4.end', 's5.end'] }, deckHeight: 0.3 } as Partial<Design['dock']>),
)
const quiet = paperFor(demoDesign)

const textMarks = ({ marks }: Sheet): TextMark[] => marks.filter((mark) => mark.kind === 'text')
const wordsOn = ({ sheets }: Paper): string =>
  sheets
    .flatMap(textMarks)
    .map(({ text }) => text)
    .join(' ')
const OF_A_DOCK = PAPERS.filter((name) => name !== 'survey')
const TELL: readonly PaperName[] = ['drawing', 'packing', 'set-up', 'quote', 'estimate']

it('are about what they say they are', () => {
  const severities = ({ dock }: PaperOf) => new Set(dock.findings.map(({ severity }) => severity))
  expect(severities(forbidden)).toContain('stop')
  expect(severities(warned)).toContain('warn')
  expect(severities(warned)).not.toContain('stop')
  expect(severities(quiet)).not.toContain('stop')
})

describe('of a dock that must not be built', () => {
  it.each(OF_A_DOCK)('every sheet of %s says so, across it and over it', (name) => {
    const { sheets } = paperOf(name, forbidden)
    expect(sheets.length).toBeGreaterThan(0)
    for (const sheet of sheets) {
      const under = textMarks(sheet).filter(({ behind }) => behind)
      expect(under.map(({ text }) => text)).toEqual(['DO NOT BUILD'])
      // From corner to corner, as good as.
      expect(under[0]!.size).toBeGreaterThan(20)
      expect(sheet.marks[0]).toBe(under[0])
      expect(textMarks(sheet).filter(({ text }) => text.includes('Findings that forbid it'))).toHaveLength(1)
    }
  })

  it.each(['quote', 'estimate'] as const)('the %s has no price and nothing to sign', (name) => {
    const words = wordsOn(paperOf(name, forbidden))
    expect(words).not.toMatch(MONEY)
    expect(words).not.toContain('Total')
    expect(words).not.toContain('Agreed')
    expect(wordsOn(paperOf(name, quiet))).toMatch(MONEY)
  })

  it('the set-up sheet has no steps and no heights, the packing list nobody to sign it', () => {
    const words = wordsOn(paperOf('set-up', forbidden))
    expect(words).not.toMatch(/\b1\. /)
    expect(words).not.toContain('To deck')
    expect(wordsOn(paperOf('packing', forbidden))).not.toContain('Packed by')
    expect(wordsOn(paperOf('packing', quiet))).toContain('Packed by')
  })

  it.each(TABLES)('%s as CSV says so in each row, and has no prices', (table) => {
    const rows = (of: PaperOf): Record<string, string>[] =>
      Papa.parse<Record<string, string>>(tableCsv(table, { ...of, asked: { date: DATE } }), {
        header: true,
        skipEmptyLines: true,
      }).data
    const told = rows(forbidden)
    expect(told.length).toBeGreaterThan(5)
    for (const row of told) {
      expect(row.do_not_build).toContain('leg-none-long-enough')
      expect(forbidden.dock.fingerprint.all.startsWith(row.check_code!)).toBe(true)
      for (const key of ['price', 'unit_price', 'amount']) expect(row[key] ?? '').toBe('')
      expect(row.group).not.toBe('total')
    }
    for (const row of rows(quiet)) expect(row.do_not_build).toBe('')
  })

  it('the drawing for a draftsman and the models say so', async () => {
    expect(dxfOf(forbidden)).toMatch(/Do not build this dock as drawn/)
    expect(dxfOf(quiet)).not.toMatch(/Do not build|FORBIDDEN/)
    const glb = async ({ dock, catalog }: PaperOf) => {
      const scene = (await new WebIO().readBinary(await glbOf(dock, catalog))).getRoot().listScenes()[0]!
      return [scene.getExtras().doNotBuild, scene.listChildren()[0]!.getName()]
    }
    expect((await glb(forbidden))[0]).toContain('leg-none-long-enough')
    expect((await glb(forbidden))[1]).toBe('dock, DO NOT BUILD')
    expect(await glb(quiet)).toEqual([undefined, 'dock'])
    const usda = ({ dock, catalog }: PaperOf): string =>
      strFromU8(unzipSync(usdzOf(dock, catalog))['dock.usda']!).slice(0, 400)
    expect(usda(forbidden)).toContain('DO NOT BUILD: ')
    expect(usda(quiet)).not.toContain('DO NOT BUILD')
  })
})

describe('what was found', () => {
  it.each(TELL)('is on the %s with what helps, each once', (name) => {
    for (const of of [forbidden, warned]) {
      const words = wordsOn(paperOf(name, of))
      const asking = of.dock.findings.filter(({ severity }) => severity !== 'note')
      expect(asking.length).toBeGreaterThan(0)
      for (const finding of asking) {
        expect(words).toContain(findingText(finding, 'plain', READER))
        if (finding.remedy) expect(words).toContain(remedyText(finding.remedy, READER))
      }
    }
  })

  it.each(OF_A_DOCK)('leaves no mark on the %s of a dock that may be built', (name) => {
    for (const of of [warned, quiet])
      expect(wordsOn(paperOf(name, of))).not.toMatch(/do not build it like this|DO NOT BUILD/)
  })
})
