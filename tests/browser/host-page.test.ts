/** What a page puts in the element, asks of it and styles of it. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { PNG } from 'pngjs'
import { expect, test } from 'vitest'
import { demoDesign, parseDesign } from '../../rules/index.ts'
import { sheet } from '../../src/cli/sheet.ts'
import type { LeadlineDock } from '../../src/element/leadline-dock.ts'
import { events, open, read, withBrowser } from './support/open.ts'
import { openPapers } from './support/papers.ts'

withBrowser()

const ROOT = join(import.meta.dirname, '../..')

/** Bytes of what a promise of the page's gives, as a string of Latin-1. */
const bytesOf = async (page: Page, code: string): Promise<{ name: string; type: string; bytes: Buffer }> => {
  const { text, ...rest } = await page.evaluate<{ name: string; type: string; text: string }>(`(async () => {
    const element = document.querySelector('leadline-dock')
    const made = await ${code}
    const bytes = new Uint8Array(await made.arrayBuffer())
    let text = ''
    for (const byte of bytes) text += String.fromCharCode(byte)
    return { name: made.name ?? '', type: made.type, text }
  })()`)
  return { ...rest, bytes: Buffer.from(text, 'latin1') }
}

const refused = (page: Page, code: string): Promise<string> =>
  page.evaluate(`(async () => {
    const element = document.querySelector('leadline-dock')
    try { await ${code}; return 'done' } catch (error) { return error.name + ': ' + error.message }
  })()`)

test('what a page puts in stands where it belongs, and its own form asks for the quote', async () => {
  const { page, close } = await open({ path: '/hosted.html', fresh: true })
  const slotOf = (id: string): Promise<string | undefined> =>
    page.locator(id).evaluate((e) => e.assignedSlot?.parentElement?.className || undefined)
  expect(await slotOf('h1')).toBe('app')
  expect(await slotOf('#tool')).toBe('tools')
  expect(await slotOf('#action')).toBe('sum-bar')
  for (const id of ['h1', '#tool', '#action']) expect(await page.locator(id).isVisible()).toBe(true)
  // The poster is gone with the first picture, and the form stands nowhere until it is asked for.
  expect(await page.locator('img').isVisible()).toBe(false)
  expect(await page.locator('#own').isVisible()).toBe(false)

  await page.evaluate(() =>
    document.addEventListener('leadline-request', (event) => {
      event.preventDefault()
      Object.assign((event as CustomEvent<object>).detail, { receipt: { reference: 'R-9' } })
    }),
  )
  await page.getByRole('button', { name: 'Ask for a quote' }).click()
  await page.locator('dialog.request').waitFor()
  expect(await page.getByLabel('Your name').isVisible()).toBe(false)
  const send = page.getByRole('button', { name: 'Send the request' })
  // The form's own rules hold, then what no answer can do without.
  await send.click()
  expect(await events(page, 'leadline-request')).toEqual([])
  await page.getByLabel('Who are you?').fill('A. Example')
  await send.click()
  expect(await page.locator('dialog .fault[role=alert]').textContent()).toContain('email')
  await page.locator('#own [name=email]').fill('a@example.org')
  await page.locator('#own [name=lake]').fill('Quillet')
  await page.locator('#own textarea').fill('Call late.')
  // A button of its own is as good as that of the dialog, and leads nowhere else.
  await page.locator('#own').evaluate((e) => (e as HTMLFormElement).requestSubmit())
  await page.locator('dialog .done').waitFor()
  expect(await page.locator('dialog .done').textContent()).toContain('R-9')
  const [request] = await events(page, 'leadline-request')
  expect((request!.detail as { contact: unknown }).contact).toEqual({
    ...{ name: 'A. Example', contact: 'a@example.org', email: 'a@example.org' },
    note: 'Call late.\nlake: Quillet',
  })
  expect(request!.detail).not.toHaveProperty('picture')
  expect(new URL(page.url()).search).toBe('')
  await close()
})

