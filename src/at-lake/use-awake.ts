/** The screen stays on, where the browser can: nobody unlocks a phone with a glove while holding a frame. */
import { useEffect } from 'react'

export function useAwake(): void {
  useEffect(() => {
    if (!('wakeLock' in navigator)) return
    let lock: WakeLockSentinel | null = null
    let over = false
    const hold = async (): Promise<void> => {
      if (over || document.hidden) return
      try {
        const held = await navigator.wakeLock.request('screen')
        if (over) await held.release()
        else lock = held
      } catch {
        // A low battery, or the host page does not allow it: the phone's own setting holds.
      }
    }
    const again = (): void => void hold()
    document.addEventListener('visibilitychange', again)
    void hold()
    return () => {
      over = true
      document.removeEventListener('visibilitychange', again)
      void lock?.release().catch(() => {})
    }
  }, [])
}
