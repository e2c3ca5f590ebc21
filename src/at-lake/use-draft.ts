/** What stands in fields that is not entered yet: there again after a reload or a crash, as it was typed. */
import { useState } from 'react'
import { useBegun } from './lake.ts'

/**
 * @param place kept there; the component must be another for another place
 * @param from reads back what any version of the page may have kept, `null` where nothing is
 * @returns what stands there, a way to put something else, and one to be done with it
 */
export function useDraft<T>(
  place: string,
  from: (kept: unknown) => T,
): readonly [T, (to: T) => void, () => void] {
  const { keeper } = useBegun()
  const [now, set] = useState(() => from(keeper.draft(place)))
  const put = (to: T): void => {
    keeper.keepDraft(place, to)
    set(to)
  }
  const drop = (): void => {
    keeper.keepDraft(place, null)
    set(from(null))
  }
  return [now, put, drop]
}
