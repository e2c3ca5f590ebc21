/** The drawing and the 3D scene take turns, and nothing else notices. */
import { AxeBuilder } from '@axe-core/playwright'
import { expect, test } from 'vitest'
import { drawnAtRest, settled, stats } from './scene-in-page.ts'
import { atLength } from './support/at-length.ts'
import { open, withBrowser } from './support/open.ts'

withBrowser()

/** A picture of the scene that the processor draws soon. */
const NARROW = { width: 600, height: 900 } as const

test('without WebGL the drawing stays, and all else goes on', async () => {
  const { page, close } = await open()
  await page.locator('.lake').waitFor()
  expect(await page.locator('.stage').getAttribute('data-scene')).toBe('none')
  const deck = await page.locator('.lake .deck').count()
  await page.getByRole('button', { name: 'One section more' }).click()
  expect(await page.locator('.lake .deck').count()).toBe(deck + 1)
  expect(await page.locator('.lake').getAttribute('aria-label')).toContain('A straight dock of 6 sections')
  await close()
})

test('the scene comes over the drawing and replaces nothing that is being touched', async () => {
  const { page, close } = await open({ webgl: true, viewport: NARROW })
  const handle = page.locator('.handle.sounding').nth(3)
  await handle.focus()
  await page.keyboard.down('ArrowDown')
  await page.evaluate(() => {
    const root = document.querySelector('leadline-dock')!.shadowRoot!
    Object.assign(window, { strip: root.querySelector('.strip svg'), focused: root.activeElement })
  })
  await page.locator('.stage[data-scene="live"]').waitFor()
  await page.keyboard.up('ArrowDown')
  const same = await page.evaluate(() => {
    const root = document.querySelector('leadline-dock')!.shadowRoot!
    const { strip, focused } = window as unknown as { strip: Element; focused: Element }
    return [root.querySelector('.strip svg') === strip, root.activeElement === focused]
  })
  expect(same).toEqual([true, true])
  expect(await page.locator('.lake').count()).toBe(0)
  await close()
})

test('a context that is lost leaves the drawing in its place until the scene is back', async () => {
  const { page, close } = await open({
    webgl: true,
    viewport: NARROW,
    expected: /CONTEXT_LOST|Context Lost/i,
  })
  await page.locator('.stage[data-scene="live"]').waitFor()
  await page.locator('.scene-host canvas').evaluate((canvas) => {
    const gl = (canvas as HTMLCanvasElement).getContext('webgl2')!
    Object.assign(window, { loser: gl.getExtension('WEBGL_lose_context') })
    ;(window as unknown as { loser: WEBGL_lose_context }).loser.loseContext()
  })
  await page.locator('.lake').waitFor()
  await page.getByRole('button', { name: 'One section more' }).click()
  await page.evaluate(() => (window as unknown as { loser: WEBGL_lose_context }).loser.restoreContext())
  await page.locator('.stage[data-scene="live"]').waitFor()
  expect(await page.locator('.lake').count()).toBe(0)
  await close()
})

test('the level that is looked at changes no design', async () => {
  const { page, close } = await open()
  const before = await page
    .locator('leadline-dock')
    .evaluate((e) => JSON.stringify((e as never as { design: unknown }).design))
  await page.getByRole('slider', { name: 'Lake level' }).press('End')
  expect(await page.getByRole('slider', { name: 'Lake level' }).getAttribute('aria-valuetext')).toBe(
    '9 3/4 in above today’s water',
  )
  expect(
    await page
      .locator('leadline-dock')
      .evaluate((e) => JSON.stringify((e as never as { design: unknown }).design)),
  ).toBe(before)
  expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true)
  await close()
})

test('waves play when asked for and stop when told to; what they show is said', async () => {
  const { page, close } = await open({ webgl: true, viewport: NARROW, reducedMotion: 'no-preference' })
  await page.locator('.stage[data-scene="live"]').waitFor()
  await settled(page)
  const { frames: before } = await stats(page)
  const button = page.getByRole('button', { name: 'Waves', exact: true })
  expect(await button.getAttribute('aria-pressed')).toBe('false')
  await button.click()
  await expect.poll(async () => (await stats(page)).frames, { timeout: 60_000 }).toBeGreaterThan(before + 3)
  expect(await button.getAttribute('aria-pressed')).toBe('true')
  expect(await page.locator('.scene-caption').textContent()).toMatch(
    /^Waves 4 3\/4 in high, .* Drawn to scale\.$/,
  )
  await button.click()
  await settled(page)
  expect(await drawnAtRest(page)).toBe(0)
  expect(await page.locator('.scene-caption').isVisible()).toBe(false)
  await close()
})

atLength('waves shown without motion are a picture with its words, and nothing in it is amiss', async () => {
  const { page, close } = await open({ webgl: true, viewport: NARROW })
  await page.locator('.stage[data-scene="live"]').waitFor()
  await page.getByRole('button', { name: 'Waves', exact: true }).click()
  await settled(page)
  const { violations } = await new AxeBuilder({ page: page as never })
    .include(['leadline-dock', '.stage'] as never)
    .setLegacyMode(true)
    .analyze()
  expect(violations.map((v) => v.id)).toEqual([])
  // Where no wind is told of there is nothing to play.
  await page.getByRole('radio', { name: 'Not sure' }).check()
  await page.getByRole('button', { name: 'Waves', exact: true }).waitFor({ state: 'detached' })
  expect(await page.locator('.scene-caption').isVisible()).toBe(false)
  await close()
})
