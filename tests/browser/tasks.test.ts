/**
 * Whole tasks from nothing, as people do them, with each tap and each key counted: somebody's own shore and dock by a finger, a mouse and
 * the keyboard alone; a salesperson whose customer changes their mind; a crew that looks a leg up. A person's pace: 1.2 s a tap, 0.25 s a key.
 */
import { readFile } from 'node:fs/promises'
import type { Locator, Page } from 'playwright-core'
import { describe, expect, test } from 'vitest'
import { type Design, demoDesign, parseDesign } from '../../rules/index.ts'
import { linkOf } from '../../src/autosave/link.ts'
import { someOf } from './support/at-length.ts'
import { events, open, PHONE, read, withBrowser } from './support/open.ts'

withBrowser()

const FOOT = 0.3048
const INCH = 0.0254
const TAP = 1.2
const KEY = 0.25

/** Whoever does it: what they touch, and what they type where their hand is. */
interface Hand {
  on(what: Locator): Promise<void>
  type(keys: string): Promise<void>
  enter(): Promise<void>
  readonly taps: number
  readonly keys: number
  /** s */
  readonly time: number
}

function handOf(page: Page, touch: (what: Locator) => Promise<void>): Hand {
  let taps = 0
  let keys = 0
  return {
    async on(what) {
      taps++
      await touch(what)
    },
    async type(text) {
      keys += text.length
      await page.keyboard.type(text)
    },
    async enter() {
      keys++
      await page.keyboard.press('Enter')
    },
    get taps() {
      return taps
    },
    get keys() {
      return keys
    },
    get time() {
      return taps * TAP + keys * KEY
    },
  }
}

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true })
const radio = (page: Page, name: string | RegExp) => page.getByRole('radio', { name, exact: true })
const field = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true })
const depthAt = (page: Page, far: string, depth: string) =>
  page
    .getByRole('group', { name: `How deep is it ${far} out?` })
    .getByRole('radio', { name: depth, exact: true })
const settled = (page: Page) =>
  expect.poll(() => page.locator('.stands [role=status]').textContent(), { timeout: 60_000 }).not.toBe('')

/** What all three come to: the same dock, and a verdict that says what is left to do. */
async function isTheDock(page: Page): Promise<void> {
  const design = await read(page, (e) => e.design)
  expect(parseDesign(design).ok).toBe(true)
  const { site, dock } = design
  expect(
    site.soundings.map((s) => [s.distance, s.depth].map((n) => Math.round((n / FOOT) * 1e4) / 1e4)),
  ).toEqual([
    [-10, -1],
    [0, 0],
    [10, 2],
    [40, 4],
  ])
  expect(site.soundings.some((s) => s.assumed)).toBe(false)
  expect(site.bottom).toBe('sand')
  expect(site.assumed).toEqual(['levels', 'wind'])
  expect(dock.head).toEqual({ shape: 'left', sections: 1 })
  expect(dock.boat).toMatchObject({ kind: 'pontoon', length: 6.7056 })
  expect(dock.deckHeight).toBeCloseTo(18 * INCH, 6)
  const reach = await read(page, (e) => Math.max(...e.dock.sections.map(({ x, length }) => x + length)))
  expect(reach).toBeGreaterThanOrEqual(40 * FOOT - 1e-6)
  await settled(page)
  const verdict = await page.locator('.verdict strong').textContent()
  const found = await read(page, (e) => e.dock.findings.map(({ code, severity }) => [code, severity]))
  process.stdout.write(
    `  ${verdict} (${found
      .filter(([, s]) => s !== 'note')
      .map(([c]) => c)
      .join(', ')})\n`,
  )
  expect(verdict).toMatch(/^(It can be built\.|Fix (one thing|\d+ things) before you build\.)/)
  expect(found.map(([code]) => code)).toContain('site-assumed')
  expect(await events(page, 'leadline-error')).toEqual([])
}

const HANDS = [
  [
    'a phone, by touch',
    { viewport: PHONE, hasTouch: true, isMobile: true },
    (what: Locator): Promise<void> => what.tap(),
  ],
  ['a desktop, by mouse', {}, (what: Locator): Promise<void> => what.click()],
] as const

