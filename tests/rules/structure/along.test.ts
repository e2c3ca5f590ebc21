/**
 * A bay braced lengthwise against a formula worked by hand (statics of beams by Euler and Bernoulli, from memory and derived here).
 *
 * Two legs h high stand on feet that turn freely; at the deck, which moves by D and does not turn, each is held by a spring k (sleeve and rail
 * in a row). A leg's own stiffness is K = 1 / (h³/3EI + h²/k), for its moment grows evenly from the foot. Moved by 1 at the deck it is moved at
 * a height c by s(c) = K (c h/k + (h² c − c³/3)/2EI). With the deck held a push F at c moves it there by f(c) F, where
 * f(c) = c²(h−c)²/3EIh − (c(h²−c²)/6EIh)² / (1/k + h/3EI): a beam on two supports, less what the spring turns back.
 * A brace between a height a of one leg and b of the other, at an angle t to the level, L long, is a spring EA/L · cos²t in the level; with what
 * the legs give at its ends it takes H = (s(b) − s(a)) D / (L/(EA cos²t) + f(a) + f(b)), and so the bay's stiffness is
 * 2 K + (s(b) − s(a))² / (L/(EA cos²t) + f(a) + f(b)). With a → 0 and b → h that is 2 K + EA/L · cos²t, as any book has it.
 */
import { describe, expect, it } from 'vitest'
import { type Catalog, demoCatalog, derive, deriveKit } from '../../../rules/index.ts'
import type { Kit } from '../../../rules/kit.ts'
import { stand } from '../../../rules/stand.ts'
import { barOf } from '../../../rules/structure/dock/bars.ts'
import { AS_BUILT, dockFrame } from '../../../rules/structure/dock/frame.ts'
import { sleeveStiffness } from '../../../rules/structure/dock/sleeve.ts'
import {
  factorState,
  layOutStates,
  loadNode,
  noLoad,
  respond,
} from '../../../rules/structure/second-order.ts'
import { evenDock } from '../../../src/build/guide/sweeps.ts'
import { alongCatalog } from '../../support/along-shop.ts'
import { kitOf, level } from '../../support/level-dock.ts'

/** Clamps that hold the brace at the leg's axis: there is no arm to be bent. */
const CLOSE: Catalog = { ...alongCatalog, clamp: { ...alongCatalog.clamp, reach: 0.0001 } }

/** One section on four legs with no braces across. */
const oneBay = (depth: number, catalog: Catalog = CLOSE): Kit =>
  kitOf(
    { sections: 1, head: undefined, bracing: { along: 'last', none: ['s1.start', 's1.end'] } },
    level(depth),
    catalog,
  )

/** N/m: a push along the dock at all four corners over how far they go on the average. */
function stiffness(kit: Kit, braces: boolean): number {
  const frame = dockFrame(kit, { ...AS_BUILT, braces })
  const states = layOutStates(frame)
  const load = noLoad(states.layout)
  const [four] = frame.corners
  for (const node of four!) loadNode(load, node, [250, 0, 0])
  const moved = respond(factorState(states, null), load.onNodes)
  return 1000 / (four!.reduce((sum, node) => sum + moved[node * 6]!, 0) / 4)
}

/** Of one leg: its stiffness alone, how it is moved at a height where its top is moved by 1, and by a push there where its top is held. */
function shapeOf(kit: Kit) {
  const { shop } = kit
  const frame = dockFrame(kit)
  const leg = barOf(shop, kit.legs[0]!.stock!.stock)
  const EI = leg.E * leg.Iy
  const foot = frame.nodes[frame.legs[0]!.foot]!.z
  const h = frame.nodes[frame.legs[0]!.top]!.z - foot
  const rail = barOf(shop, kit.layout.placed[0]!.frame.rail)
  const { spacing } = kit.pairs.find(({ pair }) => pair.along)!.pair
  // A rail turned the same way at both ends is 6 EI / l stiff at each; of its two ways the one about the level axis is the stiffer.
  const k = 1 / (1 / sleeveStiffness(shop) + spacing / (6 * rail.E * Math.max(rail.Iy, rail.Iz)))
  const K = 1 / (h ** 3 / (3 * EI) + h ** 2 / k)
  return {
    K,
    foot,
    s: (c: number): number => K * ((c * h) / k + (h ** 2 * c - c ** 3 / 3) / (2 * EI)),
    f: (c: number): number =>
      (c ** 2 * (h - c) ** 2) / (3 * EI * h) -
      ((c * (h ** 2 - c ** 2)) / (6 * EI * h)) ** 2 / (1 / k + h / (3 * EI)),
  }
}

/** The formula above for two bays side by side, with one brace in each. */
function byHand(kit: Kit, braces: boolean): number {
  const { K, foot, s, f } = shapeOf(kit)
  if (!braces) return 4 * K
  const { pair, fit } = kit.pairs.find(({ pair }) => pair.along)!
  const { lowZ, highZ, brace } = fit!
  const [a, b] = [lowZ - foot, highZ - foot]
  const bar = barOf(kit.shop, brace.stock)
  const cos = pair.spacing / brace.holes
  const level = brace.holes / (bar.E * bar.A * cos ** 2)
  return 2 * (2 * K + (s(b) - s(a)) ** 2 / (level + f(a) + f(b)))
}

