/** Allowable strengths of a member of bar stock by the law of its material. */
import type { Catalog, Stock, Strength } from '../../catalog/index.ts'
import { aluminumStrengths } from './aluminum.ts'
import { steelStrengths } from './steel.ts'
import type { MemberOptions, Strengths } from './strengths.ts'

export const strengthsOf = (material: Strength, stock: Stock, options: MemberOptions): Strengths =>
  material.family === 'steel'
    ? steelStrengths(material, stock, options)
    : aluminumStrengths(material, stock, options)

/** By the catalog's code of the stock; null where its material states no strength: then nothing can be judged. */
export function strengthsOfStock(catalog: Catalog, code: string, options: MemberOptions): Strengths | null {
  const stock = catalog.stock[code]
  const material = stock && catalog.materials[stock.material]?.strength
  return material ? strengthsOf(material, stock, options) : null
}

/** Where it comes from, for a finding's basis. */
export const basisOf = (material: Strength): string =>
  material.family === 'steel'
    ? 'AISC 360-16, chapters D to H, ASD (from memory)'
    : 'Aluminum Design Manual 2020, Part I, chapters D to H, ASD'
