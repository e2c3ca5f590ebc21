/**
 * The day at the lake on a phone, by touch: the demo dock set up in water that is not as it was sounded. Figures are worked out here by hand:
 * the deck stays where it was planned, the bottom is at today's level less the depth, and a leg goes from the one to the other.
 */
import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { demoCatalog, demoDesign } from '../../rules/index.ts'
import { begun, phone, write } from '../support/records.ts'
import { nextFrame, open, PHONE, withBrowser } from './support/open.ts'

withBrowser()

const INCH = 0.0254
const DECK = demoDesign.dock.deckHeight
const RISE = demoCatalog.decking.rise
/** The lake stands 7 in lower than when it was sounded. */
const LEVEL = -7 * INCH

/** To the nearest quarter of an inch, as a tape has it. */
function tape(meters: number): string {
  const quarters = Math.round((meters / INCH) * 4)
  const [feet, rest] = [Math.floor(quarters / 48), quarters % 48]
  const [whole, part] = [Math.floor(rest / 4), rest % 4]
  const inches = [whole > 0 || part === 0 ? String(whole) : '', ['', '1/4', '1/2', '3/4'][part]!]
  const told = inches.filter(Boolean).join(' ')
  return [feet > 0 ? `${feet} ft` : '', feet > 0 && rest === 0 ? '' : `${told} in`].filter(Boolean).join(' ')
}

/** What the screen is to say where the water is so deep, m. */
const heightsAt = (depth: number, level = LEVEL) => ({
  deck: tape(DECK - level + depth),
  frame: tape(DECK - level + depth - RISE),
})

const waterside = (more: Parameters<typeof open>[0] = {}) =>
  open({ path: '/waterside.html', viewport: PHONE, hasTouch: true, fresh: true, ...more })

function hand(page: Page) {
  const title = () => page.locator('.lake-day h2').innerText()
  return {
    title,
    tap: (name: string | RegExp) => page.getByRole('button', { name, exact: typeof name === 'string' }).tap(),
    pick: (name: string) => page.getByRole('radio', { name }).locator('xpath=ancestor::label').tap(),
    type: (name: string, text: string) => page.getByRole('textbox', { name }).fill(text),
    /** Until another question stands there. */
    on: (from: string) => expect.poll(title, { timeout: 20_000 }).not.toBe(from),
    said: () => page.locator('.lake-day main').innerText(),
    big: () => page.locator('.lake-day .figure b').first().innerText(),
    home: () => page.getByRole('button', { name: 'All that can be done here' }).tap(),
  }
}

