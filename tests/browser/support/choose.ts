/** A choice made as a user makes it. */
import type { Locator } from 'playwright-core'
import { expect } from 'vitest'

/**
 * Presses the card of a radio button, which is its label, once it stands still and is what a pointer there would hit, and waits until the
 * radio is the one that is chosen. Nothing is forced: a click at the place where the card was before the page moved hits another thing.
 */
export async function choose(radio: Locator): Promise<void> {
  await radio.locator('xpath=ancestor::label').click()
  await expect.poll(() => radio.isChecked(), { timeout: 10_000, message: 'is chosen' }).toBe(true)
}
