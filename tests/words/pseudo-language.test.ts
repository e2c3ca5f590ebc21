/** A second language is a file: papers, drawings, lists, findings and reasons say nothing that is not in one. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { PAPERS } from '../../geometry/paper/audience.ts'
import type { TextMark } from '../../geometry/paper/marks.ts'
import { paperFrom } from '../../geometry/paper/paper-of.ts'
import { LEADING } from '../../geometry/paper/style.ts'
import { paperOf } from '../../geometry/sheets/packet.ts'
import {
  basisIn,
  type Catalog,
  type Design,
  type Dock,
  demoCatalog,
  derive,
  difference,
  findingText,
  moneyIn,
  packingList,
  parseDesign,
  projectOf,
  type Reader,
  type Reason,
  remedyText,
  wordsOf,
} from '../../rules/index.ts'
import { estimate, quote, quoteFile } from '../../rules/papers.ts'
import { inFours } from '../../rules/words/check-code-text.ts'
import { differenceText, listText } from '../../src/cli/list.ts'
import { withCaseInWords } from '../../src/words/load-case-words.ts'
import { LOADS } from '../../src/words/loads.ts'
import { reasonText } from '../../src/words/reason-text.ts'
import { anyCase } from '../support/arbitraries.ts'
import { ownTexts, PSEUDO, pseudo, untold } from '../support/pseudo-language.ts'
import { runs } from '../support/runs.ts'
import * as worked from '../support/worked-designs.ts'

const readers: readonly Reader[] = (['imperial', 'metric'] as const).map((units) => ({
  language: PSEUDO,
  units,
}))
const DATE = '2026-05-01'
/** Nobody has tables for a language that there is none of: its days are those of the machine. */
const MONTHS = Array.from({ length: 12 }, (_, month) =>
  new Intl.DateTimeFormat('qps', { month: 'short', timeZone: 'UTC' }).format(Date.UTC(2026, month)),
)
/** `USD`, and as money is written. */
const currency = ({ currency: code }: Catalog): string[] => [
  code,
  moneyIn(code, PSEUDO)(0).replace(/[\d.,\s]/g, ''),
]

interface Case {
  readonly name: string
  readonly dock: Dock
  readonly design: Design
  readonly catalog: Catalog
}
const cases: Case[] = [
  ...Object.entries(worked).flatMap(([name, file]) => {
    const parsed = parseDesign(file)
    return parsed.ok ? [{ name, design: parsed.value, catalog: demoCatalog }] : []
  }),
  ...fc
    .sample(anyCase, { seed: 31_007, numRuns: runs(6) })
    .map((one, i) => ({ name: `random ${i}`, ...one })),
].map((one) => ({ ...one, dock: derive(one.design, one.catalog) }))

/** What is said as it is in any language: texts of the files, ids and codes. */
function ownOf({ dock, design, catalog }: Case): string[] {
  const ids = [...dock.sections, ...dock.legs, ...dock.pairs, ...dock.joints].map(({ id }) => id)
  const codes = dock.findings.map(({ code }) => code)
  const parts = dock.findings.flatMap((finding) => finding.parts)
  const { all } = dock.fingerprint
  const priced = [quote, estimate].map((make) => inFours(make(dock, design, catalog, { date: DATE }).check))
  const keys = Object.keys(design.dock.extras)
  return ownTexts(
    ...[design, catalog, ids, codes, parts, keys, priced],
    ...[all.slice(0, 12), inFours(all), 'B. Sample', currency(catalog), MONTHS],
  )
}

/** Texts with what goes on in the line below them: a name that was broken is a name. */
function unbroken(marks: readonly TextMark[]): string[] {
  const texts: string[] = []
  marks.forEach(({ at, size, weight, text }, i) => {
    const above = marks[i - 1]
    const goesOn =
      above?.size === size &&
      above.weight === weight &&
      above.at[0] === at[0] &&
      Math.abs(at[1] - above.at[1] - LEADING * size) < 1e-6
    if (goesOn) texts[texts.length - 1] += ` ${text}`
    else texts.push(text)
  })
  return texts
}

describe('in a language of which every letter is another one', () => {
  it('there are docks that something is found of, and all kinds of remedies', () => {
    expect(cases.length).toBeGreaterThan(5)
    expect(new Set(cases.flatMap(({ dock }) => dock.findings.map(({ code }) => code))).size).toBeGreaterThan(
      10,
    )
  })

  it.each(readers)('papers are told in it alone, $units', (reader) => {
    for (const of of cases) {
      const { dock, design, catalog } = of
      const options = { ...reader, size: 'letter', date: DATE, by: 'B. Sample' } as const
      const since = quoteFile(quote(dock, design, catalog, { date: DATE }), design)
      const own = ownOf(of)
      const on = paperFrom(projectOf(design, catalog, dock), options)
      for (const name of PAPERS) {
        const paper = paperOf(name, on, { since })
        const texts = paper.sheets.flatMap(({ marks, bookmark }) => [
          ...unbroken(marks.filter((mark) => mark.kind === 'text')),
          bookmark ?? '',
        ])
        expect(texts.length, name).toBeGreaterThan(10)
        expect(untold([...texts, paper.title], own), `${of.name} ${name}`).toEqual([])
      }
    }
  })

  it.each(readers)('the terminal is told in it alone, $units', (reader) => {
    for (const of of cases) {
      const list = packingList(of.dock, of.catalog)
      const text = listText(list, of.dock, reader)
      expect(text).toContain(pseudo('Where each leg goes'))
      const other = differenceText(difference([], of.dock.parts), reader)
      expect(untold([...text.split('\n'), ...other.split('\n')], ownOf(of)), of.name).toEqual([])
    }
  })

  it.each(readers)('findings, remedies and reasons are told in it alone, $units', (reader) => {
    for (const of of cases) {
      const { findings, reasons } = of.dock
      const own = ownOf(of)
      const loads = { t: wordsOf(LOADS, reader) }
      // Those of placements and sums are data: no screen and no paper says them.
      const { waves, start, ramp, legs, pairs } = reasons
      const all: Reason[] = [waves, start, ramp, ...Object.values(legs), ...Object.values(pairs)].flat()
      const texts = [
        ...findings.flatMap((f) => [
          findingText(withCaseInWords(f, loads), 'plain', reader),
          findingText(withCaseInWords(f, loads), 'text', reader),
          basisIn(f.basis, reader),
          ...(f.remedy ? [remedyText(f.remedy, reader)] : []),
        ]),
        ...all.flatMap((reason) => [reasonText(reason, reader, of.dock), basisIn(reason.basis, reader)]),
      ]
      expect(untold(texts, own), of.name).toEqual([])
    }
  })
})
