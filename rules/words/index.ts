export {
  EXACT,
  feetInches,
  fixed,
  formatDistance,
  formatFigure,
  formatLength,
  formatMass,
  formatMoney,
  formatSlope,
  formatSpeed,
  formatTime,
  type Units,
} from './format.ts'
export { addWords, fill, findingText, type LaterWords, remedyText, type Words, wordsIn } from './words.ts'
