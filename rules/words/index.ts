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
export { fill, findingText, remedyText, type Words, wordsIn } from './words.ts'
