/** What a crew does on a phone, with a finger in a glove: a leg by its number, in the list, the picture and the section alike. */
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import words from '../../rules/words/en/screen.json' with { type: 'json' }
import { settled } from './scene-in-page.ts'
import { someOf } from './support/at-length.ts'
import { open, PHONE, read, withBrowser } from './support/open.ts'

withBrowser()

const GLOVE = { viewport: PHONE, hasTouch: true } as const

const lookedOnBy = (page: Page, audience: string) =>
  page.locator('leadline-dock').evaluate((e, audience) => e.setAttribute('audience', audience), audience)

/** Counts what a hand does. */
function hand(page: Page) {
  let taps = 0
  return {
    taps: () => taps,
    tap: async (name: string | RegExp) => {
      taps++
      await page.getByRole('button', { name, exact: true }).tap()
    },
  }
}

/** What can be read without another move: text of the row, if all of it is inside the window and under nothing. */
const readable = (page: Page, leg: string) =>
  page.locator(`.by-number [data-leg="${leg}"]`).evaluate((row) => {
    const figures = [...row.querySelectorAll<HTMLElement>('dd')]
    const seen = figures.every((figure) => {
      const box = figure.getBoundingClientRect()
      const [x, y] = [box.left + box.width / 2, box.top + box.height / 2]
      const root = row.getRootNode() as ShadowRoot
      return (
        x > 0 && x < innerWidth && y > 0 && y < innerHeight && figure.contains(root.elementFromPoint(x, y))
      )
    })
    return seen ? (row as HTMLElement).innerText.replace(/\s+/g, ' ') : ''
  })

/** Of the dock as it is told, in feet and inches as a tape has them. */
const inches = (meters: number): string => {
  const quarters = Math.round((meters / 0.0254) * 4)
  const [feet, rest] = [Math.floor(quarters / 48), quarters % 48]
  const [whole, part] = [Math.floor(rest / 4), rest % 4]
  const fraction = ['', '1/4', '1/2', '3/4'][part]!
  const told = [whole > 0 || part === 0 ? String(whole) : '', fraction].filter(Boolean).join(' ')
  return [feet > 0 ? `${feet} ft` : '', feet > 0 && rest === 0 ? '' : `${told} in`].filter(Boolean).join(' ')
}

for (const [audience, most] of [
  ['crew', 1],
  ['customer', 2],
] as const)
  test(`leg 7’s height and brace are read after ${most} of a glove’s taps by a ${audience}`, async () => {
    const { page, close } = await open(GLOVE)
    await lookedOnBy(page, audience)
    const { tap, taps } = hand(page)
    if (audience !== 'crew') await tap('Legs')
    await tap('Leg 7')
    await expect.poll(() => readable(page, 's4.end.left')).not.toBe('')
    expect(taps()).toBeLessThanOrEqual(most)
    const { leg, brace } = await read(page, ({ dock }) => {
      const leg = dock.legs[6]!
      return { leg, brace: dock.pairs.find(({ legs }) => legs.includes(leg.id))!.brace! }
    })
    expect(leg.id).toBe('s4.end.left')
    const low = brace.low === leg.id
    const told = await readable(page, leg.id)
    expect(told).toContain(`Bottom to deck ${inches(leg.setHeight)}`)
    expect(told).toContain(`Bottom to frame top ${inches(leg.setHeightFrame)}`)
    expect(told).toContain(`Leg ${inches(leg.stock!)}`)
    expect(told).toContain(
      `Brace, ${low ? 'low' : 'high'} ${brace.code} ${inches((low ? brace.lowZ : brace.highZ) - leg.bed)} up`,
    )
    await close()
  })

