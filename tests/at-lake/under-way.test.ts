/** The page that plans says that a dock is being set up: from the first piece of work to the last leg, and not of another dock. */
import { expect, it } from 'vitest'
import { seasonState } from '../../rules/record/index.ts'
import { underWayOf } from '../../src/at-lake/setting-up.ts'
import { keepUnderWay, keptUnderWay } from '../../src/at-lake/under-way.ts'
import { begun, phone, write } from '../support/records.ts'

const OWN = { id: 'rec-1', name: 'Cove' }

/** What a browser keeps, in a map. */
function storage() {
  const kept = new Map<string, string>()
  const own = {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
    removeItem: (key: string) => void kept.delete(key),
  }
  return { kept, of: () => own as unknown as Storage }
}

it('from the first piece of work to the last leg', () => {
  const on = phone(begun(), 'phone-a')
  const now = () => underWayOf(seasonState(on.record, '2026'), OWN)
  expect(now()).toBeNull()
  // Something worn that was seen is no work on the way out.
  write(on, { kind: 'wear', part: 'brace', what: 'bent', count: 1, order: true }, '2026')
  expect(now()).toBeNull()
  write(on, { kind: 'step', key: 'dry/s2', done: true }, '2026')
  expect(now()).toEqual({ ...OWN, set: 0, all: 10 })
  const legs = on.record.legs.map(({ id }) => id)
  const set = (leg: string) =>
    write(on, { kind: 'set', leg, stock: null, height: 1, level: 0, how: 'measured' }, '2026')
  for (const leg of legs.slice(0, 9)) set(leg)
  expect(now()).toEqual({ ...OWN, set: 9, all: 10 })
  // One of autumn: it comes out.
  write(on, { kind: 'step', key: 'out/safe', done: true }, '2026')
  expect(now()).toBeNull()
  write(on, { kind: 'step', key: 'out/safe', done: false }, '2026')
  expect(now()).not.toBeNull()
  set(legs[9]!)
  expect(now()).toBeNull()
})

it('is kept on the device; what is told of another dock takes nothing away', () => {
  const { kept, of } = storage()
  expect(keptUnderWay(of)).toBeNull()
  keepUnderWay('a', { id: 'a', name: 'Cove', set: 2, all: 10 }, of)
  keepUnderWay('b', null, of)
  expect(keptUnderWay(of)).toEqual({ id: 'a', name: 'Cove', set: 2, all: 10 })
  keepUnderWay('a', null, of)
  expect([keptUnderWay(of), kept.size]).toEqual([null, 0])
  // Written by something else, or where nothing can be kept.
  kept.set('leadline-lake-on', '{"id":3}')
  expect(keptUnderWay(of)).toBeNull()
  kept.set('leadline-lake-on', '{"id"')
  expect(keptUnderWay(of)).toBeNull()
  const none = (): Storage => {
    throw new Error('denied')
  }
  keepUnderWay('a', { id: 'a', name: '', set: 1, all: 2 }, none)
  expect(keptUnderWay(none)).toBeNull()
})
