/**
 * The dock stays in sight of whoever changes it: with each control in hand, in each size of window, the share of the drawn dock that is
 * inside the window and not covered; and no text stands on another. Measured by boxes, of the drawing: the scene stands in its place.
 */
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { SCREEN } from '../../src/words/index.ts'
import { someOf } from './support/at-length.ts'
import { open, withBrowser } from './support/open.ts'

withBrowser()

/** Least share of the dock's box that is seen, whatever is in hand. */
const LEAST = 0.6

interface Window {
  readonly name: string
  readonly viewport: { readonly width: number; readonly height: number }
  /** Of the column of the host's page that it stands in, CSS px. */
  readonly column?: number
  /** A head of the host's own that stays at the top, CSS px. */
  readonly head?: number
  /** The reader's own size of text, of the ordinary one. */
  readonly text?: number
}

/** At every push the first ones: what is wide, short, narrow, covered and large. */
const WINDOWS: readonly Window[] = [
  { name: 'laptop', viewport: { width: 1366, height: 650 } },
  { name: 'phone, keyboard up', viewport: { width: 390, height: 440 } },
  { name: 'column of 320', viewport: { width: 1366, height: 650 }, column: 320 },
  { name: 'laptop, under the head of a page', viewport: { width: 1366, height: 650 }, head: 64 },
  { name: 'phone, text twice as large', viewport: { width: 390, height: 844 }, text: 2 },
  { name: 'laptop, text twice as large', viewport: { width: 1366, height: 650 }, text: 2 },
  { name: 'small screen', viewport: { width: 1024, height: 768 } },
  { name: 'phone', viewport: { width: 390, height: 844 } },
  { name: 'column of 600', viewport: { width: 1366, height: 650 }, column: 600 },
  { name: 'desktop', viewport: { width: 1440, height: 900 } },
  { name: 'tablet', viewport: { width: 768, height: 1024 } },
]

/** All that can be folded open is, and has come, so that every control is there and the page as long as it gets. */
async function unfolded(page: Page): Promise<void> {
  await page.locator('leadline-dock').evaluate(async (element, loading) => {
    const root = element.shadowRoot!
    const coming = (): boolean =>
      root.querySelector('.verdict.checking') !== null ||
      [...root.querySelectorAll('.page .hint')].some(({ textContent }) => textContent === loading)
    let before = 0
    for (let quiet = 0; quiet < 3; ) {
      for (const fold of root.querySelectorAll<HTMLDetailsElement>('.page details')) fold.open = true
      await new Promise((done) => setTimeout(done, 120))
      const now = root.querySelectorAll('.page *').length
      quiet = now === before && !coming() ? quiet + 1 : 0
      before = now
    }
  }, SCREEN.english.loading)
}

interface Seen {
  readonly control: string
  /** Of the dock, 0 to 1. */
  readonly dock: number
  /** The control can be pressed. */
  readonly reached: boolean
}

/** Each control in turn, as it is brought into view by the browser when it gets the focus. */
const seenWithEach = (page: Page): Promise<Seen[]> =>
  page.locator('leadline-dock').evaluate(async (element) => {
    const root = element.shadowRoot!
    const shareOfDock = (): number => {
      const boxes = [...root.querySelectorAll('.lake :is(.deck, .rail, .leg, .brace)')].map((part) =>
        part.getBoundingClientRect(),
      )
      const [x0, x1] = [Math.min(...boxes.map((b) => b.left)), Math.max(...boxes.map((b) => b.right))]
      const [y0, y1] = [Math.min(...boxes.map((b) => b.top)), Math.max(...boxes.map((b) => b.bottom))]
      let seen = 0
      const across = 16
      const down = 10
      for (let i = 0; i < across; i++)
        for (let k = 0; k < down; k++) {
          const x = x0 + ((x1 - x0) * (i + 0.5)) / across
          const y = y0 + ((y1 - y0) * (k + 0.5)) / down
          if (root.elementFromPoint(x, y)?.closest('.lake')) seen++
        }
      return seen / (across * down)
    }
    const controls = [
      ...root.querySelectorAll<HTMLElement>(
        '.app :is(button, input, select, textarea, summary, a[href], [tabindex="0"])',
      ),
    ].filter((control) => control.checkVisibility() && !control.matches(':disabled'))
    const told: Seen[] = []
    for (const control of controls) {
      control.focus()
      if (root.activeElement !== control) continue
      await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))
      // A radio has its label to be pressed; it takes no room itself.
      const shown = control.matches('[type="radio"], [type="checkbox"]') ? control.closest('label')! : control
      const { left, top, width, height } = shown.getBoundingClientRect()
      // A handle is a thin shape in its box: any place of it will do.
      const reached = [0.5, 0.1, 0.3, 0.7, 0.9].some((u) =>
        [0.5, 0.1, 0.3, 0.7, 0.9].some((v) => {
          const at = root.elementFromPoint(left + width * u, top + height * v)
          return at !== null && (shown.contains(at) || at.closest('label')?.contains(shown) === true)
        }),
      )
      told.push({
        control: `${control.localName} ${control.getAttribute('aria-label') ?? shown.textContent}`.slice(
          0,
          60,
        ),
        dock: shareOfDock(),
        reached,
      })
    }
    return told
  })

