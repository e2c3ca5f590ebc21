/** What the dock in hand is compared with: files of either kind, and the line that says what is other. */
import { describe, expect, it } from 'vitest'
import { type Design, demoCatalog, demoDesign, derive, english } from '../../rules/index.ts'
import { quote, quoteFile } from '../../rules/papers.ts'
import { changesSince, parseCompared } from '../../src/documents/files/since.ts'

const DAY = { date: '2026-03-01' }
const reader = english('imperial')
const withDock = (dock: Partial<Design['dock']>): Design => ({
  ...demoDesign,
  dock: { ...demoDesign.dock, ...dock },
})
const told = (before: Design, now: Design = demoDesign, quoted = true) =>
  changesSince(
    { design: before },
    { dock: derive(now, demoCatalog), design: now, catalog: demoCatalog },
    DAY,
    quoted,
    reader,
  )

describe('the headline', () => {
  it.each<[string, Partial<Design['dock']>, RegExp]>([
    ['narrower and longer', { frame: '5x8', sections: 4 }, /^5 ft → 4 ft wide, one section more, [+−-]\$/],
    ['shorter', { sections: 7 }, /^2 fewer sections, [−-]\$/],
    [
      'of another shape',
      { head: { shape: 'left', sections: 2 } },
      /^left turn → straight, 2 fewer sections, [−-]\$/,
    ],
    ['with no ramp before', { ramp: false }, /^with a ramp, /],
    ['lower', { deckHeight: demoDesign.dock.deckHeight + 0.0508 }, /deck 2 in lower/],
    ['the same', {}, /^same size and shape, same price$/],
  ])('of a dock that is %s', (_, before, line) => {
    expect(told(withDock(before)).headline).toMatch(line)
  })
  it('says the change of the quote’s total, and of the estimate’s where there is no quote', () => {
    const before = withDock({ sections: 7 })
    for (const quoted of [true, false]) {
      const { total, headline, shops } = told(before, demoDesign, quoted)
      expect(headline.endsWith(`, ${total![3]}`)).toBe(true)
      expect(shops).toBe(false)
    }
  })
})

describe('a file to compare with', () => {
  const made = quoteFile(quote(derive(demoDesign, demoCatalog), demoDesign, demoCatalog, DAY), demoDesign)
  it('may be a quote', () => {
    const parsed = parseCompared(JSON.stringify(made))
    expect(parsed.ok && 'quoted' in parsed.value && parsed.value.quoted.total).toBe(made.total)
  })
  it('may be a design', () => {
    const parsed = parseCompared(JSON.stringify(demoDesign))
    expect(parsed.ok && 'design' in parsed.value && parsed.value.design.name).toBe(demoDesign.name)
  })
  it.each(['', '{}', '{"format": "leadline/design"}', '[1'])('is refused with reasons: %s', (json) => {
    const parsed = parseCompared(json)
    expect(parsed.ok ? [] : parsed.issues.length).toBeGreaterThan(0)
  })
})
