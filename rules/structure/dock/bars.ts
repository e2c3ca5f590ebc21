/** What a frame member needs to know of bar stock: stiffnesses from its shape and material. */
import type { Catalog } from '../../catalog/index.ts'
import { sectionProperties, torsionConstant } from '../../parts/section-properties.ts'

/** SI, as `FrameMember`. */
export interface Bar {
  readonly E: number
  readonly G: number
  readonly A: number
  readonly Iy: number
  readonly Iz: number
  readonly J: number
}

const bars = new WeakMap<Catalog, Map<string, Bar>>()

/** Stock by its code; its material must state a strength (see `unstated`). */
export function barOf(catalog: Catalog, code: string): Bar {
  let known = bars.get(catalog)
  if (!known) {
    known = new Map()
    bars.set(catalog, known)
  }
  let bar = known.get(code)
  if (!bar) {
    const stock = catalog.stock[code]!
    const { area, Iy, Iz } = sectionProperties(stock)
    const { E, G } = catalog.materials[stock.material]!.strength!
    bar = { E, G, A: area, Iy, Iz, J: torsionConstant(stock) }
    known.set(code, bar)
  }
  return bar
}

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
