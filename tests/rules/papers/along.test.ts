/** Lengthwise braces on the papers: four sections as in `rules/along.test.ts`, braces at both sides of the last one. */
import { describe, expect, it } from 'vitest'
import { legTable } from '../../../geometry/drawing/leg-table.ts'
import { alikePairs } from '../../../geometry/drawing/pairs.ts'
import { drawnOf } from '../../../geometry/drawn.ts'
import { assessKit, english, projectOf, wordsOf } from '../../../rules/index.ts'
import { packingList } from '../../../rules/papers/packing-list.ts'
import { setLegs } from '../../../rules/papers/set-legs.ts'
import { autumn, PAPERS, sentence, steps } from '../../../rules/papers.ts'
import { DRAWING } from '../../../rules/words/drawing.ts'
import { alongCatalog } from '../../support/along-shop.ts'
import { kitOf, level } from '../../support/level-dock.ts'

const kit = kitOf(
  { sections: 4, start: 8, deckHeight: 0.5334, head: undefined, bracing: { along: 'last' } },
  level(0.7366),
  alongCatalog,
)
const dock = assessKit(kit)
const project = projectOf(kit.design, alongCatalog, dock)
const t = wordsOf(PAPERS, english('metric'))
const up = steps(project).steps
const down = autumn(project).steps
const works = (all: typeof up, id: string) =>
  all.find((step) => step.id === id)!.lines.map(({ work, about }) => `${work} ${about.join(' ')}`)
const said = (all: typeof up, id: string) => all.flatMap(({ lines }) => lines).find((line) => line.id === id)

describe('the order of work', () => {
  it('hangs them by the low end on shore, and fixes the high end when the section is locked to what carries it', () => {
    expect(works(up, 'dry.s4').filter((one) => one.startsWith('brace'))).toEqual([
      'brace-low s4.end',
      'brace-low s4.left',
      'brace-low s4.right',
    ])
    const inWater = works(up, 'in.s4')
    const at = (one: string) => inWater.indexOf(one)
    expect(at('brace-high s4.end')).toBeLessThan(at('drop-in s4 s3~s4'))
    expect(at('lock s3~s4')).toBeGreaterThan(at('drop-in s4 s3~s4'))
    for (const pair of ['s4.left', 's4.right']) {
      expect(at(`brace-high ${pair}`)).toBeGreaterThan(at('lock s3~s4'))
      expect(at(`brace-high ${pair}`)).toBeLessThan(at('panels s4'))
    }
    // The other way round in autumn: off before the section is unlocked.
    const out = works(down, 'in.s4')
    expect(out.indexOf('brace-high s4.left')).toBeLessThan(out.indexOf('lock s3~s4'))
  })

  it('says of a leg with two clamps where both go, and which is for the brace along the dock', () => {
    // On s4.end.left the one across has its low end, −0.43993 + 0.7366 up, the lengthwise one −0.36373 + 0.7366.
    const line = said(up, 'in.s4/clamp-place/s4.end.left')!
    expect(line.say.values.low!.value).toBeCloseTo(0.29667, 4)
    expect(line.say.values.high!.value).toBeCloseTo(0.37287, 4)
    expect(line.say.values.along!.value).toBeCloseTo(0.37287, 4)
    expect(sentence(line.say, t)).toMatch(
      /two brace clamps 0\.30\sm and 0\.37\sm .* 0\.37\sm up for the brace along the dock/,
    )
    // On the right the one across is the upper: −0.492909 + 0.7366.
    expect(said(up, 'in.s4/clamp-place/s4.end.right')!.say.values.along!.value).toBeCloseTo(0.243691, 4)
    expect(said(up, 'in.s2/clamp-place/s2.end.left')!.say.key).toBe('up-clamp-place-deck')
    expect(said(down, 'in.s4/clamp-place/s4.end.left')!.say.key).toBe('down-clamp-places-deck')
  })

  it('is all of the parts list', () => {
    const put = up.flatMap(({ lines }) => lines).flatMap(({ parts }) => parts)
    const count = (code: string) => put.reduce((sum, part) => sum + (part.code === code ? part.count : 0), 0)
    for (const code of ['along-96', 'brace-42', 'brace-clamp', 'bolt-3/8-brace'])
      expect(count(code), code).toBe(dock.parts.find((row) => row.code === code)!.quantity)
  })
})

describe('lists and drawing', () => {
  it('name each with its legs, and both holes of a leg', () => {
    const list = packingList(dock, alongCatalog)
    expect(list.braces.slice(-2).map(({ pair, code, low }) => [pair, code, low])).toEqual([
      ['s4.left', 'along-96', 's4.end.left'],
      ['s4.right', 'along-96', 's4.end.right'],
    ])
    const set = setLegs(project).find(({ leg }) => leg === 's4.end.left')!
    expect(set.braces.map(({ code, end }) => [code, end])).toEqual([
      ['brace-42', 'low'],
      ['along-96', 'low'],
    ])
  })

  it('draw those apart that hang at other heights, though their legs are alike', () => {
    const groups = alikePairs(dock).map((group) => group.map(({ id }) => id))
    expect(groups).toContainEqual(['s4.left'])
    expect(groups).toContainEqual(['s4.right'])
  })

  it('have rows of legs as wide as both braces take', () => {
    const drawn = drawnOf(project, english('metric'))
    const table = legTable(drawn, wordsOf(DRAWING, drawn))
    const texts = table
      .marks('Legs', 0, table.rows, [0, 0])
      .flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))
    expect(texts).toContain('brace-42, low end, along-96, low end')
    expect(texts).toContain('0.30 m, 0.37 m')
  })
})
