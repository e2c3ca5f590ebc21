/** The bed in plan and from files: a pasted table is shown before it is taken in, a boulder is put under a brace and gone round. */
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { atLength } from './support/at-length.ts'
import { open, PHONE, read, withBrowser } from './support/open.ts'

withBrowser()

const FOOT = 0.3048

async function unfold(page: Page, what: 'file' | 'plan'): Promise<void> {
  await page.locator('summary', { hasText: 'How deep is it?' }).click()
  await page.locator('.depths table').waitFor()
  const [summary, part] =
    what === 'file'
      ? ['Paste or open a survey', '.soundings-file']
      : ['Depths, boulders and stumps from above', '.bed-plan canvas']
  await page.locator('summary', { hasText: summary }).click()
  await page.locator(part!).waitFor()
}
const soundings = (page: Page) =>
  read(page, (e) => e.design.site.soundings.map((s) => [s.distance, s.offset, s.depth]))
const obstacles = (page: Page) => read(page, (e) => e.design.site.obstacles ?? [])
const rounded = (rows: number[][]) => rows.map((row) => row.map((v) => Number(v.toFixed(3))))

test('a pasted table in feet, negative up, is shown as it was read and taken in when confirmed: one step of undo', async () => {
  const { page, close } = await open()
  await unfold(page, 'file')
  const before = await soundings(page)
  const box = page.locator('.soundings-file')
  await box
    .locator('textarea')
    .fill(
      'Distance (ft)\tLeft (ft)\tBed elev. (ft)\n-8\t0\t2\n0\t0\t0\n12\t0\t-2.5\n12\t6\t-3\n24\t0\tdeep\n36\t0\t-4.5',
    )
  await box.getByRole('button', { name: 'Read it' }).click()
  await box.locator('.first-rows').waitFor()
  expect(await soundings(page)).toEqual(before)
  expect(await box.textContent()).toContain('6 lines, its columns parted by tabs')
  expect(await box.getByLabel('Under water the figures are').inputValue()).toBe('up')
  expect(await box.getByLabel('Depths are in').inputValue()).toBe('ft')
  expect(await box.getByLabel('Column 3, Bed elev. (ft)').inputValue()).toBe('depth')
  expect(await box.locator('tbody tr').nth(3).textContent()).toContain('12 ft out, 3 ft deep, 6 ft left')
  expect(await box.locator('.left-out').textContent()).toMatch(
    /Line 6: “deep” in Column 3.*expected a length like 7' 2"/,
  )
  // Read as depths they would lie on land; back to heights.
  await box.getByLabel('Under water the figures are').selectOption('down')
  expect(await box.locator('tbody tr').nth(3).textContent()).toContain('3 ft high')
  await box.getByLabel('Under water the figures are').selectOption('up')
  await box.getByLabel('Depths that are there already').selectOption('replace')
  await box.getByRole('button', { name: 'Take in 5 depths' }).click()
  expect(rounded(await soundings(page))).toEqual(
    rounded(
      [
        [-8, 0, -2],
        [0, 0, 0],
        [12, 0, 2.5],
        [12, 6, 3],
        [36, 0, 4.5],
      ].map((row) => row.map((v) => v * FOOT)),
    ),
  )
  expect(await box.locator('[role="status"]').textContent()).toContain('5 depths are taken in')
  await page.keyboard.press('Control+z')
  expect(await soundings(page)).toEqual(before)
  await close()
})

test('a file that is none is told, with its line', async () => {
  const { page, close } = await open()
  await unfold(page, 'file')
  const box = page.locator('.soundings-file')
  await box.locator('input[type="file"]').setInputFiles({
    name: 'track.gpx',
    mimeType: 'application/gpx+xml',
    buffer: Buffer.from('<gpx>\n<wpt lat="46.1" lon="-88.2">\n</gpx>'),
  })
  await box.locator('.fault', { hasText: 'is no GPX' }).waitFor()
  expect(await box.locator('[role="status"]').textContent()).toMatch(/Line \d is no GPX/)
  await close()
})

test('a GPX file lies where its depths say, or where is typed, and is saved with its place', async () => {
  const { page, close } = await open()
  await unfold(page, 'file')
  const box = page.locator('.soundings-file')
  const points = [1, 2, 3, 4].map(
    (n) => `<wpt lat="${46.5 + n * 5e-5}" lon="-88.4"><ele>-${n * 0.5}</ele></wpt>`,
  )
  await box.locator('input[type="file"]').setInputFiles({
    name: 'track.gpx',
    mimeType: 'application/gpx+xml',
    buffer: Buffer.from(`<gpx>${points.join('\n')}</gpx>`),
  })
  await box.locator('.first-rows').waitFor()
  expect(Number(await box.getByLabel('Compass bearing').inputValue())).toBeCloseTo(0, 3)
  expect(Number(await box.getByLabel('Latitude').inputValue())).toBeCloseTo(46.5, 6)
  await box.getByLabel('Depths that are there already').selectOption('replace')
  await box.getByRole('button', { name: 'Take in 4 depths' }).click()
  const got = await soundings(page)
  expect(got.map(([, , depth]) => depth)).toEqual([0.5, 1, 1.5, 2])
  // 5e-5 degrees of latitude: 5.5575 m.
  got.forEach(([x, y], i) => {
    expect(x).toBeCloseTo((i + 1) * 5.5575, 2)
    expect(y).toBeCloseTo(0, 3)
  })
  expect(await box.getByRole('button', { name: 'as GeoJSON' }).isEnabled()).toBe(true)
  await close()
})

