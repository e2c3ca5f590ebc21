/** A request that could not be sent: kept as it is, sent under its own id when there is a connection, and only as long as whoever asked wants it. */
import { beforeEach, expect, test, vi } from 'vitest'
import { demoCatalog, demoDesign, derive } from '../../rules/index.ts'
import type { Outcome } from '../../src/quote-request/send-request.ts'
import { goesByItself, type Waiting, waitingFor } from '../../src/quote-request/waiting/queue.ts'
import { sendWaiting } from '../../src/quote-request/waiting/send-waiting.ts'
import type { RequestBody } from '../../src/state/request-body.ts'

const { fingerprint, totals } = derive(demoDesign, demoCatalog)
const request = (id: string, at = '2026-05-01T12:00:00.000Z'): RequestBody => ({
  ...{ format: 'leadline/request', version: 1, id, at, design: demoDesign },
  ...{ catalog: { id: demoCatalog.id, version: demoCatalog.edition }, fingerprint, totals },
  contact: { name: 'A. Example', contact: 'a@example.org', note: '' },
})

/** As a browser's, with so much room, characters. */
function storageOf(room = 5_000_000): Storage {
  const kept = new Map<string, string>()
  const own = {
    getItem: (name: string) => kept.get(name) ?? null,
    setItem(name: string, text: string) {
      if ([...kept.values(), text].join('').length > room)
        throw new DOMException('full', 'QuotaExceededError')
      kept.set(name, text)
    },
    removeItem: (name: string) => void kept.delete(name),
  }
  return new Proxy(own, {
    ownKeys: () => [...kept.keys()],
    getOwnPropertyDescriptor: (_, name) =>
      kept.has(String(name))
        ? { enumerable: true, configurable: true, value: kept.get(String(name)) }
        : undefined,
  }) as unknown as Storage
}

const ids = (list: readonly Waiting[]): string[] => list.map(({ body }) => body.id)
const SENT: Outcome = { kind: 'sent', reference: 'R-1' }
const AWAY: Outcome = { kind: 'failed', why: 'unreachable' }

beforeEach(() => {
  vi.stubGlobal('document', { baseURI: 'https://shop.example/plan/page.html' })
  vi.stubGlobal('localStorage', storageOf())
})

test('what waits is as it was asked for, the oldest first, and for its address alone', () => {
  const queue = waitingFor('../ask')
  const [a, b] = [request('a', '2026-05-02T12:00:00.000Z'), request('b')]
  expect(queue.keep({ body: a })).toBe(true)
  expect(queue.keep({ body: b })).toBe(true)
  expect(waitingFor('https://shop.example/ask').list()).toEqual([{ body: b }, { body: a }])
  for (const other of ['https://elsewhere.example/ask', '/ask2', '/ask/', '/plan/ask'])
    expect(waitingFor(other).list(), other).toEqual([])
  queue.drop('b')
  expect(ids(queue.list())).toEqual(['a'])
})

test('a device that keeps nothing, or no more, says so; what is no request is not sent', () => {
  vi.stubGlobal('localStorage', storageOf(100))
  expect(waitingFor('/ask').keep({ body: request('a') })).toBe(false)
  vi.stubGlobal('localStorage', undefined)
  expect([waitingFor('/ask').keep({ body: request('a') }), waitingFor('/ask').list()]).toEqual([false, []])
  vi.stubGlobal('localStorage', storageOf())
  const queue = waitingFor('/ask')
  for (let i = 0; i < 10; i++) expect(queue.keep({ body: request(`n${i}`) })).toBe(true)
  expect(queue.keep({ body: request('one more') })).toBe(false)
  expect(queue.keep({ body: request('n3'), answer: 422 })).toBe(true)
  for (const { body } of queue.list()) queue.drop(body.id)
  const [name] = [`leadline-request/${encodeURIComponent('https://shop.example/ask')}/`]
  const wrong = [
    '',
    'null',
    '{',
    '[]',
    '{"body":null}',
    JSON.stringify({ body: request('another') }),
    '{"body":{"id":"x"}}',
  ]
  wrong.forEach((text, i) => {
    localStorage.setItem(`${name}x${i}`, text)
  })
  expect(queue.list()).toEqual([])
})

test('sent in order under their own ids, and out only when they are taken', async () => {
  const queue = waitingFor('/ask')
  for (const id of ['a', 'b', 'c']) queue.keep({ body: request(id) })
  const sent: RequestBody[] = []
  const answers: Record<string, Outcome> = { a: SENT, b: AWAY, c: SENT }
  const send = async ({ body }: Waiting): Promise<Outcome> => {
    sent.push(body)
    return answers[body.id]!
  }
  expect(await sendWaiting(queue, () => true, send)).toEqual([{ id: 'a', reference: 'R-1' }])
  // Where one cannot be reached the next is not tried.
  expect(sent).toEqual([request('a'), request('b')])
  expect(ids(queue.list())).toEqual(['b', 'c'])
  answers.b = SENT
  expect((await sendWaiting(queue, () => true, send)).map(({ id }) => id)).toEqual(['b', 'c'])
  expect(queue.list()).toEqual([])
  expect(await sendWaiting(queue, () => true, send)).toEqual([])
  expect(sent).toHaveLength(4)
})

test.each<[string, Outcome, Waiting['answer']]>([
  ['out of reach', AWAY, undefined],
  ['busy', { kind: 'failed', why: 'refused', status: 503 }, undefined],
  ['no answer in time', { kind: 'failed', why: 'no-answer' }, undefined],
  ['turned down', { kind: 'failed', why: 'refused', status: 422 }, 422],
  ['a page of HTML', { kind: 'failed', why: 'no-receipt', status: 200 }, 200],
])('%s: it goes on waiting', async (_, outcome, answer) => {
  const queue = waitingFor('/ask')
  queue.keep({ body: request('a') })
  expect(
    await sendWaiting(
      queue,
      () => true,
      async () => outcome,
    ),
  ).toEqual([])
  const [one] = queue.list()
  expect(one).toEqual({ body: request('a'), ...(answer !== undefined && { answer }) })
  const day = Date.parse('2026-05-02T12:00:00.000Z')
  expect(goesByItself(one!, day)).toBe(answer === undefined)
})

test('what was taken back is not sent, nor kept again by an answer that comes later', async () => {
  const queue = waitingFor('/ask')
  for (const id of ['a', 'b']) queue.keep({ body: request(id) })
  const sent: string[] = []
  await sendWaiting(
    queue,
    () => true,
    async ({ body }) => {
      sent.push(body.id)
      queue.drop('a')
      queue.drop('b')
      return { kind: 'failed', why: 'refused', status: 422 }
    },
  )
  expect([sent, queue.list()]).toEqual([['a'], []])
})

test('after two weeks it waits for a hand', () => {
  const one = { body: request('a') }
  expect(goesByItself(one, Date.parse('2026-05-15T11:59:59.000Z'))).toBe(true)
  expect(goesByItself(one, Date.parse('2026-05-15T12:00:00.000Z'))).toBe(false)
})
