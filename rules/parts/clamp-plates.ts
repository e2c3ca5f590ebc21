/** The plates of a brace clamp: what is drawn of them, and what may be in something's way. Own x axis from the leg toward the brace, m. */
import type { Catalog, Stock } from '../catalog/index.ts'
import { sectionProperties } from '../catalog/section-properties.ts'
import type { Vec3 } from '../dock.ts'

/** What legs are made of: the first leg's stock stands for all. */
export const legStock = (catalog: Catalog): Stock => catalog.stock[catalog.legs[0]!.stock]!

/** Thickness of a clamp's plates, m. */
export const clampPlate = (catalog: Catalog): number => Math.min(0.005, catalog.clamp.height / 8)

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
