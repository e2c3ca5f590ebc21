/** What a quote's total is for and what it is not, as data: said on the quote's first page. */
import type { Catalog } from '../catalog/index.ts'
import { shareOf } from './money.ts'
import type { Estimate, Quote, QuoteLine } from './quote.ts'

export interface Included {
  /** Parts of the dock that are sold, their spares, and parts that are there already and used. */
  readonly parts: number
  readonly spares: number
  readonly owned: number
  readonly services: readonly QuoteLine[]
  readonly other: readonly QuoteLine[]
}

const partsIn = ({ lines }: Quote | Estimate): readonly QuoteLine[] =>
  lines.filter(({ group, kind }) => kind !== null && group !== 'owned')

const sum = (lines: readonly QuoteLine[], of: 'quantity' | 'spares'): number =>
  lines.reduce((all, line) => all + line[of], 0)

export function includedIn(made: Quote | Estimate): Included {
  const inGroup = (group: QuoteLine['group']) => made.lines.filter((line) => line.group === group)
  return {
    parts: sum(partsIn(made), 'quantity'),
    spares: sum(partsIn(made), 'spares'),
    owned: sum(inGroup('owned'), 'quantity'),
    services: inGroup('services'),
    other: inGroup('other'),
  }
}

/** Minor units that are due with the order; null where the shop asks for none, or the paper binds nobody. */
export function depositOf(made: Quote | Estimate, { shop }: Catalog): number | null {
  const share = shop?.deposit ?? 0
  return made.format !== 'leadline/quote' || share === 0 || made.total <= 0
    ? null
    : shareOf(made.total, share)
}

/** Names of services that bring the goods, where freight is charged besides: whoever pays both is told. */
export const broughtTwice = (made: Quote | Estimate, { shop }: Catalog): readonly string[] =>
  made.freight.by !== 'band'
    ? []
    : made.lines
        .filter(({ group, code }) => group === 'services' && code !== null && shop?.brings?.includes(code))
        .map(({ name }) => name)