test('every part has its name, and a page styles it', async () => {
  const { page, close } = await open({ path: '/hosted.html', fresh: true, expected: /404/ })
  const seen = new Set<string>()
  const look = async (): Promise<void> => {
    for (const part of await read(page, (e) =>
      [...e.shadowRoot!.querySelectorAll('[part]')].flatMap((one) => [...one.part]),
    ))
      seen.add(part)
  }
  await look()
  expect(
    await page
      .getByRole('button', { name: 'Ask for a quote' })
      .evaluate((e) => getComputedStyle(e).textTransform),
  ).toBe('uppercase')
  expect(await page.locator('.strip').evaluate((e) => getComputedStyle(e).borderTopWidth)).toBe('7px')
  // Every control of the page has one.
  expect(
    await read(page, (e) => e.shadowRoot!.querySelectorAll(':is(button, input, select):not([part])').length),
  ).toBe(0)
  await page.getByRole('button', { name: 'Ask for a quote' }).click()
  await page.locator('dialog.request').waitFor()
  await look()
  await page.keyboard.press('Escape')
  await page.locator('leadline-dock').evaluate((e) => e.setAttribute('audience', 'crew'))
  await page.locator('.by-number').waitFor()
  await page.evaluate(() => {
    Object.assign(document.querySelector('leadline-dock')!, { design: { nothing: true } })
  })
  await page.locator('leadline-dock').evaluate((e) => {
    e.setAttribute('design', './nowhere.json')
  })
  await page.locator('.notice').waitFor()
  await look()
  await page.locator('leadline-dock').evaluate((e) => {
    e.removeAttribute('start')
    ;(e as LeadlineDock).reset()
  })
  await look()
  const told = readFileSync(join(ROOT, 'src/element/leadline-dock.ts'), 'utf8').matchAll(/@csspart (\S+) - /g)
  const named = [...told].map(([, name]) => name!)
  // It begins with questions where nobody has said anything: another element.
  await page.evaluate(() => document.body.prepend(document.createElement('leadline-dock')))
  await page.locator('.start').waitFor()
  seen.add((await page.locator('.start').getAttribute('part'))!)
  expect([...seen].sort()).toEqual(named.sort())
  const guide = readFileSync(join(ROOT, 'public/guide/embed.md'), 'utf8')
  for (const name of named) expect(guide, name).toContain(`\`${name}\``)
  await close()
})

/** Black, white, the primaries and their mixes, a brown, an olive, a navy, a pastel, a gray of the middle, a color beyond sRGB. */
const BRANDS = [
  ...['#000', '#fff', '#f00', '#0f0', '#00f', '#ff0', '#0ff', '#f0f', '#7a4a1e', '#6b6b00', '#0b1f4b'],
  ...['#ffd1dc', '#777', 'color(display-p3 1 0.2 0)'],
]

test('a brand color goes through all states, and all can be read, light and dark', async () => {
  const { page, close } = await open()
  const main = page.getByRole('button', { name: 'Ask for a quote' })
  await main.hover()
  const measured = await page.locator('leadline-dock').evaluate((element, brands) => {
    const app = element.shadowRoot!.querySelector<HTMLElement>('.app')!
    const canvas = document.createElement('canvas').getContext('2d', { willReadFrequently: true })!
    // WCAG 2.2, relative luminance.
    const luminance = (color: string): number => {
      canvas.fillStyle = color
      canvas.fillRect(0, 0, 1, 1)
      const [r, g, b] = [...canvas.getImageData(0, 0, 1, 1).data].map((byte) => {
        const part = byte / 255
        return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4
      })
      return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!
    }
    const ratio = (one: string, other: string): number => {
      const [a, b] = [luminance(one), luminance(other)]
      return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05)
    }
    const probe = document.createElement('p')
    app.append(probe)
    const colorOf = (value: string): string => {
      probe.style.color = value
      return getComputedStyle(probe).color
    }
    const button = app.querySelector('.sum-bar .main')!
    const told: { what: string; ratio: number; least: number }[] = []
    for (const brand of brands)
      for (const theme of ['light', 'dark']) {
        element.style.setProperty('--leadline-accent', brand)
        app.dataset.theme = theme
        const add = (what: string, one: string, other: string, least: number): void => {
          told.push({ what: `${brand} ${theme} ${what}`, ratio: ratio(one, other), least })
        }
        const hovered = getComputedStyle(button)
        if (!button.matches(':hover')) throw new Error('not hovered')
        add('words on it, hovered', hovered.color, hovered.backgroundColor, 4.5)
        add('words on it', colorOf('var(--on-accent)'), colorOf('var(--brand)'), 4.5)
        for (const ground of ['--card', '--paper', '--tint']) {
          add(`words of it on ${ground}`, colorOf('var(--accent)'), colorOf(`var(${ground})`), 4.5)
          add(`words on ${ground}`, colorOf('var(--soft)'), colorOf(`var(${ground})`), 4.5)
        }
        for (const ground of ['--card', '--paper'])
          add(`focus on ${ground}`, colorOf('var(--focus)'), colorOf(`var(${ground})`), 3)
      }
    probe.remove()
    element.style.removeProperty('--leadline-accent')
    return told
  }, BRANDS)
  expect(measured).toHaveLength(BRANDS.length * 2 * 10)
  expect(measured.filter(({ ratio, least }) => !(ratio >= least))).toEqual([])
  await close()
})