/** Nothing is wider than the phone, no target smaller than a glove, nothing that axe finds, at the contrast for sunlight. */
async function readable(page: Page): Promise<void> {
  await nextFrame(page)
  const found = await page.locator('.lake-day').evaluate((day) => {
    const small = [
      ...day.querySelectorAll<HTMLElement>('button, a, select, input[type="text"], label:has(input)'),
    ]
      .filter((one) => one.offsetParent && one.getBoundingClientRect().height < 55.5)
      .map((one) => one.innerText || one.ariaLabel)
    return { small, wide: document.documentElement.scrollWidth - innerWidth }
  })
  expect(found).toEqual({ small: [], wide: 0 })
  const { violations } = await new AxeBuilder({ page: page as never })
    .include('leadline-dock')
    .options({
      resultTypes: ['violations'],
      rules: { 'color-contrast-enhanced': { enabled: true } },
      runOnly: ['wcag2a', 'wcag2aa', 'wcag2aaa', 'wcag21a', 'wcag21aa', 'wcag22aa'],
    })
    .setLegacyMode(true)
    .analyze()
  expect(violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.flat().at(-1)).join(' | ')}`)).toEqual(
    [],
  )
}

async function tickAll(page: Page): Promise<void> {
  for (const box of await page.getByRole('checkbox').all()) await box.tap()
}

/** Depths that are found, in: legs 7 and 8 are too deep for the legs that were packed, 9 and 10 too shallow for their brace. */
const FOUND: Readonly<Record<number, number>> = {
  3: 11,
  4: 10.5,
  5: 22,
  6: 21.5,
  7: 46,
  8: 45.5,
  9: 20,
  10: 20,
}

test('the whole demo is set up where nothing is as it was sounded', async () => {
  const { page, requests, close } = await waterside()
  const { title, tap, pick, type, on, said, big } = hand(page)
  await tap(/^Begin with Quillet Cove/)
  await tap(/^Set it up/)
  await pick('I know by how much')
  await pick('Lower than on that day')
  // From nothing there is no step, and a plain number is neither inches nor feet.
  const more = page.getByRole('button', { name: 'More: By how much' })
  expect(await more.isDisabled()).toBe(true)
  await type('By how much', '7')
  expect(await page.getByRole('button', { name: 'Next', exact: true }).isDisabled()).toBe(true)
  await tap(/^7 in/)
  expect(await page.locator('.read-back').innerText()).toContain('7 in')
  expect(await more.isDisabled()).toBe(false)
  await pick('Higher than on that day')
  await type('By how much', '7 ft')
  await tap(/^Yes: it is 7 ft/)
  await tap('Next')
  // The deck would be under water: nothing goes on but to the level.
  await expect.poll(title).toBe('The deck would be under water')
  expect(await page.getByRole('button', { name: 'Where it was planned' }).count()).toBe(0)
  await readable(page)
  await tap('Change the level')
  await pick('Lower than on that day')
  await type('By how much', '7 in')
  await tap('Next')
  // 0.45 m and 7 in over today's water.
  expect(await said()).toContain(tape(DECK - LEVEL))
  await tap(/^Where it was planned/)
  const ready = page.getByRole('button', { name: 'We are ready' })
  expect(await ready.isDisabled()).toBe(true)
  await readable(page)
  await tickAll(page)
  await ready.tap()
  const seen = { swapped: false, brace: false, others: false, again: 0, stopped: 0 }
  for (let step = 0; (await title()) !== 'Your dock stands'; step++) {
    expect(step).toBeLessThan(60)
    const now = await title()
    const [, kind, leg] = /^(How deep is it at|Set) leg (\d+)/.exec(now) ?? []
    const depth = (FOUND[Number(leg)] ?? 0) * INCH
    // A step, a depth, a height: each kind of screen once.
    if (step === 3 || leg === '3') await readable(page)
    if (kind === 'Set') {
      // Legs 1 and 2 stand where it is dry: kept as the plan has it.
      if (FOUND[Number(leg)]) {
        expect(await big(), now).toBe(heightsAt(depth).frame)
        expect(await said()).toContain(heightsAt(depth).deck)
      }
      const shop = page.getByRole('button', { name: 'The shop says how to go on' })
      if ((await shop.count()) > 0) {
        // While a stop stands nothing says that all is well, or that it is set.
        expect(await page.getByRole('button', { name: 'It is set and tight' }).count()).toBe(0)
        expect(await said()).not.toContain('is long enough')
        seen.stopped++
        await shop.tap()
        await page.getByRole('button', { name: 'It is set and tight' }).waitFor()
      }
      const told = await said()
      expect(told).toContain('tighten both of its set bolts: wrench 3/4 in')
      expect(told).not.toMatch(/brace-\d|s\d\.(?:start|end)|anchor-post/)
      // From the deck: clamp, leg, bolts, in the order in which hands reach them.
      if (leg === '5')
        expect(told).toMatch(/clamp on leg 5: bolt.*Let the leg down until.*tighten both of its set bolts/s)
      if (leg === '7') {
        expect(told).toContain('Take a 7 ft leg here, not the 6 ft one.')
        seen.swapped = true
      }
      if (leg === '9') {
        expect(told).toContain('Take the other brace here: Brace, short, for 4 ft frames.')
        seen.brace = true
      }
      await tap('It is set and tight')
    } else if (kind !== undefined && (await page.getByRole('textbox').count()) === 0) {
      // One of a pair that is too deep may be a hole; the other one says that it is the bed, and there are no legs for that.
      if (!seen.others) {
        seen.others = true
        await page.getByText('Stop here and call the shop.').waitFor()
        await tap('Other legs are here')
        await tap('One leg of 7 ft more')
        await tap('One leg of 7 ft more')
        await tap('That is all')
        await expect.poll(said).not.toContain('Stop here')
      }
      await tap('Next')
    } else if (kind !== undefined) {
      // The sections from the third are not out there yet: nobody can measure up to their frames.
      const hung = Number(leg) >= 5
      const asked = await said()
      expect(asked.includes('past the end of the deck'), now).toBe(hung)
      expect(asked.includes('Measure up to the frame instead'), now).toBe(!hung)
      if (depth > 0) {
        await type('Water’s surface down to the bottom', `${depth / INCH} in`)
        await tap('Use this depth')
      } else {
        await tap('It is as expected')
        await tap(/^No: keep the plan/)
      }
      // The next screen comes by itself, unless something is the matter.
      await expect
        .poll(async () => (await title()) !== now || (await page.locator('.lake-day .stop').count()) > 0)
        .toBe(true)
      if ((await title()) === now) {
        await page.getByText('Measure again first.').waitFor()
        seen.again++
        await tap('I measured twice: it is so')
        await expect
          .poll(async () => (await title()) !== now || (await said()).includes('Stop here and call'))
          .toBe(true)
      }
      if ((await title()) === now) await tap('Go on all the same')
    } else {
      // However long the step is.
      const done = await page.getByRole('button', { name: 'Done', exact: true }).boundingBox()
      expect(done!.y + done!.height, now).toBeLessThanOrEqual(PHONE.height)
      await tap('Done')
    }
    await on(now)
  }
  expect(seen).toMatchObject({ swapped: true, brace: true, others: true })
  expect(seen.again).toBeGreaterThan(0)
  expect(seen.stopped).toBeGreaterThan(0)
  // The table for the boathouse has the same figures.
  for (const [leg, depth] of Object.entries(FOUND)) {
    const row = page.getByRole('row').filter({ has: page.getByRole('rowheader', { name: leg, exact: true }) })
    expect(await row.innerText()).toContain(heightsAt(depth * INCH).frame)
  }
  await readable(page)
  await tap('What comes later')
  expect(await said()).toContain('It stands: all 10 legs are set')
  expect(requests.some((url) => /\/scene-/.test(url))).toBe(false)
  await close()
})

test('back and forward, an entry put right, and loaded again in the middle of one', async () => {
  const { page, close } = await waterside()
  const { title, tap, pick, type, on, big, said } = hand(page)
  await tap(/^Begin with Quillet Cove/)
  await tap(/^Set it up/)
  // Nobody knows how high the lake is: the first leg tells. Leg 1 was sounded 0.142 m deep; it is 9 in there.
  await pick('I don’t know')
  await tap('Next')
  await on('How high is the lake today?')
  await tickAll(page)
  await tap('We are ready')
  while (!(await title()).startsWith('How deep')) {
    const now = await title()
    await tap('Done')
    await on(now)
  }
  await type('Water’s surface down to the bottom', '9 in')
  await tap('Use this depth')
  await page.getByText('Where should the deck be?').waitFor()
  const { bed } = await page
    .locator('leadline-dock')
    .evaluate((e) => (e as unknown as { dock: { legs: { bed: number }[] } }).dock.legs[0]!)
  const level = bed + 9 * INCH
  expect(await said()).toContain(`${tape(level)} higher`)
  await tap(/^\d ft .*over today’s water/)
  await on('Where should the deck be?')
  // As high over today's water as it was planned over the survey's.
  const over = (depth: number) => tape(DECK + depth * INCH - RISE)
  expect(await title()).toBe('Set leg 1')
  expect(await big()).toBe(over(9))
  await tap('It is set and tight')
  await on('Set leg 1')
  await tap('Back')
  await tap('Back')
  expect(await title()).toBe('How deep is it at leg 1?')
  await tap('Measure again')
  await type('Water’s surface down to the bottom', '10 1/2')
  await page.reload()
  // What was half typed stands there; it is not entered.
  await page.getByRole('textbox').waitFor()
  expect(await title()).toBe('How deep is it at leg 1?')
  expect(await page.getByRole('textbox').inputValue()).toBe('10 1/2')
  await type('Water’s surface down to the bottom', '10.5 in')
  await tap('Use this depth')
  // The lake was found from this leg: it is put right with it, and the deck is asked for once more.
  await expect.poll(title).toBe('Where should the deck be?')
  expect(await said()).toContain(`${tape(bed + 10.5 * INCH)} higher`)
  await tap(/^\d ft .*over today’s water/)
  await expect.poll(title).toBe('Set leg 1')
  expect(await big()).toBe(over(10.5))
  expect(await said()).toContain(`It was set to ${over(9)}`)
  await tap('It is set and tight')
  await on('Set leg 1')
  await tap('All that can be done here')
  await expect.poll(said).toContain('1 of 10 legs are set')
  await tap('How each leg stands')
  const row = page.getByRole('row').filter({ has: page.getByRole('rowheader', { name: '1', exact: true }) })
  expect(await row.innerText()).toContain(over(10.5))
  await close()
})

/** A season in which every leg was set by its plan, as another phone wrote it down. */
function lastYear() {
  const on = phone(begun(), 'phone-b')
  write(on, { kind: 'level', level: 0, from: 'survey', keep: 'planned' }, '2025')
  for (const { id, planned } of on.record.legs)
    write(
      on,
      {
        kind: 'set',
        leg: id,
        stock: planned!.stock,
        length: planned!.length,
        height: planned!.height,
        frame: planned!.frame,
        level: 0,
        keep: 'planned',
        how: 'measured',
      },
      '2025',
    )
  write(on, { kind: 'out', stored: 'boathouse' }, '2025')
  return on.record
}

test('next spring by last year’s record; level check; wear; out again', async () => {
  const { page, close } = await waterside()
  const { title, tap, pick, type, on, big, said, home } = hand(page)
  const record = lastYear()
  const file = {
    name: 'cove.record.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(record)),
  }
  await page.locator('.lake-day input[type="file"]').first().setInputFiles(file)
  await page.getByText('Set it up again in').waitFor()
  // The lake is 60 mm higher, the deck goes with it: each leg is so much longer.
  await tap(/^Set it up again/)
  await pick('I know by how much')
  await pick('Higher than in 2025')
  await type('By how much', '6 cm')
  await tap('Next')
  await tap(/^\d ft .*over today’s water/)
  await on('Where should the deck be?')
  await tickAll(page)
  await tap('We are ready')
  for (let step = 0; !(await title()).startsWith('Your dock stands'); step++) {
    expect(step).toBeLessThan(60)
    const now = await title()
    const [, leg] = /^Set leg (\d+)/.exec(now) ?? []
    // Nobody has to measure what is known.
    expect(now).not.toContain('How deep')
    if (leg !== undefined) {
      const { planned } = record.legs[Number(leg) - 1]!
      expect(await big(), now).toBe(tape(planned!.frame + 0.06))
      expect(await said()).toContain(`${tape(0.06)} more than last time: slide the leg down by that.`)
    }
    await tap(leg === undefined ? 'Done' : 'It is set and tight')
    await on(now)
  }
  await tap('Check that it is level')
  // Leg 4's corner is 20 mm farther from the water than the others: it goes down by that.
  for (let leg = 1; leg <= 10; leg++) {
    await expect.poll(title).toBe(`At leg ${leg}`)
    await type('Deck straight down to the water', leg === 4 ? '47 cm' : '45 cm')
    if (leg < 10) await tap('Next leg')
  }
  await tap('Work it out from 10 readings')
  await page.getByText('lower the deck by that at leg 4').waitFor()
  expect(await page.locator('.lake-day .figure').count()).toBe(1)
  // 20 mm are 12.6 sixteenths of an inch; it may stay within 3 mm (1.9) of level.
  expect(
    Number(
      /^(?:(\d+) )?(\d+)\/(\d+)/
        .exec(await big())
        ?.slice(2)
        .reduce((a, b) => String(Number(a) / Number(b))),
    ),
  ).toBeGreaterThanOrEqual(10 / 16)
  // The height that this makes is told with it, and is the one that is written down: 60 mm over the plan's, less what it goes down by.
  const [, frame, deck] = /Then leg 4 stands (.*) to the top of the frame, (.*) to the deck/.exec(
    await said(),
  )!
  const was = record.legs[3]!.planned!.height + 0.06
  const downBy = [0.015, 0.016, 0.017, 0.018, 0.019, 0.02, 0.021, 0.022, 0.023]
  expect(downBy.map((by) => tape(was - by))).toContain(deck)
  expect(downBy.map((by) => tape(was - by - RISE))).toContain(frame)
  await readable(page)
  await tap('I moved them: measure once more')
  await home()
  await tap('How each leg stands')
  const lowered = page
    .getByRole('row')
    .filter({ has: page.getByRole('rowheader', { name: '4', exact: true }) })
  expect(await lowered.innerText()).toContain(deck!)
  await home()
  await tap('Something is bent, worn or lost')
  await page.getByLabel('Which part').selectOption('brace-clamp')
  await pick('Cracked')
  await page.getByLabel('Where').selectOption({ label: 'Leg 6' })
  await tap('Write it down')
  await tap('Order from the shop: one thing')
  const mail = page.getByRole('link', { name: 'Write to the shop' })
  expect(decodeURIComponent((await mail.getAttribute('href'))!)).toMatch(/1 x Brace clamp.*Cracked at leg 6/)
  await home()
  await tap(/^Take it out for the winter/)
  expect(await said()).not.toContain('for setting up')
  expect(await said()).toContain('3 people are needed')
  await tickAll(page)
  await tap('We are ready')
  // Before a bolt is loosened: leg 4 does not stand as it was written down.
  expect(await title()).toBe('Before anything is moved')
  await readable(page)
  await page.getByLabel('One stands otherwise').selectOption({ label: 'Leg 4' })
  await type('Bottom of the foot pad to the deck, as set', '40 in')
  await tap('Write it down')
  const row = page.getByRole('row').filter({ has: page.getByRole('rowheader', { name: '4', exact: true }) })
  await expect.poll(() => row.innerText()).toContain(tape(40 * INCH))
  const order: string[] = []
  while ((await title()) !== 'It is all ashore') {
    const now = await title()
    order.push(now)
    if (now === 'Bring in section 2') expect(await said()).toContain('2 lift, 112.9 lb: about 56.5 lb each.')
    await tap('Done')
    await on(now)
  }
  // The lake end first, the ramp before the section that stands by itself.
  const moved = order.filter((one) => /^(?:Unhang|Take the ramp|Bring in)/.test(one))
  expect(moved).toEqual([
    'Unhang section 5',
    'Unhang section 4',
    'Unhang section 3',
    'Take the ramp (section 1) ashore',
    'Bring in section 2',
  ])
  await type('Where does it lie?', 'Boathouse, left wall')
  await tap('Write it down')
  await expect.poll(said).toContain('It is out for the winter')
  await close()
})

test('by keyboard, in meters, on the narrowest phone, and in from the page', async () => {
  const { page, close } = await open({ viewport: { width: 320, height: 640 }, fresh: true })
  await page.locator('leadline-dock').evaluate((e) => e.setAttribute('units', 'metric'))
  const { title, said } = hand(page)
  const press = async (name: string | RegExp): Promise<void> => {
    const button = page.getByRole('button', { name })
    await button.focus()
    await page.keyboard.press('Enter')
  }
  await press('At the lake')
  await page.getByRole('heading', { name: 'Which dock?' }).waitFor()
  await press(/^Begin with/)
  await press(/^Set it up/)
  await page.getByRole('radio', { name: 'I know by how much' }).focus()
  await page.keyboard.press('Space')
  await page.getByRole('radio', { name: 'Higher than on that day' }).focus()
  await page.keyboard.press('Space')
  const field = page.getByRole('textbox', { name: 'By how much' })
  await field.focus()
  await page.keyboard.type('0.12')
  await page.keyboard.press('ArrowUp')
  expect(await field.inputValue()).toBe('0.13 m')
  await press('Next')
  expect(await said()).toContain('0.32 m over today’s water')
  await press(/^Where it was planned/)
  await expect.poll(title).toBe('Before anybody gets wet')
  // The question has the hand, so that it is read out.
  expect(
    await page.locator('.lake-day h2').evaluate((e) => (e.getRootNode() as ShadowRoot).activeElement === e),
  ).toBe(true)
  await readable(page)
  await press('All that can be done here')
  await press('Back to the plan')
  await page.locator('.toolbar').waitFor()
  await close()
})
