/** Every solid of both shops: closed, outward, of the engine's mass by an independent mesh library, of the size that the catalog says. */
import { describe, expect, it } from 'vitest'
import { type Solid, solidOf } from '../../geometry/index.ts'
import { bodies, type Catalog, demoCatalog, type PartKind, shopOf } from '../../rules/index.ts'
import { catalogs } from '../support/catalogs.ts'
import { fenderCatalog } from '../support/fender-shop.ts'
import { bodyManifold } from './support/manifold.ts'

const partsOf = (catalog: Catalog) => [...shopOf(catalog).parts.values()]
const name = (kind: string, code: string): string => `${kind} ${code}`

/** Corner of a triangle as a key: equal places weld, whatever their normals. */
const placeOf = ({ positions }: Solid, v: number): string =>
  `${positions[3 * v]! + 0},${positions[3 * v + 1]! + 0},${positions[3 * v + 2]! + 0}`

/** Edges of one body that do not join just two faces, one each way. */
function openEdges(solid: Solid, { start, count }: Solid['bodies'][number]): string[] {
  const edges = new Map<string, number>()
  for (let t = start; t < start + count; t += 3)
    for (let k = 0; k < 3; k++) {
      const a = placeOf(solid, solid.indices[t + k]!)
      const b = placeOf(solid, solid.indices[t + ((k + 1) % 3)]!)
      edges.set(`${a} ${b}`, (edges.get(`${a} ${b}`) ?? 0) + 1)
    }
  return [...edges].flatMap(([edge, n]) => {
    const back = edge.split(' ').reverse().join(' ')
    return n === 1 && edges.get(back) === 1 ? [] : [edge]
  })
}

/** By the divergence theorem, m3: negative where faces look inward. */
function signedVolume({ positions: p, indices }: Solid, { start, count }: Solid['bodies'][number]): number {
  let six = 0
  for (let t = start; t < start + count; t += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => 3 * indices[t + k]!) as [number, number, number]
    six +=
      p[a]! * (p[b + 1]! * p[c + 2]! - p[b + 2]! * p[c + 1]!) +
      p[a + 1]! * (p[b + 2]! * p[c]! - p[b]! * p[c + 2]!) +
      p[a + 2]! * (p[b]! * p[c + 1]! - p[b + 1]! * p[c]!)
  }
  return six / 6
}

function boundsOf({ positions }: Solid): [low: number[], high: number[]] {
  const [low, high] = [Array(3).fill(Number.POSITIVE_INFINITY), Array(3).fill(Number.NEGATIVE_INFINITY)]
  positions.forEach((v, i) => {
    low[i % 3] = Math.min(low[i % 3], v)
    high[i % 3] = Math.max(high[i % 3], v)
  })
  return [low, high]
}

/** The stock pieces of a made part, and the mass that the shop states for it all the same. */
function madeOf(catalog: Catalog, kind: PartKind, code: string) {
  const find = <T extends { readonly code: string; readonly mass?: number | undefined }>(
    list: readonly T[],
    body: (item: T) => ReturnType<typeof bodies.frameBody>,
  ) => {
    const item = list.find((i) => i.code === code)
    return item && { pieces: body(item), stated: item.mass !== undefined }
  }
  switch (kind) {
    case 'frame':
      return find(catalog.frames, (f) => bodies.frameBody(catalog, f))
    case 'leg':
      return find(catalog.legs, (l) => bodies.tubeBody(catalog, l))
    case 'brace':
      return find(catalog.braces, (b) => bodies.braceBody(catalog, b))
    case 'foot-pad':
      return find(catalog.pads, (p) => bodies.padBody(catalog, p))
    case 'deck-panel':
      return find(catalog.decking.panels, (p) => bodies.panelBody(catalog, p))
    case 'hinge-bar':
      return find([catalog.hinge.bar], () => bodies.hingeBarBody(catalog))
    case 'anchor-post':
      return find(
        catalog.extras.flatMap((e) => (e.place === 'post' ? e.posts : [])),
        (p) => bodies.tubeBody(catalog, p),
      )
    default:
      return undefined
  }
}

/** Accessories that the shop says the shape of; of one size, that without a word would be a cleat. */
const shapedCatalog: Catalog = {
  ...demoCatalog,
  name: 'a shop with shapes',
  extras: demoCatalog.extras.flatMap((extra) =>
    extra.place === 'edge' && extra.code === 'cleat'
      ? (['box', 'plate', 'tube'] as const).map((shape) => ({
          ...extra,
          code: shape,
          parts: extra.parts.map((part) => ({ ...part, code: shape, shape })),
        }))
      : [extra],
  ),
}