test('files and pictures by method are those of the buttons, and refused where they are not offered', async () => {
  const { page, close } = await open()
  expect(
    await refused(page, "document.createElement('leadline-dock').exportFile({ format: 'csv' })"),
  ).toMatch(/^Error: not ready/)
  const design = join(ROOT, 'tests/browser/pages/small.json')
  expect(JSON.parse(String((await bytesOf(page, "element.exportFile({ format: 'design' })")).bytes))).toEqual(
    demoDesign,
  )
  // What the terminal writes of another dock, to the byte.
  await page.evaluate(async () => {
    const answer = await fetch('./small.json')
    Object.assign(document.querySelector('leadline-dock')!, { design: await answer.json() })
  })
  const asked = ['--format', 'pdf', '--what', 'set-up', '--audience', 'customer', '--date', '2026-05-01']
  const paper = Buffer.from((await sheet([design, '--out', '-', ...asked], '2026-05-01')).bytes)
  const own = await bytesOf(page, "element.exportFile({ format: 'pdf', what: 'set-up', date: '2026-05-01' })")
  expect([own.name, own.type]).toEqual(['Small-one-set-up.pdf', 'application/pdf'])
  expect(own.bytes.equals(paper)).toBe(true)

  expect(await refused(page, "element.exportFile({ format: 'doc' })")).toMatch(
    /^RangeError: format: doc; expected pdf/,
  )
  expect(await refused(page, "element.exportFile({ format: 'pdf', date: 'today' })")).toMatch(
    /^RangeError: date/,
  )
  expect(await refused(page, "element.exportFile({ format: 'pdf', what: 'quote' })")).toMatch(
    /^RangeError: what: quote/,
  )
  await page.locator('leadline-dock').evaluate((e) => e.setAttribute('hide-price', ''))
  expect(await refused(page, "element.exportFile({ format: 'csv', what: 'list' })")).toMatch(
    /expected packing$/,
  )

  const picture = await bytesOf(page, 'element.snapshot(640, 400)')
  const { width, height, data } = PNG.sync.read(picture.bytes)
  expect([picture.type, width, height]).toEqual(['image/png', 640, 400])
  // Sky, water, bed, wood: not one color, and none of it black for want of a sheet.
  const colors = new Map<string, number>()
  for (let i = 0; i < data.length; i += 4) {
    const color = `${data[i]},${data[i + 1]},${data[i + 2]}`
    colors.set(color, (colors.get(color) ?? 0) + 1)
  }
  expect(colors.size).toBeGreaterThan(50)
  expect((colors.get('0,0,0') ?? 0) / (640 * 400)).toBeLessThan(0.01)
  expect(await refused(page, 'element.snapshot(0, 400)')).toMatch(/^RangeError: 0; expected whole pixels/)

  const before = await read(page, (e) => e.design)
  await read(page, (e) => e.reset())
  expect(await read(page, (e) => e.design)).toEqual(demoDesign)
  await page.getByRole('button', { name: 'Undo' }).click()
  expect(await read(page, (e) => e.design)).toEqual(before)
  await close()
})

test('a method whose code went with an older edition is refused, and the page says so', async () => {
  const { page, close } = await open({ fresh: true, expected: /ERR_FAILED/, without: /leadline\/methods-/ })
  expect(await refused(page, 'element.snapshot()')).toMatch(/^TypeError/)
  expect(await page.locator('.notice.bad').textContent()).toContain('Reload the page to go on')
  await close()
})

