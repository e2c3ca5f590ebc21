/** What grips an upright tube: a ring round it with an ear or a foot. Own x axis from the tube toward what it holds. */
import { type Catalog, type Stock, sectionProperties, type Vec3 } from '../../rules/index.ts'
import type { Look } from '../types.ts'
import { clampPlate } from './bolts.ts'
import { legStock, outline } from './fits.ts'
import type { Body } from './mesh.ts'
import { box, prism } from './prism.ts'

function collar(tube: Stock, thickness: number, height: number, look: Look): Body {
  return prism({
    outer: outline(tube, thickness),
    inner: outline(tube, 0.0002),
    from: [0, 0, -height / 2],
    to: [0, 0, height / 2],
    up: [1, 0, 0],
    look,
  })
}

/** Plates of a brace clamp by two opposite corners: a pair of ears past the hole, one each side of the brace, and a lug at each side. */
export function braceClampPlates(catalog: Catalog): [Vec3, Vec3][] {
  const { reach, height, width } = catalog.clamp
  const t = clampPlate(catalog)
  const half = sectionProperties(legStock(catalog)).width / 2
  const braces = catalog.braces.map((b) => sectionProperties(catalog.stock[b.stock]!).height)
  const inner = Math.max(0, ...braces) / 2
  const end = reach + Math.min(height / 2, 0.02)
  const lug = width / 2
  const z = height / 2
  return [1, -1].flatMap((side): [Vec3, Vec3][] => {
    const ear: [Vec3, Vec3] = [
      [half / 2, side * inner, -z],
      [end, side * (inner + t), z],
    ]
    const flange: [Vec3, Vec3] = [
      [-t, side * (half + t / 2), -z],
      [t, side * lug, z],
    ]
    return lug > half + t ? [ear, flange] : [ear]
  })
}

/** Collar on the leg, with its ears and lugs. */
export const braceClampBodies = (catalog: Catalog): Body[] => [
  collar(legStock(catalog), clampPlate(catalog), catalog.clamp.height, 'steel'),
  ...braceClampPlates(catalog).map(([a, b]) => box(a, b, 'steel')),
]

type PostClamp = Catalog['extras'][number]['parts'][number]

/** Collar on the post, a plate on the edge of the dock, an arm between them. */
export function postClampBodies(catalog: Catalog, clamp: PostClamp): Body[] {
  const [, across, high] = clamp.size
  const extra = catalog.extras.find((e) => e.place === 'post' && e.parts.includes(clamp))
  const post = extra?.place === 'post' ? catalog.stock[extra.posts[0]!.stock]! : legStock(catalog)
  const standoff = extra?.place === 'post' ? extra.standoff : clamp.size[0] / 2
  const t = 0.005
  const half = sectionProperties(post).width / 2
  const bodies = [
    collar(post, t, high, 'steel'),
    box([standoff - t, -across / 2, -high / 2], [standoff, across / 2, high / 2], 'steel'),
  ]
  if (standoff - t > half + t)
    for (const side of [1, -1])
      bodies.push(
        box([half + t / 2, side * (half - t), -high / 2], [standoff - t, side * half, high / 2], 'steel'),
      )
  return bodies
}
