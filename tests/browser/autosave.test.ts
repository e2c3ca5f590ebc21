import { readFileSync } from 'node:fs'
import type { Page } from 'playwright-core'
import { expect, inject, test } from 'vitest'
import { type Design, demoCatalog, demoDesign, derive, parseDesign } from '../../rules/index.ts'
import { readLink } from '../../src/autosave/link.ts'
import { choose } from './support/choose.ts'
import { events, open, read, withBrowser } from './support/open.ts'

withBrowser()

const more = (page: Page) => page.getByRole('button', { name: 'One section more' })
const sections = (page: Page) => read(page, (e) => e.design.dock.sections)
const kept = (page: Page) => page.locator('[data-kept="saved"]').waitFor({ state: 'attached' })
const menu = (page: Page) => page.locator('summary', { hasText: 'File' })

test('what was made is there again after a reload, by itself and without the link', async () => {
  const { page, close } = await open({ fresh: true })
  await more(page).click()
  await more(page).click()
  await page.getByRole('slider', { name: 'How high over the water' }).and(page.locator('.handle')).focus()
  await page.keyboard.press('ArrowUp')
  await kept(page)
  const made = await read(page, (e) => e.design)
  expect(made.dock.sections).toBe(7)
  // The address without its fragment: what comes back comes from what is kept here.
  await page.goto('about:blank')
  await page.goto(`${inject('site')}/example.html`)
  await page.evaluate(() => (window as unknown as { leadlineReady: Promise<void> }).leadlineReady)
  expect(await read(page, (e) => e.design)).toEqual(made)
  await close()
})

test('a clean profile has nothing of it', async () => {
  const { page, close } = await open({ fresh: true })
  expect(await sections(page)).toBe(5)
  await close()
})

test('a link opened in a clean profile gives the same check code as the engine in the terminal', async () => {
  const first = await open()
  await more(first.page).click()
  await choose(first.page.getByRole('radio', { name: 'T', exact: true }))
  await first.page.getByRole('slider', { name: /^Depth 26 ft/ }).focus()
  await first.page.keyboard.press('Shift+ArrowDown')
  const made = await read(first.page, (e) => e.design)
  // Each of the changes writes its link when it is done: the last one is what counts.
  await expect
    .poll(() => {
      const linked = readLink(new URL(first.page.url()).hash)
      return linked.ok && linked.value
    })
    .toEqual(made)
  await kept(first.page)
  const fragment = new URL(first.page.url()).hash
  await first.close()

  const linked = readLink(fragment)
  const second = await open({ path: `/example.html${fragment}` })
  const shown = await read(second.page, (e) => e.dock.fingerprint)
  expect(shown).toEqual(derive(linked.ok ? linked.value : demoDesign, demoCatalog).fingerprint)
  expect(shown.all).not.toBe(derive(demoDesign, demoCatalog).fingerprint.all)
  await second.close()
})

test('a link followed over what was kept here can be taken back', async () => {
  const other: Design = { ...demoDesign, name: 'From a friend', dock: { ...demoDesign.dock, sections: 3 } }
  const { linkOf } = await import('../../src/autosave/link.ts')
  const { page, close } = await open({ fresh: true })
  await more(page).click()
  await kept(page)
  await page.evaluate((fragment) => {
    location.hash = fragment
  }, linkOf(other)!)
  await page.locator('.notice').waitFor()
  expect(await sections(page)).toBe(3)
  await page.getByRole('button', { name: 'Undo' }).click()
  expect(await sections(page)).toBe(6)
  await close()
})

test('a damaged link says so and leaves what was kept', async () => {
  const { page, close } = await open({ path: '/example.html#leadline=AAAA' })
  const [error] = await events(page, 'leadline-error')
  expect(error?.detail).toMatchObject({ code: 'link' })
  expect(await page.locator('.notice.bad').textContent()).toContain('couldn’t use')
  expect(await sections(page)).toBe(5)
  await close()
})

test('a link with half a letter in it opens, and says what was mended', async () => {
  const { deflateSync, strToU8 } = await import('fflate')
  const text = JSON.stringify({
    ...demoDesign,
    site: { ...demoDesign.site, benchmark: { name: '\ud800', above: 1 } },
  })
  expect(text).toContain('\\ud800')
  const packed = Buffer.from(deflateSync(strToU8(text))).toString('base64url')
  const { page, close } = await open({ path: `/example.html#leadline=${packed}` })
  expect(await read(page, (e) => e.design.site.benchmark!.name)).toBe('\ufffd')
  expect(await page.locator('.notice').textContent()).toContain(
    'site.benchmark.name: letters that cannot be shown',
  )
  await close()
})

