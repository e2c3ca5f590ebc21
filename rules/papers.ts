/** What is on the papers, as data: loaded with them, and by nothing that a page loads first. */

export { cartons, type Packages, type PackedItem } from './papers/cartons.ts'
export { countCards, fraction } from './papers/count-cards.ts'
export { daysAfter, isDay } from './papers/day.ts'
export { labels } from './papers/labels.ts'
export { loading } from './papers/loading.ts'
export {
  estimate,
  type Quote,
  type QuoteAsked,
  quote,
} from './papers/quote.ts'
export { quoteChanges } from './papers/quote-changes.ts'
export {
  parseAsked,
  parseQuoteFile,
  parseQuoteText,
  type QuoteFile,
  quoteFile,
} from './papers/quote-file.ts'
export { verifyQuote } from './papers/quote-verify.ts'
export { cartonRows, quoteRows, type Row } from './papers/rows.ts'
export { type Saying, sentence } from './papers/saying.ts'
export { autumn, steps } from './papers/steps/set-up.ts'
export type {
  Step,
  Steps,
  Work,
} from './papers/steps/step.ts'
export { survey } from './papers/survey.ts'
export { PAPERS } from './words/papers.ts'
