import { useSyncExternalStore } from 'react'

/** Whether a media query holds, now and as it changes. */
export const useMedia = (query: string): boolean =>
  useSyncExternalStore(
    (changed) => {
      const media = matchMedia(query)
      media.addEventListener('change', changed)
      return () => media.removeEventListener('change', changed)
    },
    () => matchMedia(query).matches,
  )
