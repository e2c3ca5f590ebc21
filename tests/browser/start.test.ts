/** From nothing: a shore of one's own by a finger, a mouse and a keyboard, and what is not said stays unsaid. */
import { AxeBuilder } from '@axe-core/playwright'
import type { Locator, Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { linkOf } from '../../src/autosave/link.ts'
import { choose } from './support/choose.ts'
import { events, open, PHONE, read, told, withBrowser } from './support/open.ts'

withBrowser()

const FOOT = 0.3048
const shore = (page: Page) =>
  read(page, (e) => e.design.site.soundings.map((s) => [s.distance, s.depth, s.assumed ?? false]))
const codes = (page: Page) => read(page, (e) => e.dock.findings.map((f) => f.code))
const feet = (page: Page) =>
  shore(page).then((list) =>
    list.map(([at, deep]) => [at, deep].map((n) => Math.round((Number(n) / FOOT) * 1e4) / 1e4)),
  )
const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: true })
const depthAt = (page: Page, far: string, depth: string) =>
  page
    .getByRole('group', { name: `How deep is it ${far} out?` })
    .getByRole('radio', { name: depth, exact: true })

/** The whole way, by whatever a hand does; returns how often it did. */
async function walk(page: Page, act: (on: Locator) => Promise<void>): Promise<number> {
  let taps = 0
  const on = async (what: Locator) => {
    await act(what)
    taps++
  }
  await on(depthAt(page, '10 ft', '2 ft'))
  await on(depthAt(page, '30 ft', '4 ft'))
  await on(button(page, 'Next'))
  await on(page.getByRole('radio', { name: /low bank/ }))
  await on(button(page, 'Next'))
  await on(page.getByRole('radio', { name: /Sand/ }))
  await on(button(page, 'Show my dock'))
  await page.locator('.start').waitFor({ state: 'detached' })
  return taps
}

for (const [hand, options, act] of [
  ['a finger', { viewport: PHONE, hasTouch: true, isMobile: true }, (on: Locator) => on.tap()],
  ['a mouse', {}, (on: Locator) => on.click()],
] as const)
  test(`one’s own shore is there after seven taps, by ${hand}`, async () => {
    const { page, close } = await open({ path: '/index.html', ...options })
    await page.locator('.start').waitFor()
    expect(await walk(page, act)).toBe(7)
    expect(await feet(page)).toEqual([
      [-10, -1],
      [0, 0],
      [10, 2],
      [30, 4],
    ])
    expect(await read(page, (e) => e.design.dock.sections)).toBe(5)
    await told(page, 'leadline-change')
    // What was not asked for is not there, and is told.
    expect(await read(page, (e) => [e.design.site.wind ?? null, e.design.site.assumed])).toEqual([
      null,
      ['levels', 'wind'],
    ])
    expect(await codes(page)).toContain('site-assumed')
    expect(await page.locator('.panel .care').first().textContent()).toContain('How far the lake drops')
    await close()
  })

test('by keyboard alone, each question read out as it comes', async () => {
  const { page, close } = await open({ path: '/index.html' })
  await page.locator('.start').waitFor()
  await depthAt(page, '10 ft', '1 ft').focus()
  await page.keyboard.press('ArrowRight')
  expect((await feet(page))[2]).toEqual([10, 2])
  // Over the two fields of the first depth, each between its less and its more.
  for (let i = 0; i < 7; i++) await page.keyboard.press('Tab')
  await page.keyboard.press('ArrowRight')
  await page.keyboard.press('ArrowRight')
  expect((await feet(page))[3]).toEqual([30, 4])
  await button(page, 'Next').press('Enter')
  expect(await page.locator('h2:focus').textContent()).toContain('How high is the ground 10 ft back')
  await page.keyboard.press('Tab')
  await page.keyboard.press('ArrowRight')
  await button(page, 'Next').press('Enter')
  await page.keyboard.press('Tab')
  await page.keyboard.press('Space')
  expect(await read(page, (e) => e.design.site.assumed)).toEqual(['levels', 'wind'])
  await button(page, 'Show my dock').press('Enter')
  await page.locator('.side:focus').waitFor()
  await close()
})

