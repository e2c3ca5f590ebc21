/** A page that is never idle gets it all the same, ms. */
const PATIENCE = 400

/** Between the browser's own work. */
export function whenIdle(go: () => void): void {
  if (typeof requestIdleCallback === 'function') requestIdleCallback(go, { timeout: PATIENCE })
  else setTimeout(go, 16)
}
