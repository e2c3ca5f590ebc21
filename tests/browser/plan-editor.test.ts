/** A dock shaped by hand on the page: by keyboard, by mouse, by touch; what cannot be is shown and told, and nothing is changed by it. */
import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import type { Rectangle } from '../../rules/layout/footprint.ts'
import { choose } from './support/choose.ts'
import { nextFrame, open, PHONE, read, withBrowser } from './support/open.ts'

withBrowser()

const FT = 0.3048
const asked = (page: Page) => read(page, (e) => e.design.dock)
const plan = async (page: Page) => (await asked(page)).plan ?? []
const stops = (page: Page) =>
  read(page, (e) => e.dock.findings.filter((f) => f.severity === 'stop').map((f) => f.code))
const undo = (page: Page) => page.getByRole('button', { name: 'Undo' })
/** By its name in the plan, whatever its number. */
const piece = (page: Page, name: string) =>
  page.getByRole('button', { name: new RegExp(`^${name}, number \\d+ in the order of work$`) })
const add = (page: Page, edge: string, name: string) =>
  page.getByRole('button', { name: `Add a section on the ${edge} edge of ${name}`, exact: true })
const own = async (page: Page): Promise<void> => {
  await choose(page.getByRole('radio', { name: 'Your own shape' }))
  await page.getByRole('group', { name: 'The dock from above' }).waitFor()
}

/** What each section covers, m, from the shore out: where they lie says what was built, whatever they are called. */
const covered = (page: Page): Promise<Rectangle[]> =>
  read(page, (e) =>
    e.dock.sections
      .filter(({ role }) => role !== 'ramp')
      .map(({ x, y, heading, length, width }) => {
        const [c, s] = [
          Math.round(Math.cos((heading * Math.PI) / 180)),
          Math.round(Math.sin((heading * Math.PI) / 180)),
        ]
        const [ex, ey] = [x + c * length, y + s * length]
        const [px, py] = [(Math.abs(s) * width) / 2, (Math.abs(c) * width) / 2]
        const mm = (n: number) => Math.round(n * 1000) / 1000
        return {
          x0: mm(Math.min(x, ex) - px),
          x1: mm(Math.max(x, ex) + px),
          y0: mm(Math.min(y, ey) - py),
          y1: mm(Math.max(y, ey) + py),
        }
      }),
  )
const sorted = (all: readonly Rectangle[]): string[] =>
  all.map(({ x0, x1, y0, y1 }) => [x0, x1, y0, y1].join(' ')).sort()

/** The double slip that is offered by picture, as far out as the demo dock. */
async function offered(page: Page): Promise<string[]> {
  await choose(page.getByRole('radio', { name: 'Double slip' }))
  await page.getByRole('group', { name: 'The dock from above' }).waitFor()
  const slip = sorted(await covered(page))
  expect(slip.length).toBe(12)
  await undo(page).click()
  return slip
}

test('a double slip is built by keyboard, and each step taken back by one undo', async () => {
  const { page, close } = await open()
  const wanted = await offered(page)
  const before = await asked(page)
  await own(page)
  expect((await plan(page)).map(({ id }) => id)).toEqual(['s1', 's2', 's3', 's4', 's5'])
  const press = async (where: string, name: string): Promise<void> => {
    await add(page, where, name).focus()
    await page.keyboard.press('Enter')
  }
  // The run has the corner at its third section. What was added has the focus, and its own edges come next.
  await piece(page, 'section 3').focus()
  await page.keyboard.press('Enter')
  await press('left', 'section 3')
  // After the frame in which it is drawn.
  await expect
    .poll(() =>
      page.evaluate(() => document.activeElement?.shadowRoot?.activeElement?.getAttribute('data-id')),
    )
    .toBe('h1')
  await press('left', 'end section 1')
  await press('lake', 'end section 2')
  await press('lake', 'end section 3')
  await press('right', 'section 3')
  await press('right', 'end section 5')
  await press('lake', 'end section 6')
  await press('lake', 'end section 7')
  expect(sorted(await covered(page))).toEqual(wanted)
  expect(await stops(page)).toEqual([])
  for (let i = 0; i < 9; i++) await undo(page).click()
  expect(await asked(page)).toEqual(before)
  await close()
})