test('the dock grows with each answer, undo takes it back there and here', async () => {
  const { page, close } = await open({ path: '/index.html' })
  await page.locator('.start').waitFor()
  const sections = () => read(page, (e) => e.design.dock.sections)
  expect(await sections()).toBe(2)
  await depthAt(page, '10 ft', '2 ft').click()
  await depthAt(page, '30 ft', '4 ft').click()
  expect(await sections()).toBe(5)
  await button(page, 'Undo').click()
  expect(await sections()).toBe(2)
  expect(await depthAt(page, '30 ft', '4 ft').isChecked()).toBe(false)
  expect(await depthAt(page, '10 ft', '2 ft').isChecked()).toBe(true)
  expect(await button(page, 'Not sure, skip').count()).toBe(1)
  await close()
})

test('any depth at any distance, typed or stepped; a bare 18 is asked about, a place too near is told', async () => {
  const { page, close } = await open({ path: '/index.html' })
  await page.locator('.start').waitFor()
  const far = page.locator('.one-depth').nth(1)
  await far.getByLabel('How far out', { exact: true }).fill('40')
  await far.getByLabel('How far out', { exact: true }).press('Enter')
  await far.getByLabel('How deep', { exact: true }).fill('18')
  await far.getByLabel('How deep', { exact: true }).press('Enter')
  expect((await feet(page))[3]).toEqual([40, 18])
  expect(await far.locator('.asks').textContent()).toContain('Did you mean 1 ft 6 in?')
  await far.getByRole('button', { name: 'Yes, 1 ft 6 in' }).click()
  expect((await feet(page))[3]).toEqual([40, 1.5])
  await far.getByRole('button', { name: 'More: How deep' }).click()
  expect((await feet(page))[3]).toEqual([40, 2])
  await far.getByLabel('How far out', { exact: true }).fill('8')
  await far.getByLabel('How far out', { exact: true }).press('Enter')
  expect(await far.locator('.fault').textContent()).toContain('Keep this one farther than 10 ft')
  expect((await feet(page))[3]).toEqual([40, 2])
  await close()
})

test('skipped, all is said to be unsaid, and the way back to the questions is there', async () => {
  const { page, close } = await open({ path: '/index.html' })
  await page.locator('.start').waitFor()
  await button(page, 'Skip the questions').click()
  const unsaid = page.locator('.panel .care').first()
  expect(await unsaid.textContent()).toContain('How deep it is 10 ft out')
  await unsaid.getByRole('button', { name: 'Answer what’s missing' }).click()
  await depthAt(page, '10 ft', '3 ft').click()
  expect((await feet(page))[2]).toEqual([10, 3])
  await close()
})

/** With a shore of one's own but for the lake's levels and the wind. */
async function withoutLake(page: Page): Promise<Locator> {
  await page.locator('.start').waitFor()
  await walk(page, (on) => on.click())
  const list = page.locator('.group .unsaid')
  await list.waitFor()
  return list
}
const focused = (page: Page) =>
  page
    .locator('leadline-dock')
    .evaluate((e) => (e.shadowRoot!.activeElement?.closest('[data-at]') as HTMLElement | null)?.dataset.at)

test('each thing that is missing is named, where the verdict is too; a tap goes to its very field', async () => {
  const { page, close } = await open({ path: '/index.html', viewport: PHONE, hasTouch: true })
  const list = await withoutLake(page)
  const named = ['How far the lake rises: 6 in', 'How far the lake drops: 6 in', 'How open it is to the wind']
  for (const name of named) expect(await list.textContent()).toContain(name)
  await page.locator('.findings .unsaid').waitFor()
  expect(await page.locator('.finding', { has: page.locator('.unsaid') }).textContent()).toContain(
    'Tell us about your shore: how far the lake rises and drops, how open it is to the wind',
  )
  await list.getByRole('button', { name: 'Change: How far the lake drops' }).tap()
  await page.locator('.start').waitFor()
  expect(await focused(page)).toBe('levels.low')
  // Only what is missing is asked.
  expect(await page.locator('.start > .hint').first().textContent()).toBe('Question 1 of 2')
  await page.keyboard.type('2')
  await button(page, 'Next').tap()
  expect(await read(page, (e) => e.design.site.levels.low)).toBeCloseTo(-2 * FOOT, 6)
  expect(await read(page, (e) => e.design.site.assumed)).toEqual(['levels.high', 'wind'])
  await page.getByRole('radio', { name: 'Sheltered cove' }).tap()
  await button(page, 'Show my dock').tap()
  await list.waitFor()
  expect(await list.locator('li').count()).toBe(1)
  expect(await list.textContent()).toContain('How far the lake rises: 6 in')
  await close()
})

