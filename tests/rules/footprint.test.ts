/** What sections cover in plan: by hand for each quarter turn, and the same of the Dock as of the kit that it is published from. */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { assessKit, deriveKit } from '../../rules/index.ts'
import { cornersOf, footprintOf, footprintOfAll } from '../../rules/layout/footprint.ts'
import { footprint } from '../../rules/layout/index.ts'
import { anyCase } from '../support/arbitraries.ts'
import { runs } from '../support/runs.ts'

const section = { x: 10, y: 2, length: 3, width: 1.2 }

it.each([
  [0, { x0: 10, x1: 13, y0: 1.4, y1: 2.6 }],
  [90, { x0: 9.4, x1: 10.6, y0: 2, y1: 5 }],
  [180, { x0: 7, x1: 10, y0: 1.4, y1: 2.6 }],
  [270, { x0: 9.4, x1: 10.6, y0: -1, y1: 2 }],
])('Heading %i: what it covers, and its corners at its edges exactly', (heading, covered) => {
  const own = footprintOf({ ...section, heading })
  expect(own).toEqual(covered)
  const corners = cornersOf({ ...section, heading })
  for (const [i, limits] of [
    [0, [own.x0, own.x1]],
    [1, [own.y0, own.y1]],
  ] as const)
    for (const corner of corners) expect(limits).toContain(corner[i])
})

it('Corners go round: start right, start left, end left, end right', () => {
  expect(cornersOf({ ...section, heading: 90 })).toEqual([
    [10.6, 2],
    [9.4, 2],
    [9.4, 5],
    [10.6, 5],
  ])
})

it('Nothing covers nothing; several are covered by one rectangle', () => {
  expect(footprintOfAll([])).toBeNull()
  const two = [0, 270].map((heading) => ({ ...section, heading }))
  expect(footprintOfAll(two)).toEqual({ x0: 9.4, x1: 13, y0: -1, y1: 2.6 })
})

it('Of any dock it is what the kit has, but for the rounding of what is published', () => {
  fc.assert(
    fc.property(anyCase, ({ design, catalog }) => {
      const kit = deriveKit(design, catalog)
      const dock = assessKit(kit)
      for (const [i, placed] of kit.layout.placed.entries()) {
        // A ramp is published as it rests: tilted.
        if (placed.role === 'ramp') continue
        const [own, there] = [footprint(placed), footprintOf(dock.sections[i]!)]
        for (const side of ['x0', 'x1', 'y0', 'y1'] as const) expect(there[side]).toBeCloseTo(own[side], 5)
      }
    }),
    { numRuns: runs(60) },
  )
})
