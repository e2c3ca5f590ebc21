/** What a frame member needs to know of bar stock: stiffnesses from its shape and material. */
import type { Catalog } from '../../catalog/index.ts'
import { sectionProperties, torsionConstant } from '../../catalog/section-properties.ts'
import type { Shop } from '../../catalog-index.ts'

/** SI, as `FrameMember`. */
export interface Bar {
  readonly E: number
  readonly G: number
  readonly A: number
  readonly Iy: number
  readonly Iz: number
  readonly J: number
}

/** Of all stock whose material states a strength (see `unstated`), by its code. */
function barsOf({ catalog }: Shop): ReadonlyMap<string, Bar> {
  const bars = new Map<string, Bar>()
  for (const [code, stock] of Object.entries(catalog.stock)) {
    const strength = catalog.materials[stock.material]!.strength
    if (!strength) continue
    const { area, Iy, Iz } = sectionProperties(stock)
    bars.set(code, { E: strength.E, G: strength.G, A: area, Iy, Iz, J: torsionConstant(stock) })
  }
  return bars
}

/** Stock by its code; its material must state a strength. */
export const barOf = (shop: Shop, code: string): Bar => shop.once(barsOf).get(code)!

/** Materials of parts that must carry and that state no strength: without it nothing can be judged. */
export function unstated(catalog: Catalog): string[] {
  const codes = new Set<string>([catalog.sleeve.stock])
  for (const frame of catalog.frames)
    for (const c of [frame.rail, frame.ends, frame.cross.stock]) codes.add(c)
  for (const part of [...catalog.legs, ...catalog.braces]) codes.add(part.stock)
  for (const extra of catalog.extras)
    if (extra.place === 'post') for (const p of extra.posts) codes.add(p.stock)
  const materials = new Set([...codes].map((code) => catalog.stock[code]!.material))
  return [...materials].filter((m) => !catalog.materials[m]!.strength)
}
