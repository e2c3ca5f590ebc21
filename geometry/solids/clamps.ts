/** What grips an upright tube: a ring round it with an ear or a foot. Own x axis from the tube toward what it holds. */
import { type Catalog, type Stock, sectionProperties } from '../../rules/index.ts'
import { braceClampPlates, clampPlate, legStock } from '../../rules/parts/clamp-plates.ts'
import type { Look } from '../types.ts'
import { outline } from './fits.ts'
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
