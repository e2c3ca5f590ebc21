/** Of a service worker's surroundings, what is used: the compiler has either the types of a page or those of a worker. */
interface Lasting extends Event {
  waitUntil(work: Promise<unknown>): void
}

export interface WorkerScope {
  readonly registration: { readonly scope: string }
  readonly clients: { claim(): Promise<void> }
  skipWaiting(): Promise<void>
  addEventListener(type: 'install' | 'activate', listener: (event: Lasting) => void): void
  addEventListener(type: 'message', listener: (event: MessageEvent<unknown>) => void): void
}
