/** The scene's own words by language; what a language lacks is said in English. Measures share their words with the strip. */
import { type Figure, fill, type Units } from '../../rules/index.ts'

const en = {
  label: '3D view of the dock in its lake: {what}',
  role: '3D view',
  keys: 'Arrow keys turn the view, plus and minus come nearer and go farther, Home brings the view back. All that is shown here is also in the tables beside it.',
  'seen.from': 'Seen from {side}, {height}.',
  'side.shore': 'the shore',
  'side.left': 'the left',
  'side.lake': 'the lake',
  'side.right': 'the right',
  'height.above': 'from above',
  'height.over': 'from over the water',
  'height.level': 'from near the water',
  'height.under': 'from under the water',
  'wheel.ctrl': 'Hold Ctrl to zoom, or click the picture first',
  'wheel.meta': 'Hold ⌘ to zoom, or click the picture first',
  touch: 'Two fingers tilt and zoom',
  lost: 'The browser has put the 3D view aside.',
  again: 'Show it again',
  'over-water': '{height} over water',
  'under-water': '{height} under water',
  'deep.end': '{depth} deep',
  'dry.end': 'no water here',
  'deep.here': '{depth} deep',
  'dry.here': 'no water here',
  deep: '{depth}',
  'person.tall': '{height}',
  'gap.ground': '{height} clear of the ground',
  'gap.part': '{height} to the {what}',
  'section.long': '{length} long',
  'section.wide': '{length} wide',
  waves: 'Waves {height} high, one in ten {tenth}; {length} long, one every {period}. True to scale.',
} as const

export type SceneWord = keyof typeof en
const LANGUAGES: Readonly<Record<string, Partial<Record<SceneWord, string>>>> = { en }

export function tell(
  lang: string,
  units: Units,
  key: SceneWord,
  values: Readonly<Record<string, Figure>> = {},
): string {
  const words = LANGUAGES[lang] ?? LANGUAGES[lang.split('-')[0]!] ?? en
  return fill(words[key] ?? en[key], values, units, lang)
}
