/** Names of load cases in words: `0.6D+W high left` as someone would say it. */
import { loadCaseOf } from '../../rules/structure/dock/load-cases.ts'
import { text } from '../words/index.ts'
import type { LoadWord, LoadWords } from '../words/use-load-words.ts'

/** An id that is none of them is told as it is. */
export function caseInWords(id: string, { loads }: Pick<LoadWords, 'loads'>): string {
  const known = loadCaseOf(id)
  if (!known) return id
  const { act, level, toward } = known
  if (level)
    return loads(`case.${act}` as LoadWord, {
      from: text(loads(`case.from.${toward}` as LoadWord)),
      level: text(loads(`case.level.${level}`)),
    })
  return loads(['case', act, toward].filter((word) => word !== null).join('.') as LoadWord)
}
