/** What a page holds on to while elements come and go. */
import type { BrowserContext, Page } from 'playwright-core'

export interface Held {
  /** Of JavaScript's heap, after its garbage is collected. */
  readonly bytes: number
  readonly nodes: number
  readonly listeners: number
}

export async function watchHeld(context: BrowserContext, page: Page): Promise<() => Promise<Held>> {
  const session = await context.newCDPSession(page)
  return async () => {
    // What is kept by a weak reference goes at the second look, or the third.
    for (let i = 0; i < 3; i++) await session.send('HeapProfiler.collectGarbage')
    const { usedSize } = await session.send('Runtime.getHeapUsage')
    const { nodes, jsEventListeners } = await session.send('Memory.getDOMCounters')
    return { bytes: usedSize, nodes, listeners: jsEventListeners }
  }
}

/** Puts one element after the other into the page, each until the event has come, and takes it out for good. */
export const mountOneByOne = (
  page: Page,
  times: number,
  until: 'leadline-ready' | 'leadline-scene-ready' = 'leadline-ready',
): Promise<void> =>
  page.evaluate(
    async ({ times, until }) => {
      for (let i = 0; i < times; i++) {
        const element = document.createElement('leadline-dock')
        element.setAttribute('start', 'example')
        const come = new Promise((done) => element.addEventListener(until, done, { once: true }))
        document.body.append(element)
        await come
        element.remove()
        // A moment later it takes it that it was not only moved.
        while (element.shadowRoot!.querySelector('.root')) await new Promise((done) => setTimeout(done, 10))
      }
    },
    { times, until },
  )
