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
  it('stands 6 in from the lakeward corner where foot pads are 10 in wide: 4 + 3.4375 - 5 = 2.4375 in from the pad, its half 1.1875', () => {
    const [left, right] = posts(look({ extras: { 'anchor-post': 2 } }))
    expect(left).toMatchObject({ section: 's5' })
    expect(left!.along).toBeCloseTo(2.4384 - 0.1524, 5)
    expect([left!.aside, right!.aside].map((v) => v.toFixed(4))).toEqual(['0.7112', '-0.7112'])
  })

  // A mud pad 14 in square reaches 7 - 3.4375 in off the edge, the post's tube from 4 - 1.1875 in on. The leg's axis is 3.4375 in
  // from the corner; half a pad 7 in, half a tube 1.1875 in and 10 mm to spare: 0.087313 + 0.1778 + 0.030163 + 0.01 = 0.305276 m.
  it('moves inward, past a mud pad that reaches under it', () => {
    const dock = look({ pad: 'mud-pad-14', extras: { 'anchor-post': 2 } })
    for (const { section, along } of posts(dock)) {
      expect(section).toBe('s5')
      expect(along).toBeCloseTo(2.4384 - 0.3052755, 5)
    }
    expect(dock.findings.map((f) => f.code)).not.toContain('extra-no-room')
  })

  // TE-45 is 0.45 m long and 0.3 m wide; leg 0.1 m from the corner, 0.07 m inside the edge; post 60.3 mm thick, 0.1 m off the edge.
  // The pad reaches 0.08 m off the edge, the post from 0.07 m on: 0.1 + 0.225 + 0.03015 + 0.01 = 0.36515 m from the corner.
  // TE-27, 0.27 m square, reaches 0.135 - 0.07 = 0.065 m off it, 4.85 mm from the post where 10 are wanted: 0.1 + 0.135 + 0.03015
  // + 0.01 = 0.27515 m. One 0.2 m wide reaches 0.03 m off it, 39.85 mm away: half a space, 0.15 m.
  it('does so in another shop too', () => {
    const dock = look({ frame: 'R100', pad: 'TE-45', extras: { pfahl: 2 } }, metricCatalog)
    const length = dock.sections.at(-1)!.length
    expect(posts(dock).map((p) => p.along.toFixed(5))).toEqual(Array(2).fill((length - 0.36515).toFixed(5)))
    const standard = look({ frame: 'R100', pad: 'TE-27', extras: { pfahl: 2 } }, metricCatalog)
    expect(posts(standard).map((p) => p.along.toFixed(5))).toEqual(
      Array(2).fill((length - 0.27515).toFixed(5)),
    )
    const pads = metricCatalog.pads.map((pad) => ({ ...pad, plate: { ...pad.plate, width: 0.2 } }))
    const small = look({ frame: 'R100', pad: 'TE-27', extras: { pfahl: 2 } }, { ...metricCatalog, pads })
    expect(posts(small).map((p) => p.along.toFixed(5))).toEqual(Array(2).fill((length - 0.15).toFixed(5)))
  })

  // Axes are 1 ft = 0.3048 m apart. s2, with legs at both ends, has 2.4384 - 2 * 0.305276 = 1.8278 m: 5.997 spaces, 6 a side. The
  // other three have no legs at their start: from half a space in, 2.4384 - 0.305276 - 0.1524 = 1.9807 m: 6.5 spaces, 7 a side (the
  // pad before the joint, 0.087313 + 0.0254 m off, reaches 0.1052 m in). The end edge has 1.2192 - 2 * 0.305276 = 0.6086 m: 1.997
  // spaces, 2. Together 2 * 6 + 3 * 2 * 7 + 2 = 56.
  // Standard pads leave the sides alone (above): 2.4384 - 0.3048 = 2.1336 m is 7 spaces, 8 a side. They are 12 in long and reach
  // 6 - 3.4375 = 2.5625 in off the end edge, 0.25 in from a post where 10 mm are wanted, so that edge has 1.2192 - 2 * (0.087313
  // + 0.127 + 0.030163 + 0.01) = 0.7102 m: 2.3 spaces, 3. Together 4 * 2 * 8 + 3 = 67.
  it('is left over where no stretch of edge is clear of the pads', () => {
    const left = (pad: string, n: number) =>
      look({ pad, extras: { 'anchor-post': n } })
        .findings.filter((f) => f.code === 'extra-no-room')
        .map((f) => [f.values.placed?.value, f.values.missing?.value])
    expect(left('mud-pad-14', 56)).toEqual([])
    expect(left('mud-pad-14', 59)).toEqual([[56, 3]])
    expect(left('pad-10x12', 67)).toEqual([])
    expect(left('pad-10x12', 68)).toEqual([[67, 1]])
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
      expect(within && Math.abs(at[1] - beside.y) < beside.width / 2 + 0.0301625).toBe(false)
    }
  })
})
