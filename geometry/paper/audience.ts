/** Which papers there are, and for whom: no more than names, loaded before any paper is. */

export const PAPERS = [
  'drawing',
  'permit',
  'packing',
  'cards',
  'labels',
  'delivery',
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
  customer: ['quote', 'delivery'],
  shop: ['estimate'],
  crew: ['quote', 'estimate'],
}

export const papersFor = (audience: Audience): readonly PaperName[] =>
  PAPERS.filter((name) => !NOT_FOR[audience].includes(name))

/**
 * Not in the packet: the survey form is for before there is a dock, the permit drawing for others than who builds it, the delivery note for a
 * day of its own; and what is cut out, for bags and packages, is printed on other stock.
 */
const APART: readonly PaperName[] = ['survey', 'permit', 'delivery', 'cards', 'labels']
/** All that a dock is packed, set up and taken in by, and what it costs. */
export const packetFor = (audience: Audience): readonly PaperName[] =>
  papersFor(audience).filter((name) => !APART.includes(name))
