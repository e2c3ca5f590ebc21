/** Names in other scripts: what the font can write stands there as it is; what it cannot is told on every sheet that lacks it. */
import { describe, expect, it } from 'vitest'
import { packetFor } from '../../../geometry/paper/audience.ts'
import { LABEL_GRIDS } from '../../../geometry/paper/label-grid.ts'
import type { Paper } from '../../../geometry/paper/marks.ts'
import { type PaperOf, paperFrom } from '../../../geometry/paper/paper-of.ts'
import { printable } from '../../../geometry/paper/text.ts'
import { unsetIn } from '../../../geometry/paper/unset.ts'
import { paperOf } from '../../../geometry/sheets/packet.ts'
import { demoCatalog, demoDesign, english, projectOf } from '../../../rules/index.ts'
import { parsedDesign } from '../../support/arbitraries.ts'
import { deriveAtOnce } from '../../support/at-once.ts'

const READER = english('imperial')
const PAPERS = [...packetFor('shop'), 'estimate', 'delivery'] as const

const named = (name: string, change: Partial<PaperOf['options']> = {}): PaperOf => {
  const design = parsedDesign({ ...demoDesign, name, job: { customer: name, order: 'Q-7' } })
  return paperFrom(projectOf(design, demoCatalog, deriveAtOnce(design, demoCatalog)), {
    ...READER,
    ...{ size: 'letter', date: '2026-05-01', by: '' },
    ...change,
  })
}
const textsOf = (sheet: Paper['sheets'][number]): string[] =>
  sheet.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))
const BAR = /^Printed as \?/

describe('a name', () => {
  it.each([
    ['Cyrillic', 'Причал у озера'],
    ['Greek', 'Αποβάθρα λίμνης'],
    ['with accents', 'Škoda Ångström Żółć'],
  ])('in %s stands on each paper as it is', (_, name) => {
    const of = named(name)
    expect(printable(name)).toBe(name)
    for (const one of PAPERS)
      for (const sheet of paperOf(one, of).sheets) {
        const texts = textsOf(sheet)
        expect(texts.filter((text) => BAR.test(text))).toEqual([])
        // A long one may be broken into lines.
        expect(texts.some((text) => text.includes(name.split(' ')[0]!))).toBe(true)
      }
  })

  it('with blanks of other widths, as French parts thousands, has one that does not break for each', () => {
    expect(printable('6\u202f522,42\u00a0$US')).toBe('6\u00a0522,42\u00a0$US')
    expect(unsetIn(['6\u202f522\u3000\u2009'], READER)).toBe('')
  })

  it.each([
    ['Chinese', '湖边码头', 'Chinese (U+6E56 U+8FB9 U+7801 U+5934)'],
    ['Arabic', 'رصيف', 'Arabic (U+0631 U+0635 U+064A U+0641)'],
    ['Hebrew', 'רציף', 'Hebrew (U+05E8 U+05E6 U+05D9 U+05E3)'],
    ['Japanese', '湖のほとり', 'Chinese (U+6E56), Japanese (U+306E U+307B U+3068 U+308A)'],
    ['emoji', 'Dock 🛶☀️', 'emoji (U+1F6F6 U+2600)'],
  ])('in %s is told to be missing on every sheet that has it, by script and number', (_, name, told) => {
    const of = named(name)
    let sheets = 0
    for (const one of PAPERS)
      for (const sheet of paperOf(one, of).sheets) {
        const texts = textsOf(sheet)
        const bars = texts.filter((text) => BAR.test(text))
        const lacks = texts.some((text) => text.includes(name))
        expect(`${one} ${bars.join()}`).toBe(
          `${one} ${lacks ? `Printed as ? for want of letters: ${told}. Write it in by hand.` : ''}`,
        )
        if (lacks) sheets++
      }
    expect(sheets).toBeGreaterThan(8)
  })

  it('that a label lacks is told on the label where the sheet has no room', () => {
    let told = 0
    for (const labels of LABEL_GRIDS) {
      const texts = (name: string) => paperOf('labels', named(name, { labels })).sheets.flatMap(textsOf)
      const count = (name: string) => texts(name).filter((text) => text.startsWith('? stands for')).length
      // The smallest have no room for names at all.
      if (texts('湖').some((text) => text.includes('湖'))) expect(count('湖')).toBeGreaterThan(0)
      if (count('湖') > 0) told++
      expect(count('Quillet Cove')).toBe(0)
    }
    expect(told).toBeGreaterThanOrEqual(5)
  })

  it('what joins letters is no letter that is missing', () => {
    expect(unsetIn(['a\u200Db', 'x\uFE0F', '\u00AD', 'plain ½ Ω'], READER)).toBe('')
    expect(printable('☀\uFE0F\u200D!')).toBe('?!')
    expect(unsetIn(['一二三四五六'], READER)).toContain('Chinese (U+4E00 U+4E8C U+4E09 U+56DB …)')
  })
})
