/** Whom the scene is told to. */
import { useMemo } from 'react'
import { useStore } from 'zustand'
import type { Reader } from '../../rules/index.ts'
import type { LeadlineStore } from '../state/store.ts'

export function useReader(store: LeadlineStore): Reader {
  const language = useStore(store, (s) => s.language)
  const units = useStore(store, (s) => s.units)
  return useMemo(() => ({ language, units }), [language, units])
}
