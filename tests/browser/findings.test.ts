/** Can it be built? Said of the very dock that is shown, whole when it is told to the page, and worked out beside it. */
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import {
  type Design,
  type Dock,
  demoCatalog,
  demoDesign,
  derive,
  ENGLISH,
  moneyIn,
} from '../../rules/index.ts'
import words from '../../rules/words/en/screen.json' with { type: 'json' }
import { events, open, read, told, withBrowser } from './support/open.ts'

withBrowser()

const overloaded: Design = { ...demoDesign, dock: { ...demoDesign.dock, load: 15_000 } }
/** On rock there are no posts to be had; the waves bend the last pair of legs, which stand in 2 m. */
const overADrop: Design = {
  ...demoDesign,
  site: {
    ...demoDesign.site,
    levels: { low: 0, high: 0 },
    bottom: 'rock',
    wind: { speed: 20, fetch: 1500 },
    soundings: [
      [0, 0.6],
      [8.2, 0.6],
      [9.2, 2],
      [60, 2],
    ].map(([distance, depth]) => ({ distance: distance!, offset: 0, depth: depth! })),
  },
  dock: { ...demoDesign.dock, ramp: false, start: 3, sections: 3, extras: {} },
}
const give = (page: Page, design: Design) =>
  page.locator('leadline-dock').evaluate((e, design) => Object.assign(e, { design }), design)
const dollars = moneyIn(demoCatalog.currency, ENGLISH)
const verdict = (page: Page) => page.locator('.verdict').textContent()
/** Nothing more is going to be found: the verdict is said aloud. */
const settled = (page: Page) =>
  expect.poll(() => page.locator('.stands [role=status]').textContent(), { timeout: 60_000 }).not.toBe('')

