/** What of prices is shown to whom: the shop says it of its customers, and a crew needs none. */
import type { Catalog } from '../catalog/index.ts'

/** `total`: what all of it comes to, and no part's or group's own. */
export type PricesShown = 'none' | 'total' | 'lines'

export const pricesFor = (
  { shop }: Pick<Catalog, 'shop'>,
  audience: 'customer' | 'shop' | 'crew',
): PricesShown => (audience === 'crew' ? 'none' : audience === 'shop' ? 'lines' : (shop?.prices ?? 'lines'))
