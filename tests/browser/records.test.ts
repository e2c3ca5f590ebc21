/** Season records in a real browser: kept through reloads, full disks, wrong clocks, other tabs; merged over two phones. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import * as esbuild from 'esbuild'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import type { SeasonRecord } from '../../rules/record/index.ts'
import type { RecordKeeper } from '../../src/record-keeping/index.ts'
import type { RecordPage } from './record-page.ts'
import { type OpenOptions, open, PHONE, withBrowser } from './support/open.ts'
import { type Site, serve } from './support/server.ts'

declare global {
  /** In the page, not here. */
  const keeping: RecordPage
  var keeper: RecordKeeper
  var told: number
}

withBrowser()

const HTML = `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Records</title><link rel="icon" href="data:,">
<script type="module" src="record-page.js"></script></head><body></body></html>`
let folder: string
let site: Site

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'leadline-records-'))
  await esbuild.build({
    ...{ entryPoints: ['tests/browser/record-page.ts'], outdir: folder, bundle: true, splitting: true },
    ...{
      format: 'esm',
      target: 'es2022',
      logLevel: 'error',
      define: { 'process.env.NODE_ENV': '"production"' },
    },
  })
  writeFileSync(join(folder, 'index.html'), HTML)
  site = await serve([folder])
})
afterAll(async () => {
  await site.close()
  rmSync(folder, { recursive: true, force: true })
})

const phone = async (options: OpenOptions = {}) => {
  const opened = await open({
    ...{ at: site.url, path: '/index.html', elements: 0, fresh: true, viewport: PHONE, hasTouch: true },
    ...options,
  })
  await begun(opened.page)
  return opened
}
/** The page's record is open. */
async function begun(page: Page): Promise<void> {
  await page.waitForFunction(() => 'keeping' in globalThis)
  await page.evaluate(async () => {
    globalThis.keeper = await keeping.openOne()
  })
}
const reload = async (page: Page): Promise<void> => {
  await page.reload()
  await begun(page)
}
const heights = (page: Page) =>
  page.evaluate(() => keeper.record.entries.map((entry) => (entry.kind === 'set' ? entry.height : null)))
const kept = (page: Page) => page.evaluate(() => keeper.kept)
const add = (page: Page, height: number, leg = 'pair-1.left') =>
  page.evaluate(([leg, height]) => keeper.add(keeping.set(leg, height)).ok, [leg, height] as const)