/** Where a place of the plan is on the screen: by two soundings that were picked there. */
async function onScreen(page: Page, x: number, y: number): Promise<{ x: number; y: number }> {
  const canvas = page.locator('.bed-plan canvas')
  await canvas.scrollIntoViewIfNeeded()
  const box = (await canvas.boundingBox())!
  const extent = await read(page, (e) => {
    const xs = [
      0,
      ...e.design.site.soundings.map((s) => s.distance),
      ...e.dock.sections.flatMap((s) => [s.x, s.x + s.length]),
    ]
    const ys = [
      0,
      ...e.design.site.soundings.map((s) => s.offset),
      ...e.dock.sections.flatMap((s) => [s.y - s.width / 2, s.y + s.width / 2]),
    ]
    return [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)] as const
  })
  const [x0, x1, y0, y1] = extent
  const [wide, high] = [Math.max(6, x1 - x0 + 3), Math.max(6, y1 - y0 + 3)]
  const scale = Math.min(box.width / wide, box.height / high)
  return {
    x: box.x + box.width / 2 + (x - (x0 + x1) / 2) * scale,
    y: box.y + box.height / 2 - (y - (y0 + y1) / 2) * scale,
  }
}

test('a boulder put under a brace is found, and a remedy goes round it', async () => {
  const { page, close } = await open()
  await unfold(page, 'plan')
  const brace = await read(page, (e) => {
    const pair = e.dock.pairs.find((p) => p.brace)!
    const low = e.dock.legs.find(({ id }) => id === pair.brace!.low)!
    const high = e.dock.legs.find(({ id }) => pair.legs.includes(id) && id !== low.id)!
    return { id: pair.id, x: low.x, y: low.y * 0.45 + high.y * 0.05 }
  })
  await page.getByLabel('A tap', { exact: true }).selectOption('boulder')
  const at = await onScreen(page, brace.x, brace.y)
  await page.mouse.click(at.x, at.y)
  const [boulder] = await obstacles(page)
  expect(boulder).toMatchObject({ id: 'boulder-1', kind: 'boulder' })
  expect(Math.hypot(boulder!.x - brace.x, boulder!.y - brace.y)).toBeLessThan(0.15)
  // Small enough to stand between the legs, high enough to reach the brace.
  for (const [label, size] of [
    ['Length', '8 in'],
    ['Width', '8 in'],
    ['Height over the bottom', '2 ft'],
  ] as const) {
    const field = page.locator('.picked').getByLabel(label)
    await field.fill(size)
    await field.press('Enter')
  }
  const found = () =>
    read(page, (e) =>
      e.dock.findings.map(({ code, remedy, parts }) => ({ code, parts, key: remedy?.key ?? null })),
    )
  await expect
    .poll(async () => (await found()).find((f) => f.code === 'part-in-obstacle' && f.key), {
      timeout: 40_000,
    })
    .toBeTruthy()
  const hit = (await found()).find((f) => f.code === 'part-in-obstacle')!
  expect(hit.parts[0]).toBe(brace.id)
  await page
    .getByRole('button', { name: /Slope the braces|Move the dock|Leave out this brace/ })
    .first()
    .click()
  await expect
    .poll(async () => (await found()).some((f) => f.code === 'part-in-obstacle'), { timeout: 40_000 })
    .toBe(false)
  await close()
}, 120_000)