test('overloaded it cannot be built, and with the load taken off it can again', async () => {
  const { page, close } = await open()
  await settled(page)
  expect(await verdict(page)).toMatch(/^It can be built/)
  expect(await page.locator('.sum-bar .short').textContent()).toMatch(/^Can be built/)
  await give(page, overloaded)
  await settled(page)
  expect(await verdict(page)).toBe('It cannot be built like this.')
  expect(await page.locator('.sum-bar .short').textContent()).toMatch(/^Cannot be built like this/)
  const { findings } = derive(overloaded, demoCatalog)
  const grave = findings.filter(({ severity }) => severity !== 'note').length
  expect(await page.locator('.stands .finding:not(.note)').count()).toBe(grave)
  // In plain words, and its case too.
  const figures = page.locator('.stands .finding.stop details').first()
  await figures.locator('summary').click()
  await figures.locator('.hint').waitFor()
  expect(await figures.textContent()).not.toMatch(/D\+|0\.6D|\{/)
  await page.getByRole('button', { name: 'Undo' }).click()
  await settled(page)
  expect(await verdict(page)).toMatch(/^It can be built/)
  await close()
})

test('what cannot be built has no price anywhere, but the cost of its parts in their list', async () => {
  const { page, close } = await open()
  await give(page, overloaded)
  await settled(page)
  expect(await page.locator('.sum-bar .figures').textContent()).toBe('No price yet')
  expect(await page.locator('.totals dd').first().textContent()).toBe(
    'No price yet: it cannot be built like this.',
  )
  await page.getByRole('button', { name: 'Ask for a quote' }).click()
  await page.getByRole('heading', { name: 'Ask for a quote' }).waitFor()
  expect(await page.locator('dialog').textContent()).toContain('No price yet: it cannot be built like this.')
  expect(await page.locator('dialog').textContent()).not.toContain('$')
  await page.getByRole('button', { name: 'Not now' }).click()
  await page.getByText('The whole list').click()
  expect(await page.locator('.list-of-parts thead').textContent()).toContain('Cost of parts')
  await give(page, demoDesign)
  await settled(page)
  const { price } = derive(demoDesign, demoCatalog).totals
  expect(await page.locator('.sum-bar .figures').textContent()).toBe(`${dollars(price)}plus tax and delivery`)
  await close()
})

test('each remedy says what it costs, and all together are one step of undo', async () => {
  const { page, close } = await open()
  const none = derive(demoDesign, demoCatalog).pairs.map(({ id }) => id)
  const bare: Design = { ...demoDesign, dock: { ...demoDesign.dock, bracing: { none } } }
  const missing = derive(demoDesign, demoCatalog).totals.price - derive(bare, demoCatalog).totals.price
  await give(page, bare)
  await settled(page)
  expect(await verdict(page)).toBe('Fix 3 things before you build.')
  const all = page.locator('.fix-all')
  await all.waitFor()
  expect(await all.textContent()).toBe(`Fix all +${dollars(missing)}`)
  for (const remedy of await page.locator('.finding.warn .remedy').allTextContents())
    expect(remedy).toMatch(/^Put the brace back \+\$\d+\.\d\d$/)
  await all.click()
  await settled(page)
  await expect.poll(() => verdict(page)).toMatch(/^It can be built/)
  expect(await page.locator('.fix-all').count()).toBe(0)
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect.poll(() => verdict(page), { timeout: 60_000 }).toBe('Fix 3 things before you build.')
  await close()
})

test('what a remedy does is judged anew: end the dock where it still stands, say', async () => {
  const { page, close } = await open()
  await give(page, overADrop)
  await settled(page)
  const remedy = page.locator('.stands .finding.stop .remedy').first()
  const before = await read(page, (e) => JSON.stringify(e.design.dock))
  await remedy.click()
  expect(await read(page, (e) => JSON.stringify(e.design.dock))).not.toBe(before)
  await settled(page)
  const [design, dock] = await read(page, (e) => [e.design, e.dock] as [Design, Dock])
  expect(dock).toEqual(derive(design, demoCatalog))
  await close()
})

test('at every moment of fast changes what is shown is of the design shown, or nothing is', async () => {
  const { page, close } = await open()
  await settled(page)
  await page.locator('.stands summary', { hasText: 'What every part carries' }).click()
  await page.locator('.loads').waitFor()
  const seen = await page.locator('leadline-dock').evaluate(async (e) => {
    const element = e as never as { design: Design; dock: Dock }
    const root = e.shadowRoot!
    const wrong: string[] = []
    const counts = { stood: 0, pending: 0, told: 0 }
    const frame = () => new Promise((done) => requestAnimationFrame(done))
    const look = (when: string, drawn = true): void => {
      const { design, dock } = element
      if (dock.structure) {
        counts.stood++
        if (dock.structure.live !== design.dock.load)
          wrong.push(`${when}: ${dock.structure.live} for ${design.dock.load}`)
        // Past buckling there are no figures.
        const figures = dock.structure.railUse === null ? 0 : dock.legs.length
        if (dock.structure.legs.length !== figures) wrong.push(`${when}: legs`)
      } else if (dock.pending) counts.pending++
      else wrong.push(`${when}: neither structure nor pending`)
      // The screen: pounds a square foot, as it tells them.
      const loads = root.querySelector('.loads > .hint')?.textContent
      if (loads && drawn) {
        counts.told++
        const now = `${Math.round((design.dock.load! * 0.3048 ** 2) / 4.4482216152605)} lb/ft²`
        if (!loads.includes(now)) wrong.push(`${when}: "${loads}" for ${now}`)
      }
    }
    const start = element.design
    for (let i = 0; i < 80; i++) {
      element.design = {
        ...start,
        dock: { ...start.dock, load: 2000 + 100 * i, sections: 3 + (i % 4) },
      }
      // The screen follows within the same task.
      look('at once', false)
      // Some follow at once, some leave time for an answer.
      for (let k = i % 5 === 0 ? 12 : 1; k > 0; k--) {
        await frame()
        look('at a frame')
        await new Promise((done) => setTimeout(done, i % 3))
        look('between frames')
      }
    }
    return { wrong, ...counts }
  })
  expect(seen.wrong, seen.wrong.slice(0, 5).join('\n')).toEqual([])
  expect(seen.pending).toBeGreaterThan(80)
  expect(seen.stood).toBeGreaterThan(10)
  expect(seen.told).toBeGreaterThan(10)
  await close()
})

test('a page is told of the whole dock once it is known, and at once while the hand moves', async () => {
  const { page, close } = await open()
  await page.getByRole('button', { name: 'One section more' }).click()
  const [change] = await told(page, 'leadline-change')
  const { design, dock } = change!.detail as { design: Design; dock: Dock }
  expect(design.dock.sections).toBe(demoDesign.dock.sections! + 1)
  expect(dock).toEqual(derive(design, demoCatalog))
  // Three that follow each other, within one task, are told as one: the last.
  await page.getByRole('button', { name: 'One section less' }).evaluate(async (button) => {
    for (let i = 0; i < 3; i++) {
      ;(button as HTMLButtonElement).click()
      await Promise.resolve()
    }
  })
  const changes = await told(page, 'leadline-change', 2)
  expect(changes).toHaveLength(2)
  expect((changes.at(-1)!.detail as { design: Design }).design.dock.sections).toBe(3)
  const handle = page.locator('.deck-handle, .handle.deck-handle').first()
  const box = (await handle.boundingBox())!
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2)
  await page.mouse.down()
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2 - 8)
  const [input] = await events(page, 'leadline-input')
  expect((input!.detail as { dock: Dock }).dock).toMatchObject({ structure: null, pending: true })
  await page.mouse.up()
  await close()
})

