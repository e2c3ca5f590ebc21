/** Parts in each other's way, in the real page: told when the hand rests, lit, and picked by a tap on what is told of them. */
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import {
  type Design,
  demoCatalog,
  demoDesign,
  derive,
  english,
  formatLength,
  parseDesign,
} from '../../rules/index.ts'
import { colorAt, settled } from './scene-in-page.ts'
import { open, read, withBrowser } from './support/open.ts'

withBrowser()

/** A slow machine rests later. */
const SOON = { timeout: 20_000 }

/** A post put by hand 6 in from the corner, where a wide pad reaches under it. */
function clashing(): Design {
  const placed = [{ code: 'anchor-post', section: 's5', edge: 'left', along: 2.2 }]
  const parsed = parseDesign({ ...demoDesign, dock: { ...demoDesign.dock, pad: 'mud-pad-14', placed } })
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
  return parsed.value
}
const put = (page: Page, design: Design) =>
  page.locator('leadline-dock').evaluate((element, design) => Object.assign(element, { design }) && 0, design)
const stopsOf = (page: Page) => read(page, (e) => e.dock.findings.filter((f) => f.severity === 'stop').length)

test('a clash is told with its parts and depth, as many stops as in the terminal, and gone after the edit that mends it', async () => {
  const { page, close } = await open()
  const design = clashing()
  const here = derive(design, demoCatalog)
  const clashes = here.findings.filter((f) => f.code === 'parts-clash')
  expect(clashes.length).toBeGreaterThan(0)
  await put(page, design)
  const items = page.locator('.finding.stop')
  await expect.poll(() => stopsOf(page), SOON).toBe(here.findings.filter((f) => f.severity === 'stop').length)
  const told = await items.allTextContents()
  for (const clash of clashes) {
    const depth = formatLength(Number(clash.values.depth!.value), english('imperial'))
    expect(told.filter((t) => t.includes(`by ${depth}: foot pad and anchor post`)).length).toBeGreaterThan(0)
  }
  expect(await page.locator('.verdict').first().textContent()).toMatch(/^(It cannot be built|Fix )/)
  await expect.poll(() => page.locator('.hint.checking').textContent(), SOON).toBe('')

  // An edit: what was found of the dock before it is gone in the same frame, and it is said that it is looked for.
  const at = await page.locator('leadline-dock').evaluate((element) => {
    const root = element.shadowRoot!
    ;[...root.querySelectorAll<HTMLButtonElement>('.finding.stop .remedy')]
      .find((b) => b.textContent?.startsWith('Leave out'))!
      .click()
    return new Promise<{ stops: number; checking: string }>((done) =>
      requestAnimationFrame(() =>
        done({
          stops: [...root.querySelectorAll('.finding.stop')].filter((f) => /anchor post/.test(f.textContent!))
            .length,
          checking: root.querySelector('.hint.checking')!.textContent!,
        }),
      ),
    )
  })
  expect(at.stops).toBe(0)
  expect(at.checking).toMatch(/^Still checking waves, .*…$/)
  await expect.poll(() => page.locator('.hint.checking').textContent(), SOON).toBe('')
  expect(await read(page, (e) => e.dock.findings.filter((f) => f.code === 'parts-clash').length)).toBe(0)
  await close()
})

test('what clashes is lit in the scene, and a tap on the finding picks it', {
  timeout: 120_000,
}, async () => {
  const { page, close } = await open({ webgl: true, viewport: { width: 420, height: 600 } })
  await settled(page)
  await page.getByRole('button', { name: 'Lake', exact: true }).click()
  await settled(page)
  const legs = await read(page, (e) =>
    e.dock.legs.map(({ id, x, y, bed, setHeight }) => ({ id, x, y, bed, setHeight })),
  )
  const leg = legs.find(({ id }) => id === 's5.end.left')!
  // In the air, under the frame.
  const at = [leg.x, leg.y, leg.bed + leg.setHeight - 0.25] as const
  const plain = await colorAt(page, at)
  expect(Math.abs(plain.red - plain.blue), 'aluminum').toBeLessThan(40)

  await put(page, clashing())
  await expect
    .poll(() => read(page, (e) => e.dock.findings.some((f) => f.code === 'parts-clash')), SOON)
    .toBe(true)
  await settled(page)
  const parts = await read(page, (e) => e.dock.findings.find((f) => f.code === 'parts-clash')!.parts)
  expect(parts).toContain(leg.id)
  const warned = await colorAt(page, at)
  // Orange against the aluminum of before, under the same low sun.
  expect(
    warned.red - warned.blue - (plain.red - plain.blue),
    JSON.stringify([plain, warned]),
  ).toBeGreaterThan(40)
  expect(await page.locator('.scene-label.sign.stop').count()).toBeGreaterThanOrEqual(parts.length)

  await page.locator('.finding.stop', { hasText: 'anchor post' }).first().getByText('Show where').click()
  // What is out of sight is not drawn.
  await page.locator('canvas').scrollIntoViewIfNeeded()
  await page.mouse.move(5, 5)
  await settled(page)
  const picked = await colorAt(page, at)
  expect(
    picked.blue - picked.red - (plain.blue - plain.red),
    JSON.stringify([plain, picked]),
  ).toBeGreaterThan(40)
  for (const id of parts)
    expect(await page.locator(`.strip .lit[data-id="${id}"]`).count(), id).toBeGreaterThan(0)
  expect((await page.locator('.scene-label.stop').allTextContents()).join(' | ')).toContain(
    'foot pad and anchor post',
  )
  await close()
})
