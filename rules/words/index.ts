export { basisIn, cautionsIn, cornerWord, kindWord, severityWord } from './dock-words.ts'
export {
  EXACT,
  feetInches,
  fixed,
  formatDistance,
  formatFigure,
  formatLength,
  formatMass,
  formatSlope,
  formatSpeed,
  formatTime,
  moneyIn,
  type Units,
  unitWord,
} from './figures.ts'
export { findingIn, remedyIn } from './finding-words.ts'
export {
  ENGLISH,
  english,
  type Language,
  type Reader,
  spokenIn,
  type Template,
} from './language.ts'
export { languageOf, localeOf } from './language-of.ts'
export { fill, type Say, type Subject, say, subject, type Values, wordsOf } from './messages.ts'
export { type Named, nameIn } from './name-in.ts'
export { findingText, remedyText } from './structure-words.ts'
export { tellFinding, tellRemedy } from './tell-finding.ts'
