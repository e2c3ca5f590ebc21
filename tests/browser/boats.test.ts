/** Boats on the page: an edge that is touched takes the boat, each is seen in every picture, and one figure is told of each. */
import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import words from '../../rules/words/en/people-and-boat.json' with { type: 'json' }
import { colorAt, settled, stats } from './scene-in-page.ts'
import { choose } from './support/choose.ts'
import { DESKTOP, open, PHONE, read, withBrowser } from './support/open.ts'

withBrowser()

const asked = (page: Page) => read(page, (e) => [e.design.dock.boat, e.design.dock.boats] as const)
const edge = (page: Page, name: string) => page.getByRole('button', { name, exact: true })
const inStrip = (page: Page) => page.locator('.strip [data-boat]')
const inPlan = (page: Page) => page.locator('.edge-picture path.boat:not(.within)')

async function pontoon(page: Page): Promise<void> {
  await choose(page.getByRole('radio', { name: 'Pontoon boat' }))
  await inStrip(page).waitFor()
}

/** Of the boat's inner end from the water's edge, by the distances that stand under the section; m. Its scale is another where a boat lies farther out. */
const fromEdge = (page: Page): Promise<number> =>
  page.locator('.strip').evaluate((strip) => {
    const places = [...strip.querySelectorAll<SVGGElement>('.distances g')].map((tick) => ({
      feet: Number.parseInt(tick.textContent!, 10),
      x: Number(/translate\(([\d.]+)/.exec(tick.getAttribute('transform')!)![1]),
    }))
    const edge = places.find(({ feet }) => feet === 0)!
    const far = places.at(-1)!
    const boat = strip.querySelector('[data-boat]')!.getBoundingClientRect()
    const x = boat.left - strip.querySelector('svg')!.getBoundingClientRect().left
    return ((x - edge.x) * far.feet * 0.3048) / (far.x - edge.x)
  })

test.each([
  ['desktop', DESKTOP, false],
  ['phone', PHONE, true],
] as const)('an edge that is touched takes the boat, on a %s', async (_, viewport, hasTouch) => {
  const { page, close } = await open({ viewport, hasTouch })
  await pontoon(page)
  // It begins at the lake end, on the left.
  expect((await asked(page))[0]).toMatchObject({ kind: 'pontoon', side: 'left' })
  expect(await edge(page, 'left edge of section 5').getAttribute('aria-pressed')).toBe('true')
  const before = await fromEdge(page)
  const taken = edge(page, 'right edge of section 3')
  // The whole dock is in the picture, each edge as large as a finger.
  const fits = await page.locator('.edge-scroll').evaluate((box) => ({
    aside: box.scrollWidth - box.clientWidth,
    least: Math.min(
      ...[...box.querySelectorAll('button')].flatMap((one) => [one.offsetWidth, one.offsetHeight]),
    ),
  }))
  expect(fits.aside).toBe(0)
  expect(fits.least).toBeGreaterThanOrEqual(36)
  await (hasTouch ? taken.tap() : taken.click())
  const [end, named] = await asked(page)
  expect(end).toBeUndefined()
  expect(named).toMatchObject([{ kind: 'pontoon', section: 's3', edge: 'right' }])
  expect(await taken.getAttribute('aria-pressed')).toBe('true')
  // Two sections of 8 ft with their gaps nearer to the shore.
  expect(before - (await fromEdge(page))).toBeCloseTo(4.9276, 1)
  expect(await page.getByRole('group', { name: 'Length of the boat' }).textContent()).toContain(
    'Pontoon, 22 ft',
  )
  await close()
})

test('two boats are two, by keyboard too: in the pictures, in the request, and each with one figure for the water under it', async () => {
  const { page, close } = await open()
  await pontoon(page)
  await page.getByRole('button', { name: 'Add another boat' }).click()
  await page.getByRole('radio', { name: 'Fishing boat' }).nth(1).check()
  expect((await asked(page))[1]).toMatchObject([{ kind: 'fishing', section: 's5', edge: 'right' }])
  expect(await inStrip(page).count()).toBe(2)
  // Each has a picture of its edges, with both in it.
  expect(await inPlan(page).count()).toBe(4)
  const start = edge(page, 'right edge of section 2').last()
  await start.focus()
  await page.keyboard.press('Enter')
  expect((await asked(page))[1]).toMatchObject([{ section: 's2', edge: 'right' }])
  const places = page.getByRole('combobox', { name: /^Where it lies/ })
  expect(await places.nth(1).locator('option:checked').textContent()).toMatch(
    /^right edge of section 2: .* short$/,
  )
  // So shallow there: what is found says the same figure as the panel, and so does the request.
  const [before, after] = words['carried.boat.touches'].split('{water}') as [string, string]
  const said = (await page.locator('.hint', { hasText: before }).last().textContent())!
  expect(said.endsWith(after)).toBe(true)
  const short = said.slice(before.length, -after.length)
  const found = await read(page, (e) =>
    e.dock.findings.filter((f) => f.code === 'boat-aground').map((f) => f.values.short!.value),
  )
  expect(found.length).toBeGreaterThan(0)
  await page.getByRole('button', { name: 'Ask for a quote' }).click()
  const dialog = page.getByRole('dialog')
  expect(await dialog.textContent()).toContain('Pontoon, 22 ft: ')
  expect(await dialog.textContent()).toContain(`Fishing boat, 14 ft: ${short} too little water at low water`)
  await page.keyboard.press('Escape')
  // Across the lake end the pontoon is in its way, which reaches out past it; by name it goes back to deep water.
  const offered = await places.nth(1).locator('option').allTextContents()
  expect(offered.filter((name) => name.startsWith('lake edge'))).toEqual([])
  await places.nth(1).selectOption(offered.find((name) => name.startsWith('right edge of section 5'))!)
  expect((await asked(page))[1]).toMatchObject([{ section: 's5', edge: 'right' }])
  const { violations } = await new AxeBuilder({ page: page as never })
    .include(['leadline-dock', '.exposure:has([value=pontoon])'] as never)
    .setLegacyMode(true)
    .analyze()
  expect(violations.map((v) => v.id)).toEqual([])
  await page.getByRole('radio', { name: 'None', exact: true }).nth(1).click()
  await page.getByRole('radio', { name: 'None', exact: true }).check()
  expect(await asked(page)).toEqual([undefined, undefined])
  expect(await inStrip(page).count()).toBe(0)
  await close()
})

test('the boat is seen in the scene, and all of that is drawn in at most forty draws', async () => {
  const { page, close } = await open({ webgl: true, viewport: { width: 600, height: 900 } })
  await page.locator('.stage[data-scene="live"]').waitFor()
  await settled(page)
  const end = await read(page, (e) => e.dock.sections.find(({ id }) => id === 's5')!)
  // On the fore deck of a runabout, white, well before its middle; without it the shallows behind it.
  const boat = { kind: 'runabout', length: 5.4864, beam: 2.3368, height: 0.762, draught: 0.4572, mass: 1179 }
  const fore = [
    end.x + end.length / 2 + 0.36 * boat.length,
    end.y - end.width / 2 - 0.1 - boat.beam / 2,
    boat.height * 0.97,
  ] as const
  const moor = (boats: readonly object[]) =>
    page.locator('leadline-dock').evaluate((e, boats) => {
      const host = e as never as { design: { dock: object } }
      host.design = { ...host.design, dock: { ...host.design.dock, boats } }
    }, boats)
  await moor([{ id: 'a', ...boat, section: 's5', edge: 'right' }])
  await page.waitForFunction(() =>
    performance.getEntriesByType('resource').some(({ name }) => /moored-boats/.test(name)),
  )
  await settled(page)
  const white = await colorAt(page, fore)
  await moor([])
  await settled(page)
  const water = await colorAt(page, fore)
  expect(white.red).toBeGreaterThan(water.red + 30)
  expect(white.blue).toBeGreaterThan(water.blue + 30)
  const { mostDrawCalls } = await stats(page)
  expect(mostDrawCalls).toBeGreaterThan(5)
  expect(mostDrawCalls).toBeLessThanOrEqual(40)
  await close()
})

test('the water that a boat comes in and leaves by is drawn where it is given its place: dashed, and marked where none is free', async () => {
  const { page, close } = await open()
  const lay = (draught: number) =>
    page.evaluate((deep) => {
      const dock = document.querySelector('leadline-dock')!
      const design = structuredClone(dock.design)
      const boat = { kind: 'runabout' as const, length: 5, beam: 2, height: 0.6, draught: deep, mass: 900 }
      const soundings = [-3, 0, 5, 40].map((distance) => ({
        distance,
        offset: 0,
        depth: Math.min(2, distance * 0.4),
      }))
      dock.design = {
        ...design,
        site: { ...design.site, soundings },
        dock: {
          ...design.dock,
          sections: 5,
          boats: [{ id: 'b1', ...boat, section: 's5', edge: 'right' as const, along: 0.5 }],
        },
      }
    }, draught)
  const way = page.locator('.edge-picture polygon.way')
  await lay(0.3)
  await way.waitFor()
  // One and a half boat lengths off its end, as wide as the boat.
  const at = (await way.getAttribute('points'))!.split(' ').map((place) => place.split(',').map(Number))
  const extent = (k: 0 | 1): number => Math.max(...at.map((p) => p[k]!)) - Math.min(...at.map((p) => p[k]!))
  expect(extent(0)).toBeCloseTo(7.5, 6)
  expect(extent(1)).toBeCloseTo(2, 6)
  expect(await way.getAttribute('class')).toBe('way')
  await page.getByText('is its free way in and out').waitFor()
  await page.getByText('your authority’s to say: ask it').waitFor()
  // Too deep for this lake on all sides.
  await lay(2.5)
  await page.locator('.edge-picture polygon.way.taken').waitFor()
  await page.getByText('no other side is free').waitFor()
  await close()
})
