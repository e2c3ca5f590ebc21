/** Rules where you live: typed on the page in its own units, found against the dock with "ask your authority", and taken back. */
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { nextFrame, open, PHONE, read, withBrowser } from './support/open.ts'

withBrowser()

test('a limit typed is held against the dock; a lot line is added and removed', async () => {
  const { page, close } = await open()
  await page.getByText('Rules where you live').click()
  const field = (name: string) => page.getByRole('textbox', { name })
  const type = async (name: string, text: string): Promise<void> => {
    await field(name).fill(text)
    await field(name).press('Enter')
    await nextFrame(page)
  }
  await type('Farthest out from the shore', '30 ft')
  await type('Largest deck over the water', '100')
  await type('Most of the water’s width', '25 %')
  const limits = () => read(page, (e) => e.design.site.limits)
  expect(await limits()).toEqual({ reach: 9.144, area: expect.closeTo(9.290304, 6), share: 0.25 })
  await page.getByText('the limit given for here is 30 ft. Ask your authority.').first().waitFor()
  await page.getByText('the limit given for here is 100 ft². Ask your authority.').first().waitFor()
  await page.getByText('Tell how wide the water is').waitFor()
  expect(await field('Largest deck over the water').inputValue()).toBe('100 ft²')

  // What is no area changes nothing, and is said.
  await type('Largest deck over the water', 'big')
  await page.getByText('Type an area like 650 ft².').waitFor()
  expect((await limits())!.area).toBeCloseTo(9.290304, 6)

  await page.getByRole('button', { name: 'Add a lot line on the left' }).click()
  await type('Keep clear of it', '20 ft')
  expect((await limits())!.sides).toEqual([{ from: [0, 6], to: [15, 6], distance: 6.096 }])
  await page.getByText('from lot line 1; the limit given for here is 20 ft').first().waitFor()
  await page.getByRole('button', { name: 'Remove lot line 1' }).click()
  for (const name of [
    'Farthest out from the shore',
    'Largest deck over the water',
    'Most of the water’s width',
  ])
    await type(name, '')
  expect(await limits()).toBeUndefined()
  await close()
})

/** What is drawn in the section as a line that is no thing: its name and words, and how far down or out it is, px from the picture's corner. */
const linesDrawn = (page: Page) =>
  page.locator('.set-lines [data-line]').evaluateAll((all) =>
    all.map((one) => {
      const at = (name: string) => Number(one.querySelector('line')!.getAttribute(name))
      return {
        name: one.getAttribute('data-line'),
        words: one.querySelector('text')?.textContent ?? '',
        at: one.getAttribute('data-line') === 'reach' ? at('x1') : at('y1'),
      }
    }),
  )

test('reach and depth that are not to be passed are drawn in the section, and what a gauge says of the season while it is read', async () => {
  const { page, close } = await open()
  await page.evaluate(() => {
    const dock = document.querySelector('leadline-dock')!
    const design = structuredClone(dock.design)
    dock.design = {
      ...design,
      site: { ...design.site, levels: { low: -0.3, high: 0.3 }, limits: { reach: 8, depth: 0.5 } },
    }
  })
  await page.locator('.set-lines [data-line]').first().waitFor()
  const [depth, reach] = await linesDrawn(page)
  expect(depth).toMatchObject({ name: 'limit' })
  expect(depth!.words).toMatch(/^limit 1 ft 7 3\/4 in deep at low water: ask your authority$/)
  expect(reach!.words).toMatch(/^limit 26 ft 3 in out: ask your authority$/)
  const low = Number(await page.locator('.level.low').getAttribute('y1'))
  const high = Number(await page.locator('.level.high').getAttribute('y1'))
  // 0.6 m between the levels, the limit 0.5 m under the low one.
  expect((depth!.at - low) / (low - high)).toBeCloseTo(0.5 / 0.6, 2)

  await page.locator('summary', { hasText: 'record' }).click()
  await page
    .locator('.gauge textarea')
    .fill(`Date,Level (m)\n${[1, 2, 3, 4, 5].map((n) => `2024-07-0${n},${(n / 10).toFixed(1)}`).join('\n')}`)
  await page.locator('.gauge').getByLabel('Leave out, at each end').selectOption({ index: 0 })
  const drawn = () => linesDrawn(page).then((all) => all.filter(({ name }) => name === 'gauge'))
  await expect
    .poll(async () => (await drawn()).map(({ words }) => words))
    .toEqual(['0 % lower', 'season’s middle', '0 % higher'])
  const [lowest, middle, highest] = await drawn()
  // Readings of 0.1 to 0.5 m, the middle taken for the day of the survey: 0.2 m under it and over it.
  expect((lowest!.at - middle!.at) / (low - high)).toBeCloseTo(0.2 / 0.6, 2)
  expect((middle!.at - highest!.at) / (low - high)).toBeCloseTo(0.2 / 0.6, 2)
  await page.locator('.gauge textarea').fill('')
  await expect.poll(async () => (await drawn()).length).toBe(0)
  await close()
})

test('on a phone the height of the deck stands at its grip, and covers a leg that stands up there', async () => {
  const { page, close } = await open({ viewport: PHONE, hasTouch: true })
  for (const sections of [2, 3, 4, 5, 6]) {
    await page.evaluate((n) => {
      const dock = document.querySelector('leadline-dock')!
      const design = structuredClone(dock.design)
      dock.design = { ...design, dock: { ...design.dock, sections: n } }
    }, sections)
    await nextFrame(page)
    const { far, over, halo } = await page.locator('.strip svg').evaluate((svg) => {
      const text = svg.querySelector('.deck-height')!
      const middle = (of: Element) => of.getBoundingClientRect().left + of.getBoundingClientRect().width / 2
      const { stroke, strokeWidth } = getComputedStyle(text)
      return {
        far: Math.abs(middle(text) - middle(svg.querySelector('.deck-handle .grip')!)),
        // Legs that are drawn after it would lie over it.
        over: [...svg.querySelectorAll('.parts .leg')].filter(
          (leg) => text.compareDocumentPosition(leg) & Node.DOCUMENT_POSITION_FOLLOWING,
        ).length,
        halo: { stroke, width: Number.parseFloat(strokeWidth) },
      }
    })
    expect(far, `${sections} sections`).toBeLessThan(85)
    expect(over).toBe(0)
    expect(halo.stroke).not.toMatch(/none|transparent|\/ 0?\./)
    expect(halo.width).toBeGreaterThan(5)
  }
  await close()
})