test('a depth is dragged by the mouse, moved by keys, added and taken away, each in one step', async () => {
  const { page, close } = await open()
  await unfold(page, 'plan')
  const before = await soundings(page)
  const from = await onScreen(page, before[3]![0]!, before[3]![1]!)
  await page.mouse.move(from.x, from.y)
  await page.mouse.down()
  await page.mouse.move(from.x + 4, from.y - 30, { steps: 6 })
  // Only the picture moves until it is let go.
  expect(await soundings(page)).toEqual(before)
  await page.mouse.up()
  const dragged = await soundings(page)
  expect(dragged[3]![1]).toBeGreaterThan(0.3)
  expect(dragged[3]![2]).toBe(before[3]![2])
  expect(dragged.filter((_, i) => i !== 3)).toEqual(before.filter((_, i) => i !== 3))
  const plan = page.getByRole('application', { name: 'The lake bed from above' })
  await plan.focus()
  await page.keyboard.press('Shift+ArrowRight')
  await page.keyboard.press('Shift+ArrowRight')
  const keyed = await soundings(page)
  expect(keyed[3]![0]! - dragged[3]![0]!).toBeCloseTo(0.3048, 6)
  await page.keyboard.press('Delete')
  expect((await soundings(page)).length).toBe(before.length - 1)
  await page.keyboard.press('Control+z')
  expect(await soundings(page)).toEqual(keyed)
  // Each press of a key that was let go is one.
  await page.keyboard.press('Control+z')
  await page.keyboard.press('Control+z')
  expect(await soundings(page)).toEqual(dragged)
  await page.keyboard.press('Control+z')
  expect(await soundings(page)).toEqual(before)
  await page.getByLabel('A tap', { exact: true }).selectOption('sounding')
  const free = await onScreen(page, 6, 1)
  await page.mouse.click(free.x, free.y)
  const added = await soundings(page)
  expect(added.length).toBe(before.length + 1)
  expect(added.at(-1)![1]).toBeCloseTo(1, 0)
  await close()
})

/** Of a surveyed bay, on a grid; the first lies where it can be taken hold of. */
const bay = (rows: number, columns: number) =>
  Array.from({ length: rows * columns }, (_, i) => {
    const [a, b] = [Math.floor(i / columns), i % columns]
    return { distance: (a * 60) / rows, offset: (b * 60) / columns - 30, depth: 0.2 + (a * 3) / rows }
  })

atLength('one of 10,000 depths follows the hand as one of 100 does', async () => {
  const { page, close } = await open()
  await unfold(page, 'plan')
  const means: number[] = []
  for (const [rows, columns] of [
    [10, 10],
    [100, 100],
  ] as const) {
    await page.evaluate(
      (given) => {
        const element = document.querySelector('leadline-dock')!
        element.design = { ...element.design, site: { ...element.design.site, soundings: given } }
      },
      bay(rows, columns),
    )
    const before = await soundings(page)
    expect(before.length).toBe(rows * columns)
    const index = (rows / 2) * columns + columns / 2
    const from = await onScreen(page, before[index]![0]!, before[index]![1]!)
    await page.mouse.move(from.x, from.y)
    await page.mouse.down()
    await page.mouse.move(from.x + 8, from.y + 8)
    await page.evaluate(() => {
      const frames: number[] = []
      Object.assign(window, { frames })
      let last = performance.now()
      const next = (now: number): void => {
        frames.push(now - last)
        last = now
        if (frames.length < 200) requestAnimationFrame(next)
      }
      requestAnimationFrame(next)
    })
    for (let k = 1; k <= 40; k++) await page.mouse.move(from.x + 8 + k, from.y + 8 + (k % 7))
    const frames = await page.evaluate(() => (window as unknown as { frames: number[] }).frames.slice(1))
    means.push(frames.reduce((sum, ms) => sum + ms, 0) / frames.length)
    expect(await soundings(page)).toEqual(before)
    await page.mouse.up()
    const after = await soundings(page)
    expect(after.filter((row, i) => row.join() !== before[i]!.join()).length).toBe(1)
  }
  process.stderr.write(`a frame of a drag: ${means.map((ms) => ms.toFixed(1)).join(' and ')} ms\n`)
  expect(means[1]! / means[0]!).toBeLessThan(2)
  await close()
})

test('a finger taps a depth first, and it follows the finger then', async () => {
  const { page, context, close } = await open({ ...PHONE_TOUCH })
  await unfold(page, 'plan')
  const before = await soundings(page)
  const cdp = await context.newCDPSession(page)
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', at?: { x: number; y: number }) =>
    cdp.send('Input.dispatchTouchEvent', { type, touchPoints: at ? [at] : [] })
  const stroke = async (): Promise<void> => {
    const at = await onScreen(page, before[3]![0]!, before[3]![1]!)
    await touch('touchStart', at)
    for (const k of [1, 2, 3, 4]) await touch('touchMove', { x: at.x, y: at.y - k * 8 })
    await touch('touchEnd')
  }
  // One that was not tapped first is the page's.
  await stroke()
  expect(await soundings(page)).toEqual(before)
  const at = await onScreen(page, before[3]![0]!, before[3]![1]!)
  await page.touchscreen.tap(at.x, at.y)
  await page.locator('.bed-plan canvas[data-picked="sounding 3"]').waitFor()
  await stroke()
  expect((await soundings(page))[3]![1]).toBeGreaterThan(0.3)
  await close()
})

const PHONE_TOUCH = { viewport: PHONE, hasTouch: true, isMobile: true } as const
