/** Every piece moves as what it is fixed to does: no gap opens where parts meet, and nothing on the bed moves. */
import { describe, expect, it } from 'vitest'
import {
  assessKit,
  demoCatalog,
  demoDesign,
  deriveKit,
  type Placement,
  parseDesign,
} from '../../rules/index.ts'
import { swayShape } from '../../rules/structure/dock/sway-shape.ts'
import { fieldOf, ofLeg } from '../../src/scene/sway/displacement.ts'

const made = (dock: Record<string, unknown>, braces = true) => {
  const parsed = parseDesign({ ...demoDesign, dock: { ...demoDesign.dock, ...dock } })
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
  const kit = deriveKit(parsed.value, demoCatalog)
  const shape = swayShape(kit, { braces })!
  const placed = assessKit(kit)
  return { shape, placed, field: fieldOf(shape, placed) }
}
const size = (move: readonly number[]) => Math.hypot(...move)
const apart = (a: readonly number[], b: readonly number[]) => size(a.map((v, k) => v - b[k]!))

describe.each([
  ['the demo', {}],
  ['one that turns left', { head: { shape: 'left', sections: 2 } }],
  ['one with a T', { head: { shape: 'tee', sections: 2 } }],
] as const)('of %s', (_, dock) => {
  const { shape, placed, field } = made(dock)
  const of = (kind: Placement['kind']) => placed.placements.filter((p) => p.kind === kind)

  it('the corner that is pushed moves as far as is told, and nothing by more than twice as far', () => {
    const moves = placed.placements.map((p) => size(field(p)(...p.at)))
    expect(Math.max(...moves)).toBeGreaterThan(shape.most * 0.9)
    expect(Math.max(...moves)).toBeLessThan(shape.most * 2)
  })

  it('pads stay on the bed, and so does the foot of a leg', () => {
    for (const pad of of('foot-pad')) expect(size(field(pad)(...pad.at))).toBe(0)
    for (const leg of of('leg')) expect(size(field(leg)(...leg.at))).toBeLessThan(shape.most * 0.05)
  })

  it('a leg goes with its section where the sleeve holds it', () => {
    for (const { leg, x, y, points } of shape.legs) {
      const top = points.at(-1)!.z
      const frame = of('frame').find((p) => p.of === placed.legs.find((l) => l.id === leg)!.section)!
      expect(apart(ofLeg(points, top), field(frame)(x, y, top)), leg).toBeLessThan(shape.most * 0.01)
    }
  })

  it('a brace ends where its clamps are', () => {
    expect(of('brace').length).toBeGreaterThan(0)
    for (const brace of of('brace')) {
      const pair = placed.pairs.find(({ id }) => id === brace.of)!
      for (const id of pair.legs) {
        const leg = placed.legs.find((l) => l.id === id)!
        const z = id === pair.brace!.low ? pair.brace!.lowZ : pair.brace!.highZ
        const points = shape.legs.find((l) => l.leg === id)!.points
        // The clamp's arm turns with the leg: its hole moves up or down by what the leg leans.
        const there = field(brace)(leg.x, leg.y, z)
        expect(Math.abs(there[0] - ofLeg(points, z)[0])).toBeLessThan(shape.most * 0.05)
        expect(Math.abs(there[1] - ofLeg(points, z)[1])).toBeLessThan(shape.most * 0.05)
      }
    }
  })

  it('sections that hang on each other stay together where they do', () => {
    for (const hook of of('hook-bracket')) {
      const ids = placed.joints.find(({ id }) => id === hook.of)!.between
      const [a, b] = ids.map((id) => field(of('frame').find((p) => p.of === id)!)(...hook.at))
      // One that hangs on the side of another hangs on a rail that bends, and is drawn straight.
      const aside = ids.some((id) => id.startsWith('h'))
      expect(apart(a!, b!), hook.of).toBeLessThan(shape.most * (aside ? 0.4 : 0.12))
    }
  })

  it('an anchor post is held in the bed and goes with its clamp', () => {
    expect(of('anchor-post').length).toBeGreaterThan(0)
    for (const post of of('anchor-post')) {
      const clamp = of('post-clamp').find((p) => p.of === post.of)!
      expect(size(field(post)(...post.at))).toBe(0)
      const [x, y, z] = clamp.at
      const [a, b] = [field(post)(x, y, z), field(clamp)(x, y, z)]
      // It slides in its clamp: up and down they go apart.
      expect(Math.hypot(a[0] - b[0], a[1] - b[1])).toBeLessThan(shape.most * 0.08)
    }
  })
})

it('a leg bends without a kink at its clamp', () => {
  const { shape } = made({})
  const braced = shape.legs.filter(({ points }) => points.length === 3)
  expect(braced.length).toBeGreaterThan(0)
  for (const { points } of braced) {
    const at = points[1]!.z
    const e = 1e-4
    const slope = (z: number) => (ofLeg(points, z + e)[1] - ofLeg(points, z - e)[1]) / (2 * e)
    expect(slope(at - 2 * e)).toBeCloseTo(slope(at + 2 * e), 4)
    expect(slope(at - 2 * e)).toBeCloseTo(-points[1]!.move[3], 4)
  }
})
