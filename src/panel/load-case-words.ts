/** Names of load cases in words: `0.6D+W high left` as someone would say it. */
import { text } from '../words/index.ts'
import type { LoadWord, LoadWords } from '../words/use-load-words.ts'

/** As `rules/structure/dock/combinations.ts` names them: what acts, the level, where it pushes to. */
const NAME =
  /^(D|D\+L|D\+P|D\+B|D\+C|D\+E|D\+W|0\.6D\+W|D\+0\.75L\+0\.75W)(?: (low|today|high))?(?: (left|right|shore|lake))?$/

const KINDS: Readonly<Record<string, string>> = {
  'D+L': 'live',
  'D+P': 'shove',
  'D+B': 'boat',
  'D+C': 'crowd',
  'D+E': 'edge',
}
const STORMS = { 'D+W': 'storm', '0.6D+W': 'storm-light', 'D+0.75L+0.75W': 'storm-live' } as const

/** A name that is none of them is told as it is. */
export function caseInWords(name: string, { loads }: Pick<LoadWords, 'loads'>): string {
  const [, what, level, toward] = NAME.exec(name) ?? []
  if (what === undefined) return name
  if (what === 'D') return loads('case.dead')
  const storm = STORMS[what as keyof typeof STORMS]
  if (storm) {
    if (!level || !toward) return name
    const values = {
      from: text(loads(`case.from.${toward}` as LoadWord)),
      level: text(loads(`case.level.${level}` as LoadWord)),
    }
    return loads(`case.${storm}`, values)
  }
  return loads(['case', KINDS[what], toward].filter(Boolean).join('.') as LoadWord)
}
