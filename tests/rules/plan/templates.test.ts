/** Shapes to begin with: each stands in its own water on both shops' frames, with the slips that it is for. */
import { describe, expect, it } from 'vitest'
import { straightFrames } from '../../../rules/catalog/straight.ts'
import { demoCatalog, demoDesign, parseCatalog, shopOf } from '../../../rules/index.ts'
import { asPlan, withPlan } from '../../../rules/plan/as-plan.ts'
import { TEMPLATES, type TemplateName, templatePlan } from '../../../rules/plan/templates.ts'
import { lie } from '../../../rules/plan/troubles.ts'
import { parsedDesign } from '../../support/arbitraries.ts'
import { deriveAtOnce } from '../../support/at-once.ts'
import { catalogs } from '../../support/catalogs.ts'
import { validate } from '../../support/validate.ts'

const frame = demoCatalog.frames[0]!
const plan = (name: TemplateName, reach = 4) => templatePlan(name, { frame, reach, ramp: true })

describe('each template', () => {
  it.each(TEMPLATES)(
    '%s stands without trouble on every frame, with a ramp and without, however short',
    (name) => {
      for (const catalog of catalogs)
        for (const one of straightFrames(catalog))
          for (const ramp of [true, false])
            for (const reach of [1, 4, 7]) {
              const made = templatePlan(name, { frame: one, reach, ramp })
              const lying = lie(made, one.code, shopOf(catalog))
              expect(lying.troubles).toEqual([])
              expect(lying.layout.placed.length).toBe(made.length)
            }
    },
  )

  it.each(TEMPLATES)('%s keeps every law', (name) => {
    const design = parsedDesign(withPlan(demoDesign, plan(name)))
    const dock = deriveAtOnce(design, demoCatalog)
    expect(validate(dock, design, demoCatalog)).toEqual([])
    expect(dock.sections.length).toBe(plan(name).length)
  })
})

describe('by hand, 4 x 8 ft, pitch 2.4638', () => {
  const at = (name: TemplateName) =>
    new Map(
      lie(plan(name), '4x8', shopOf(demoCatalog)).layout.placed.map((p) => [
        p.id,
        [p.x, p.y, p.heading].map((n) => Math.round(n * 1e4) / 1e4),
      ]),
    )

  it('a U has a slip of 12 ft clear between its arms, both of which begin beyond the crosspiece', () => {
    const places = at('U')
    // s3 is the corner, s2 stands first at 0: it ends at 2 x 2.4638 - 0.0254 = 4.9022... the run: s2 0, s3 2.4638, s4 4.9276... of reach 4
    // the corner is s3 (two more beyond it): ends 2.4638 + 2.4384 = 4.9022; crosspiece 4.9022 - 0.6096 = 4.2926, from y 0.635 on.
    expect(places.get('h1')).toEqual([4.2926, 0.635, 90])
    expect(places.get('h2')).toEqual([4.2926, 3.0988, 90])
    // h2's far end at 5.5372; the arm flush with it, 4 ft wide: middle at 5.5372 - 0.6096 = 4.9276; starts a gap beyond 4.9022.
    expect(places.get('h3')).toEqual([4.9276, 4.9276, 0])
    expect(places.get('h4')).toEqual([7.3914, 4.9276, 0])
    // Clear: 4.9276 - 0.6096 - 0.6096 = 3.7084 = 12 ft 2 in.
  })

  it('an F has two fingers to the left, a slip of 12 ft 2 in between them', () => {
    const places = at('F')
    expect([places.get('h1')![2], places.get('h3')![2]]).toEqual([90, 90])
    // Two pitches from finger to finger, less 4 ft: 4.9276 - 1.2192.
    expect(places.get('h3')![0]! - places.get('h1')![0]! - 1.2192).toBeCloseTo(3.7084, 4)
  })

  it('an H has a second leg of three sections beside the run, its middle one across the end of the crosspiece', () => {
    const places = at('H')
    // The crosspiece ends at 0.635 + 2.4638 + 2.4384 = 5.5372; a gap, then half a width: 6.1722. It is centered on 8 ft less 2 ft of s4.
    expect(places.get('h3')).toEqual([5.5372, 6.1722, 0])
    expect(places.get('h4')).toEqual([8.001, 6.1722, 0])
    expect(places.get('h5')).toEqual([3.0734, 6.1722, 0])
  })

  it('a double slip has a slip on each side of the run, in a mirror', () => {
    const places = at('double-slip')
    expect(places.get('h3')).toEqual([4.9276, 4.9276, 0])
    expect(places.get('h7')).toEqual([4.9276, -4.9276, 0])
    expect([...places.keys()].length).toBe(13)
  })

  it('straight, L, T and wide are the docks that sections and head ask for', () => {
    const heads = { straight: ['straight', 0], L: ['left', 1], T: ['tee', 2], wide: ['wide', 2] } as const
    for (const [name, [shape, sections]] of Object.entries(heads)) {
      const dock = { ...demoDesign.dock, sections: 5, ramp: true, head: { shape, sections } }
      expect(asPlan({ ...demoDesign, dock }, shopOf(demoCatalog))).toEqual(plan(name as TemplateName))
    }
  })
})

describe("a shop's own templates", () => {
  const own = { code: 'gull', name: 'Gull wing', frame: '4x8', plan: plan('T') }
  const withOwn = (change: object) => parseCatalog({ ...demoCatalog, templates: [{ ...own, ...change }] })
  it('come with its catalog', () => {
    const parsed = withOwn({})
    expect(parsed.ok && parsed.value.templates).toEqual([own])
  })
  it.each<[string, object, string]>([
    ['a frame that it has not', { frame: '9x9' }, 'templates[0].frame'],
    [
      'a section of such a frame',
      { plan: [{ id: 's1', on: null, frame: '9x9' }] },
      'templates[0].plan[0].frame',
    ],
    [
      'two that stand first',
      {
        plan: [
          { id: 'a', on: null },
          { id: 'b', on: null },
        ],
      },
      'templates[0].plan',
    ],
    ['a plan of nothing', { plan: [] }, 'templates[0].plan'],
  ])('are refused with %s, with the place', (_, change, path) => {
    const parsed = withOwn(change)
    expect(!parsed.ok && parsed.issues.map((one) => one.path)).toContain(path)
  })
  it('have codes that differ', () => {
    const parsed = parseCatalog({ ...demoCatalog, templates: [own, own] })
    expect(!parsed.ok && parsed.issues[0]!.path).toBe('templates[1].code')
  })
})