test('what is shown counts as said when it is confirmed, or typed again as it stands', async () => {
  const { page, close } = await open({ path: '/index.html' })
  const list = await withoutLake(page)
  const before = await read(page, (e) => e.design.site.levels)
  await list.getByRole('button', { name: 'That’s right: How far the lake rises' }).click()
  expect(await read(page, (e) => e.design.site.assumed)).toEqual(['levels.low', 'wind'])
  const drops = page.locator('.group').getByRole('textbox', { name: 'Drops by' })
  // Only looked at, nothing is said.
  await drops.focus()
  await drops.blur()
  expect(await read(page, (e) => e.design.site.assumed)).toEqual(['levels.low', 'wind'])
  await drops.fill('')
  await drops.fill('6 in')
  await drops.press('Enter')
  expect(await read(page, (e) => e.design.site.assumed)).toEqual(['wind'])
  expect(await read(page, (e) => e.design.site.levels)).toEqual(before)
  await button(page, 'Undo').click()
  expect(await read(page, (e) => e.design.site.assumed)).toEqual(['levels.low', 'wind'])
  await close()
})

test('depths that were only taken are confirmed in the table too; the bottom by a tap on it', async () => {
  const { page, close } = await open({ path: '/index.html' })
  await page.locator('.start').waitFor()
  await button(page, 'Skip the questions').click()
  await page.locator('summary', { hasText: 'How deep is it?' }).click()
  const far = page.locator('.depths tr[data-row="3"]')
  expect(await far.textContent()).toContain('Our guess.')
  await far.getByRole('button', { name: 'That’s right' }).click()
  const near = page.locator('.depths tr[data-row="2"] [data-cell="depth"] input')
  await near.fill('1 ft 0 in')
  await near.fill('1 ft')
  await near.press('Enter')
  expect((await shore(page)).map(([, , assumed]) => assumed)).toEqual([true, false, false, false])
  await choose(page.locator('.group').getByRole('radio', { name: 'Sand', exact: true }))
  expect(await read(page, (e) => e.design.site.assumed)).toEqual(['levels', 'wind'])
  await close()
})

test('Next is there as soon as what is typed can be taken, in each question, and takes it', async () => {
  const { page, close } = await open({ path: '/index.html', viewport: PHONE, hasTouch: true })
  await page.locator('.start').waitFor()
  const field = (at: string, name: string) =>
    page.locator(`[data-at="${at}"]`).getByRole('textbox', { name, exact: true })
  await field('near', 'How deep').pressSequentially('2')
  expect(await button(page, 'Next').count()).toBe(0)
  await field('far', 'How deep').pressSequentially('4 and')
  expect(await button(page, 'Next').count()).toBe(0)
  await field('far', 'How deep').fill('4')
  await button(page, 'Next').tap()
  expect((await feet(page)).slice(2)).toEqual([
    [10, 2],
    [30, 4],
  ])
  await field('bank', 'How high').pressSequentially('2')
  await button(page, 'Next').waitFor()
  await field('bank', 'How high').fill('two')
  await button(page, 'Not sure, skip').waitFor()
  await field('bank', 'How high').fill('2')
  await button(page, 'Next').tap()
  expect((await feet(page))[0]).toEqual([-10, -2])
  await button(page, 'Two more questions').tap()
  await field('levels.high', 'Up by').pressSequentially('1')
  await button(page, 'Next').tap()
  expect(await read(page, (e) => e.design.site.assumed)).toEqual(['bottom', 'levels.low', 'wind'])
  await close()
})

test('what cannot be taken keeps its question, with why', async () => {
  const { page, close } = await open({ path: '/index.html' })
  await page.locator('.start').waitFor()
  await depthAt(page, '10 ft', '2 ft').click()
  await depthAt(page, '30 ft', '4 ft').click()
  const far = page.locator('[data-at="far"]').getByRole('textbox', { name: 'How far out' })
  await far.fill('8')
  await button(page, 'Next').click()
  expect(await page.locator('.start .fault').textContent()).toContain('Keep this one farther than 10 ft')
  expect(await page.locator('h2#start-question').textContent()).toContain('How deep')
  await far.fill('40')
  await button(page, 'Next').click()
  expect((await feet(page))[3]).toEqual([40, 4])
  await close()
})