test('an entry stands the moment it is made: the page goes away in the same task', async () => {
  const { page, close } = await phone()
  const gone = page.waitForEvent('load')
  await page.evaluate(() => {
    keeper.add(keeping.set('pair-1.left', 1.25))
    keeper.keepDraft('leg/pair-2.left', { depth: '3 ft' })
    location.reload()
  })
  await gone
  await begun(page)
  expect(await heights(page)).toEqual([1.25])
  expect(await page.evaluate(() => keeper.draft('leg/pair-2.left'))).toEqual({ depth: '3 ft' })
  // It is in the database now: the journal is empty but for the draft.
  await expect
    .poll(() =>
      page.evaluate(() => Object.keys(localStorage).filter((name) => /\/(?:entry|head)\//.test(name))),
    )
    .toEqual([])
  await page.evaluate(() => keeper.keepDraft('leg/pair-2.left', null))
  await reload(page)
  expect(await heights(page)).toEqual([1.25])
  expect(await page.evaluate(() => keeper.draft('leg/pair-2.left'))).toBe(null)
  await close()
})

test('without a database the journal keeps it; without that it says so', async () => {
  const one = await phone({
    before: () => Object.defineProperty(window, 'indexedDB', { get: () => undefined }),
  })
  await add(one.page, 2)
  expect(await kept(one.page)).toEqual({ state: 'kept', why: null, entries: 0, photos: 0 })
  await reload(one.page)
  expect(await heights(one.page)).toEqual([2])
  await one.close()
  const two = await phone({
    before: () => {
      Object.defineProperty(window, 'indexedDB', { get: () => undefined })
      Object.defineProperty(window, 'localStorage', {
        get: () => {
          throw new DOMException('denied', 'SecurityError')
        },
      })
    },
  })
  await add(two.page, 2)
  expect(await kept(two.page)).toMatchObject({ state: 'this-tab-only', why: 'denied', entries: 1 })
  await two.close()
})

/**
 * Takes all room that the site has, or gives it back. The journal's is really full; the database is made to refuse as it does then, for this
 * browser holds it to no quota that a test could set.
 */
const fill = (page: Page, full: boolean): Promise<void> =>
  page.evaluate((full) => {
    const store = IDBObjectStore.prototype as { put: unknown; given?: unknown }
    store.given ??= store.put
    store.put = full
      ? () => {
          throw new DOMException('no room', 'QuotaExceededError')
        }
      : store.given
    for (const name of Object.keys(localStorage)) if (name.startsWith('junk')) localStorage.removeItem(name)
    for (let size = full ? 500_000 : 0, i = 0; size >= 1; i++)
      try {
        localStorage.setItem(`junk${i}`, 'x'.repeat(size))
      } catch {
        size = Math.floor(size / 2)
      }
  }, full)

test('a full disk is told, nothing is lost while the tab is open, and it is kept when there is room again', async () => {
  const { page, close } = await phone()
  await add(page, 1)
  await page.evaluate(() => keeper.save())
  await fill(page, true)
  await page.evaluate(() => {
    globalThis.told = 0
    keeper.subscribe(() => globalThis.told++)
  })
  await add(page, 2)
  await page.evaluate(async () => keeper.addPhoto(await keeping.takePicture(400, 300, 1)))
  expect(await kept(page)).toEqual({ state: 'this-tab-only', why: 'full', entries: 1, photos: 1 })
  expect(await page.evaluate(() => globalThis.told)).toBeGreaterThan(0)
  // The file has it all.
  const text = await page.evaluate(async () => (await keeping.recordFile(keeper.record, keeper.photo)).text())
  expect((JSON.parse(text) as SeasonRecord).entries).toHaveLength(2)
  await page.evaluate(() => keeper.save())
  expect((await kept(page)).state).toBe('this-tab-only')
  await fill(page, false)
  await page.evaluate(() => keeper.save())
  expect(await kept(page)).toEqual({ state: 'kept', why: null, entries: 0, photos: 0 })
  await reload(page)
  expect(await heights(page)).toEqual([1, 2])
  await close()
})

test('a clock that was set back changes no order and no season, and is told', async () => {
  const { page, close } = await phone({ clock: true })
  await page.clock.setFixedTime('2036-06-06T10:00:00Z')
  await reload(page)
  await add(page, 1)
  expect(await page.evaluate(() => keeper.clockDoubt)).toBe(null)
  await page.clock.setFixedTime('2019-01-01T00:00:00Z')
  await reload(page)
  await add(page, 2)
  expect(await page.evaluate(() => keeper.clockDoubt)).toEqual({
    newest: '2036-06-06T10:00:00.000Z',
    now: '2019-01-01T00:00:00.000Z',
  })
  const entries = await page.evaluate(() => keeper.record.entries)
  expect(entries.map(({ n, season, at }) => [n, season, at.slice(0, 4)])).toEqual([
    [1, '2036', '2036'],
    [2, '2036', '2019'],
  ])
  expect(await heights(page)).toEqual([1, 2])
  await close()
})

test('two tabs: each has what the other made, and neither takes away what the other has half entered', async () => {
  const one = await phone()
  await one.page.evaluate(() => keeper.save())
  const two = await phone({ context: one.context })
  for (let i = 0; i < 4; i++) await add(i % 2 === 0 ? one.page : two.page, i)
  for (const { page } of [one, two]) await expect.poll(() => heights(page)).toEqual([0, 1, 2, 3])
  // At once, neither knowing of the other's: both stay, of the same rank.
  await Promise.all([add(one.page, 10), add(two.page, 11)])
  for (const { page } of [one, two])
    await expect.poll(async () => (await heights(page)).slice(4).sort()).toEqual([10, 11])
  await one.page.evaluate(() => keeper.keepDraft('leg', 'one'))
  await two.page.evaluate(() => keeper.keepDraft('leg', 'two'))
  await one.page.evaluate(() => keeper.keepDraft('leg', null))
  await reload(two.page)
  expect(await two.page.evaluate(() => keeper.draft('leg'))).toBe('two')
  expect((await heights(two.page)).length).toBe(6)
  expect(await two.page.evaluate(() => keeping.openRecords('test').then((all) => all.list()))).toMatchObject([
    { id: 'one', name: 'Old dock', entries: 6, photos: 0 },
  ])
  await two.close()
  await one.close()
  await one.context.close()
})

test('two phones of one day: by codes to one, by file back, and both have the same', async () => {
  const first = await phone()
  for (const height of [1, 2, 3]) await add(first.page, height)
  const bare = await first.page.evaluate(() => JSON.stringify({ ...keeper.record, entries: [] }))
  // The other phone got the record in the morning, and wrote on.
  const second = await phone()
  await second.page.evaluate(async (text) => {
    const records = await keeping.openRecords('other')
    const arrived = await keeping.readRecordFile(new Blob([text]))
    if (!arrived.ok) throw new Error('not read')
    const taken = await keeping.keepArrived(records, arrived.value)
    if (!taken.ok) throw new Error('not taken')
    globalThis.keeper = taken.value
  }, bare)
  for (const height of [4, 5]) await add(second.page, height, 'pair-2.right')
  const firstBefore = await first.page.evaluate(() => keeper.record)
  const secondBefore = await second.page.evaluate(() => keeper.record)

  // What the first one's screen shows is what the second one's camera sees; two of three are missed.
  const shown = await first.page.evaluate(() => {
    const codes = keeping.recordCodes(keeper.record)!
    return Array.from({ length: codes.count * 4 }, (_, i) => codes.text(i * 3 + 1))
  })
  const read = await second.page.evaluate(async (shown) => {
    const screen = document.createElement('canvas')
    keeping.drawCode(screen, shown[0]!)
    navigator.mediaDevices.getUserMedia = async () => screen.captureStream(30)
    const reader = keeping.codeReader()
    const states: string[] = []
    let i = 0
    const video = document.createElement('video')
    const arrived = await new Promise<unknown>((done, fail) => {
      const stopped = keeping.watchCamera(video, (text) => {
        const step = reader(text)
        states.push(step.state)
        keeping.drawCode(screen, shown[++i % shown.length]!)
        if (step.state !== 'done') return
        void stopped.then((camera) => camera.ok && camera.stop())
        if (step.arrived.ok) done(keeper.merge(step.arrived.value.record))
        else fail(new Error('not read'))
      })
      // A still picture sends no frames by itself.
      setInterval(() => keeping.drawCode(screen, shown[i % shown.length]!), 100)
    })
    return { arrived, states, live: video.srcObject !== null }
  }, shown)
  expect(read.arrived).toMatchObject({ ok: true, value: { added: 3, lacking: 2 } })
  expect(read.live).toBe(false)

  const back = await second.page.evaluate(async () =>
    (await keeping.recordFile(keeper.record, keeper.photo)).text(),
  )
  const merged = await first.page.evaluate(async (text) => {
    const arrived = await keeping.readRecordFile(new Blob([text]))
    return arrived.ok && keeper.merge(arrived.value.record)
  }, back)
  expect(merged).toMatchObject({ ok: true, value: { added: 2, lacking: 0 } })
  const [a, b] = [
    await first.page.evaluate(() => keeper.record),
    await second.page.evaluate(() => keeper.record),
  ]
  expect(a.entries).toHaveLength(5)
  expect(b).toEqual(a)
  // Put together the other way around it is the same.
  const other = await first.page.evaluate(([a, b]) => keeping.mergeRecords(b, a), [
    firstBefore,
    secondBefore,
  ] as const)
  expect(other.ok && other.value).toEqual(a)
  await reload(first.page)
  expect(await first.page.evaluate(() => keeper.record)).toEqual(a)
  await second.close()
  await first.close()
})

test('a code in a picture file is read; a picture without one, and what is none, are told', async () => {
  const { page, close } = await phone()
  const found = await page.evaluate(async () => {
    const canvas = document.createElement('canvas')
    const codes = keeping.recordCodes(keeper.record)!
    keeping.drawCode(canvas, codes.text(0))
    const picture = await new Promise<Blob>((done) => canvas.toBlob((blob) => done(blob!), 'image/jpeg', 0.8))
    const text = await keeping.codesInPicture(picture)
    return {
      state: keeping.codeReader()(text[0] ?? '').state,
      without: await keeping.codesInPicture(await keeping.takePicture(300, 200, 3)),
      none: await keeping.codesInPicture(new Blob(['no picture'])),
      photo: await keeper.addPhoto(new Blob(['no picture'])),
    }
  })
  expect(found.state).toMatch(/more|done/)
  expect([found.without, found.none, found.photo]).toEqual([[], [], null])
  await close()
})

test('what this version cannot read stays where it is, and all else opens', async () => {
  const { page, close } = await phone()
  await add(page, 1)
  await page.evaluate(async () => {
    await keeper.save()
    const asked = indexedDB.open('leadline-records/test')
    const base = await new Promise<IDBDatabase>((done) => (asked.onsuccess = () => done(asked.result)))
    const tx = base.transaction('entries', 'readwrite')
    tx.objectStore('entries').put({ kind: 'of another version', n: 'x' }, ['one', 'odd'])
    await new Promise((done) => (tx.oncomplete = done))
    base.close()
  })
  await reload(page)
  expect(await page.evaluate(() => keeper.unreadable)).toBe(1)
  expect(await heights(page)).toEqual([1])
  await add(page, 2)
  await page.evaluate(() => keeper.save())
  await reload(page)
  expect(await heights(page)).toEqual([1, 2])
  expect(await page.evaluate(() => keeping.openRecords('test').then((all) => all.raw('one')))).toContain(
    'of another version',
  )
  await close()
})

test('200 entries and 40 photos: small, quick to open and to add to, all there after a reload', async () => {
  const { page, close } = await phone()
  const marks = await page.evaluate(async () => {
    const marks = []
    const picture = await keeping.takePicture(4000, 3000, 7)
    const first = await keeper.addPhoto(picture)
    marks.push(first!)
    for (let i = 0; i < 39; i++)
      marks.push((await keeper.addPhoto(await keeping.takePicture(640, 480, i + 11)))!)
    for (let i = 0; i < 160; i++) keeper.add(keeping.set('pair-1.left', 1 + i / 1000))
    for (const mark of marks) keeper.add({ kind: 'note', text: 'Worn', photos: [mark] })
    await keeper.save()
    return marks
  })
  expect(new Set(marks.map(({ hash }) => hash)).size).toBe(40)
  expect([marks[0]!.width, marks[0]!.height]).toEqual([1280, 960])
  expect(marks[0]!.bytes).toBeLessThan(200_000)
  await page.reload()
  await page.waitForFunction(() => 'keeping' in globalThis)
  const took = await page.evaluate(async () => {
    const start = performance.now()
    globalThis.keeper = await keeping.openOne()
    const opened = performance.now()
    keeper.add(keeping.set('pair-1.left', 2))
    const added = performance.now()
    await keeper.save()
    const saved = performance.now()
    for (let i = 0; i < 5; i++) keeper.add(keeping.set('pair-1.right', i))
    const more = (performance.now() - saved) / 5
    return { open: opened - start, add: added - opened, save: saved - added, more }
  })
  process.stdout.write(`200 entries, 40 photos: ${JSON.stringify(took)} ms\n`)
  expect(await page.evaluate(() => keeper.record.entries.length)).toBe(206)
  const [hash, size] = await page.evaluate(async (asked) => {
    const photo = (await keeper.photo(asked))!
    const digest = await crypto.subtle.digest('SHA-256', await photo.arrayBuffer())
    return [
      Array.from(new Uint8Array(digest), (b) => b.toString(16).padStart(2, '0')).join(''),
      photo.size,
    ] as const
  }, marks[0]!.hash)
  expect([hash, size]).toEqual([marks[0]!.hash, marks[0]!.bytes])
  await close()
})
