/** A price list that is not taken in yet is there again after a reload, in each window its own. */
import { expect, it } from 'vitest'
import type { Reading } from '../../src/catalog-editor/price-list/read-row.ts'
import { NO_LIST, openWaiting, type WaitingList } from '../../src/catalog-editor/price-list/waiting.ts'

/** As a browser's: its items are its own enumerable properties. */
function fakeStorage(room = 1e6): Storage {
  return Object.create(
    {
      getItem(this: Record<string, string>, key: string) {
        return this[key] ?? null
      },
      setItem(this: Record<string, string>, key: string, value: string) {
        if (value.length > room) throw new Error('no room')
        this[key] = value
      },
      removeItem(this: Record<string, string>, key: string) {
        delete this[key]
      },
    },
    {},
  ) as Storage
}

const NAME = 'leadline-catalog/a'
const reading: Reading = {
  roles: ['code', 'none', 'price'],
  length: 'in',
  mass: 'kg',
  currency: 'EUR',
  kinds: { 3: 'leg' },
}
const list = (typed: string): WaitingList => ({ ...NO_LIST, typed })

it('comes back with what was said of its columns and rows', () => {
  const [kept, tab] = [fakeStorage(), fakeStorage()]
  const read: WaitingList = { typed: 'a', text: 'b\tc', isRead: true, reading, replace: ['legs'] }
  const open = (name: string | null = NAME) =>
    openWaiting(
      name,
      () => kept,
      () => tab,
    )
  expect(open().load()).toEqual(NO_LIST)
  expect(open().save(read)).toBe(true)
  expect(open().load()).toEqual(read)
  expect(open('leadline-catalog/b').load()).toEqual(NO_LIST)
  expect(open(null).load()).toEqual(NO_LIST)
  // What another version of the page said of it, and this one cannot read, is said anew; the list itself stays.
  const name = Object.keys(kept).find((one) => one.startsWith(NAME))!
  kept.setItem(name, kept.getItem(name)!.replace('"none"', '"berth"'))
  expect(open().load()).toEqual({ ...read, reading: null })
  kept.setItem(name, '{"at":1,"list":{"typed":4}}')
  expect(open().load()).toEqual(NO_LIST)
  kept.setItem(name, 'no JSON')
  expect(open().load()).toEqual(NO_LIST)
})

it('of two windows each gets its own again; one that has none goes on with the newest, and neither writes over the other', () => {
  const kept = fakeStorage()
  const tabs = [fakeStorage(), fakeStorage(), fakeStorage()] as const
  let now = 0
  const open = (k: 0 | 1 | 2) =>
    openWaiting(
      NAME,
      () => kept,
      () => tabs[k],
      () => ++now,
    )
  const [one, two] = [open(0), open(1)]
  one.load()
  two.load()
  one.save(list('one'))
  two.save(list('two'))
  expect(open(0).load().typed).toBe('one')
  expect(open(1).load().typed).toBe('two')
  // A third goes on with what the second left; that one goes on too.
  const three = open(2)
  expect(three.load().typed).toBe('two')
  three.save(list('three'))
  two.save(list('two again'))
  expect(open(2).load().typed).toBe('three')
  expect(open(1).load().typed).toBe('two again')
  // Put away is one's own alone; then the others' are there.
  one.save(NO_LIST)
  expect(open(0).load().typed).toBe('two again')
  two.save(NO_LIST)
  three.save(NO_LIST)
  expect(open(0).load()).toEqual(NO_LIST)
  expect(Object.keys(kept)).toEqual([])
})

it('no room and no permission are told; without a key nothing is to be kept', () => {
  const refused = (): never => {
    throw new Error('refused')
  }
  const tab = () => fakeStorage()
  expect(openWaiting(NAME, () => fakeStorage(40), tab).save(list('x'.repeat(60)))).toBe(false)
  expect(openWaiting(NAME, refused, refused).save(list('x'))).toBe(false)
  expect(openWaiting(NAME, refused, refused).load()).toEqual(NO_LIST)
  expect(openWaiting(null, refused, refused).save(list('x'))).toBe(true)
})
