import { expect, test } from 'vitest'
import { choose } from './support/choose.ts'
import { events, nextFrame, open, PHONE, read, told, withBrowser } from './support/open.ts'

withBrowser()

const stocks = (page: Parameters<typeof read>[0]) => read(page, (e) => e.dock.legs.map((leg) => leg.stock))
const depthOf = (page: Parameters<typeof read>[0], i: number) =>
  page
    .locator('leadline-dock')
    .first()
    .evaluate(
      (e, i) =>
        (e as never as { design: { site: { soundings: { depth: number }[] } } }).design.site.soundings[i]!
          .depth,
      i,
    )

test('a sounding dragged down in the strip makes the leg over it longer, in the list and in the strip', async () => {
  const { page, close } = await open()
  await page.locator('summary', { hasText: 'The whole list' }).click()
  const before = {
    stocks: await stocks(page),
    list: await page.locator('.list-of-parts').textContent(),
    strip: await page.locator('.leg-length').allTextContents(),
  }
  const handle = page.locator('.handle.sounding').nth(4)
  // The list is far down the page: back to the section, with room under the handle.
  await page.locator('.strip').evaluate((strip) => strip.scrollIntoView({ block: 'end' }))
  const box = (await handle.locator('.lead').boundingBox())!
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move(x, y + 12)
  await page.mouse.move(x, y + 40, { steps: 8 })
  await nextFrame(page)
  const during = await stocks(page)
  expect(during).not.toEqual(before.stocks)
  expect(during.at(-1)).toBeGreaterThan(before.stocks.at(-1)!)
  // All views in the same frame, while the hand still holds it.
  const longest = `${Math.round(during.at(-1)! / 0.3048)} ft`
  expect(await page.locator('.leg-length').last().textContent()).toBe(longest)
  expect(await page.locator('.list-of-parts').textContent()).toContain(`Leg ${longest}`)
  expect(before.list).not.toContain(`Leg ${longest}`)
  expect(before.strip.at(-1)).not.toBe(longest)
  expect((await events(page, 'leadline-input')).length).toBeGreaterThan(2)
  expect(await events(page, 'leadline-change')).toEqual([])
  await page.mouse.up()
  expect(await told(page, 'leadline-change')).toHaveLength(1)
  // One gesture, one step.
  await page.getByRole('button', { name: 'Undo' }).click()
  expect(await stocks(page)).toEqual(before.stocks)
  expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true)
  await page.getByRole('button', { name: 'Redo' }).click()
  expect(await stocks(page)).toEqual(during)
  await close()
})

test('the same by keyboard: inches, with Shift half feet; in metric centimeters', async () => {
  const { page, close } = await open()
  const handle = page.getByRole('slider', { name: 'Depth 39 ft 4 1/2 in out' })
  await handle.focus()
  expect(await handle.getAttribute('aria-valuetext')).toBe('4 ft 7 in deep')
  await page.keyboard.press('ArrowDown')
  expect(await depthOf(page, 4)).toBeCloseTo(1.4 + 0.0254, 6)
  await page.keyboard.press('Shift+ArrowDown')
  expect(await depthOf(page, 4)).toBeCloseTo(1.4 + 0.0254 + 0.1524, 6)
  expect(await page.locator('.handle:focus').getAttribute('aria-valuetext')).toBe('5 ft 2 in deep')
  const before = await stocks(page)
  for (let i = 0; i < 3; i++) await page.keyboard.press('Shift+ArrowDown')
  expect(await stocks(page)).not.toEqual(before)
  await page.keyboard.press('Control+z')
  await page.keyboard.press('Control+z')
  await page.keyboard.press('ArrowRight')
  expect(await page.locator('.handle:focus').getAttribute('aria-label')).toBe(
    'Depth 39 ft 5 1/2 in out from the water’s edge',
  )
  await choose(page.getByRole('radio', { name: 'm', exact: true }))
  const metric = page.getByRole('slider', { name: 'Depth 12.03 m out' })
  const at = await depthOf(page, 4)
  await metric.focus()
  await page.keyboard.press('ArrowUp')
  expect(await depthOf(page, 4)).toBeCloseTo(at - 0.01, 6)
  await page.keyboard.press('Delete')
  expect(await read(page, (e) => e.design.site.soundings.length)).toBe(4)
  await close()
})

