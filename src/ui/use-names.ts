/** The names of the shop's parts in the language of the screen. */
import { useCallback } from 'react'
import { type Named, nameIn } from '../../rules/words/name-in.ts'
import { useLeadline } from '../state/store.ts'

export function useNames(): (part: Named) => string {
  const catalog = useLeadline((s) => s.catalog)
  const language = useLeadline((s) => s.language)
  return useCallback((part) => nameIn(catalog, part, language), [catalog, language])
}