test('a double slip is built by mouse, and a whole arm dragged to another section', async () => {
  const { page, close } = await open()
  const wanted = await offered(page)
  await own(page)
  for (const [edge, name] of [
    ['left', 'section 3'],
    ['left', 'end section 1'],
    ['lake', 'end section 2'],
    ['lake', 'end section 3'],
    ['right', 'section 3'],
    ['right', 'end section 5'],
    ['lake', 'end section 6'],
    ['lake', 'end section 7'],
  ] as const)
    await add(page, edge, name).click()
  expect(sorted(await covered(page))).toEqual(wanted)
  // The whole left arm is dragged a section farther out: it would meet nothing there, and its finger goes with it.
  const first = piece(page, 'end section 1')
  await page.locator('.plan-picture').evaluate((e) => e.scrollIntoView({ block: 'center' }))
  await nextFrame(page)
  const at = (await first.boundingBox())!
  const pitch = (await piece(page, 'section 4').boundingBox())!.height
  const [x, y] = [at.x + at.width / 2, at.y + at.height / 2]
  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move(x, y - pitch / 2, { steps: 4 })
  await page.mouse.move(x, y - pitch - 1, { steps: 4 })
  // Shown where it would hang, and nothing changed yet.
  await expect.poll(() => page.locator('.plan-ghost').count()).toBe(4)
  expect(sorted(await covered(page))).toEqual(wanted)
  await page.mouse.up()
  await nextFrame(page)
  const moved = (await plan(page)).find(({ id }) => id === 'h1')!
  expect(moved).toMatchObject({ on: 's4', edge: 'left', with: 'start' })
  expect(moved.along).toBeCloseTo(4 * FT, 6)
  expect(await stops(page)).toEqual([])
  await undo(page).click()
  expect(sorted(await covered(page))).toEqual(wanted)
  await close()
})

test('a double slip is built by touch, and an arm dragged by a finger', async () => {
  const { page, context, close } = await open({ viewport: PHONE, hasTouch: true, fresh: true })
  const wanted = await offered(page)
  await own(page)
  // A finger's mark: 44 px, wherever in it.
  const mark = add(page, 'left', 'section 3')
  await mark.scrollIntoViewIfNeeded()
  const hit = await mark.evaluate((button) => {
    const { left, top, width, height } = button.getBoundingClientRect()
    const root = button.getRootNode() as ShadowRoot
    const at = (dx: number, dy: number) =>
      root.elementFromPoint(left + width / 2 + dx, top + height / 2 + dy) === button
    return [at(-21, 0), at(21, 0), at(0, -21), at(0, 21)]
  })
  expect(hit).toEqual([true, true, true, true])
  for (const [edge, name] of [
    ['left', 'section 3'],
    ['left', 'end section 1'],
    ['lake', 'end section 2'],
    ['lake', 'end section 3'],
    ['right', 'section 3'],
    ['right', 'end section 5'],
    ['lake', 'end section 6'],
    ['lake', 'end section 7'],
  ] as const)
    await add(page, edge, name).tap()
  expect(sorted(await covered(page))).toEqual(wanted)
  // Chosen by a tap, then slid by a finger: from flush with the end to flush with the start of its edge, 4 ft nearer the shore.
  const arm = piece(page, 'end section 5')
  await arm.tap()
  const at = (await arm.boundingBox())!
  const foot = (await piece(page, 'section 4').boundingBox())!.height / 8
  const [x, y] = [at.x + at.width / 2, at.y + at.height / 2]
  const cdp = await context.newCDPSession(page)
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', down: number) =>
    cdp.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: type === 'touchEnd' ? [] : [{ x, y: y + down }],
    })
  await touch('touchStart', 0)
  for (let i = 1; i <= 8; i++) await touch('touchMove', (i * 4 * foot) / 8)
  await touch('touchEnd', 0)
  await nextFrame(page)
  expect((await plan(page)).find(({ id }) => id === 'h5')).toMatchObject({
    on: 's3',
    edge: 'right',
    along: 0,
  })
  await undo(page).click()
  expect(sorted(await covered(page))).toEqual(wanted)
  await close()
})

