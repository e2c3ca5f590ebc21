/** A dock too large to follow the hand: said in words, answered at once, and worked out beside the page. */
import { expect, test } from 'vitest'
import { type Design, demoDesign, parseDesign } from '../../rules/index.ts'
import { open, read, withBrowser } from './support/open.ts'

withBrowser()

const sized = (sections: number): Design => {
  const parsed = parseDesign({ ...demoDesign, dock: { ...demoDesign.dock, sections } })
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
  return parsed.value
}

test('while it is placed the words say so, no figure of the one before passes for it, and then it is there', async () => {
  const { page, close } = await open()
  const price = page.locator('.sum-bar .figures strong')
  const before = await price.textContent()
  // Told in the task of the change: what the screen says is read before anything else runs.
  const at = await page.evaluate(async (design) => {
    const element = document.querySelector('leadline-dock')!
    const root = element.shadowRoot!
    element.design = design
    const { pending, structure } = element.dock!
    await new Promise((done) => setTimeout(done))
    const text = (selector: string): string => root.querySelector(selector)!.textContent!
    return {
      pending,
      structure,
      verdict: text('.verdict'),
      price: text('.sum-bar .figures strong'),
      takes: text('.takes dd'),
      panel: text('.side'),
      ask: root.querySelector<HTMLButtonElement>('.sum-bar .main')!.disabled,
      dimmed: getComputedStyle(root.querySelector('.takes')!).opacity,
    }
  }, sized(900) as never)
  expect(at).toMatchObject({
    pending: true,
    structure: null,
    price: 'working…',
    takes: 'working…',
    ask: true,
  })
  expect(at.verdict).toContain('This is a big dock, so it takes a moment to work out')
  // No figure of the dock before beside the fields either.
  expect(at.panel).not.toMatch(/Reaches|(up|down) to the dock/)
  expect(Number(at.dimmed)).toBeLessThan(0.6)
  await expect.poll(() => read(page, (e) => e.dock.sections.length), { timeout: 60_000 }).toBe(900)
  expect(await price.textContent()).not.toBe(before)
  // Longer than is worked out at once: it must not be built so, and what must not has no price; its parts have.
  expect(await price.textContent()).toBe('No price yet')
  expect(await page.locator('.takes').first().textContent()).toMatch(/\d lb/)
  await page.evaluate((design) => {
    document.querySelector('leadline-dock')!.design = design
  }, sized(4) as never)
  expect(await read(page, (e) => e.dock.sections.length)).toBe(4)
  await close()
})