describe('my own shore, 40 ft out, an L, a pontoon boat, the deck 18 in over the water', () => {
  test.each(someOf(HANDS, 1))('on %s: at most 20 taps and 60 s', async (name, options, touch) => {
    const { page, close } = await open({ path: '/index.html', ...options })
    await page.locator('.start').waitFor()
    const hand = handOf(page, touch)
    await hand.on(depthAt(page, '10 ft', '2 ft'))
    await hand.on(page.locator('[data-at="far"]').getByLabel('How far out', { exact: true }))
    await hand.type('40')
    await hand.enter()
    await hand.on(depthAt(page, '40 ft', '4 ft'))
    await hand.on(button(page, 'Next'))
    await hand.on(radio(page, /low bank/))
    await hand.on(button(page, 'Next'))
    await hand.on(radio(page, /Sand/))
    await hand.on(button(page, 'Show my dock'))
    await page.locator('.start').waitFor({ state: 'detached' })
    await hand.on(field(page, 'How high over the water'))
    await hand.type('18 in')
    await hand.enter()
    await hand.on(field(page, 'Reach from the water’s edge'))
    await hand.type('40')
    await hand.enter()
    await hand.on(radio(page, /^L, to the left/))
    await hand.on(radio(page, 'Pontoon boat'))
    process.stdout.write(`${name}: ${hand.taps} taps and ${hand.keys} keys, ${Math.round(hand.time)} s\n`)
    expect(hand.taps).toBeLessThanOrEqual(20)
    expect(hand.time).toBeLessThanOrEqual(60)
    await isTheDock(page)
    await close()
  })

  test('by keyboard alone', async () => {
    const { page, close } = await open({ path: '/index.html' })
    await page.locator('.start').waitFor()
    let keys = 0
    const press = async (...all: string[]) => {
      for (const key of all) {
        keys++
        await page.keyboard.press(key)
      }
    }
    const type = async (text: string) => {
      keys += text.length
      await page.keyboard.type(text)
    }
    /** On by Tab until the hand is there, as somebody does who sees the focus move. */
    const tabTo = async (what: Locator, most = 60) => {
      for (let i = 0; i < most; i++) {
        await press('Tab')
        if (await what.evaluate((e) => e === (e.getRootNode() as ShadowRoot).activeElement)) return
      }
      throw new Error(`not reached in ${most} steps: ${what}`)
    }
    // A group of choices is entered at its first, or at the one that is chosen.
    await tabTo(depthAt(page, '10 ft', '1 ft'))
    await press('ArrowRight')
    await tabTo(page.locator('[data-at="far"]').getByLabel('How far out', { exact: true }))
    await type('40')
    await press('Enter')
    await tabTo(page.locator('[data-at="far"]').getByLabel('How deep', { exact: true }))
    await type('4')
    await press('Enter')
    await tabTo(button(page, 'Next'))
    await press('Enter')
    await tabTo(page.locator('[data-at="bank"]').getByLabel('How high', { exact: true }))
    await type('1')
    await tabTo(button(page, 'Next'))
    await press('Enter')
    await tabTo(radio(page, /Sand/))
    await press('Space')
    await tabTo(button(page, 'Show my dock'))
    await press('Enter')
    await page.locator('.start').waitFor({ state: 'detached' })
    await tabTo(field(page, 'How high over the water'))
    await type('18 in')
    await press('Enter')
    await tabTo(field(page, 'Reach from the water’s edge'))
    await type('40')
    await press('Enter')
    await tabTo(radio(page, 'Straight'))
    await press('ArrowRight')
    await tabTo(radio(page, 'None'))
    await press('ArrowRight', 'ArrowRight', 'ArrowRight')
    process.stdout.write(`by keyboard alone: ${keys} keys, ${Math.round(keys * KEY)} s\n`)
    await isTheDock(page)
    await close()
  })
})

describe('a salesperson whose customer changes their mind four times', () => {
  test.each(someOf([...HANDS].reverse(), 1))(
    'hands over a quote, compared with the one before, on %s: at most 2 minutes',
    async (name, options, touch) => {
      const { page, close } = await open(options)
      await page.locator('leadline-dock').evaluate((e) => e.setAttribute('audience', 'shop'))
      const before = await read(page, (e) => e.design)
      const hand = handOf(page, touch)
      await hand.on(radio(page, /^Frame 5 x 8 ft/))
      await hand.on(button(page, 'One section less'))
      await hand.on(field(page, 'How high over the water'))
      await hand.type('2 ft')
      await hand.enter()
      await hand.on(radio(page, /^Composite, driftwood gray/))
      expect(await read(page, (e) => e.design.dock)).toMatchObject({
        frame: '5x8',
        sections: demoDesign.dock.sections! - 1,
        deckHeight: 2 * FOOT,
        finish: 'composite-gray',
      })
      await settled(page)
      await hand.on(button(page, 'Quote'))
      await hand.on(page.getByLabel('Or paste a link'))
      // Pasted: two keys.
      await page.keyboard.insertText(`https://shop.example/plan${linkOf(before as Design)}`)
      await hand.enter()
      await hand.enter()
      await page.locator('.headline').waitFor()
      const headline = await page.locator('.headline').textContent()
      expect(headline).toMatch(/^4 ft → 5 ft wide, one section less, .*[+−-]\$[\d,.]+$/)
      const saved = page.waitForEvent('download')
      await hand.on(page.locator('.papers').getByRole('button', { name: /^PDF/ }).first())
      const file = await saved
      expect(file.suggestedFilename()).toMatch(/\.pdf$/)
      const bytes = await readFile((await file.path())!)
      expect(bytes.subarray(0, 5).toString()).toBe('%PDF-')
      process.stdout.write(
        `${name}: ${headline}; ${hand.taps} taps and ${hand.keys} keys, ${Math.round(hand.time)} s\n`,
      )
      expect(hand.taps).toBeLessThanOrEqual(20)
      expect(hand.time).toBeLessThanOrEqual(120)
      await close()
    },
  )
})
