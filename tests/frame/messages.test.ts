import fc from 'fast-check'
import { expect, test } from 'vitest'
import { messageIn, originsIn } from '../../src/frame/messages.ts'

test('a list names exact origins; what is none is left out', () => {
  const list = `https://shop.example
    http://127.0.0.1:8080 * null https://shop.example/ https://*.shop.example HTTPS://Shop.example file:///a data:,x https://u@shop.example`
  expect([...originsIn(list)]).toEqual(['https://shop.example', 'http://127.0.0.1:8080'])
  expect(originsIn('').size).toBe(0)
})

test('what is no message of ours is null, never thrown', () => {
  fc.assert(
    fc.property(fc.anything({ withNullPrototype: true }), (data) => {
      expect(messageIn(data)).toBe(null)
    }),
  )
})

const MESSAGES: readonly object[] = [
  { leadline: 1, type: 'hello', takes: true },
  { leadline: 1, type: 'set', attributes: { units: 'metric', 'hide-price': null }, design: { a: 1 } },
  { leadline: 1, type: 'seen', top: 10, bottom: 0 },
  { leadline: 1, type: 'ask', id: '1', what: 'design' },
  { leadline: 1, type: 'ask', id: '1', what: 'reset' },
  { leadline: 1, type: 'ask', id: '1', what: 'snapshot', width: 640 },
  { leadline: 1, type: 'ask', id: '1', what: 'export', wanted: { format: 'pdf' } },
  { leadline: 1, type: 'receipt', id: '1', received: true, reference: 'R-1' },
]

test.each(MESSAGES)('%o is one; with one key more, or a value of another kind, it is none', (message) => {
  expect(messageIn(message)).toEqual(message)
  expect(messageIn({ ...message, more: 1 })).toBe(null)
  for (const key of Object.keys(message)) expect(messageIn({ ...message, [key]: [] }), key).toBe(null)
})
