import { messageOf } from '../platform/error-message.ts'
import { TimeLimitExceeded, within } from '../platform/time-limit.ts'
import type { Host } from '../state/host.ts'
import type { Offered, RequestBody } from '../state/request-body.ts'

export type Outcome =
  | { readonly kind: 'sent' | 'handed'; readonly reference: string | null }
  /** No address, and nobody on the page took it. */
  | { readonly kind: 'nobody' }
  | Failed

export interface Failed {
  readonly kind: 'failed'
  readonly why: Why
  readonly status?: number
}

/** With `no-receipt` and `no-answer` it may have arrived all the same. */
export type Why = 'unreachable' | 'refused' | 'no-receipt' | 'no-answer'

/** Whoever has not answered by then is taken for not there, ms. */
export const LONGEST_ANSWER = 20_000
/** Before the one more try after an answer that says "not now" or none at all, ms. */
const PAUSE = 1500
const NOT_NOW = new Set([429, 502, 503, 504])

/** A failure that may be none a moment later. */
export const isForNow = ({ why, status }: Failed): boolean =>
  why === 'unreachable' || NOT_NOW.has(status ?? 0)

/** Characters of a shop's reference that are shown. */
const LONGEST_REFERENCE = 80

const fieldOf = (receipt: unknown, name: string): unknown =>
  typeof receipt === 'object' && receipt !== null ? Reflect.get(receipt, name) : undefined

/** What a receipt gives to refer to, in characters that can be shown; null where it gives none. */
const referenceOf = (receipt: unknown): string | null => {
  const reference = fieldOf(receipt, 'reference')
  if (typeof reference !== 'string' && typeof reference !== 'number') return null
  const shown = String(reference)
    .replace(/[\p{C}\p{Zl}\p{Zp}]+/gu, ' ')
    .trim()
    .slice(0, LONGEST_REFERENCE)
  return shown === '' ? null : shown
}

/** Never throws. `limit` in ms. */
export async function sendRequest(
  host: Pick<Host, 'offer' | 'requestUrl' | 'requestFailed'>,
  body: RequestBody,
  limit: number = LONGEST_ANSWER,
): Promise<Outcome> {
  const offered: Offered = { ...body }
  const taken = !host.offer(offered)
  if (taken || offered.receipt !== undefined) {
    try {
      const receipt = await within(limit, Promise.resolve(offered.receipt))
      return { kind: 'handed', reference: referenceOf(receipt) }
    } catch (error) {
      host.requestFailed(messageOf(error))
      return { kind: 'failed', why: error instanceof TimeLimitExceeded ? 'no-answer' : 'refused' }
    }
  }
  if (host.requestUrl === null) return { kind: 'nobody' }
  let outcome = await post(host.requestUrl, body, limit)
  if (outcome.kind === 'failed' && isForNow(outcome)) {
    await new Promise((done) => setTimeout(done, PAUSE))
    outcome = await post(host.requestUrl, body, limit)
  }
  if (outcome.kind === 'failed')
    host.requestFailed(outcome.status === undefined ? outcome.why : `${outcome.why}: ${outcome.status}`)
  return outcome
}

/** Once. Never throws. */
export async function post(url: string, body: RequestBody, limit: number = LONGEST_ANSWER): Promise<Outcome> {
  const stop = new AbortController()
  const answer = async (): Promise<Outcome> => {
    const response = await fetch(url, {
      method: 'POST',
      headers: {
        'content-type': 'application/json',
        accept: 'application/json',
        'idempotency-key': body.id,
      },
      body: JSON.stringify(body),
      signal: stop.signal,
    })
    const { ok, status } = response
    if (!ok) return { kind: 'failed', why: 'refused', status }
    const receipt = await response.json().catch((error: unknown) => {
      if (stop.signal.aborted) throw error
      return null
    })
    return fieldOf(receipt, 'received') === true
      ? { kind: 'sent', reference: referenceOf(receipt) }
      : { kind: 'failed', why: 'no-receipt', status }
  }
  try {
    return await within(limit, answer())
  } catch (error) {
    stop.abort()
    return { kind: 'failed', why: error instanceof TimeLimitExceeded ? 'no-answer' : 'unreachable' }
  }
}
