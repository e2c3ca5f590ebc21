import { useMemo, useSyncExternalStore } from 'react'

/** Whether a media query holds, now and as it changes. */
export function useMedia(query: string): boolean {
  const media = useMemo(() => matchMedia(query), [query])
  return useSyncExternalStore(
    (changed) => {
      media.addEventListener('change', changed)
      return () => media.removeEventListener('change', changed)
    },
    () => media.matches,
  )
}