describe.each([...catalogs, fenderCatalog].map((catalog) => [catalog.name, catalog] as const))(
  'the solids of %s',
  (_, catalog) => {
    const parts = partsOf(catalog)

    it('are there for every part of the shop, each made once', () => {
      expect(parts.length).toBeGreaterThan(30)
      for (const { kind, code } of parts)
        expect(solidOf(kind, code, catalog)).toBe(solidOf(kind, code, catalog))
    })

    it('are closed: every edge of a body joins two faces once its vertices are welded', () => {
      const open = parts.flatMap(({ kind, code }) => {
        const solid = solidOf(kind, code, catalog)
        const edges = solid.bodies.flatMap((body) => openEdges(solid, body))
        return edges.length > 0 ? [`${name(kind, code)}: ${edges[0]}`] : []
      })
      expect(open).toEqual([])
    })

    it('are wound outward: every body has a positive volume, the same as the library’s', () => {
      for (const { kind, code } of parts) {
        const solid = solidOf(kind, code, catalog)
        for (const body of solid.bodies) {
          const volume = signedVolume(solid, body)
          expect(volume, name(kind, code)).toBeGreaterThan(0)
          const library = bodyManifold(solid, body)
          expect(library.status()).toBe('NoError')
          expect(library.volume() / volume, name(kind, code)).toBeCloseTo(1, 3)
          library.delete()
        }
      }
    })

    it('have normals of length 1 on the outer side of every triangle', () => {
      for (const { kind, code } of parts) {
        const { positions: p, normals, indices } = solidOf(kind, code, catalog)
        for (let t = 0; t < indices.length; t += 3) {
          const [a, b, c] = [0, 1, 2].map((k) => 3 * indices[t + k]!) as [number, number, number]
          const [u, w] = [b, c].map((v) => [0, 1, 2].map((k) => p[v + k]! - p[a + k]!)) as [
            number[],
            number[],
          ]
          const face = [0, 1, 2].map(
            (k) => u[(k + 1) % 3]! * w[(k + 2) % 3]! - u[(k + 2) % 3]! * w[(k + 1) % 3]!,
          )
          for (const v of [a, b, c]) {
            expect(Math.hypot(normals[v]!, normals[v + 1]!, normals[v + 2]!)).toBeCloseTo(1, 4)
            expect(
              face.reduce((sum, f, k) => sum + f * normals[v + k]!, 0),
              name(kind, code),
            ).toBeGreaterThan(0)
          }
        }
      }
    })

    it('are in groups and bodies that share out all their triangles, in order', () => {
      for (const { kind, code } of parts) {
        const { groups, bodies: list, indices } = solidOf(kind, code, catalog)
        for (const ranges of [groups, list]) {
          let at = 0
          for (const { start, count } of ranges) {
            expect(start).toBe(at)
            at += count
          }
          expect(at, name(kind, code)).toBe(indices.length)
        }
      }
    })

    it('weigh what the engine says within 0.5 %: volume by the library times the density of its stock', () => {
      let weighed = 0
      for (const { kind, code, grams } of parts) {
        const made = madeOf(catalog, kind, code)
        if (!made) continue
        const solid = solidOf(kind, code, catalog)
        // Bodies are sorted by their looks, so each material's volume is told apart by its pieces.
        const densities = [...new Set(made.pieces.map((p) => catalog.materials[p.stock.material]!.density))]
        const volumes = solid.bodies.map((body) => bodyManifold(solid, body).volume())
        const mass =
          densities.length === 1
            ? densities[0]! * volumes.reduce((sum, v) => sum + v, 0)
            : massByGroups(catalog, made.pieces, solid, volumes)
        const engine = made.stated ? bodies.massOf(catalog, made.pieces) : grams / 1000
        expect(Math.abs(mass / engine - 1), name(kind, code)).toBeLessThan(0.005)
        weighed++
      }
      expect(weighed).toBeGreaterThan(20)
    })

    it('have the size that the catalog says', () => {
      for (const frame of catalog.frames) {
        const [low, high] = boundsOf(solidOf('frame', frame.code, catalog))
        const { depth, lowest } = shopOf(catalog).shape(frame)
        // A corner piece reaches from its start edge to the far corner of its end edge: w sin t + l cos t/2.
        const turn = ((frame.turn ?? 0) * Math.PI) / 180
        expect(low[0]).toBeCloseTo(0, 5)
        expect(high[0]).toBeCloseTo(frame.width * Math.sin(turn) + frame.length * Math.cos(turn / 2), 5)
        expect(high[1]! - low[1]!).toBeCloseTo(frame.width + frame.length * Math.sin(turn / 2), 5)
        expect(high[2]).toBeCloseTo(-catalog.decking.rise, 5)
        expect(low[2]).toBeCloseTo(-Math.max(depth, lowest), 5)
      }
      for (const leg of catalog.legs) {
        const [low, high] = boundsOf(solidOf('leg', leg.code, catalog))
        expect([low[2], high[2]]).toEqual([0, Math.fround(leg.length)])
      }
      for (const pad of catalog.pads) {
        const [low, high] = boundsOf(solidOf('foot-pad', pad.code, catalog))
        expect(low[2]).toBe(0)
        expect(high[2]).toBeCloseTo(bodies.padHeight(pad), 6)
        expect(high[0]! - low[0]!).toBeCloseTo(pad.plate.length, 6)
      }
      for (const panel of catalog.decking.panels) {
        const [low, high] = boundsOf(solidOf('deck-panel', panel.code, catalog))
        expect(high[2]).toBeCloseTo(0, 6)
        const half = ((panel.turn ?? 0) * Math.PI) / 360
        if (half === 0) expect(high[0]! - low[0]!).toBeCloseTo(panel.length, 6)
        else {
          // Its longest plank is cut back for the legs; the next is as long as there.
          const far = panel.length + 2 * panel.width * Math.sin(half)
          expect(high[0]! - low[0]!).toBeLessThan(far)
          expect(high[0]! - low[0]!).toBeGreaterThan(0.8 * far)
          expect(high[1]! - low[1]!).toBeCloseTo(panel.width * Math.cos(half), 5)
        }
      }
    })

    it('of small parts stay within the size that the catalog gives them', () => {
      const { caps, hinge, decking, tie, hooks, extras } = catalog
      const sized: [PartKind, { code: string; size: readonly [number, number, number] }][] = [
        ['leg-cap', caps.leg],
        ['sleeve-cap', caps.sleeve],
        ['hinge-pin', hinge.pin],
        ['deck-clip', decking.clip],
        ['hook-bracket', hooks.bracket],
        ...extras.flatMap((e) =>
          e.parts.filter((p) => p.kind !== 'post-clamp').map((p) => [p.kind, p] as [PartKind, typeof p]),
        ),
      ]
      for (const [kind, part] of sized) {
        const [low, high] = boundsOf(solidOf(kind, part.code, catalog))
        for (const k of [0, 1, 2])
          expect(high[k]! - low[k]!, `${kind} ${part.code}`).toBeLessThan(part.size[k]! * 1.02)
      }
      const [low, high] = boundsOf(solidOf('accessory', tie.code, catalog))
      expect(high[0]! - low[0]!).toBeCloseTo(tie.size[0], 5)
    })

    it('are refused by name where the catalog has no such part', () => {
      expect(() => solidOf('leg', 'no-such-leg', catalog)).toThrow(/solidOf: no leg "no-such-leg" in catalog/)
    })
  },
)

