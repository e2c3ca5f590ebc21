/**
 * Keeps the whole demo site in the browser, so that it works where there is no signal: every file that its build lists, fetched once when
 * the page is first visited. Bundled by `src/build/offline` into a script of its own.
 *
 * A newer version is fetched beside the one that runs and waits until no page of the old one is left, or until somebody says to use it.
 * Even then the files of the version before stay: a page that runs on in another tab still finds the chunks that it has not asked for yet.
 */
import { setCacheNameDetails } from 'workbox-core'
import { PrecacheController, PrecacheRoute } from 'workbox-precaching'
import { registerRoute } from 'workbox-routing'
import type { WorkerScope } from './worker-scope.ts'

declare const self: WorkerScope
/** Written in by the build. `revision` null: the name has a hash of the content. */
declare const SITE_FILES: readonly { readonly url: string; readonly revision: string | null }[]

setCacheNameDetails({ prefix: 'leadline' })
const files = new PrecacheController()
files.addToCacheList([...SITE_FILES])
const { cacheName } = files.strategy
/** What the version that was activated last is made of. */
const VERSION = new URL('__files-of-this-version', self.registration.scope).href

self.addEventListener('install', (event) => void files.install(event))
self.addEventListener('activate', (event) => event.waitUntil(use()))
self.addEventListener('message', ({ data }) => {
  if (data === 'use') void self.skipWaiting()
})

async function use(): Promise<void> {
  const cache = await caches.open(cacheName)
  const now = [...files.getURLsToCacheKeys().values()]
  const before: readonly string[] = (await (await cache.match(VERSION))?.json()) ?? []
  const kept = new Set([...now, ...before, VERSION])
  for (const request of await cache.keys()) if (!kept.has(request.url)) await cache.delete(request)
  await cache.put(VERSION, new Response(JSON.stringify(now)))
  // A first visit needs no second one to be served from here.
  await self.clients.claim()
}

// What stands behind a question mark is the page's business.
registerRoute(new PrecacheRoute(files, { ignoreURLParametersMatching: [/./], cleanURLs: false }))
registerRoute(
  ({ url }) => url.href.startsWith(new URL('leadline/', self.registration.scope).href),
  async ({ request }) => (await caches.match(request, { cacheName })) ?? fetch(request),
)
