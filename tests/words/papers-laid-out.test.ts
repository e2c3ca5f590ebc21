/** Papers in each language that is shipped, and in one that is two fifths longer: no text on another, none off its sheet. */
import { readdirSync } from 'node:fs'
import { expect, it } from 'vitest'
import { PAPERS } from '../../geometry/paper/audience.ts'
import { paperFrom } from '../../geometry/paper/paper-of.ts'
import { paperOf } from '../../geometry/sheets/packet.ts'
import {
  assessKit,
  demoCatalog,
  demoDesign,
  deriveKit,
  type Language,
  languageOf,
  projectOf,
} from '../../rules/index.ts'
import { readLanguage } from '../../src/cli/files.ts'
import { LONG_WORDS } from '../support/pseudo-language.ts'
import { sheetFaults } from '../support/sheet-faults.ts'

const shipped = readdirSync('public/words').map((file) => file.replace(/\.json$/, ''))
const languages: readonly (readonly [string, Language])[] = [
  ...shipped.map((lang) => [lang, readLanguage({ lang })] as const),
  ['two fifths longer', languageOf('qps', LONG_WORDS)],
]
const project = projectOf(demoDesign, demoCatalog, assessKit(deriveKit(demoDesign, demoCatalog)))

it.each(languages)('%s', { timeout: 60_000 }, (_, language) => {
  const faults: string[] = []
  for (const [size, units] of [
    ['letter', 'imperial'],
    ['a4', 'metric'],
  ] as const) {
    const of = paperFrom(project, { language, units, size, date: '2026-05-01', by: 'B. Sample' })
    for (const name of PAPERS)
      for (const [i, sheet] of paperOf(name, of).sheets.entries())
        faults.push(...sheetFaults(sheet).map((fault) => `${size} ${name} ${i + 1}: ${fault}`))
  }
  expect(faults).toEqual([])
})