test('deck and levels are dragged and moved by keys, and never past one another', async () => {
  const { page, close } = await open()
  await page.getByRole('slider', { name: 'How high over the water' }).and(page.locator('.handle')).focus()
  await page.keyboard.press('Shift+ArrowUp')
  expect(await read(page, (e) => e.design.dock.deckHeight)).toBeCloseTo(0.45 + 0.1524, 6)
  const high = page.getByRole('slider', { name: 'High water' })
  const box = (await high.locator('.grip').boundingBox())!
  await page.mouse.move(box.x + 9, box.y + 9)
  await page.mouse.down()
  await page.mouse.move(box.x + 9, box.y + 200, { steps: 5 })
  await page.mouse.up()
  const levels = await read(page, (e) => e.design.site.levels)
  expect(levels.high).toBeGreaterThanOrEqual(levels.low)
  expect(levels.high - levels.low).toBeLessThan(0.02)
  await close()
})

test('Tab reaches every handle in the order of distance', async () => {
  const { page, close } = await open()
  await page.locator('.handle').first().focus()
  const names: string[] = []
  for (let i = 0; i < 8; i++) {
    names.push((await page.locator('.handle:focus').getAttribute('aria-label')) ?? '')
    await page.keyboard.press('Tab')
  }
  expect(names).toEqual([
    'High water',
    'Low water',
    'Bank 9 ft 10 in back from the water’s edge',
    'Depth 0 in out from the water’s edge',
    'Depth 13 ft 1 1/2 in out from the water’s edge',
    'Depth 26 ft 3 in out from the water’s edge',
    'Depth 39 ft 4 1/2 in out from the water’s edge',
    'How high over the water',
  ])
  await close()
})

test('a leg pointed at lights up and shows its measures; its reasons are one tap away', async () => {
  const { page, close } = await open()
  const box = (await page.locator('.leg-reach[data-id="s5.end.right"]').boundingBox())!
  await page.mouse.move(box.x + box.width / 2, box.y + 16)
  await page.locator('.leg.lit[data-id="s5.end.right"]').waitFor({ state: 'attached' })
  await page.mouse.click(box.x + box.width / 2, box.y + 16)
  const set = await read(page, (e) => e.dock.legs.at(-1)!.setHeight)
  const inches = Math.round((set / 0.0254) * 4) / 4
  expect(await page.locator('.measures text').first().textContent()).toContain(
    `${Math.floor(inches / 12)} ft`,
  )
  await page.locator('summary', { hasText: 'Why?' }).click()
  await page.locator('.reasons select').waitFor()
  expect(await page.locator('.reasons select').inputValue()).toBe('s5.end.right')
  expect(await page.locator('.reasons .steps').first().textContent()).toContain('7 ft leg is the shortest')
  await close()
})

test('a finger that lands on a mark scrolls the page and moves nothing; tapped first, the mark follows it', async () => {
  const { page, context, close } = await open({
    viewport: PHONE,
    hasTouch: true,
    isMobile: true,
    fresh: true,
  })
  const client = await context.newCDPSession(page)
  const top = () => page.evaluate(() => window.scrollY)
  const swipe = async (x: number, y: number, by: number): Promise<number> => {
    const at = (type: string, dy: number) =>
      client.send('Input.dispatchTouchEvent', {
        type: type as never,
        touchPoints: type === 'touchEnd' ? [] : [{ x, y: y + dy }],
      })
    await at('touchStart', 0)
    for (let i = 1; i <= 12; i++) {
      await at('touchMove', (by * i) / 12)
      await nextFrame(page)
    }
    // While it lasts: afterwards the strip is laid out anew, for another depth.
    const to = await top()
    await at('touchEnd', 0)
    await nextFrame(page)
    return to
  }
  const lead = page.locator('.handle.sounding').nth(3).locator('.lead')
  const middle = async () => {
    const box = (await lead.boundingBox())!
    return [box.x + box.width / 2, box.y + box.height / 2] as const
  }
  const before = await read(page, (e) => JSON.stringify(e.design))
  // Clear of the bar at the foot of the screen.
  await page.evaluate(() => window.scrollTo(0, 250))
  await swipe(...(await middle()), -200)
  await expect.poll(top).toBeGreaterThan(350)
  expect(await read(page, (e) => JSON.stringify(e.design))).toBe(before)
  await page.evaluate(() => window.scrollTo(0, 250))
  await page.touchscreen.tap(...(await middle()))
  await page.locator('.handle.sounding[data-ready]').waitFor()
  const deep = await depthOf(page, 3)
  const from = await top()
  expect(await swipe(...(await middle()), 24)).toBe(from)
  expect(await depthOf(page, 3)).toBeGreaterThan(deep + 0.02)
  // Tapped elsewhere, it is let go of.
  await page.locator('.name').tap()
  expect(await page.locator('.handle[data-ready]').count()).toBe(0)
  await close()
})
