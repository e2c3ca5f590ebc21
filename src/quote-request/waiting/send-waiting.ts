import { isForNow, type Outcome } from '../send-request.ts'
import type { Queue, Told, Waiting } from './queue.ts'

/**
 * Sends what waits, one after the other, each under the id that it was asked for with, and takes out what was taken. What was turned down stays,
 * marked: only a hand sends it again. Stops at the first that cannot be reached: the others could not either. Never throws.
 */
export async function sendWaiting(
  queue: Queue,
  wanted: (one: Waiting) => boolean,
  send: (one: Waiting) => Promise<Outcome>,
): Promise<Told[]> {
  const taken: Told[] = []
  for (const { body } of queue.list().filter(wanted)) {
    // Taken back meanwhile, or sent by another tab.
    const one = queue.list().find((each) => each.body.id === body.id)
    if (!one) continue
    const outcome = await send(one)
    if (outcome.kind === 'sent') {
      queue.drop(body.id)
      taken.push({ id: body.id, reference: outcome.reference })
    } else if (outcome.kind === 'failed') {
      if (isForNow(outcome) || outcome.why === 'no-answer') break
      // Not where it was taken back while it was on its way.
      if (queue.list().some((each) => each.body.id === body.id))
        queue.keep({ body, answer: outcome.status ?? 0 })
    }
  }
  return taken
}

/** In one tab at a time, where the browser can tell: the others find it sent. */
export function alone<T>(act: () => Promise<T>, or: T): Promise<T> {
  if (typeof navigator.locks?.request !== 'function') return act()
  return navigator.locks.request('leadline-request', { ifAvailable: true }, (lock) => (lock ? act() : or))
}