test('far from the window it waits, with its poster; hidden too; `loading="eager"` does not', async () => {
  const { page, close } = await open({ path: '/bare.html', elements: 0 })
  await page.evaluate("import('./leadline.js')")
  await page.evaluate(() => {
    document.body.innerHTML = `<div id="gap"></div>
      <leadline-dock id="far" start="example"><p slot="poster">A dock, soon</p></leadline-dock>
      <dialog id="box"><leadline-dock id="hidden" start="example"></leadline-dock></dialog>
      <leadline-dock id="eager" start="example" loading="eager"></leadline-dock>`
    document.querySelector<HTMLElement>('#gap')!.style.height = '6000px'
  })
  await page.evaluate(() => (window as unknown as { leadlineReady: Promise<void> }).leadlineReady)
  const begun = () =>
    page.evaluate(() =>
      [...document.querySelectorAll('leadline-dock')].filter((e) => e.ready).map((e) => e.id),
    )
  expect(await begun()).toEqual(['eager'])
  const room = await page.locator('#far').evaluate((e) => e.getBoundingClientRect().height)
  expect(room).toBeGreaterThan(300)
  expect(await page.getByText('A dock, soon').isVisible()).toBe(true)
  await page.locator('#far').scrollIntoViewIfNeeded()
  await page.locator('#far .sum-bar').waitFor()
  expect(await page.getByText('A dock, soon').isVisible()).toBe(false)
  // In a dialog of the page's, with a dialog of its own over that.
  await page.locator('#box').evaluate((e) => (e as HTMLDialogElement).showModal())
  await page.locator('#hidden .sum-bar').waitFor()
  await expect.poll(async () => (await begun()).sort()).toEqual(['eager', 'far', 'hidden'])
  await page.locator('#hidden').getByRole('button', { name: 'Ask for a quote' }).click()
  await page.locator('#hidden dialog.request').waitFor()
  await page.keyboard.press('Escape')
  await page.locator('#hidden dialog.request').waitFor({ state: 'detached' })
  expect(await page.locator('#box').evaluate((e) => (e as HTMLDialogElement).open)).toBe(true)
  // As high as what is in it: nothing of it scrolls by itself.
  expect(
    await page.locator('#far').evaluate((e) => {
      const app = e.shadowRoot!.querySelector('.app')!
      return [e.scrollHeight - e.clientHeight, app.scrollHeight - app.clientHeight]
    }),
  ).toEqual([0, 0])
  await close()
})

test('the page scrolls on where the pointer is over the picture', async () => {
  const { page, close } = await open()
  await page.locator('.stage').hover()
  await page.mouse.wheel(0, 300)
  await expect.poll(() => page.evaluate(() => scrollY)).toBeGreaterThan(200)
  await close()
})

test('with `hide-price` there is no price anywhere, and papers are those without', async () => {
  const { page, close } = await open()
  expect(await page.locator('.app').textContent()).toContain('$')
  await page.locator('leadline-dock').evaluate((e) => e.setAttribute('hide-price', ''))
  await openPapers(page)
  const offered = await page
    .getByLabel('Which', { exact: true })
    .locator('option')
    .evaluateAll((all) => all.map((one) => (one as HTMLOptionElement).value))
  expect(offered).not.toContain('estimate')
  for (const summary of await page.locator('.panel summary').all())
    if ((await summary.isVisible()) && !(await summary.evaluate((e) => e.closest('details')!.open)))
      await summary.click()
  await page.getByRole('button', { name: 'Ask for a quote' }).click()
  await page.locator('dialog.request').waitFor()
  expect(await page.locator('.app').textContent()).not.toMatch(/\$\s?\d/)
  await close()
})

test('docks that the page offers stand among the ways to begin; one that cannot be used is told', async () => {
  const parsed = parseDesign(JSON.parse(readFileSync(join(ROOT, 'tests/browser/pages/small.json'), 'utf8')))
  if (!parsed.ok) throw new Error('small.json is no design')
  const small = parsed.value
  const { page, close } = await open({ path: '/bare.html', elements: 0 })
  const list = [
    { name: '24 ft for sand', design: small },
    { name: 'Bad one', design: { ...small, site: { ...small.site, bottom: 'cheese' } } },
    { name: '24 ft for sand', design: small },
  ]
  await page.route('**/presets.json', (route) => route.fulfill({ json: list }))
  await page.evaluate("import('./leadline.js')")
  await page.evaluate(() => {
    document.body.innerHTML = '<leadline-dock presets="./presets.json"></leadline-dock>'
  })
  await page.getByRole('button', { name: '24 ft for sand' }).click()
  expect(await read(page, (e) => e.design)).toEqual(small)
  expect(await page.locator('.sum-bar').isVisible()).toBe(true)
  expect((await events(page, 'leadline-error')).map(({ detail }) => detail)).toMatchObject([
    { code: 'presets', path: '[1].design.site.bottom' },
    { code: 'presets', path: '[2].name' },
  ])
  await page.getByRole('button', { name: 'Undo' }).click()
  expect(await read(page, (e) => e.design.name)).not.toBe(small.name)
  await close()
})
