/** Anchor posts by rule keep clear of the foot pads: worked by hand on both catalogs. */
import { describe, expect, it } from 'vitest'
import { type Catalog, type Dock, demoCatalog } from '../../rules/index.ts'
import { deriveAtOnce } from '../support/at-once.ts'
import { parsed } from '../support/by-hand.ts'
import { metricCatalog } from '../support/catalogs.ts'
import { contractDemo } from '../support/worked-designs.ts'

const look = (dock: object, catalog: Catalog = demoCatalog): Dock =>
  deriveAtOnce(parsed({ ...contractDemo, dock: { ...contractDemo.dock, start: 2, ...dock } }), catalog)

const posts = (dock: Dock) =>
  dock.placements
    .filter((p) => p.kind === 'anchor-post')
    .map((p) => {
      const section = dock.sections.find((s) => s.id === p.section)!
      return { section: p.section, along: p.at[0] - section.x, aside: p.at[1] - section.y }
    })

describe('an anchor post by rule', () => {
  it('moves inward, past a foot pad 16 in wide that reaches under it', () => {
    const [left, right] = posts(look({ extras: { 'anchor-post': 2 } }))
    expect(left).toMatchObject({ section: 's5' })
    // The pad reaches 8 - 3.4375 in off the edge, the post's tube from 4 - 1.1875 in on. The leg's axis is 3.4375 in from the corner; half a
    // pad 3.5 in, half a tube 1.1875 in and 10 mm to spare: 0.087313 + 0.0889 + 0.030163 + 0.01 = 0.216376 m.
    expect(left!.along).toBeCloseTo(2.4384 - 0.216376, 5)
    expect([left!.aside, right!.aside].map((v) => v.toFixed(4))).toEqual(['0.7112', '-0.7112'])
  })

  // A mud pad 14 in square reaches 7 - 3.4375 in off the edge, the post's tube from 4 - 1.1875 in on: half a pad 7 in, half a tube 1.1875 in
  // and 10 mm to spare: 0.087313 + 0.1778 + 0.030163 + 0.01 = 0.305276 m.
  it('moves further past a mud pad', () => {
    const dock = look({ pad: 'mud-pad-14', extras: { 'anchor-post': 2 } })
    for (const { section, along } of posts(dock)) {
      expect(section).toBe('s5')
      expect(along).toBeCloseTo(2.4384 - 0.305276, 5)
    }
    expect(dock.findings.map((f) => f.code)).not.toContain('extra-no-room')
  })

  // TE-45 is 0.45 m long and 0.3 m wide; leg 0.1 m from the corner, 0.07 m inside the edge; post 60.3 mm thick, 0.1 m off the edge.
  // The pad reaches 0.08 m off the edge, the post from 0.07 m on: 0.1 + 0.225 + 0.03015 + 0.01 = 0.36515 m from the corner.
  it('does so in another shop too', () => {
    const dock = look({ frame: 'R100', pad: 'TE-45', extras: { pfahl: 2 } }, metricCatalog)
    const length = dock.sections.at(-1)!.length
    expect(posts(dock).map((p) => p.along.toFixed(5))).toEqual(Array(2).fill((length - 0.36515).toFixed(5)))
    // TE-36 is 0.2 m long and 0.36 m wide, so it reaches 0.11 m off the edge: 0.1 + 0.1 + 0.03015 + 0.01 = 0.24015 m.
    const small = look({ frame: 'R100', pad: 'TE-36', extras: { pfahl: 2 } }, metricCatalog)
    expect(posts(small).map((p) => p.along.toFixed(5))).toEqual(Array(2).fill((length - 0.24015).toFixed(5)))
  })

  // s2 has legs at both ends: 2.4384 - 2 * 0.305276 = 1.8278 m for axes 1 ft apart, 1.8278 / 0.3048 = 5.997: 6 a side. The three others have
  // none at their start: 2.4384 - 0.1524 - 0.305276 = 1.9807 m: 7 a side. The end edge has 1.2192 - 2 * 0.305276 = 0.6086 m: 2 (1.997 and
  // one). Together 2 * 6 + 3 * 2 * 7 + 2 = 56. On standard pads 2.4384 - 2 * 0.216376 = 2.0056 m: 7; 2.4384 - 0.1524 - 0.216376 = 2.0696 m: 7.
  it('is left over where no stretch of edge is clear of the pads', () => {
    const left = (pad: string, n: number) =>
      look({ pad, extras: { 'anchor-post': n } })
        .findings.filter((f) => f.code === 'extra-no-room')
        .map((f) => [f.values.placed?.value, f.values.missing?.value])
    expect(left('mud-pad-14', 56)).toEqual([])
    expect(left('mud-pad-14', 59)).toEqual([[56, 3]])
    // Off the end edge such a pad reaches 3.5 - 3.4375 in only and is in nobody's way: 1.2192 - 0.3048 = 0.9144 m, 3 spaces: 4. Together
    // 4 * 2 * 7 + 4 = 60.
    expect(left('pad-7x16', 60)).toEqual([])
    expect(left('pad-7x16', 61)).toEqual([[60, 1]])
  })

  it('keeps clear of a deck that runs along its edge, 5 cm and a joint away', () => {
    // s2 is hung on the left of s1 and s3 on the lakeward side of s2, so that it runs beside s1 without being hung on it.
    const plan = [
      { id: 's1', on: null },
      { id: 's2', on: 's1', edge: 'left', with: 'start', along: 0 },
      { id: 's3', on: 's2', edge: 'right', with: 'start', along: 0.05 },
    ]
    const dock = look({ sections: undefined, ramp: undefined, plan, extras: { 'anchor-post': 8 } })
    expect(dock.findings.map((f) => f.code)).not.toContain('sections-overlap')
    const beside = dock.sections.find((s) => s.id === 's3')!
    expect(beside.heading).toBe(0)
    expect(posts(dock)).toHaveLength(8)
    for (const { at } of dock.placements.filter((p) => p.kind === 'anchor-post')) {
      const within = at[0] > beside.x && at[0] < beside.x + beside.length
      expect(within && Math.abs(at[1] - beside.y) < beside.width / 2 + 0.02413).toBe(false)
    }
  })
})