test('it is worked out in workers of the page, from a folder too', async () => {
  const { page, requests, close } = await open({ path: '/deep/page.html', fresh: true })
  await settled(page)
  expect(page.workers().length).toBeGreaterThan(0)
  for (const worker of page.workers())
    expect(worker.url()).toMatch(/\/leadline\/assessment-worker-[\w-]+\.js$/)
  // The engine comes once: a worker takes the page's own files.
  const files = new Set(requests.filter((url) => url.endsWith('.js')))
  expect([...files].filter((url) => /\/app-/.test(url)).length).toBe(1)
  expect(await verdict(page)).toMatch(/^It can be built/)
  await close()
})

test('where a page lets no worker begin it is worked out all the same', async () => {
  const { page, close } = await open({
    before: () => {
      Object.assign(window, {
        Worker: class {
          constructor() {
            throw new DOMException('from another origin', 'SecurityError')
          }
        },
      })
    },
  })
  await settled(page)
  expect(page.workers()).toEqual([])
  expect(await read(page, (e) => e.dock.structure?.deep)).toBe(true)
  await give(page, overloaded)
  await settled(page)
  expect(await verdict(page)).toBe('It cannot be built like this.')
  await close()
})

test('where its code does not come it says so, and stands by nothing', async () => {
  const { page, close } = await open({ without: /\/assessment-/, expected: /Failed to load|ERR_FAILED|404/ })
  await settled(page)
  expect(await verdict(page)).toBe(words['stands.unknown'])
  expect(await page.locator('.stands .checking').textContent()).toContain(words['stands.not-here'])
  expect(await read(page, (e) => e.dock.pending)).toBe(true)
  await close()
})

test('every figure of every part, a tap deeper, with its case in words', async () => {
  const { page, close } = await open()
  await settled(page)
  await page.locator('.stands summary', { hasText: 'What every part carries' }).click()
  const groups = page.locator('.load-group')
  await groups.first().waitFor()
  for (const group of await groups.all()) await group.locator(':scope > summary').click()
  const { structure, legs } = await read(page, (e) => e.dock)
  const rows = (of: number) => groups.nth(of).locator('tbody')
  expect(await rows(0).count()).toBe(legs.length)
  expect(await rows(1).count()).toBe(structure!.braces.length)
  expect(await rows(2).count()).toBe(structure!.rails.length)
  expect(await rows(3).count()).toBe(legs.length)
  const worst = structure!.legs.reduce((a, b) => (b.use > a.use ? b : a))
  expect(await groups.first().locator(':scope > summary').textContent()).toContain(
    `${Math.round(worst.use * 100)} %`,
  )
  const all = await page.locator('.loads').textContent()
  expect(all).not.toMatch(/D\+|0\.[67]5?[DLW]|\{\w+\}|NaN|undefined|null/)
  // What is pointed at lights up elsewhere.
  await rows(0).nth(2).getByRole('button').click()
  expect(await rows(0).nth(2).getAttribute('class')).toBe('lit')
  await page.locator('summary', { hasText: 'Why?' }).click()
  await page.locator('.carries').first().waitFor()
  expect(await page.locator('.carries').first().textContent()).toContain('Of what this leg can take')
  await close()
})
