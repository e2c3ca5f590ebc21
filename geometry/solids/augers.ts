/** The auger at the foot of an anchor post: a hub round the post and one turn of a flight, below the bed. */
import { type Catalog, sectionProperties } from '../../rules/index.ts'
import { outline } from './fits.ts'
import { loft } from './loft.ts'
import type { Body } from './mesh.ts'
import { prism } from './prism.ts'

type Auger = Catalog['extras'][number]['parts'][number]

/** Origin at the bed on the post's axis; its lower end at the post's. */
export function augerBodies(catalog: Catalog, auger: Auger): Body[] {
  const [wide, , high] = auger.size
  const extra = catalog.extras.find((e) => e.place === 'post' && e.parts.includes(auger))
  const post =
    extra?.place === 'post' ? catalog.stock[extra.posts[0]!.stock]! : catalog.stock[catalog.legs[0]!.stock]!
  const embed = (extra?.place === 'post' ? extra.embed : undefined) ?? catalog.rules.postEmbed.value
  const bottom = -Math.max(embed, high)
  const hub = sectionProperties(post).width / 2 + 0.005
  const thick = 0.006
  const steps = 24
  const rings = Array.from({ length: steps + 1 }, (_, i) => {
    const a = (2 * Math.PI * i) / steps
    const z = bottom + thick / 2 + ((high - thick) * i) / steps
    const at = (r: number, dz: number) => [r * Math.cos(a), r * Math.sin(a), z + dz] as const
    return [
      at(hub - 0.002, -thick / 2),
      at(hub - 0.002, thick / 2),
      at(wide / 2, thick / 2),
      at(wide / 2, -thick / 2),
    ]
  })
  return [
    prism({
      outer: outline(post, 0.005),
      inner: outline(post, 0.0002),
      from: [0, 0, bottom],
      to: [0, 0, bottom + high],
      up: [1, 0, 0],
      look: 'steel',
    }),
    loft(rings, false, 'steel'),
  ]
}
