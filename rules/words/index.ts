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
  localeOf,
  type Units,
} from './format.ts'
export { findingText, remedyText } from './found.ts'
export { fill, findingIn, type LaterWords, type MoreWords, remedyIn, type Words, wordsIn } from './words.ts'
