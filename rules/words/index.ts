export {
  EXACT,
  feetInches,
  fixed,
  formatFigure,
  formatLength,
  formatMass,
  formatMoney,
  formatSlope,
  type Units,
} from './format.ts'
export { addWords, fill, findingText, type LaterWords, remedyText, type Words, wordsIn } from './words.ts'
