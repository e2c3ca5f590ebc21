/**
 * What the browser keeps between visits, or for a tab. Any access may throw, at any time: because of settings, in a cross-site frame, or
 * when it is full; then `or` is the answer. `storage` is asked for anew each time, for even to name it may throw.
 */
export const storageOf =
  (storage: () => Storage = () => localStorage) =>
  <T>(act: (storage: Storage) => T, or: T): T => {
    try {
      return act(storage())
    } catch {
      return or
    }
  }