/** Texts of different elements that stand on one another, as the page is scrolled now. */
const overprinted = (page: Page): Promise<string[]> =>
  page.locator('leadline-dock').evaluate((element) => {
    const root = element.shadowRoot!
    interface Text {
      readonly words: string
      readonly owner: Element
      readonly box: DOMRect
    }
    const texts: Text[] = []
    const walker = document.createTreeWalker(root, NodeFilter.SHOW_TEXT)
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const owner = node.parentElement!
      const words = node.textContent!.trim()
      if (words === '' || owner.closest('style, script, option, title, desc')) continue
      if (!owner.checkVisibility({ opacityProperty: true, visibilityProperty: true })) continue
      const range = document.createRange()
      range.selectNodeContents(node)
      for (const box of range.getClientRects()) {
        // What is only for the ear is clipped to nothing.
        if (box.width < 2 || owner.closest('.unseen, legend')?.clientWidth === 1) continue
        const x = box.left + box.width / 2
        const y = box.top + box.height / 2
        const top = root.elementFromPoint(x, y)
        const isSvg = owner.namespaceURI !== 'http://www.w3.org/1999/xhtml'
        // Covered by what stays in place over the page, which lets nothing through; or cut off by its own box.
        if (top && !isSvg && !owner.contains(top) && !top.contains(owner)) {
          const bar = top.closest('.sum, .picture')
          if (bar && !bar.contains(owner)) continue
        }
        texts.push({ words, owner, box })
      }
    }
    const told: string[] = []
    const fixed = (text: Text) => text.owner.closest('.sum, .picture')
    const name = ({ words, owner }: Text) => `${words} (${owner.parentElement!.className || owner.localName})`
    // From top to bottom: what begins under the end of one stands on no other after it.
    texts.sort((a, b) => a.box.top - b.box.top)
    texts.forEach((a, i) => {
      for (let k = i + 1; k < texts.length && texts[k]!.box.top < a.box.bottom; k++) {
        const b = texts[k]!
        const wide = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left)
        const high = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top)
        // A box of text has air over and under its letters.
        if (wide <= 2 || high <= 4) continue
        if (a.owner === b.owner || a.owner.contains(b.owner) || b.owner.contains(a.owner)) continue
        if (fixed(a) === fixed(b)) told.push(`${name(a)} / ${name(b)}`)
      }
    })
    return [...new Set(told)]
  })

async function opened({ viewport, column, head, text }: Window) {
  const { page, close } = await open({
    viewport,
    fresh: column !== undefined || head !== undefined || text !== undefined,
  })
  await page.evaluate(
    ({ column, head, text }) => {
      const element = document.querySelector<HTMLElement>('leadline-dock')!
      if (column) element.style.width = `${column}px`
      if (text) element.shadowRoot!.querySelector<HTMLElement>('.app')!.style.fontSize = `${16 * text}px`
      if (!head) return
      element.style.setProperty('--leadline-sticky-top', `${head}px`)
      const bar = document.createElement('div')
      Object.assign(bar.style, {
        position: 'sticky',
        top: '0',
        height: `${head}px`,
        zIndex: '99',
        background: 'white',
      })
      document.body.prepend(bar)
    },
    { column, head, text },
  )
  return { page, close }
}

// Several at once: most of it waits for the browser's frames. One page for both, for to unfold all of it takes as long as the rest.
for (const seen of someOf(WINDOWS, 5))
  test.concurrent(`no text stands on another, and with each control in hand the dock is seen: ${seen.name}`, async () => {
    const { page, close } = await opened(seen)
    expect(await overprinted(page)).toEqual([])
    await unfolded(page)
    const found = new Set<string>()
    const height = await page.evaluate(() => document.documentElement.scrollHeight)
    for (let y = 0; y < height; y += seen.viewport.height * 0.8) {
      await page.evaluate((y) => scrollTo(0, y), y)
      for (const pair of await overprinted(page)) found.add(pair)
    }
    expect([...found]).toEqual([])
    if (seen.text === undefined)
      expect(
        await page.evaluate(() => document.documentElement.scrollWidth),
        'nothing sticks out',
      ).toBeLessThanOrEqual(seen.viewport.width)

    await page.evaluate(() => scrollTo(0, 0))
    const told = await seenWithEach(page)
    expect(told.length, 'controls').toBeGreaterThan(130)
    const least = Math.min(...told.map(({ dock }) => dock))
    const mean = told.reduce((sum, { dock }) => sum + dock, 0) / told.length
    const hidden = told.filter(({ reached }) => !reached)
    process.stdout.write(
      `${seen.name}: of the dock at least ${Math.round(100 * least)} %, in the mean ${Math.round(100 * mean)} %, with ${told.length} controls; ${hidden.length} covered\n`,
    )
    expect(told.filter(({ dock }) => dock < LEAST)).toEqual([])
    expect(hidden.map(({ control }) => control)).toEqual([])
    await close()
  })