test('what cannot be is drawn where it was asked for, with why, and nothing is changed; arrows go on from there', async () => {
  const { page, close } = await open()
  await own(page)
  await add(page, 'left', 'section 3').click()
  await add(page, 'left', 'section 5').click()
  const before = await asked(page)
  const low = piece(page, 'end section 1')
  await low.click()
  await piece(page, 'end section 2').click()
  expect(await piece(page, 'end section 2').getAttribute('aria-pressed')).toBe('true')
  // Lying along its edge, 8 ft from the end shoreward, then farther: its corner comes off the end.
  const along = page.getByRole('textbox', { name: 'From the corner of the edge that it hangs on' })
  await along.fill('7 ft')
  await along.press('Enter')
  const why = page.locator('.plan-why')
  await why.waitFor()
  expect(await why.textContent()).toContain('end section 2 would share 1 ft with section 5')
  expect(await why.textContent()).toContain('a pair of hooks takes 2 ft')
  expect(await page.locator('.plan-ghost[data-wrong]').count()).toBe(1)
  expect(await asked(page)).toEqual(before)
  // Its arm moved onto where the other one is.
  await page.getByRole('button', { name: 'Leave it as it was' }).click()
  expect(await page.locator('.plan-ghost').count()).toBe(0)
  // By arrow from place to place: flush with the end, middle, flush with the start.
  await piece(page, 'end section 2').focus()
  await page.keyboard.press('ArrowDown')
  expect((await plan(page)).find(({ id }) => id === 'h2')!.along).toBeCloseTo(2 * FT, 6)
  await page.keyboard.press('ArrowDown')
  expect((await plan(page)).find(({ id }) => id === 'h2')!.along).toBe(0)
  await page.keyboard.press('Shift+ArrowUp')
  expect((await plan(page)).find(({ id }) => id === 'h2')!.along).toBeCloseTo(0.0254, 6)
  for (let i = 0; i < 3; i++) await undo(page).click()
  expect(await asked(page)).toEqual(before)
  // Where another one hangs already the next place cannot be; from there on the arrows go on, and back.
  const first = piece(page, 'end section 1')
  await first.click()
  await add(page, 'left', 'section 3').click()
  const both = await asked(page)
  await first.focus()
  await page.keyboard.press('Enter')
  await page.keyboard.press('ArrowDown')
  await why.waitFor()
  expect(await why.textContent()).toContain('On each other: end section 1 and end section 3')
  await page.keyboard.press('ArrowDown')
  expect(await why.textContent()).toContain('On each other')
  expect(await asked(page)).toEqual(both)
  await page.keyboard.press('ArrowUp')
  await page.keyboard.press('ArrowUp')
  await why.waitFor({ state: 'detached' })
  expect(await asked(page)).toEqual(both)
  await undo(page).click()
  expect(await asked(page)).toEqual(before)
  const { violations } = await new AxeBuilder({ page }).include('leadline-dock').analyze()
  expect(violations.map(({ id }) => id)).toEqual([])
  await close()
})

test('a section is turned, given another size, moved by choosing an edge, and taken away with what hangs on it, which is told', async () => {
  const { page, close } = await open()
  await own(page)
  await add(page, 'left', 'section 3').click()
  await add(page, 'left', 'end section 1').click()
  const two = await asked(page)
  await piece(page, 'end section 1').click()
  await page.getByRole('button', { name: 'Turn', exact: true }).click()
  expect((await plan(page)).find(({ id }) => id === 'h1')).toMatchObject({
    on: 's3',
    edge: 'left',
    with: 'left',
  })
  await undo(page).click()
  await page.getByRole('combobox', { name: 'Size of this section' }).selectOption('5x8')
  expect((await plan(page)).find(({ id }) => id === 'h1')).toMatchObject({ frame: '5x8' })
  await undo(page).click()
  expect(await asked(page)).toEqual(two)
  await page.getByRole('button', { name: 'Move', exact: true }).click()
  // Not on what hangs on it.
  expect(await page.getByRole('button', { name: /^Hang it on .* of end section/ }).count()).toBe(0)
  await page.getByRole('button', { name: 'Hang it on the right edge of section 4', exact: true }).click()
  expect((await plan(page)).find(({ id }) => id === 'h1')).toMatchObject({ on: 's4', edge: 'right' })
  await undo(page).click()
  await piece(page, 'end section 1').focus()
  await page.keyboard.press('Delete')
  expect((await plan(page)).map(({ id }) => id)).toEqual(['s1', 's2', 's3', 's4', 's5'])
  await page
    .getByText('Taken away: end section 1 and what hung on it, 2 sections in all. Undo brings them back.')
    .waitFor()
  await undo(page).click()
  expect(await asked(page)).toEqual(two)
  await close()
})

