/** What the tests of papers on the page share: opening them, and a folder for files. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterAll, expect } from 'vitest'
import { linkOf } from '../../../src/autosave/link.ts'
import { read } from './open.ts'

export const SOON = { timeout: 20_000 }

/** For one test file; gone after its tests. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'leadline-'))
  afterAll(() => rmSync(folder, { recursive: true }))
  return folder
}

export async function openPapers(page: Page): Promise<void> {
  await page.locator('.papers > summary').click()
  await page.locator('.paper-work').waitFor()
  await expect.poll(() => page.locator('[data-format=pdf]').isEnabled(), SOON).toBe(true)
}

/** Who looks on. */
export const lookAs = (page: Page, audience: 'customer' | 'shop' | 'crew'): Promise<void> =>
  page.locator('leadline-dock').evaluate((e, whom) => e.setAttribute('audience', whom), audience)

/** The address that opens the dock as it is shown now. */
export async function addressOf(page: Page): Promise<string> {
  const { origin, pathname, search } = new URL(page.url())
  return `${origin}${pathname}${search}${linkOf(await read(page, (e) => e.design))}`
}
