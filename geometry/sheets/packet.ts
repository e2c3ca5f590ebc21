/** The papers by name, each alone or all in one file. */

import { type Audience, type PaperName, packetFor } from '../paper/audience.ts'
import type { Paper } from '../paper/marks.ts'
import type { PaperOf } from '../paper/paper-of.ts'
import { withUnset } from '../paper/unset.ts'
import { autumnPaper } from './autumn.ts'
import { cardsPaper } from './cards.ts'
import { deliveryPaper } from './delivery.ts'
import { labelsPaper } from './labels.ts'
import { layoutDrawing } from './layout-drawing.ts'
import { packingPaper } from './packing.ts'
import { permitPaper } from './permit.ts'
import { estimatePaper, type QuoteWanted, quotePaper } from './quote.ts'
import { setUpPaper } from './set-up.ts'
import { surveyPaper } from './survey.ts'

/** @param quote what the quote is asked for with */
export function paperOf(name: PaperName, of: PaperOf, quote: QuoteWanted = {}): Paper {
  const paper = made(name, of, quote)
  // Sheets of labels have no room above: each label says it by itself.
  return name === 'labels' && of.options.labels ? paper : withUnset(paper, of.options)
}

function made(name: PaperName, of: PaperOf, quote: QuoteWanted): Paper {
  const { catalog, options } = of
  switch (name) {
    case 'drawing':
      return layoutDrawing(of)
    case 'permit':
      return permitPaper(of)
    case 'packing':
      return packingPaper(of)
    case 'cards':
      return cardsPaper(of)
    case 'labels':
      return labelsPaper(of)
    case 'delivery':
      return deliveryPaper(of)
    case 'set-up':
      return setUpPaper(of)
    case 'autumn':
      return autumnPaper(of)
    case 'survey':
      return surveyPaper(catalog, options, of.design)
    case 'quote':
      return quotePaper(of, quote)
    case 'estimate':
      return estimatePaper(of)
  }
}

/** The shop's, but for another audience. */
export const packetOf = (of: PaperOf, quote: QuoteWanted = {}, audience: Audience = 'shop'): Paper[] =>
  packetFor(audience).map((name) => paperOf(name, of, quote))