describe('a section braced lengthwise at both sides', () => {
  it.each([1, 1.5, 2, 2.4])('in %s m of water is as stiff along the dock as the formula says', (depth) => {
    const kit = oneBay(depth)
    expect(kit.pairs.filter(({ pair, fit }) => pair.along && fit)).toHaveLength(2)
    for (const braces of [false, true]) {
      const [solved, hand] = [stiffness(kit, braces), byHand(kit, braces)]
      expect(Math.abs(solved / hand - 1), `${braces}: ${solved}, by hand ${hand}`).toBeLessThan(0.02)
    }
  })

  it.each([1, 2])('in %s m of water pushes its braces by what the formula leaves to them', (depth) => {
    const kit = oneBay(depth)
    const frame = dockFrame(kit)
    const states = layOutStates(frame)
    const load = noLoad(states.layout)
    for (const node of frame.corners[0]!) loadNode(load, node, [250, 0, 0])
    const moved = respond(factorState(states, null), load.onNodes)
    for (const { member, pair } of frame.braces) {
      const { from, to, E, A } = frame.members[member]!
      const [p, q] = [frame.nodes[from]!, frame.nodes[to]!]
      const ways = [q.x - p.x, q.y - p.y, q.z - p.z]
      const long = Math.hypot(...ways)
      const apart = ways.reduce(
        (sum, way, n) => sum + (way / long) * (moved[to * 6 + n]! - moved[from * 6 + n]!),
        0,
      )
      const push = ((E * A) / long) * apart
      // Of 1000 N the four legs by themselves take what they would of that sway; the rest is the two braces'. A push out to the lake moves
      // their high ends, at the shoreward legs, toward the low ones, which move less: they are pressed.
      const sway = 1000 / byHand(kit, true)
      const level = (1000 - byHand(kit, false) * sway) / 2
      const { s } = shapeOf(kit)
      const { lowZ, highZ } = pair.fit!
      const foot = frame.nodes[frame.legs[0]!.foot]!.z
      const hand = -level / (s(highZ - foot) - s(lowZ - foot)) / (pair.pair.spacing / pair.fit!.brace.holes)
      expect(Math.abs(push / hand - 1), `${push} N, by hand ${hand}`).toBeLessThan(0.03)
    }
  })
})

/** Five sections in 2.4 m of water: by `public/guide/why-braces.md` it gives 54 mm along and leans over at 1.3 times its load. */
const deep = (dock: Record<string, unknown> = {}, catalog: Catalog = alongCatalog): Kit =>
  deriveKit(evenDock(2.4, dock), catalog)
const stood = (kit: Kit) => {
  const { structure } = stand(kit, null)
  return structure!
}

describe('a deep dock', () => {
  const bare = stood(deep())
  const last = stood(deep({ bracing: { along: 'last' } }))
  const all = stood(deep({ bracing: { along: 'all' } }))

  it('is stopped for buckling without them, and stands with them; more of them hold it better', () => {
    expect(bare.buckling).toBeLessThan(1.65)
    expect(last.buckling).toBeGreaterThan(2)
    expect(all.buckling).toBeGreaterThan(last.buckling! + 1)
    expect(last.swayAlong).toBeLessThan(0.6 * bare.swayAlong)
    expect(all.swayAlong).toBeLessThan(0.6 * last.swayAlong)
    // As the guide has it (why-braces.md), mm and factors.
    const told = [bare, last, all].map(({ swayAlong, buckling }) => [
      Math.round(swayAlong * 1000),
      Math.round(buckling! * 10) / 10,
    ])
    expect(told).toEqual([
      [54, 1.3],
      [28, 2.5],
      [14, 4],
    ])
    // Across they change next to nothing.
    expect(Math.abs(all.swayAcross / bare.swayAcross - 1)).toBeLessThan(0.02)
  })

  it('has them judged as braces across are: tube, bolts and clamps, in their worst case', () => {
    expect(last.braces.map(({ pair }) => pair).slice(-2)).toEqual(['s5.left', 's5.right'])
    for (const { use, axial, case: name } of last.braces.slice(-2)) {
      expect(use).toBeGreaterThan(0.05)
      expect(use).toBeLessThan(1)
      expect(axial).not.toBe(0)
      expect(name).not.toBe('')
    }
  })

  it('has no play left along, and across what it had', () => {
    expect(bare.playAlong).toBeGreaterThan(0.02)
    expect(last.playAlong).toBe(0)
    expect(last.playAcross).toBe(bare.playAcross)
  })

  it('is asked whether all feet that braces join slide together', () => {
    const pushes = (structure: typeof last, ids: readonly string[]) =>
      new Set(structure.feet.filter(({ leg }) => ids.includes(leg)).map(({ push }) => push))
    const joined = ['s4.end.left', 's4.end.right', 's5.end.left', 's5.end.right']
    expect(pushes(last, joined).size).toBe(1)
    expect(pushes(all, joined).size).toBe(1)
    expect(pushes(last, ['s3.end.left', 's3.end.right']).size).toBe(1)
  })

  it('is offered them where it leans over or feels loose along, where the shop has them and they are enough', () => {
    const offered = (kit: Kit) =>
      derive(kit.design, kit.shop.catalog).findings.flatMap(({ code, remedy }) =>
        ['buckles', 'sways-along'].includes(code) ? [[code, remedy?.key, remedy?.patch]] : [],
      )
    const patch = [{ op: 'add', path: '/dock/bracing', value: { along: 'last' } }]
    expect(offered(deep())).toEqual([['buckles', 'brace-along', patch]])
    const soft = { ...alongCatalog, sleeve: { ...alongCatalog.sleeve, stiffness: 6_000 } }
    expect(offered(deep({ load: 100 }, soft))).toContainEqual(['sways-along', 'brace-along', patch])
    // A shop without has its posts, as before.
    const keys = derive(deep({}, demoCatalog).design, demoCatalog).findings.map(({ remedy }) => remedy?.key)
    expect(keys).not.toContain('brace-along')
  })
})
