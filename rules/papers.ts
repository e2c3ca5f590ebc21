/** What is on the papers, as data: loaded with them, and by nothing that a page loads first. */

export { type Bag, cartons, type Package, type Packages, type PackedItem } from './papers/cartons.ts'
export { type CountCard, type CountCardRow, countCards, fraction, type Turns } from './papers/count-cards.ts'
export { daysAfter, isDay } from './papers/day.ts'
export { labels, type PartLabel } from './papers/labels.ts'
export {
  askedAgain,
  type Estimate,
  type EstimateAsked,
  estimate,
  GROUPS,
  type Priced,
  type PriceTerms,
  type Quote,
  type QuoteAsked,
  type QuoteFreight,
  type QuoteGroup,
  type QuoteLine,
  quote,
} from './papers/quote.ts'
export {
  type ChangedLeg,
  type ChangedLine,
  type ChangedTerm,
  type QuoteChanges,
  type Quoted,
  quoteChanges,
} from './papers/quote-changes.ts'
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
export { type Station, type StationLeg, type Stations, stations } from './papers/stations.ts'
export { autumn, steps } from './papers/steps/set-up.ts'
export type {
  Crew,
  LiftScreen,
  Phase,
  Place,
  Step,
  StepLift,
  StepLine,
  StepPart,
  Steps,
  Tool,
  Work,
} from './papers/steps/step.ts'
export { type Survey, type SurveyField, type SurveyPart, type SurveyRow, survey } from './papers/survey.ts'
export { type PaperWord, type PaperWords, paperWords } from './words/papers.ts'
