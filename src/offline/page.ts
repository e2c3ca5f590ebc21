/**
 * The demo site's side of working offline: registers the service worker and shows what the page has to say of it, in the page's own words
 * (elements with `data-offline`): `ready` when all is here, `update` when a newer version waits, `elsewhere` when it was put to use in
 * another tab. Nothing is reloaded unless somebody presses the button inside: `[data-offline-use]`.
 */

type Told = 'ready' | 'update' | 'elsewhere'

/** A page at the lake may be open all day: looks for a newer version this often, ms. */
const LOOK = 3_600_000

const show = (what: Told): void => {
  for (const each of document.querySelectorAll<HTMLElement>('[data-offline]'))
    each.hidden = each.dataset.offline !== what
}

async function register(workers: ServiceWorkerContainer): Promise<void> {
  const first = workers.controller === null
  const registration = await workers.register(new URL('./service-worker.js', import.meta.url), {
    updateViaCache: 'none',
  })
  const look = (): void => {
    // Without a signal there is nothing newer to be had.
    registration.update().catch(() => {})
  }
  let pressed = false
  const waits = (): void => {
    if (registration.waiting && workers.controller) show('update')
  }
  waits()
  registration.addEventListener('updatefound', () =>
    registration.installing?.addEventListener('statechange', waits),
  )
  document.addEventListener('click', ({ target }) => {
    if (!(target instanceof Element) || !target.closest('[data-offline-use]')) return
    pressed = true
    if (registration.waiting) registration.waiting.postMessage('use')
    else location.reload()
  })
  let mine = first
  workers.addEventListener('controllerchange', () => {
    if (pressed) location.reload()
    else if (mine) show('ready')
    else show('elsewhere')
    mine = false
  })
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') look()
  })
  setInterval(look, LOOK)
}

/** After all that the page itself needs: the first visit is no slower for it. */
if ('serviceWorker' in navigator) {
  const begin = (): void => {
    // Where it may not be registered (a private window, a page inside of another site) the page works as any other does.
    register(navigator.serviceWorker).catch(() => {})
  }
  if (document.readyState === 'complete') begin()
  else addEventListener('load', begin, { once: true })
}