test('a dock too large for a link says so, and no older link stays behind', async () => {
  const { page, close } = await open()
  await more(page).click()
  await page.waitForURL(/#leadline=/)
  const large = {
    ...demoDesign,
    site: {
      ...demoDesign.site,
      soundings: Array.from({ length: 4000 }, (_, i) => ({
        distance: i / 10,
        offset: 0,
        depth: ((i * 7919) % 1009) / 701,
      })),
    },
  }
  await page.locator('leadline-dock').evaluate((e, design) => Object.assign(e, { design }), large)
  await page.locator('.notice.bad').waitFor()
  expect(await page.locator('.notice.bad').textContent()).toContain('too large for a link')
  expect(new URL(page.url()).hash).toBe('')
  await close()
})

test('a file saved is the design, and opened again it is the same', async () => {
  const { page, close } = await open()
  await more(page).click()
  const made = await read(page, (e) => e.design)
  await menu(page).click()
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save as a file' }).click(),
  ])
  expect(download.suggestedFilename()).toBe('Quillet-Cove.leadline.json')
  const text = readFileSync(await download.path(), 'utf8')
  const parsed = parseDesign(JSON.parse(text))
  expect(parsed.ok && parsed.value).toEqual(made)
  await menu(page).click()
  await page.getByRole('button', { name: 'Start over' }).click()
  expect(await sections(page)).toBe(5)
  await page
    .locator('input[type=file]')
    .setInputFiles({ name: 'dock.json', mimeType: 'application/json', buffer: Buffer.from(text) })
  await expect.poll(() => sections(page)).toBe(6)
  // What gave way is among the earlier ones.
  await kept(page)
  await menu(page).click()
  await page.getByRole('button', { name: 'Earlier docks' }).click()
  await page.locator('.sheet .sub').first().waitFor()
  await page.locator('.sheet .sub').first().click()
  expect(await sections(page)).toBe(5)
  await close()
})

test.each([
  ['no JSON', 'hello', ''],
  ['another format', '{"format":"other"}', 'format'],
  [
    'a wrong depth',
    JSON.stringify({
      ...demoDesign,
      site: { ...demoDesign.site, soundings: [{ distance: 0, depth: 'deep' }] },
    }),
    'site.soundings[0].depth',
  ],
])('a bad file (%s) leaves the design as it is and tells where it is wrong', async (_, text, path) => {
  const { page, close } = await open()
  await more(page).click()
  await page
    .locator('input[type=file]')
    .setInputFiles({ name: 'bad.json', mimeType: 'application/json', buffer: Buffer.from(text) })
  await page.locator('.notice.bad').waitFor()
  expect(await page.locator('.notice.bad').textContent()).toContain('Your dock is as it was')
  const [error] = await events(page, 'leadline-error')
  expect(error?.detail).toMatchObject({ code: 'file', path })
  expect(await sections(page)).toBe(6)
  await close()
})

test('a file far too large is refused without being read', async () => {
  const { page, close } = await open()
  await page.locator('input[type=file]').evaluate((input) => {
    const large = new File(['{}'], 'film.json')
    Object.defineProperty(large, 'size', { value: 3e9 })
    large.text = () => Promise.reject(new Error('read all the same'))
    Object.defineProperty(input, 'files', { value: [large] })
    input.dispatchEvent(new Event('change', { bubbles: true }))
  })
  await page.locator('.notice.bad').waitFor()
  expect(await page.locator('.notice.bad').textContent()).toContain('film.json: 3000000000 bytes')
  await close()
})

test('without storage it goes on, and says that nothing is kept', async () => {
  const { page, close } = await open({ path: '/bare.html', elements: 0 })
  await page.evaluate(() => {
    Object.defineProperty(window, 'indexedDB', { get: () => undefined })
    Object.defineProperty(window, 'localStorage', {
      get: () => {
        throw new DOMException('denied', 'SecurityError')
      },
    })
    const element = document.createElement('leadline-dock')
    element.setAttribute('start', 'example')
    element.setAttribute('storage-key', 'k')
    document.body.append(element)
  })
  await page.evaluate("import('./leadline.js')")
  await page.evaluate(() => (window as unknown as { leadlineReady: Promise<void> }).leadlineReady)
  const [error] = await events(page, 'leadline-error')
  expect(error?.detail).toMatchObject({ code: 'storage', path: 'k' })
  expect(await page.locator('.notice.bad').textContent()).toContain('won’t save anything for this page')
  await more(page).click()
  expect(await sections(page)).toBe(6)
  await close()
})

test.each(['kept', 'not kept in time'])(
  'a link to the dock as it was a step ago, followed on another day, shows that dock and not what is %s',
  async (when) => {
    const first = await open({ fresh: true })
    await more(first.page).click()
    await expect.poll(() => new URL(first.page.url()).hash).toContain('#leadline=')
    const link = new URL(first.page.url()).hash
    if (when === 'not kept in time')
      await first.page.evaluate(() => {
        IDBDatabase.prototype.transaction = () => {
          throw new DOMException('closing', 'InvalidStateError')
        }
      })
    await more(first.page).click()
    await expect.poll(() => new URL(first.page.url()).hash).not.toBe(link)
    await first.page.goto('about:blank')
    // On another day, for the page: what it kept is older than any reload takes.
    await first.page.clock.install({ time: Date.now() + 86_400_000 })
    await first.page.goto(`${inject('site')}/example.html${link}`)
    await first.page.evaluate(() => (window as unknown as { leadlineReady: Promise<void> }).leadlineReady)
    expect(await sections(first.page)).toBe(6)
    await first.page.getByRole('button', { name: 'Undo' }).click()
    expect(await sections(first.page)).toBe(7)
    await first.close()
  },
)
