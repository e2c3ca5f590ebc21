/** Parts picked and pointed at in the scene, and the labels that then show. */
import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { openScenes, withScenes } from './scene-support.ts'

withScenes()

describe('picking', () => {
  const tap = async (page: Page, of: string) => {
    const at = await page.evaluate((id) => {
      const { stats, store } = scenes.shown[0]!
      const leg = scenes.dockOf(store.getState()).legs.find((l) => l.id === id)!
      return stats().at(leg.x, leg.y, leg.bed + leg.setHeight + leg.aboveDeck! * 0.6)
    }, of)
    await page.mouse.click(at!.x, at!.y)
    await page.evaluate(() => scenes.settled().then(() => {}))
  }
  const labels = (page: Page) =>
    page.evaluate(() =>
      [...document.querySelectorAll<HTMLElement>('.scene-label')]
        .filter((label) => label.style.visibility !== 'hidden')
        .map((label) => label.textContent),
    )

  it('a leg selects it and shows its measures where they are; again, and it is let go', async () => {
    const { page, close } = await openScenes([{ view: { view: 'lake', units: 'metric' }, size: [480, 300] }])
    await tap(page, 's5.end.right')
    expect(await page.evaluate(() => scenes.shown[0]!.store.getState().selection)).toBe('s5.end.right')
    const leg = await page.evaluate(
      () => scenes.dockOf(scenes.shown[0]!.store.getState()).legs.find((l) => l.id === 's5.end.right')!,
    )
    const text = (await labels(page)).join(' | ')
    for (const measure of [leg.setHeight, leg.aboveDeck!, -leg.bed])
      expect(text).toContain(`${measure.toFixed(2)} m`)
    await tap(page, 's5.end.right')
    expect(await page.evaluate(() => scenes.shown[0]!.store.getState().selection)).toBe(null)
    await close()
  })

  it('pointing lights up what is under the pointer, and nothing beside the dock', async () => {
    const { page, close } = await openScenes([{ size: [480, 300] }])
    const place = await page.evaluate(() => {
      const { stats, store } = scenes.shown[0]!
      const s3 = scenes.dockOf(store.getState()).sections.find((s) => s.id === 's3')!
      return stats().at(s3.x + 1, 0, s3.z)
    })
    await page.mouse.move(place!.x, place!.y)
    await page.evaluate(() => scenes.settled().then(() => {}))
    expect(await page.evaluate(() => scenes.shown[0]!.store.getState().hover)).toBe('s3')
    await page.mouse.move(30, 60)
    await page.evaluate(() => scenes.settled().then(() => {}))
    expect(await page.evaluate(() => scenes.shown[0]!.store.getState().hover)).toBe(null)
    await close()
  })

  it('labels that are shown never lie over one another', async () => {
    const { page, close } = await openScenes([
      { dock: { sections: 14 }, view: { view: 'lake', selection: 's9.end.left' } },
    ])
    const boxes = await page.evaluate(() =>
      [...document.querySelectorAll<HTMLElement>('.scene-label')]
        .filter((label) => label.style.visibility !== 'hidden')
        .map((label) => label.getBoundingClientRect().toJSON() as DOMRect),
    )
    expect(boxes.length).toBeGreaterThan(5)
    for (const [i, a] of boxes.entries())
      for (const b of boxes.slice(i + 1))
        expect(a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom).toBe(false)
    await close()
  })
})
