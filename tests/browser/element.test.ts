import type { Page } from 'playwright-core'
import { expect, inject, test } from 'vitest'
import { type Design, demoCatalog, demoDesign, derive } from '../../rules/index.ts'
import words from '../../rules/words/en/dock.json' with { type: 'json' }
import { events, nextFrame, open, read, told, withBrowser } from './support/open.ts'

withBrowser()

const shown = (page: Page, id: string) =>
  page.locator(`#${id}`).evaluate((element) => {
    const root = element.shadowRoot!
    const style = getComputedStyle(root.querySelector('.app')!)
    const button = getComputedStyle(root.querySelector('.stepper button')!)
    const rect = root.querySelector('.strip svg')!.getBoundingClientRect()
    return {
      font: style.fontSize,
      letters: style.letterSpacing,
      transform: style.textTransform,
      color: style.color,
      button: button.display,
      strip: rect.width > 200 && rect.height > 100,
      svg: getComputedStyle(root.querySelector('.strip svg')!).display,
    }
  })

test('two on a page with hostile styles look as they should and work each by itself', async () => {
  const { page, close } = await open({ path: '/hostile.html', elements: 2 })
  for (const id of ['one', 'two'])
    expect(await shown(page, id)).toEqual({
      font: '16px',
      letters: 'normal',
      transform: 'none',
      color: 'rgb(20, 39, 44)',
      button: 'grid',
      strip: true,
      svg: 'block',
    })
  await page.locator('#one').getByRole('button', { name: 'One section more' }).click()
  const sections = () =>
    page
      .locator('leadline-dock')
      .evaluateAll((list) => list.map((e) => (e as never as { design: Design }).design.dock.sections))
  expect(await sections()).toEqual([6, 5])
  expect(await page.locator('#two').getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true)
  expect(await page.locator('#two .leg-length').first().textContent()).toMatch(/ m$/)
  // Nothing leaks out: the page's own elements have none of the element's rules.
  expect(
    await page.evaluate(() => document.adoptedStyleSheets.length + document.querySelectorAll('style').length),
  ).toBe(0)
  await close()
})

test('the plain host page in public/ embeds two', async () => {
  const { page, close } = await open({ path: '/host.html', elements: 2 })
  const theme = await page
    .locator('.second')
    .evaluate((e) => getComputedStyle(e.shadowRoot!.querySelector('.app')!).backgroundColor)
  const light = await page
    .locator('.first')
    .evaluate((e) => getComputedStyle(e.shadowRoot!.querySelector('.app')!).backgroundColor)
  expect(theme).not.toBe(light)
  const accent = await page
    .locator('.second')
    .evaluate((e) => getComputedStyle(e.shadowRoot!.querySelector('button.main')!).backgroundColor)
  expect(accent).toBe('rgb(255, 180, 84)')
  await close()
})

test('a second copy of the script changes nothing', async () => {
  const { page, close } = await open({ path: '/hostile.html', elements: 2, fresh: true })
  await page.evaluate("import('./again.js')")
  await page.locator('#one').getByRole('button', { name: 'One section more' }).click()
  expect(
    await page.locator('#one').evaluate((e) => (e as never as { design: Design }).design.dock.sections),
  ).toBe(6)
  await close()
})

test('moved in the page it goes on with the same screen, selection and undo', async () => {
  const { page, close } = await open({ path: '/hostile.html', elements: 2 })
  await page.locator('#one').getByRole('button', { name: 'One section more' }).click()
  const same = await page.evaluate(async () => {
    const element = document.querySelector('#one')!
    const strip = element.shadowRoot!.querySelector('.strip svg')
    document.querySelector('#elsewhere')!.append(element)
    // One taken out for good ends 60 ms later.
    await new Promise((done) => setTimeout(done, 150))
    return strip === element.shadowRoot!.querySelector('.strip svg') && strip!.isConnected
  })
  expect(same).toBe(true)
  await page.locator('#one').getByRole('button', { name: 'Undo' }).click()
  expect(
    await page.locator('#one').evaluate((e) => (e as never as { design: Design }).design.dock.sections),
  ).toBe(5)
  await close()
})

