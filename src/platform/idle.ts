/** Runs after this long even if the page is never idle, ms. */
const PATIENCE = 400

/** Runs when the browser is idle. */
export function whenIdle(go: () => void): void {
  if (typeof requestIdleCallback === 'function') requestIdleCallback(go, { timeout: PATIENCE })
  else setTimeout(go, 16)
}
