import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { open, read, withBrowser } from './support/open.ts'

withBrowser()

const more = (page: Page) => page.getByRole('button', { name: 'One section more' })
const sections = (page: Page) => read(page, (e) => e.design.dock.sections!)
const notice = (page: Page) => page.locator('.notice')
/** Names of the docks that are kept beside the one in hand: each tab has its own. */
const earlier = async (page: Page): Promise<string[]> => {
  await page.locator('summary', { hasText: 'File' }).click()
  await page.getByRole('button', { name: 'Earlier docks' }).click()
  await page.locator('.sheet .sub, .sheet .hint:not([data-kept])').first().waitFor()
  const names = await page.locator('.sheet .sub').allTextContents()
  await page.locator('summary', { hasText: 'File' }).click()
  return names
}
const rename = (page: Page, name: string) =>
  page.locator('leadline-dock').evaluate((e, to) => {
    const element = e as unknown as { design: { name: string } }
    element.design = { ...element.design, name: to }
  }, name)
/** In the database: what another tab hears of. */
const saved = (page: Page) =>
  expect
    .poll(() =>
      page.locator('leadline-dock').evaluate(async (element) => {
        const ask = <T>(request: IDBRequest<T>) =>
          new Promise<T>((done, fail) => {
            request.onsuccess = () => done(request.result)
            request.onerror = () => fail(request.error)
          })
        const base = await ask(indexedDB.open('leadline'))
        const { design } = await ask(base.transaction('designs').objectStore('designs').get('kept'))
        base.close()
        return JSON.stringify(design) === JSON.stringify((element as never as { design: unknown }).design)
      }),
    )
    .toBe(true)

test('two tabs with one dock: each is told of the other, the last word counts, and the other is kept once', async () => {
  const one = await open({ path: '/kept.html', fresh: true })
  expect(await notice(one.page).count()).toBe(0)
  const two = await open({ path: '/kept.html', context: one.context })
  for (const { page } of [one, two]) {
    await notice(page).waitFor()
    expect(await notice(page).textContent()).toContain('open in another tab')
  }
  await rename(one.page, 'Left tab')
  await rename(two.page, 'Right tab')
  await saved(two.page)
  const told: string[] = []
  for (let i = 0; i < 8; i++) {
    const [mine, other] = i % 2 === 0 ? [one, two] : [two, one]
    await more(mine.page).click()
    await saved(mine.page)
    await expect
      .poll(() => notice(other.page).textContent(), { message: `edit ${i}` })
      .toContain('changed in another tab')
    told.push(await other.page.title())
  }
  expect(told).toHaveLength(8)
  // Each goes on with its own: nothing is taken from under a hand.
  expect([await sections(one.page), await sections(two.page)]).toEqual([9, 9])
  expect(await read(one.page, (e) => e.design.name)).toBe('Left tab')

  const three = await open({ path: '/kept.html', context: one.context })
  expect(await read(three.page, (e) => [e.design.name, e.design.dock.sections])).toEqual(['Right tab', 9])
  const names = await earlier(three.page)
  expect(names.filter((name) => name.startsWith('Left tab'))).toHaveLength(1)
  expect(names.length).toBeLessThanOrEqual(2)
  await three.close()
  // The left one can have what the right one made, and its own back again.
  await one.page.getByRole('button', { name: 'Show the other one' }).click()
  await expect.poll(() => read(one.page, (e) => e.design.name)).toBe('Right tab')
  await one.page.getByRole('button', { name: 'Undo' }).click()
  expect(await read(one.page, (e) => [e.design.name, e.design.dock.sections])).toEqual(['Left tab', 9])
  await two.close()
  await one.close()
  await one.context.close()
})

test('two elements of one page that keep under one key hear of each other too', async () => {
  const { page, close } = await open({ path: '/kept.html', fresh: true })
  await page.evaluate(() => {
    const element = document.createElement('leadline-dock')
    element.setAttribute('start', 'example')
    element.setAttribute('loading', 'eager')
    element.setAttribute('storage-key', 'kept')
    document.body.append(element)
  })
  await expect.poll(() => notice(page).count()).toBe(2)
  await close()
})
