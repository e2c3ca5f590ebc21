/** What a frame member needs to know of bar stock: stiffnesses from its shape and material. */
import type { Catalog, Stock } from '../../catalog/index.ts'
import { sectionProperties } from '../../parts/section-properties.ts'

/** SI, as `FrameMember`. */
export interface Bar {
  readonly E: number
  readonly G: number
  readonly A: number
  readonly Iy: number
  readonly Iz: number
  readonly J: number
}

/**
 * Torsion constant, m⁴. Round: the polar moment. Thin-walled rectangle: Bredt, 4·A²·t / perimeter on the wall's middle line.
 * Flat bar: b·t³/3 · (1 − 0.63 t/b). Source: Roark's Formulas for Stress and Strain, 7th ed., table 10.1 (memory).
 */
export function torsionConstant(stock: Stock): number {
  switch (stock.shape) {
    case 'round-tube':
    case 'round-bar':
      return 2 * sectionProperties(stock).Iy
    case 'rect-tube': {
      const w = stock.width - stock.wall
      const h = stock.height - stock.wall
      return (2 * stock.wall * (w * h) ** 2) / (w + h)
    }
    case 'flat': {
      const b = Math.max(stock.width, stock.height)
      const t = Math.min(stock.width, stock.height)
      return ((b * t ** 3) / 3) * (1 - (0.63 * t) / b)
    }
  }
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
