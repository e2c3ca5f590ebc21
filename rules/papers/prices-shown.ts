/** What of prices is shown to whom: the shop says it of its customers, and a crew needs none. */
import type { Catalog } from '../catalog/index.ts'

/** `total`: what all of it comes to, and no part's or group's own. */
export type PricesShown = 'none' | 'total' | 'lines'

type PricesAudience = 'customer' | 'shop' | 'crew'

export const pricesFor = ({ shop }: Pick<Catalog, 'shop'>, audience: PricesAudience): PricesShown =>
  audience === 'crew' ? 'none' : audience === 'shop' ? 'lines' : (shop?.prices ?? 'lines')

/** Whose papers those are who are shown so much: without any prices they are the crew's. */
export const audienceShown = (audience: PricesAudience, prices: PricesShown): PricesAudience =>
  prices === 'none' ? 'crew' : audience