test('taken out it ends, put back it is as it was, undo and all', async () => {
  const { page, close } = await open({ path: '/hostile.html', elements: 2 })
  await page.locator('#one').getByRole('button', { name: 'One section more' }).click()
  await page.evaluate(() => {
    const element = document.querySelector('#one')!
    Object.assign(window, { taken: element })
    element.remove()
  })
  await page.waitForFunction(
    () => (window as unknown as { taken: Element }).taken.shadowRoot!.childElementCount === 0,
  )
  await page.evaluate(
    () =>
      new Promise<void>((done) => {
        const { taken } = window as unknown as { taken: Element }
        taken.addEventListener('leadline-ready', () => done(), { once: true })
        document.body.append(taken)
      }),
  )
  const design = () =>
    page.locator('#one').evaluate((e) => (e as never as { design: Design }).design.dock.sections)
  expect(await design()).toBe(6)
  await page.locator('#one').getByRole('button', { name: 'Undo' }).click()
  expect(await design()).toBe(5)
  await close()
})

test('hidden, without a size, then shown: it begins when there is room', async () => {
  const { page, close } = await open({ path: '/bare.html', elements: 0 })
  await page.evaluate(() => {
    const box = document.createElement('div')
    box.hidden = true
    box.innerHTML = '<leadline-dock start="example"></leadline-dock>'
    document.body.append(box)
  })
  const begun = await page.evaluate(
    "import('./leadline.js').then(() => Promise.race([leadlineReady.then(() => 'begun'), new Promise((done) => setTimeout(done, 500, 'waits'))]))",
  )
  expect(begun).toBe('waits')
  expect(await page.locator('.strip svg').count()).toBe(0)
  await page.evaluate(() => {
    document.querySelector<HTMLElement>('div')!.hidden = false
  })
  await page.locator('.strip svg').waitFor()
  expect((await page.locator('.strip svg').boundingBox())!.width).toBeGreaterThan(900)
  await page.setViewportSize({ width: 500, height: 800 })
  await expect.poll(async () => (await page.locator('.strip svg').boundingBox())!.width).toBeLessThan(501)
  await close()
})

test('upgraded late it takes the properties that were set before', async () => {
  const { page, close } = await open({ path: '/late.html' })
  expect(await read(page, (e) => e.design.name)).toBe('Small one')
  expect(await read(page, (e) => Object.hasOwn(e, 'design'))).toBe(false)
  await close()
})

test('a property that is not valid tells where, and leaves the design as it is', async () => {
  const { page, close } = await open()
  await page.locator('leadline-dock').evaluate((e, design) => {
    Object.assign(e, { design: { ...design, site: { ...design.site, bottom: 'cheese' } } })
  }, demoDesign)
  const [error] = await events(page, 'leadline-error')
  expect(error?.detail).toMatchObject({ code: 'design', path: 'site.bottom' })
  expect(await read(page, (e) => e.design)).toEqual(demoDesign)
  await close()
})

test('design and catalog set as properties are taken in; the page is told of no change of its own', async () => {
  const { page, close } = await open()
  const design: Design = { ...demoDesign, dock: { ...demoDesign.dock, frame: '5x8' } }
  const catalog = { ...demoCatalog, id: 'other', currency: 'EUR' }
  await page.locator('leadline-dock').evaluate((e, given) => Object.assign(e, given), { design, catalog })
  await expect.poll(() => read(page, (e) => e.dock?.fingerprint)).toEqual(derive(design, catalog).fingerprint)
  expect(await page.locator('.sum-bar strong').textContent()).toContain('€')
  expect(await events(page, 'leadline-change')).toEqual([])
  await page.getByRole('button', { name: 'One section more' }).click()
  const changes = await told(page, 'leadline-change')
  expect(changes).toHaveLength(1)
  const detail = changes[0]!.detail as { design: Design; dock: { fingerprint: unknown } }
  expect(detail.design.dock.sections).toBe(design.dock.sections! + 1)
  expect(detail.dock.fingerprint).toEqual(derive(detail.design, catalog).fingerprint)
  await close()
})

test('units and theme follow the attributes; the design stays the same', async () => {
  const { page, close } = await open()
  const before = await read(page, (e) => JSON.stringify(e.design))
  await page.locator('leadline-dock').evaluate((e) => e.setAttribute('units', 'metric'))
  await nextFrame(page)
  expect(await page.locator('.leg-length').first().textContent()).toMatch(/ m$/)
  await page.locator('leadline-dock').evaluate((e) => e.setAttribute('theme', 'dark'))
  await nextFrame(page)
  expect(await page.locator('.app').evaluate((e) => getComputedStyle(e).color)).toBe('rgb(230, 239, 238)')
  // Through every field, touched and left: what the screen rounds does not get into the design.
  for (const field of await page.locator('input[type=text]:not(.name)').all()) {
    await field.focus()
    await field.blur()
  }
  expect(await read(page, (e) => JSON.stringify(e.design))).toBe(before)
  await close()
})