for (const width of [390, 320])
  test(`the list of legs stands in ${width} px without sideways scroll, right under the picture, nothing in it smaller than a thumb`, async () => {
    const { page, close } = await open({ ...GLOVE, viewport: { width, height: 844 } })
    await lookedOnBy(page, 'crew')
    await page.locator('.by-number dd').first().waitFor()
    const seen = await page.locator('.by-number').evaluate((list) => {
      const root = list.getRootNode() as ShadowRoot
      const wide = [list, ...list.querySelectorAll('*')].filter(
        (e) => e.scrollWidth > e.clientWidth + 1 && e.clientWidth > 0 && !e.classList.contains('unseen'),
      )
      const boxes = [...list.querySelectorAll('button')].map((b) => b.getBoundingClientRect())
      return {
        wide: wide.map((e) => e.className || e.tagName),
        out: document.documentElement.scrollWidth,
        low: Math.min(...boxes.map((b) => b.height)),
        narrow: Math.min(...boxes.map((b) => b.width)),
        under:
          list.getBoundingClientRect().top - root.querySelector('.stage')!.getBoundingClientRect().bottom,
        before: list.getBoundingClientRect().top < root.querySelector('.strip')!.getBoundingClientRect().top,
        figure: Math.min(
          ...[...list.querySelectorAll('dd')].map((dd) => Number.parseFloat(getComputedStyle(dd).fontSize)),
        ),
      }
    })
    expect(seen.wide).toEqual([])
    expect(seen.out).toBeLessThanOrEqual(width)
    expect(Math.min(seen.low, seen.narrow)).toBeGreaterThanOrEqual(44)
    expect(seen.before).toBe(true)
    expect(seen.under).toBeGreaterThanOrEqual(0)
    expect(seen.figure).toBeGreaterThanOrEqual(18)
    await close()
  })

test('a leg tapped in the picture, 20 px beside it, is the one in the list and the section; one picked in the list is picked in the picture', async () => {
  const { page, close } = await open({ ...GLOVE, webgl: true })
  await lookedOnBy(page, 'crew')
  await page.locator('.stage[data-scene="live"]').waitFor()
  await settled(page)
  const labels = page.locator('.scene-label.sign:not([style*="hidden"])')
  await expect.poll(() => labels.count()).toBeGreaterThan(4)
  const ninth = await read(page, ({ dock }) => dock.legs[8]!)
  const at = await page.locator('canvas').evaluate(
    (canvas, { x, y, z }) => {
      const { left, top } = canvas.getBoundingClientRect()
      const seen = (
        canvas as never as {
          leadlineScene: { at(x: number, y: number, z: number): { x: number; y: number } }
        }
      ).leadlineScene.at(x, y, z)
      return { x: left + seen.x, y: top + seen.y }
    },
    { x: ninth.x, y: ninth.y, z: ninth.bed + ninth.setHeight + ninth.aboveDeck! * 0.8 },
  )
  // Away from the dock, over open water.
  await page.touchscreen.tap(at.x + 14, at.y - 14)
  await page.locator('.by-number li.lit').waitFor()
  expect(await page.locator('.by-number li.lit').getAttribute('data-leg')).toMatch(/^s5\.end\.(left|right)$/)
  const picked = await page.locator('.by-number li.lit').getAttribute('data-leg')
  expect(await page.locator('.parts .leg.lit').getAttribute('data-id')).toBe(picked)
  // It came into sight by itself.
  await expect.poll(() => readable(page, picked!)).not.toBe('')
  await page.getByRole('button', { name: 'Leg 4', exact: true }).tap()
  await page.locator('.by-number li.lit[data-leg="s2.end.right"]').waitFor()
  await settled(page)
  const big = page.locator('.scene-label.sign.picked:not([style*="hidden"])')
  expect(await big.allTextContents()).toEqual(['4'])
  await close()
})

