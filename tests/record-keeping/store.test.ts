/** Where what is made is put: journal, database, memory, in whatever order they fail and come back. */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import type { Database } from '../../src/record-keeping/database.ts'
import { openDrafts } from '../../src/record-keeping/drafts.ts'
import { deviceId, openJournal } from '../../src/record-keeping/journal.ts'
import { openStore } from '../../src/record-keeping/store.ts'
import { runs } from '../support/runs.ts'

/** As a browser's, with room or without. */
function storage() {
  const items = new Map<string, string>()
  const state = { full: false, denied: false }
  const methods = {
    setItem(name: string, text: string) {
      if (state.full) throw new DOMException('no room', 'QuotaExceededError')
      items.set(name, text)
    },
    getItem: (name: string) => items.get(name) ?? null,
    removeItem: (name: string) => void items.delete(name),
  }
  const proxy = new Proxy(methods as unknown as Storage, {
    ownKeys: () => [...items.keys()],
    getOwnPropertyDescriptor: () => ({ enumerable: true, configurable: true }),
  })
  const give = (): Storage => {
    if (state.denied) throw new DOMException('not here', 'SecurityError')
    return proxy
  }
  return { items, state, journal: openJournal('k', give) }
}

function database() {
  const entries = new Map<string, unknown>()
  const photos = new Map<string, ArrayBuffer>()
  let head: unknown
  const state = { full: false }
  const check = (): void => {
    if (state.full) throw new DOMException('no room', 'QuotaExceededError')
  }
  const base: Database = {
    ids: async () => ['r'],
    load: async () => ({ head, entries: [...entries].map(([name, value]) => ({ name, value })) }),
    async put(_, join, more) {
      await Promise.resolve()
      check()
      if (join) head = join(head)
      for (const [name, value] of more) entries.set(name, value)
    },
    async putPhoto(_, hash, bytes) {
      check()
      photos.set(hash, bytes)
    },
    photo: async (_, hash) => photos.get(hash) ?? null,
    photos: async () => photos.size,
    remove: async () => {},
    close: () => {},
  }
  return { base, entries, photos, state, head: () => head }
}

const opened = (to: { journal: ReturnType<typeof openJournal> }, base: Database | null) => {
  let told = 0
  const store = openStore({
    ...{ record: 'r', journal: to.journal, database: base, why: base ? null : 'denied' },
    join: (stored, heads) => [...(Array.isArray(stored) ? stored : []), ...heads],
    changed: () => void told++,
  })
  return { store, told: () => told }
}
const KEPT = { state: 'kept', why: null, entries: 0, photos: 0 } as const

it('an entry is in the journal at once, and soon only in the database', async () => {
  const [own, base] = [storage(), database()]
  const { store } = opened(own, base.base)
  store.write(new Map([['a', { n: 1 }]]), new Map([['h', { begun: 1 }]]))
  expect([...own.items.values()].sort()).toEqual(['{"begun":1}', '{"n":1}'])
  expect(store.kept).toEqual(KEPT)
  await store.flush()
  expect([...base.entries]).toEqual([['a', { n: 1 }]])
  expect(base.head()).toEqual([{ begun: 1 }])
  expect(own.items.size).toBe(0)
})

it('no room anywhere is told with the count; when there is room again it is all there', async () => {
  const [own, base] = [storage(), database()]
  const { store, told } = opened(own, base.base)
  own.state.full = true
  base.state.full = true
  store.write(
    new Map([
      ['a', 1],
      ['b', 2],
    ]),
    new Map(),
  )
  expect(store.kept).toEqual({ state: 'this-tab-only', why: 'full', entries: 2, photos: 0 })
  await store.writePhoto('p', new ArrayBuffer(3))
  expect(store.kept).toEqual({ state: 'this-tab-only', why: 'full', entries: 2, photos: 1 })
  expect(told()).toBeGreaterThan(0)
  expect((await store.photo('p'))?.byteLength).toBe(3)
  base.state.full = false
  await store.flush()
  expect(store.kept).toEqual(KEPT)
  expect([base.entries.size, base.photos.size]).toEqual([2, 1])
})

it('nothing is lost, whatever fails and comes back between the writes', async () => {
  const step = fc.record({ journal: fc.boolean(), base: fc.boolean(), wait: fc.boolean() })
  await fc.assert(
    fc.asyncProperty(fc.array(step, { maxLength: 12 }), fc.boolean(), async (steps, withBase) => {
      const [own, base] = [storage(), database()]
      const { store } = opened(own, withBase ? base.base : null)
      for (const [i, { journal, base: fails, wait }] of steps.entries()) {
        own.state.full = journal
        base.state.full = fails
        store.write(new Map([[`e${i}`, i]]), new Map())
        if (wait) await store.flush()
        const there = new Set([
          ...base.entries.keys(),
          ...own.journal.read(['entry', 'r']).map(({ name }) => name[0]),
        ])
        // What is told to be in this tab alone is all that is nowhere else.
        expect(store.kept.entries).toBe(i + 1 - there.size)
      }
      own.state.full = false
      base.state.full = false
      await store.flush()
      expect(store.kept.state).toBe('kept')
      const all = new Map([
        ...own.journal.read(['entry', 'r']).map(({ name, value }) => [name[0], value] as const),
        ...base.entries,
      ])
      expect(all.size).toBe(steps.length)
    }),
    { numRuns: runs(200) },
  )
})

it('a browser that gives no storage says why', () => {
  const own = storage()
  own.state.denied = true
  expect(own.journal.write(['a'], 1)).toBe('denied')
  expect(own.journal.read(['a'])).toEqual([])
  expect(deviceId(own.journal, () => 'new')).toBe('new')
  own.state.denied = false
  expect(deviceId(own.journal, () => 'first')).toBe('first')
  expect(deviceId(own.journal, () => 'second')).toBe('first')
})

it('an item that is no JSON is left alone, and names may have any letters', () => {
  const own = storage()
  own.journal.write(['entry', 'a/b ü', 'c'], { fine: true })
  const [name] = [...own.items.keys()]
  own.items.set(`${name}x`, '{')
  expect(own.journal.read(['entry', 'a/b ü'])).toEqual([{ name: ['c'], value: { fine: true } }])
  expect(own.items.size).toBe(2)
})

it('a draft comes back to its own tab first, and a crash leaves it to the next', () => {
  const own = storage()
  const [one, two] = [openDrafts(own.journal, 'r', 'one'), openDrafts(own.journal, 'r', 'two')]
  one.keep('leg', 'from one')
  two.keep('leg', 'from two')
  expect(openDrafts(own.journal, 'r', 'one').read('leg')).toBe('from one')
  // Another tab entered and is done: what this one has in hand stays.
  two.keep('leg', null)
  expect(openDrafts(own.journal, 'r', 'one').read('leg')).toBe('from one')
  const next = openDrafts(own.journal, 'r', 'three')
  expect(next.read('leg')).toBe('from one')
  next.keep('leg', null)
  expect(openDrafts(own.journal, 'r', 'four').read('leg')).toBe(null)
})
