/**
 * The way that was gone, in the browser's own history: the phone's Back goes one screen back, and out of the page only from where it began.
 * What else stands in the history's state is the page's own and stays.
 */
import { useEffect, useRef, useState } from 'react'
import { sameDesign } from '../state/same-design.ts'

/** `app.tsx` looks for it. */
const KEY = 'leadlineLake'

/** Where somebody was; as stored, to be checked by who reads it. */
interface Trail {
  /** The record that is open; null: none. */
  readonly dock?: string | null
  readonly page?: unknown
  /** Of a screen that has several. */
  readonly part?: string | null
}
interface Kept extends Trail {
  /** Of an element that is at the lake for good: others on its page are not taken along. `app.tsx` looks for it. */
  readonly stays?: boolean
  /** Entries between this one and where it began. */
  readonly depth: number
  /** What Back comes to. */
  readonly before: Trail | null
}

const stateOf = (): Record<string, unknown> => (history.state ?? {}) as Record<string, unknown>

/** Null: of before the day at the lake, or of another page. */
export function trailNow(): Kept | null {
  const kept = stateOf()[KEY]
  return typeof kept === 'object' && kept !== null ? (kept as Kept) : null
}

/** A browser may refuse one of many in a short time: then Back goes farther. */
function write(how: 'pushState' | 'replaceState', kept: Kept): void {
  try {
    const stays = trailNow()?.stays
    history[how]({ ...stateOf(), [KEY]: { ...(stays && { stays }), ...kept } }, '')
  } catch {
    // It is shown all the same.
  }
}

/** What is not said is nothing. */
const bare = ({ dock = null, page = null, part = null }: Trail): Required<Trail> => ({ dock, page, part })

/** In the place of where one is. @param at `stays`: of an element that is at the lake for good; all that follows is then */
export function standAt(at: Trail & { readonly stays?: true }): void {
  const now = trailNow()
  write('replaceState', { ...at, depth: now?.depth ?? 0, before: now?.before ?? null })
}

/** One on; back where that is where one came from. */
export function stepTo(to: Trail): void {
  const now = trailNow()
  if (now?.before && sameDesign(bare(now.before), bare(to))) history.back()
  else write('pushState', { ...to, depth: (now?.depth ?? 0) + 1, before: now && bare(now) })
}

/** To where it began. */
export function leaveTrail(): void {
  history.go(-(trailNow()?.depth ?? 0))
}

/** Told of each step that the browser's Back and Forward make. */
export function useTrail(gone: (to: Kept | null) => void): void {
  const latest = useRef(gone)
  latest.current = gone
  useEffect(() => {
    const pop = (): void => latest.current(trailNow())
    addEventListener('popstate', pop)
    return () => removeEventListener('popstate', pop)
  }, [])
}

/** Which part of a screen is open: Back closes it. */
export function usePart<T extends string>(parts: readonly T[]): readonly [T | null, (to: T | null) => void] {
  const [part, setPart] = useState<T | null>(null)
  useTrail((to) => setPart(parts.find((one) => one === to?.part) ?? null))
  return [
    part,
    (to) => {
      const now = trailNow()
      setPart(to)
      if (to === null && now?.part != null) history.back()
      else if (to !== null) stepTo({ ...(now ? bare(now) : {}), part: to })
    },
  ]
}
