/** Which papers there are, and for whom: no more than names, loaded before any paper is. */

export const PAPERS = [
  'drawing',
  'packing',
  'cards',
  'labels',
  'set-up',
  'autumn',
  'survey',
  'quote',
  'estimate',
] as const
export type PaperName = (typeof PAPERS)[number]

/** Whom papers are for: the shop gives quotes, a customer's prices are an estimate, a crew needs neither. */
export const AUDIENCES = ['customer', 'shop', 'crew'] as const
export type Audience = (typeof AUDIENCES)[number]

const NOT_FOR: Readonly<Record<Audience, readonly PaperName[]>> = {
  customer: ['quote'],
  shop: ['estimate'],
  crew: ['quote', 'estimate'],
}

export const papersFor = (audience: Audience): readonly PaperName[] =>
  PAPERS.filter((name) => !NOT_FOR[audience].includes(name))

/** All that a dock is packed, set up and taken in by, and what it costs. The survey form is for before there is one. */
export const packetFor = (audience: Audience): readonly PaperName[] =>
  papersFor(audience).filter((name) => name !== 'survey')
