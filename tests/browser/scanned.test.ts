/** What a label's code opens: the leg that it is on is picked; of a package it is told what is in it. */
import { expect, test } from 'vitest'
import { demoCatalog, demoDesign, derive } from '../../rules/index.ts'
import { cartons } from '../../rules/papers/cartons.ts'
import { linkOf } from '../../src/autosave/link.ts'
import { open, PHONE, withBrowser } from './support/open.ts'

withBrowser()

const SOON = { timeout: 20_000 }
const at = (id: string): string => `/example.html?leadline-at=${id}${linkOf(demoDesign)}`

test('a leg’s label opens the dock with that leg picked, and what is picked then stays', async () => {
  const { page, close } = await open({ path: at('s3.end.left'), viewport: PHONE, fresh: true })
  await page.getByRole('button', { name: 'Legs' }).click()
  const picked = page.locator('.by-number [aria-pressed=true]')
  await expect.poll(() => picked.first().textContent(), SOON).toBe('5')
  await close()
})

test('a package’s label tells what is in it; one that this dock has not says so', async () => {
  const { packages } = cartons(derive(demoDesign, demoCatalog), demoCatalog)
  const second = await open({ path: at('package-4'), viewport: PHONE, fresh: true })
  const told = second.page.locator('.scanned')
  await expect.poll(() => told.locator('h3').textContent(), SOON).toContain(`Package 4 of ${packages.length}`)
  expect(await told.locator('li').allTextContents()).toEqual(
    packages[3]!.items.map(({ quantity, name }) => `${quantity} × ${name}`),
  )
  await told.getByRole('button').click()
  expect(await told.count()).toBe(0)
  await second.close()
  const none = await open({ path: at('package-400'), viewport: PHONE, fresh: true })
  await expect
    .poll(() => none.page.locator('.scanned').textContent(), SOON)
    .toContain('The label says package-400, and this dock has none.')
  await none.close()
})