it('An accessory is the box, plate or tube that its shop says, of the size that it says, m', () => {
  // Size 0.0508 out, 0.2032 along, 0.0635 up. A box lies on the deck inside the edge, a plate hangs down outside of it, a tube stands on the deck.
  const bounds = (shape: string) => boundsOf(solidOf('accessory', shape, shapedCatalog))
  const near = (found: readonly number[], wanted: readonly number[], digits = 6) => {
    for (const [k, one] of wanted.entries()) expect(found[k]).toBeCloseTo(one, digits)
  }
  for (const shape of ['box', 'plate', 'tube']) {
    const solid = solidOf('accessory', shape, shapedCatalog)
    expect(solid.bodies.flatMap((body) => openEdges(solid, body))).toEqual([])
    for (const body of solid.bodies) expect(signedVolume(solid, body)).toBeGreaterThan(0)
  }
  near(bounds('box')[0], [-0.0508, -0.1016, 0])
  near(bounds('box')[1], [0, 0.1016, 0.0635])
  near(bounds('plate')[0], [0, -0.1016, -0.0635])
  near(bounds('plate')[1], [0.0508, 0.1016, 0])
  // A circle is drawn as a polygon of its area: corners stand out by half a percent.
  near(bounds('tube')[0], [-0.0508, -0.0254, 0], 3)
  near(bounds('tube')[1], [0, 0.0254, 0.0635], 3)
})

/** Of parts made of several materials: the looks' groups hold the pieces in the order in which the looks first come. */
function massByGroups(
  catalog: Catalog,
  pieces: ReturnType<typeof bodies.frameBody>,
  solid: Solid,
  volumes: readonly number[],
): number {
  const looks = [...new Set(solid.groups.map((g) => g.material))]
  expect(looks.length).toBe(new Set(pieces.map((p) => p.stock.material)).size)
  const materials = [...new Set(pieces.map((p) => p.stock.material))]
  return solid.bodies.reduce((sum, { start }, i) => {
    const group = solid.groups.findIndex((g) => start >= g.start && start < g.start + g.count)
    return sum + volumes[i]! * catalog.materials[materials[group]!]!.density
  }, 0)
}
