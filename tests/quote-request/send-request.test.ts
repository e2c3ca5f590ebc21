import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { demoCatalog, demoDesign, derive } from '../../rules/index.ts'
import { newId } from '../../src/platform/new-id.ts'
import { LONGEST_ANSWER, sendRequest } from '../../src/quote-request/send-request.ts'
import type { Offered, RequestBody } from '../../src/state/request-body.ts'

const dock = derive(demoDesign, demoCatalog)
const content: RequestBody = {
  format: 'leadline/request',
  version: 1,
  id: 'number-1',
  at: '2026-05-01T12:00:00.000Z',
  design: demoDesign,
  catalog: { id: demoCatalog.id, version: demoCatalog.edition },
  fingerprint: dock.fingerprint,
  totals: dock.totals,
  contact: { name: 'A. Example', contact: 'a@example.org', note: '' },
}

interface Sent {
  readonly key: string | null
  readonly body: Record<string, unknown>
}
let sent: Sent[] = []
let told: string[] = []
/** An answer a call, the last one for all that follow. */
const answering = (...answers: (() => Promise<Response>)[]): void => {
  vi.stubGlobal('fetch', (_: string, init: RequestInit) => {
    sent.push({
      key: new Headers(init.headers).get('idempotency-key'),
      body: JSON.parse(String(init.body)) as Record<string, unknown>,
    })
    return answers[Math.min(sent.length, answers.length) - 1]!()
  })
}
const host = (requestUrl: string | null, listen: (request: Offered) => boolean = () => true) => ({
  requestUrl,
  offer: listen,
  requestFailed: (message: string) => void told.push(message),
})
const json =
  (value: unknown, status = 200) =>
  async () =>
    Response.json(value, { status })
const ended = async <T>(promise: Promise<T>): Promise<T> => {
  await vi.advanceTimersByTimeAsync(3 * LONGEST_ANSWER)
  return promise
}

beforeEach(() => {
  vi.useFakeTimers()
  sent = []
  told = []
})
afterEach(() => {
  vi.useRealTimers()
  vi.unstubAllGlobals()
})

test('only a receipt counts as sent', async () => {
  answering(json({ received: true, reference: 'R-17' }))
  expect(await ended(sendRequest(host('/ask'), content))).toEqual({ kind: 'sent', reference: 'R-17' })
  answering(json({ received: true }))
  expect(await ended(sendRequest(host('/ask'), content))).toEqual({ kind: 'sent', reference: null })
  expect(told).toEqual([])
})

test.each([
  ['a page of HTML', async () => new Response('<h1>Log in</h1>'), 'no-receipt', 200],
  ['an empty 204', async () => new Response(null, { status: 204 }), 'no-receipt', 204],
  ['JSON that is no receipt', json({ ok: true }), 'no-receipt', 200],
  ['"received" as text', json({ received: 'true' }), 'no-receipt', 200],
  ['null', json(null), 'no-receipt', 200],
  ['500', async () => new Response('', { status: 500 }), 'refused', 500],
  ['a receipt with an error status', json({ received: true }, 409), 'refused', 409],
  ['503 twice', async () => new Response('', { status: 503 }), 'refused', 503],
] as const)('%s is no receipt', async (_, answer, why, status) => {
  answering(answer)
  expect(await ended(sendRequest(host('/ask'), content))).toEqual({ kind: 'failed', why, status })
  expect(told).toHaveLength(1)
})

test('no answer is given up in time, and what was sent is told apart from what was not', async () => {
  answering(() => new Promise(() => {}))
  const hanging = sendRequest(host('/ask'), content)
  let over = false
  void hanging.then(() => {
    over = true
  })
  await vi.advanceTimersByTimeAsync(LONGEST_ANSWER - 10)
  expect(over).toBe(false)
  expect(await ended(hanging)).toEqual({ kind: 'failed', why: 'no-answer' })
  expect(sent).toHaveLength(1)
  // A body that never ends is no answer either.
  answering(async () => new Response(new ReadableStream({ start: (c) => c.enqueue(new Uint8Array([123])) })))
  expect(await ended(sendRequest(host('/ask'), content))).toEqual({ kind: 'failed', why: 'no-answer' })
  answering(async () => {
    throw new TypeError('Failed to fetch')
  })
  expect(await ended(sendRequest(host('/ask'), content))).toEqual({ kind: 'failed', why: 'unreachable' })
})

test('a server that is busy is asked once more under the same number', async () => {
  answering(async () => new Response('', { status: 503 }), json({ received: true, reference: 8 }))
  expect(await ended(sendRequest(host('/ask'), content))).toEqual({ kind: 'sent', reference: '8' })
  expect(sent.map(({ key, body }) => [key, body.id])).toEqual([
    ['number-1', 'number-1'],
    ['number-1', 'number-1'],
  ])
})

test('what is sent says what it is, when, of which catalog, and is whole', async () => {
  answering(json({ received: true }))
  await ended(sendRequest(host('/ask'), content))
  expect(sent[0]!.body).toEqual(JSON.parse(JSON.stringify(content)))
})

test('a page that prevents the default has it, with or without a receipt', async () => {
  answering(json({ received: true }))
  const taken = host('/ask', () => false)
  expect(await ended(sendRequest(taken, content))).toEqual({ kind: 'handed', reference: null })
  const later = host('/ask', (request) => {
    request.receipt = Promise.resolve({ reference: 'P-1' })
    return true
  })
  expect(await ended(sendRequest(later, content))).toEqual({ kind: 'handed', reference: 'P-1' })
  expect(sent).toEqual([])
  const failing = host('/ask', (request) => {
    request.receipt = Promise.reject(new Error('the shop said no'))
    return false
  })
  expect(await ended(sendRequest(failing, content))).toEqual({ kind: 'failed', why: 'refused' })
  const dumb = host('/ask', (request) => {
    request.receipt = new Promise(() => {})
    return false
  })
  expect(await ended(sendRequest(dumb, content))).toEqual({ kind: 'failed', why: 'no-answer' })
})

test('nobody there is said as such', async () => {
  answering(json({ received: true }))
  expect(await ended(sendRequest(host(null), content))).toEqual({ kind: 'nobody' })
  expect(sent).toEqual([])
})

test('a reference is shown in plain characters and not at any length', async () => {
  answering(json({ received: true, reference: `\u202eR\n1\u0007${'x'.repeat(500)}` }))
  const outcome = await ended(sendRequest(host('/ask'), content))
  expect(outcome).toMatchObject({ kind: 'sent' })
  const { reference } = outcome as { reference: string }
  expect(reference).toMatch(/^R 1 x+$/)
  expect(reference.length).toBe(80)
})

test('numbers differ, where the browser makes none too', () => {
  const real = Array.from({ length: 100 }, newId)
  expect(new Set(real).size).toBe(100)
  vi.stubGlobal('crypto', { getRandomValues: crypto.getRandomValues.bind(crypto) })
  const own = Array.from({ length: 100 }, newId)
  expect(new Set(own).size).toBe(100)
  expect(own[0]).toMatch(/^[0-9a-f]{32}$/)
})
