/** Read aloud, seen in any light, on any screen: axe finds nothing to complain of. */
import { AxeBuilder } from '@axe-core/playwright'
import { expect, test } from 'vitest'
import { someOf } from './support/at-length.ts'
import { DESKTOP, nextFrame, open, PHONE, withBrowser } from './support/open.ts'

withBrowser()

const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']

const screens = [
  ['light', 'desktop'],
  ['dark', 'phone'],
  ['dark', 'desktop'],
  ['light', 'phone'],
] as const

test.each(someOf(screens, 2))(
  'axe finds nothing in %s on a %s, closed and all opened',
  async (colorScheme, screen) => {
    const { page, close } = await open({
      colorScheme,
      viewport: screen === 'phone' ? PHONE : DESKTOP,
      hasTouch: screen === 'phone',
    })
    const complaints = async (within?: [string, string]) => {
      // A window as tall as the page: all of it is in sight and judged. In a low one, what the sticky sum happens to lie over where the
      // page is scrolled to would count as too small a target.
      const size = page.viewportSize()!
      const height = await page.evaluate(() => document.documentElement.scrollHeight)
      await page.setViewportSize({ width: size.width, height: Math.max(size.height, height) })
      await nextFrame(page)
      // `legacy`: without a second page to put the frames' answers together in. There are no frames here, and it is four times the work.
      const axe = new AxeBuilder({ page: page as never })
        .options({ resultTypes: ['violations'] })
        .withTags(RULES)
        .setLegacyMode(true)
      const { violations } = await (within ? axe.include([within] as never) : axe).analyze()
      return violations.map(
        (v) => `${v.id}: ${v.nodes.map((n) => `${n.target.flat().at(-1)} ${n.failureSummary}`).join(' | ')}`,
      )
    }
    expect(await complaints()).toEqual([])
    // Findings of every severity, a selection, a fault, all that folds open.
    await page.getByRole('slider', { name: 'How high over the water' }).and(page.locator('.handle')).focus()
    await page.keyboard.press('Shift+ArrowDown')
    await page.keyboard.press('Shift+ArrowDown')
    for (const title of [
      'How deep is it?',
      'How to measure your shore',
      'Why?',
      'What every part carries',
      'The whole list',
      'Before you build',
    ])
      await page.locator('summary', { hasText: title }).click()
    await page.locator('.load-group').first().waitFor()
    for (const group of await page.locator('.load-group > summary').all()) await group.click()
    await page.locator('.reasons select').selectOption('s5.end.left')
    await page.locator('summary', { hasText: 'Every leg' }).click()
    await page.getByRole('button', { name: 'Legs', exact: true }).click()
    await page.getByRole('button', { name: 'Leg 3', exact: true }).click()
    await page.locator('.depths input').nth(1).fill('deep')
    await page.locator('.depths input').nth(1).blur()
    await nextFrame(page)
    expect(await complaints()).toEqual([])
    // An open menu lies over what is under it: it is looked at by itself.
    await page.locator('summary', { hasText: 'File' }).click()
    await nextFrame(page)
    expect(await complaints(['leadline-dock', '.menu'])).toEqual([])
    await page.keyboard.press('Escape')
    await page.getByRole('button', { name: 'Ask for a quote' }).click()
    await page.locator('dialog').waitFor()
    expect(await complaints()).toEqual([])
    await close()
  },
)

test('everything that is touched is 44 pixels high and nothing runs out of a phone', async () => {
  const { page, close } = await open({ viewport: PHONE, hasTouch: true })
  for (const title of ['How deep is it?', 'Why?', 'The whole list'])
    await page.locator('summary', { hasText: title }).click()
  await page.locator('.depths table').waitFor()
  await page.locator('.reasons select').waitFor()
  const small = await page.locator('leadline-dock').evaluate((element) =>
    [
      ...element.shadowRoot!.querySelectorAll<HTMLElement>(
        'button:not(.row), summary, select, input:not([type=radio], [type=checkbox], [type=file]), .choice label, .switch',
      ),
    ]
      .filter((target) => target.checkVisibility())
      .map((target) => ({
        name: target.textContent || target.className || target.tagName,
        height: target.getBoundingClientRect().height,
      }))
      .filter(({ height }) => height < 43.9),
  )
  expect(small).toEqual([])
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(PHONE.width)
  await close()
})

test('the panel is worked by keys alone', async () => {
  const { page, close } = await open()
  await page.getByRole('radio', { name: 'Straight' }).focus()
  await page.keyboard.press('ArrowRight')
  await page.keyboard.press('ArrowRight')
  await page.keyboard.press('ArrowRight')
  expect(await page.getByRole('radio', { name: 'T', exact: true }).isChecked()).toBe(true)
  await page.getByRole('checkbox', { name: 'Ramp to the shore' }).focus()
  await page.keyboard.press('Space')
  const { ramp, head } = await page
    .locator('leadline-dock')
    .evaluate(
      (e) => (e as never as { design: { dock: { ramp: boolean; head: { sections: number } } } }).design.dock,
    )
  expect(ramp).toBe(false)
  expect(head.sections).toBe(2)
  await page.locator('summary', { hasText: 'File' }).focus()
  await page.keyboard.press('Enter')
  expect(await page.getByRole('button', { name: 'Save as a file' }).isVisible()).toBe(true)
  await page.keyboard.press('Escape')
  expect(await page.getByRole('button', { name: 'Save as a file' }).isVisible()).toBe(false)
  await close()
})