test('the lake’s levels and wind by tapping, and the way back', async () => {
  const { page, close } = await open({ path: '/index.html', viewport: PHONE, hasTouch: true })
  await page.locator('.start').waitFor()
  await button(page, 'Not sure, skip').tap()
  await button(page, 'Not sure, skip').tap()
  await button(page, 'Two more questions').tap()
  await page.getByRole('radio', { name: '1 ft', exact: true }).tap()
  expect(await read(page, (e) => e.design.site.levels)).toEqual({ low: -FOOT, high: FOOT })
  await button(page, 'Next').tap()
  await page.getByRole('radio', { name: 'Open, small lake' }).tap()
  expect(await read(page, (e) => e.design.site.wind)).toEqual({ speed: 15, fetch: 1800 })
  await button(page, 'Back').tap()
  expect(await page.getByRole('radio', { name: '1 ft', exact: true }).isChecked()).toBe(true)
  await close()
})

test('the example is one tap away and one step back; a link pasted opens its dock', async () => {
  const { page, close } = await open({ path: '/index.html' })
  await page.locator('.start').waitFor()
  await button(page, 'Show me an example').click()
  expect(await read(page, (e) => e.design.name)).toBe('Quillet Cove')
  expect(await page.locator('.notice').textContent()).toContain('This is an example')
  const design = await read(page, (e) => e.design)
  await page.locator('summary', { hasText: 'File' }).click()
  await button(page, 'Start over').click()
  await page.locator('.start').waitFor()
  expect(await read(page, (e) => e.design.name)).toBe('')
  await page.locator('summary', { hasText: 'I have a file or a link' }).click()
  const field = page.getByLabel('Paste the link here')
  await field.fill('https://lake.example/')
  await field.press('Enter')
  expect(await page.locator('.have .fault').textContent()).toContain('couldn’t open that link')
  await field.fill(`https://lake.example/plan${linkOf({ ...design, name: 'Pasted' })}`)
  await field.press('Enter')
  await page.locator('.start').waitFor({ state: 'detached' })
  expect(await read(page, (e) => e.design.name)).toBe('Pasted')
  await close()
})

test('an answer is kept, and what is kept is not asked for again', async () => {
  const { page, context, close } = await open({ path: '/index.html', fresh: true })
  await page.locator('.start').waitFor()
  await depthAt(page, '10 ft', '2 ft').click()
  await told(page, 'leadline-change')
  const again = await open({ path: '/index.html', context })
  expect((await feet(again.page))[2]).toEqual([10, 2])
  expect(await again.page.locator('.start').count()).toBe(0)
  expect(await again.page.locator('.panel .care').first().textContent()).toContain('What the bottom is')
  await again.close()
  await close()
})

for (const scheme of ['light', 'dark'] as const)
  test(`axe finds nothing against any question (${scheme})`, async () => {
    const { page, close } = await open({ path: '/index.html', colorScheme: scheme })
    await page.locator('.start').waitFor()
    for (let step = 0; step < 5; step++) {
      const { violations } = await new AxeBuilder({ page: page as never })
        .include(['leadline-dock', '.start'] as never)
        .analyze()
      expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([])
      if (step < 4) await page.getByRole('button', { name: /^(Not sure, skip|Two more questions)$/ }).click()
    }
    expect(await events(page, 'leadline-error')).toEqual([])
    await close()
  })

test('a dock that the page gives while the element begins is not asked for, whenever it comes', async () => {
  const { page, close } = await open({ path: '/index.html' })
  const asked = await page.evaluate(async () => {
    const pause = (ms: number) => new Promise((done) => setTimeout(done, ms))
    const given = (document.querySelector('leadline-dock') as unknown as { design: object }).design
    const found: number[] = []
    for (const after of [0, 2, 4, 6, 8, 10, 12, 15, 20, 25, 30, 40, 60, 90]) {
      const one = document.createElement('leadline-dock') as HTMLElement & { design: unknown }
      one.setAttribute('loading', 'eager')
      const ready = new Promise((done) => one.addEventListener('leadline-ready', done, { once: true }))
      document.body.append(one)
      await pause(after)
      one.design = { ...given, name: 'From the page' }
      await ready
      await pause(50)
      if (one.shadowRoot!.querySelector('[data-starting]')) found.push(after)
      one.remove()
    }
    return found
  })
  expect(asked).toEqual([])
  await close()
})
