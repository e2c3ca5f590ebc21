/** Seen on request: use in color with its legend, and the sway. Off at first, true to the figures, and still where nothing moves. */
import { AxeBuilder } from '@axe-core/playwright'
import { describe, expect, it, test } from 'vitest'
import { english, say } from '../../rules/index.ts'
import { FORCES } from '../../src/words/forces.ts'
import { differing, shot } from './scene-pixels.ts'
import { openScenes, withScenes } from './scene-support.ts'
import { someOf } from './support/at-length.ts'
import { open, read, withBrowser } from './support/open.ts'

withScenes()
withBrowser()

const BARE = { labels: false, person: false } as const

describe('the sway', () => {
  it('is off at first, draws frames while it is on, and none before and after', async () => {
    const { page, close } = await openScenes([{ view: BARE, size: [320, 200] }], { motion: true })
    const rest = await shot(page)
    const told = await page.evaluate(async () => {
      const { stats, store } = scenes.shown[0]!
      const first = store.getState().sway
      const before = await scenes.drawnAtRest()
      store.getState().set({ sway: 'across' })
      const moved = await scenes.drawn(6)
      const still = stats().still
      await scenes.set({ sway: 'none' })
      return { first, before, moved, still, after: await scenes.drawnAtRest() }
    })
    expect(told).toMatchObject({ first: 'none', before: 0, still: false, after: 0 })
    expect(told.moved).toBeGreaterThanOrEqual(6)
    // The real dock is back as it was.
    expect(differing(rest, await shot(page))).toBeLessThan(20)
    await close()
  })

  it('stands still at its farthest for those who want no motion, and goes while the design is dragged', async () => {
    const { page, close } = await openScenes([{ view: BARE, size: [320, 200] }])
    const rest = await shot(page)
    const frames = await page.evaluate(async () => {
      scenes.shown[0]!.store.getState().set({ sway: 'across' })
      // The swayed dock is worked out first.
      while (!document.querySelector('.scene-label.picked')) await scenes.drawn(1)
      await scenes.settled()
      return scenes.drawnAtRest()
    })
    expect(frames).toBe(0)
    const swayed = await shot(page)
    expect(differing(rest, swayed)).toBeGreaterThan(225)
    // Both docks are told of, with what was worked out of each.
    const labels = await page.locator('.scene-label.picked').allTextContents()
    const { across, bare } = await page.evaluate(() => scenes.swayOf(0))
    const word = (key: 'sway.label-braced' | 'sway.label-bare', sway: number) =>
      say(FORCES, english('imperial'), key, { sway: { value: sway * 1000, unit: 'mm' } })
    expect(labels).toEqual(
      expect.arrayContaining([word('sway.label-braced', across), word('sway.label-bare', bare)]),
    )
    const dragged = await page.evaluate(async () => {
      const { store, host } = scenes.shown[0]!
      store.getState().edit((d) => ({ ...d, dock: { ...d.dock, deckHeight: 0.5 } }), { gesture: 'test' })
      await scenes.settled()
      return [...host.querySelectorAll<HTMLElement>('.scene-label.picked')].filter(
        (label) => label.style.visibility !== 'hidden',
      ).length
    })
    expect(dragged).toBe(0)
    await close()
  })
})

describe('the forces', () => {
  it('are painted on legs, braces and frames, on nothing of a dock that is not judged, and are gone when switched off', async () => {
    const { page, close } = await openScenes([{ view: BARE, size: [320, 200] }])
    const rest = await shot(page)
    // Pending: nothing is known, so nothing is painted, however long one waits.
    await page.evaluate(async () => {
      await scenes.set({ forces: true })
      await scenes.drawnAtRest()
      await scenes.settled()
    })
    expect(differing(rest, await shot(page))).toBeLessThan(20)
    await page.evaluate(async () => {
      scenes.judge(0)
      await scenes.settled()
    })
    const painted = await shot(page)
    expect(differing(rest, painted)).toBeGreaterThan(670)
    const labels = await page.locator('.scene-label.picked').allTextContents()
    expect(labels.length).toBe(3)
    for (const label of labels) expect(label).toMatch(/^(leg|brace|frame), \d+ % used$/)
    await page.evaluate(async () => {
      const { store } = scenes.shown[0]!
      store.getState().edit((d) => ({ ...d, name: 'Another' }))
      await scenes.settled()
    })
    expect(differing(rest, await shot(page))).toBeLessThan(20)
    await page.evaluate(async () => {
      scenes.judge(0)
      await scenes.set({ forces: false })
    })
    expect(differing(rest, await shot(page))).toBeLessThan(20)
    await close()
  })
})

const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']

test.each(someOf(['dark', 'light'] as const, 1))(
  'their legend says it in words and figures, in %s',
  async (colorScheme) => {
    const { page, close } = await open({ webgl: true, colorScheme, viewport: { width: 600, height: 700 } })
    await page.locator('.stage[data-scene="live"]').waitFor({ timeout: 90_000 })
    const button = (name: string) => page.getByRole('button', { name, exact: true })
    expect(await button('Loads').getAttribute('aria-pressed')).toBe('false')
    expect(await button('Sway').getAttribute('aria-pressed')).toBe('false')
    expect(await page.locator('.seen').count()).toBe(0)
    const press = (name: string) => button(name).evaluate((b) => (b as HTMLButtonElement).click())
    await expect.poll(() => read(page, (e) => e.dock.structure?.deep), { timeout: 60_000 }).toBe(true)
    await press('Loads')
    await page.locator('.seen li').first().waitFor()
    const { structure } = await read(page, (e) => e.dock)
    const lines = await page.locator('.seen li').allTextContents()
    const most = (list: readonly { use: number }[]) =>
      Math.round(Math.max(...list.map(({ use }) => use)) * 100)
    expect(lines.length).toBe(3)
    for (const [kind, list] of [
      ['leg', structure!.legs],
      ['brace', structure!.braces],
      ['frame', structure!.rails],
    ] as const)
      expect(
        lines.some((l) => l.includes(`Most used ${kind}`) && l.includes(`${most(list)} %`)),
        kind,
      ).toBe(true)
    expect(await page.locator('.seen').textContent()).toMatch(/none.*half.*all of it.*too much/)
    const complaints = async () => {
      const axe = new AxeBuilder({ page: page as never }).withTags(RULES).setLegacyMode(true)
      const { violations } = await axe.include(['leadline-dock', '.seen'] as never).analyze()
      return violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.failureSummary).join(' | ')}`)
    }
    expect(await complaints()).toEqual([])
    await press('Sway')
    await page.locator('.seen strong').first().waitFor()
    // One at a time.
    expect(await button('Loads').getAttribute('aria-pressed')).toBe('false')
    const inches = (m: number) => `${(m / 0.0254).toFixed(2)} in`
    expect(await page.locator('.seen').textContent()).toContain(
      `With its braces: ${inches(structure!.swayAcross)}`,
    )
    expect(await page.locator('.seen').textContent()).toContain(
      `Without them: ${inches(structure!.swayUnbracedAcross)}`,
    )
    expect(await page.locator('.seen').textContent()).toMatch(/Shown \d+ times as far/)
    expect(await complaints()).toEqual([])
    await press('Sway')
    expect(await page.locator('.seen').count()).toBe(0)
    await close()
  },
)