test('another shape by picture keeps reach and ramp; a shop keeps a shape of its own in its catalog', async () => {
  const { page, close } = await open()
  await choose(page.getByRole('radio', { name: 'U', exact: true }))
  await page.getByRole('group', { name: 'The dock from above' }).waitFor()
  expect((await plan(page)).length).toBe(9)
  await page.getByRole('button', { name: 'One section more' }).click()
  expect((await plan(page)).length).toBe(10)
  await page.getByRole('button', { name: 'One section less' }).click()
  await choose(page.getByRole('radio', { name: 'T', exact: true }))
  expect(await asked(page)).toMatchObject({ sections: 5, ramp: true, head: { shape: 'tee', sections: 2 } })
  expect((await asked(page)).plan).toBeUndefined()
  await page
    .locator('leadline-dock')
    .first()
    .evaluate((e) => e.setAttribute('audience', 'shop'))
  await choose(page.getByRole('radio', { name: 'H', exact: true }))
  await add(page, 'lake', 'section 5').click()
  const kept = await plan(page)
  expect(await page.getByRole('radio', { name: 'Your own shape' }).isChecked()).toBe(true)
  await page.getByText('Keep this shape for your shop').click()
  await page.getByRole('textbox', { name: 'Name of the shape' }).fill('Two walks')
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save the catalog with it' }).click(),
  ])
  const chunks: Buffer[] = []
  for await (const part of await file.createReadStream()) chunks.push(part as Buffer)
  const catalog = JSON.parse(Buffer.concat(chunks).toString('utf8'))
  expect(catalog.templates).toEqual([{ code: 'shape-1', name: 'Two walks', frame: '4x8', plan: kept }])
  // On a page that has that catalog it is one of those to begin with.
  await choose(page.getByRole('radio', { name: 'Straight', exact: true }))
  await page
    .locator('leadline-dock')
    .first()
    .evaluate((e, to) => Object.assign(e, { catalog: to }), catalog)
  await choose(page.getByRole('radio', { name: 'Two walks' }))
  expect(await plan(page)).toEqual(kept)
  await close()
})

test('the scene offers the free edges too, while the dock is shaped; a touch there adds a section', async () => {
  const { page, close } = await open({ webgl: true })
  await page.locator('.stage[data-scene="live"]').waitFor()
  const offered = page.locator('.scene-add')
  expect(await offered.count()).toBe(0)
  await own(page)
  await offered.first().waitFor()
  // Two sides of four sections, and the lake end; as many as in the plan.
  expect(await offered.count()).toBe(9)
  expect(await page.locator('.plan-add').count()).toBe(9)
  await page
    .getByRole('button', { name: 'In the picture: add a section on the left edge of section 5', exact: true })
    .click()
  expect((await plan(page)).at(-1)).toMatchObject({ id: 'h1', on: 's5', edge: 'left', with: 'start' })
  expect(await piece(page, 'end section 1').getAttribute('aria-pressed')).toBe('true')
  await choose(page.getByRole('radio', { name: 'Straight', exact: true }))
  await expect.poll(() => offered.count()).toBe(0)
  await close()
})

test('a corner piece turns the run to the right, and the run goes on from it', async () => {
  const { page, close } = await open()
  await own(page)
  await choose(page.getByRole('radio', { name: 'corner, 45° to the right' }))
  await piece(page, 'section 5').click()
  await add(page, 'lake', 'section 5').click()
  expect((await plan(page)).at(-1)).toMatchObject({ on: 's5', edge: 'end', with: 'end', frame: 'corner-45' })
  await choose(page.getByRole('radio', { name: 'standing out' }))
  // It looks to the lake and to the right alike: its one free edge.
  const [corner] = (await plan(page)).slice(-1)
  await page.locator(`.plan-section[data-id="${corner!.id}"] ~ .plan-add`).click()
  const [last] = (await read(page, (e) => e.dock.sections)).slice(-1)
  expect(last).toMatchObject({ heading: 315, on: corner!.id })
  expect(await stops(page)).toEqual([])
  for (let i = 0; i < 2; i++) await undo(page).click()
  expect((await plan(page)).map(({ id }) => id)).toEqual(['s1', 's2', 's3', 's4', 's5'])
  await close()
})
