/** The shape that is drawn is the one that was solved: the same sway, legs that meet corners, sleeves that give as much as they carry. */
import { describe, expect, it } from 'vitest'
import { demoCatalog, demoDesign, deriveKit, parseDesign } from '../../../rules/index.ts'
import { stand } from '../../../rules/stand.ts'
import { barOf } from '../../../rules/structure/dock/bars.ts'
import { sleeveStiffness } from '../../../rules/structure/dock/sleeve.ts'
import { type SwayShape, swayShape, type Way } from '../../../rules/structure/dock/sway-shape.ts'

const kitOf = (dock: Record<string, unknown> = {}) => {
  const parsed = parseDesign({ ...demoDesign, dock: { ...demoDesign.dock, ...dock } })
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
  return deriveKit(parsed.value, demoCatalog)
}
const shapeOf = (kit: ReturnType<typeof kitOf>, braces: boolean, way: Way = 'across'): SwayShape =>
  swayShape(kit, { braces, way })!

const DOCKS = {
  'the demo': {},
  'one with a T': { head: { shape: 'tee', sections: 4 } },
  'one with a wide end': { head: { shape: 'wide', sections: 2 } },
  'one without a ramp': { ramp: false },
} as const

describe.each(Object.entries(DOCKS))('of %s', (_, dock) => {
  const kit = kitOf(dock)
  const { structure } = stand(kit, null, { deep: false })

  it('the largest movement is the sway that the structure tells', () => {
    expect(shapeOf(kit, true).most).toBeCloseTo(structure!.swayAcross, 6)
    expect(shapeOf(kit, true, 'along').most).toBeCloseTo(structure!.swayAlong, 6)
    expect(shapeOf(kit, false).most).toBeCloseTo(structure!.swayUnbracedAcross, 6)
  })

  it('some corner moves as far as it says the softest one does', () => {
    for (const [way, axis] of [['across', 1] as const, ['along', 0] as const]) {
      const { sections, most } = shapeOf(kit, true, way)
      const moves = sections.flatMap(({ corners }) => corners.map((move) => move[axis]))
      expect(Math.max(...moves)).toBeGreaterThanOrEqual(most * (1 - 1e-9))
    }
  })

  it('feet stay where they are, and a leg ends where its corner is', () => {
    const { legs, sections } = shapeOf(kit, true)
    const corner = new Map(sections.map(({ section, corners }) => [section, corners]))
    const order = ['start.left', 'start.right', 'end.left', 'end.right']
    expect(legs.length).toBe(kit.legs.length)
    for (const [i, { leg, points }] of legs.entries()) {
      expect(points[0]!.move.slice(0, 3)).toEqual([0, 0, 0])
      const placed = kit.legs[i]!
      expect(placed.id).toBe(leg)
      const top = corner.get(placed.section.id)![order.indexOf(placed.corner)]!
      expect(points.at(-1)!.move.slice(0, 3)).toEqual(top.slice(0, 3))
    }
  })

  it('braces are there where they are asked for, and nowhere else', () => {
    const braced = kit.pairs.filter((pair) => pair.fit).map(({ pair }) => pair.id)
    expect(shapeOf(kit, true).braceEnds.map(({ pair }) => pair)).toEqual(braced)
    expect(shapeOf(kit, false).braceEnds).toEqual([])
    expect(shapeOf(kit, false).legs.every(({ points }) => points.length === 2)).toBe(true)
  })
})

it('without a brace no moment is in the foot, and the sleeve turns by what it carries', () => {
  // One plain leg: φ at the foot from its own ends must give M = 0 there, with the turn at the top that the sleeve leaves.
  const kit = kitOf()
  const { legs, sections } = shapeOf(kit, false)
  const spring = sleeveStiffness(kit.shop)
  const placed = kit.legs[0]!
  const bar = barOf(kit.shop, placed.stock!.stock)
  const [foot, top] = legs[0]!.points as readonly [
    SwayShape['legs'][0]['points'][0],
    SwayShape['legs'][0]['points'][0],
  ]
  const length = top.z - foot.z
  // In the plane across: slope is −rx.
  const [a, b] = [-foot.move[3], -top.move[3]]
  const drift = top.move[1] - foot.move[1]
  const k = (bar.E * bar.Iy) / length
  const atFoot = k * (4 * a + 2 * b - (6 * drift) / length)
  const atTop = k * (4 * b + 2 * a - (6 * drift) / length)
  expect(Math.abs(atTop)).toBeGreaterThan(1)
  expect(Math.abs(atFoot / atTop)).toBeLessThan(1e-6)
  const section = sections.find((s) => s.section === placed.section.id)!
  const index = ['start.left', 'start.right', 'end.left', 'end.right'].indexOf(placed.corner)
  expect(spring * (-section.corners[index]![3] - b)).toBeCloseTo(atTop, 6)
})

it('corners are told where they are in the section they belong to', () => {
  const kit = kitOf({ head: { shape: 'left', sections: 1 } })
  const { sections } = shapeOf(kit, true)
  for (const { section, along, across, z } of sections) {
    const { frame, role } = kit.layout.placed.find((p) => p.id === section)!
    expect(along[0]).toBeGreaterThan(0)
    expect(along[1]).toBeLessThan(frame.length * (role === 'ramp' ? 1.01 : 1))
    expect(across).toBeGreaterThan(frame.width * 0.4)
    expect(across).toBeLessThan(frame.width / 2)
    if (role !== 'ramp') expect(z[0]).toBeCloseTo(z[1], 9)
  }
})

it('a dock that cannot be judged has no shape', () => {
  expect(swayShape(kitOf({ deckHeight: 2.4 }), { braces: true })).toBeNull()
})
