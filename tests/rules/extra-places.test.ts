/** Where one more extra could go: what is told is free, and is the nearest that is. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { demoCatalog, deriveKit } from '../../rules/index.ts'
import { edgeLength } from '../../rules/layout/index.ts'
import { extraPlaces } from '../../rules/parts/extra-places.ts'
import { anyCase } from '../support/arbitraries.ts'
import { kitOf } from '../support/level-dock.ts'
import { runs } from '../support/runs.ts'

const EDGES = ['start', 'end', 'left', 'right'] as const
const space = (code: string): number => demoCatalog.extras.find((one) => one.code === code)!.space
const at = (
  kit: ReturnType<typeof kitOf>,
  code: string,
  id: string,
  edge: (typeof EDGES)[number],
  wanted?: number,
) => extraPlaces(kit, code)!.nearest(kit.layout.placed.find((p) => p.id === id)!, edge, wanted)

describe('on three sections of 8 ft without extras', () => {
  const kit = kitOf()

  it('is the place that is pointed at, the middle where none is, and within the edge', () => {
    expect(at(kit, 'bumper', 's2', 'left', 0.9)).toBe(0.9)
    expect(at(kit, 'bumper', 's2', 'left')).toBeCloseTo(1.2192, 9)
    expect(at(kit, 'bumper', 's2', 'left', -5)).toBeCloseTo(space('bumper') / 2, 9)
    expect(at(kit, 'bumper', 's2', 'left', 99)).toBeCloseTo(2.4384 - space('bumper') / 2, 9)
  })

  it('is none where sections join', () => {
    expect(at(kit, 'bumper', 's2', 'end')).toBeNull()
    expect(at(kit, 'bumper', 's3', 'end')).toBeCloseTo(0.6096, 9)
  })

  it('is beside what has a place already, not where the rule put something', () => {
    const one = kitOf({ placed: [{ code: 'bumper', section: 's2', edge: 'left', along: 1.2192 }] })
    const moved = at(one, 'bumper', 's2', 'left', 1.25)!
    expect(moved).toBeCloseTo(1.2192 + space('bumper'), 9)
    expect(at(kitOf({ extras: { bumper: 6 } }), 'bumper', 's2', 'left', 0.9)).toBe(0.9)
  })

  it('is told of no extra that nobody sells', () => {
    expect(extraPlaces(kit, 'gold')).toBeNull()
  })
})

it('on any dock is taken by what is put there, without a finding, and nothing nearer by a hand is free', () => {
  let put = 0
  fc.assert(
    fc.property(anyCase, fc.integer({ min: 0, max: 3000 }), fc.nat(), ({ design, catalog }, mm, pick) => {
      const kit = deriveKit(design, catalog)
      const sections = kit.layout.placed
      const section = sections[pick % Math.max(1, sections.length)]
      const extra = catalog.extras[pick % catalog.extras.length]!
      const places = extraPlaces(kit, extra.code)!
      if (!section) return
      const edge = EDGES[pick % 4]!
      const tried = (along: number) =>
        deriveKit(
          {
            ...design,
            dock: {
              ...design.dock,
              placed: [...(design.dock.placed ?? []), { code: extra.code, section: section.id, edge, along }],
            },
          },
          catalog,
        ).extras.noPlace.some(({ index }) => index === (design.dock.placed ?? []).length)
      const wanted = mm / 1000
      const along = places.nearest(section, edge, wanted)
      if (along === null) return
      put++
      expect(tried(along)).toBe(false)
      expect(along).toBeGreaterThanOrEqual(0)
      expect(along).toBeLessThanOrEqual(edgeLength(section, edge))
      // Posts keep clear of feet besides.
      if (extra.place === 'post') return
      const nearer = wanted + 0.9 * (along - wanted)
      const whole = nearer >= extra.space / 2 && nearer <= edgeLength(section, edge) - extra.space / 2
      if (whole && Math.abs(along - wanted) > 0.01) expect(tried(nearer)).toBe(true)
    }),
    { numRuns: runs(200) },
  )
  expect(put).toBeGreaterThan(runs(60))
})
