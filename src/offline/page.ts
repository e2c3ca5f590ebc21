/**
 * The demo site's side of working offline: registers the service worker and shows what the page has to say of it, in the page's own words
 * (elements with `data-offline`): `ready` when all is here, `update` when a newer version waits, `elsewhere` when it was put to use in
 * another tab. Nothing is reloaded unless somebody presses the button inside: `[data-offline-use]`.
 */

import { storageOf } from '../platform/storage-of.ts'
import { trustedScript } from '../platform/trusted-url.ts'

type Told = 'ready' | 'update' | 'elsewhere'

/** A page at the lake may be open all day: looks for a newer version this often, ms. */
const LOOK = 3_600_000

/** A browser that does not put the newer version to use while the old one has anything in hand is helped by a reload, after this long, ms. */
const PATIENCE = 2000

/** That the newer version was asked for, which a reload must not forget: kept in the tab. */
const ASKED = 'leadline-newer-version'
const inTab = storageOf(() => sessionStorage)
const isAsked = (): boolean => inTab((from) => from.getItem(ASKED) !== null, false)
const ask = (): void => inTab((to) => to.setItem(ASKED, ''), undefined)
const forget = (): void => inTab((from) => from.removeItem(ASKED), undefined)

/** Nothing is to be done about `ready`: it makes room again after this long, ms. */
const READ = 15_000

const show = (what: Told | null): void => {
  for (const each of document.querySelectorAll<HTMLElement>('[data-offline]'))
    each.hidden = each.dataset.offline !== what
}

/** That all is here is told once, and covers nothing that came meanwhile. */
function showReady(): void {
  show('ready')
  setTimeout(() => {
    if (document.querySelector('[data-offline="ready"]:not([hidden])')) show(null)
  }, READ)
}

async function register(workers: ServiceWorkerContainer): Promise<void> {
  const first = workers.controller === null
  const registration = await workers.register(
    trustedScript(new URL('./service-worker.js', import.meta.url)),
    {
      updateViaCache: 'none',
    },
  )
  const look = (): void => {
    // Without a signal there is nothing newer to be had.
    registration.update().catch(() => {})
  }
  const waits = (): void => {
    if (registration.waiting && workers.controller) show('update')
    // Nothing of it is waited for any more.
    else if (!registration.installing) forget()
  }
  waits()
  registration.addEventListener('updatefound', () =>
    registration.installing?.addEventListener('statechange', waits),
  )
  document.addEventListener('click', ({ target }) => {
    if (!(target instanceof Element) || !target.closest('[data-offline-use]')) return
    if (!registration.waiting) return location.reload()
    ask()
    registration.waiting.postMessage('use')
    setTimeout(() => location.reload(), PATIENCE)
  })
  let mine = first
  workers.addEventListener('controllerchange', () => {
    if (isAsked()) {
      forget()
      location.reload()
    } else if (mine) showReady()
    else show('elsewhere')
    mine = false
  })
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') look()
  })
  setInterval(look, LOOK)
}

/** After all that the page itself needs, and so many ms more where the page says so: the first visit is no slower for it. */
if ('serviceWorker' in navigator) {
  const begin = async (): Promise<void> => {
    const after = Number(document.documentElement.dataset.offlineAfter ?? 0)
    // One that has its files here already looks at once whether there are newer ones.
    if (after > 0 && !navigator.serviceWorker.controller) await new Promise((done) => setTimeout(done, after))
    // Where it may not be registered (a private window, a page inside of another site) the page works as any other does.
    register(navigator.serviceWorker).catch(() => {})
  }
  if (document.readyState === 'complete') begin()
  else addEventListener('load', begin, { once: true })
}