test('a design from an address, and a request to one', async () => {
  const { page, close } = await open({ path: '/sources.html' })
  expect(await read(page, (e) => e.design.name)).toBe('Small one')
  await page.getByRole('button', { name: 'Ask for a quote' }).click()
  await page.getByRole('button', { name: 'Send the request' }).click()
  expect(await page.locator('dialog .fault').first().textContent()).toBe('Please give your name.')
  expect(await page.locator('dialog .cautions').textContent()).toContain(words['caution.1'])
  await page.getByLabel('Your name').fill('A. Example')
  await page.getByLabel('Email').fill('a@example.org')
  await page.getByRole('button', { name: 'Send the request' }).click()
  await page.locator('dialog .done').waitFor()
  expect(await page.locator('dialog .done').textContent()).toContain('Sent. The shop has it as R-')
  const [request] = await events(page, 'leadline-request')
  const detail = request!.detail as {
    contact: unknown
    fingerprint: { all: string }
    totals: { price: number }
  }
  expect(detail.contact).toEqual({
    name: 'A. Example',
    contact: 'a@example.org',
    email: 'a@example.org',
    note: '',
  })
  expect(detail.fingerprint).toEqual(await read(page, (e) => e.dock.fingerprint))
  expect(detail.totals).toEqual(await read(page, (e) => e.dock.totals))
  await close()
})

test('a page that prevents the request has it to itself', async () => {
  const { page, close } = await open({ path: '/sources.html', fresh: true })
  const sent: string[] = []
  page.on('request', (request) => request.method() === 'POST' && sent.push(request.url()))
  await page.evaluate(() => document.addEventListener('leadline-request', (event) => event.preventDefault()))
  await page.getByRole('button', { name: 'Ask for a quote' }).click()
  await page.getByLabel('Your name').fill('A. Example')
  await page.getByLabel('Email').fill('a@example.org')
  await page.getByRole('button', { name: 'Send the request' }).click()
  await page.locator('dialog .done').waitFor()
  expect(sent).toEqual([])
  await close()
})

test('a request that fails loses nothing and says why', async () => {
  const { page, close } = await open({ path: '/sources.html', expected: /503/ })
  await page.locator('leadline-dock').evaluate(
    (e) =>
      new Promise<void>((done) => {
        e.addEventListener('leadline-ready', () => done(), { once: true })
        e.setAttribute('request-url', './refused')
      }),
  )
  await page.getByRole('button', { name: 'Ask for a quote' }).click()
  await page.getByLabel('Your name').fill('A. Example')
  await page.getByLabel('Email').fill('a@example.org')
  await page.getByRole('button', { name: 'Send the request' }).click()
  await page.locator('dialog .fault').waitFor()
  expect(await page.locator('dialog .fault').textContent()).toContain('503')
  expect(await page.getByLabel('Your name').inputValue()).toBe('A. Example')
  await close()
})

test('a bad design from an address leaves the demo, tells where it is wrong; a missing catalog shows no prices at all', async () => {
  const bad = await open({ path: '/bad-design.html' })
  const errors = await events(bad.page, 'leadline-error')
  expect(errors.map((e) => (e.detail as { path: string }).path)).toContain('site.soundings[2].depth')
  expect(await read(bad.page, (e) => e.design)).toEqual(demoDesign)
  await bad.close()
  const none = await open({ path: '/no-catalog.html', elements: 0, expected: /404/ })
  await none.page.locator('.failed').waitFor()
  expect(await none.page.locator('.failed').textContent()).toContain('catalog')
  expect((await events(none.page, 'leadline-error'))[0]?.detail).toMatchObject({
    code: 'catalog',
    path: './nowhere.json',
  })
  await none.page.locator('leadline-dock').evaluate(
    (e, catalog) =>
      new Promise<void>((done) => {
        e.addEventListener('leadline-ready', () => done(), { once: true })
        Object.assign(e, { catalog })
      }),
    demoCatalog,
  )
  expect(await none.page.locator('.sum-bar').textContent()).toContain('$')
  await none.close()
})

test('imported where there is no document it does nothing and throws nothing', async () => {
  const { pathToFileURL } = await import('node:url')
  const module = await import(pathToFileURL(`${inject('dist')}/leadline.js`).href)
  expect(typeof module.LeadlineDock).toBe('function')
})