test('zoomed in under the deck and turned away, the whole dock is one tap away', async () => {
  const { page, close } = await open({ ...GLOVE, webgl: true })
  await page.locator('.stage[data-scene="live"]').waitFor()
  await settled(page)
  const outside = () =>
    page.locator('leadline-dock').evaluate((element) => {
      const canvas = element.shadowRoot!.querySelector('canvas')!
      const scene = (
        canvas as never as {
          leadlineScene: { at(x: number, y: number, z: number): { x: number; y: number } | null }
        }
      ).leadlineScene
      const { dock } = element as never as {
        dock: { legs: { id: string; x: number; y: number; bed: number }[] }
      }
      return dock.legs
        .filter(({ x, y, bed }) => {
          const at = scene.at(x, y, bed)
          return !at || at.x < 0 || at.y < 0 || at.x > canvas.clientWidth || at.y > canvas.clientHeight
        })
        .map(({ id }) => id)
    })
  expect(await outside()).toEqual([])
  await page.locator('canvas').focus()
  for (const key of ['ArrowDown', 'ArrowDown', 'ArrowDown', 'ArrowLeft', ...Array(16).fill('+')])
    await page.keyboard.press(key)
  await settled(page)
  expect((await outside()).length).toBeGreaterThan(3)
  await page.getByRole('button', { name: words['view.whole'] }).click()
  await settled(page)
  expect(await outside()).toEqual([])
  // From under water too, where no place shows all of it.
  await page.getByRole('button', { name: words['view.more'] }).click()
  await page.getByRole('button', { name: words['view.under'] }).click()
  await settled(page)
  await page.getByRole('button', { name: words['view.whole'] }).click()
  await settled(page)
  expect(await outside()).toEqual([])
  await close()
})

/** Docks of every shape, from hardly any water to more than legs are long. */
const DOCKS = [
  {},
  { sections: 2 },
  { sections: 14 },
  { sections: 4, head: { shape: 'tee', sections: 4 } },
  { sections: 5, head: { shape: 'wide', sections: 3 }, deckHeight: 1.1 },
] as const

const SIZES = [
  ['a narrow column', { width: 320, height: 700 }],
  ['a phone', PHONE],
  ['a desktop', { width: 1366, height: 768 }],
] as const
for (const [name, viewport] of someOf(SIZES, 1))
  test(`the measures of no leg and no brace lie over one another in the section, on ${name}`, async () => {
    const { page, close } = await open({ viewport })
    const found: string[] = []
    let shown = 0
    for (const change of DOCKS) {
      const ids = await read(
        page,
        (e) => [...e.dock.legs, ...e.dock.pairs.filter(({ brace }) => brace)].length,
      )
      expect(ids).toBeGreaterThan(0)
      await page.locator('leadline-dock').evaluate((element, change) => {
        const dock = element as never as { design: { dock: object } }
        dock.design = { ...dock.design, dock: { ...dock.design.dock, head: undefined, ...change } }
      }, change)
      const told = await page.locator('leadline-dock').evaluate(async (element) => {
        const root = element.shadowRoot!
        const frame = () => new Promise((done) => requestAnimationFrame(() => setTimeout(done, 0)))
        await frame()
        const strip = root.querySelector('.strip')!
        const over: string[] = []
        let shown = 0
        const parts = [...strip.querySelectorAll('.leg-reach, .brace')]
        for (const id of new Set(parts.map((part) => part.getAttribute('data-id')!))) {
          const part = () =>
            [...strip.querySelectorAll('.leg-reach, .brace')].find((p) => p.getAttribute('data-id') === id)!
          part().dispatchEvent(new MouseEvent('click', { bubbles: true }))
          for (let i = 0; i < 200 && !strip.querySelector('.measures text'); i++) await frame()
          const texts = [...strip.querySelectorAll('text')].filter(
            (t) => getComputedStyle(t).visibility === 'visible',
          )
          const box = strip.getBoundingClientRect()
          const boxes = texts.map((t) => ({
            text: `${id}: ${t.textContent}`,
            box: t.getBoundingClientRect(),
            own: t.closest('.measures') !== null,
          }))
          shown += boxes.filter(({ own }) => own).length
          for (const [i, a] of boxes.entries()) {
            if (a.own && (a.box.left < box.left || a.box.right > box.right || a.box.top < box.top))
              over.push(`${a.text} sticks out`)
            for (const b of boxes.slice(i + 1))
              if (
                (a.own || b.own) &&
                Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left) > 1 &&
                Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top) > 3
              )
                over.push(`${a.text} on ${b.text}`)
          }
          part().dispatchEvent(new MouseEvent('click', { bubbles: true }))
          await frame()
        }
        return { over, shown }
      })
      found.push(...told.over)
      shown += told.shown
    }
    process.stdout.write(`${name}: ${shown} measures, ${found.length} over one another\n`)
    expect(shown).toBeGreaterThan(100)
    expect(found).toEqual([])
    await close()
  })
