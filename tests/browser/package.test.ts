/** The package from its tarball: on a host's own site however it is built, in a compiler, on a server, in a terminal. */
import { execFileSync, spawn, spawnSync } from 'node:child_process'
import { once } from 'node:events'
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { createContext, runInContext } from 'node:vm'
import * as esbuild from 'esbuild'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { type Dock, demoCatalog, demoDesign, derive } from '../../rules/index.ts'
import { sheet } from '../../src/cli/sheet.ts'
import { someOf } from './support/at-length.ts'
import { open, read, withBrowser } from './support/open.ts'
import { type Packed, pack, WAYS } from './support/packed.ts'
import { openPapers, SOON } from './support/papers.ts'
import { serve } from './support/server.ts'

withBrowser()

const ROOT = join(import.meta.dirname, '../..')
const demoDock = JSON.parse(JSON.stringify(derive(demoDesign, demoCatalog)))
const german = JSON.parse(readFileSync(join(ROOT, 'public/words/de.json'), 'utf8')).words.screen
/** The demo's packet, as the checkout writes it. */
let paper: Buffer
let packed: Packed
beforeAll(async () => {
  packed = pack()
  const design = join(packed.project, 'design.json')
  writeFileSync(design, JSON.stringify(demoDesign))
  const asked = ['--format', 'pdf', '--what', 'packet', '--audience', 'customer', '--date', '2026-05-01']
  paper = Buffer.from((await sheet([design, '--out', '-', ...asked], '2026-05-01')).bytes)
}, 300_000)
afterAll(() => packed.remove())

const installed = (...path: string[]): string => join(packed.project, 'node_modules/leadline', ...path)
const bin = (name: string, args: readonly string[], cwd = packed.project) => {
  const { status, stdout, stderr } = spawnSync(join(ROOT, 'node_modules/.bin', name), args, {
    cwd,
    encoding: 'utf8',
  })
  return { status, told: stdout + stderr }
}
const node = (script: string): string =>
  execFileSync(process.execPath, ['--input-type=module', '-e', script], {
    cwd: packed.project,
    encoding: 'utf8',
    maxBuffer: 1e8,
  })

describe('on a page', () => {
  test.each(someOf(Object.keys(WAYS), 3))(
    '%s: derives, checks in its workers, writes a paper, under a strict policy',
    async (way) => {
      const out = join(packed.project, 'out', way.replaceAll(' ', '-'))
      mkdirSync(out, { recursive: true })
      await WAYS[way]!(packed.project, out)
      const site = await serve([out, join(ROOT, 'tests/browser/pages')])
      try {
        const { page, close } = await open({ at: site.url, path: '/index.html' })
        const workers: string[] = []
        page.on('worker', (worker) => workers.push(worker.url()))
        for (const worker of page.workers()) workers.push(worker.url())
        await expect
          .poll(() => read(page, (e) => e.dock.structure?.deep === true && !e.dock.pending), SOON)
          .toBe(true)
        const dock = await read(page, (e) => e.dock)
        expect(dock).toEqual(demoDock)
        await openPapers(page)
        await page.getByLabel('Date on it').fill('2026-05-01')
        const [download] = await Promise.all([
          page.waitForEvent('download', { timeout: 60_000 }),
          page.locator('[data-format=pdf]').click(),
        ])
        expect(await read(page, (e) => e.design)).toEqual(demoDesign)
        expect(Buffer.compare(readFileSync(await download.path()), paper)).toBe(0)
        // Both are workers of the host's own files.
        expect(workers.length).toBeGreaterThanOrEqual(2)
        for (const url of workers) expect(url.startsWith(site.url)).toBe(true)
        // A shipped language is a chunk of theirs too.
        await page.locator('leadline-dock').evaluate((element) => element.setAttribute('lang', 'de'))
        await expect.poll(() => page.locator('h2').allTextContents(), SOON).toContain(german['what.title'])
        await close()
      } finally {
        await site.close()
      }
    },
    240_000,
  )
})

describe('in a program', () => {
  test('the engine is what the checkout has, and asks for nothing of Node', () => {
    const told = node(`
      import { derive, deriveKit, assess, demoCatalog, demoDesign, parseDesign, parseCatalog } from 'leadline/rules'
      const parsed = parseDesign(demoDesign)
      if (!parsed.ok || !parseCatalog(demoCatalog).ok) throw new Error('not parsed')
      if (JSON.stringify(assess(deriveKit(parsed.value, demoCatalog))) !== JSON.stringify(derive(parsed.value, demoCatalog))) throw new Error('differs')
      process.stdout.write(JSON.stringify(derive(parsed.value, demoCatalog)))`)
    expect(JSON.parse(told)).toEqual(demoDock)
    const folder = installed('dist/node')
    const engine = readdirSync(folder).filter((name) => /^(?:rules|geometry|chunk-.*)\.js$/.test(name))
    expect(engine.length).toBeGreaterThan(2)
    for (const name of engine) expect(readFileSync(join(folder, name), 'utf8')).not.toMatch(/["'`]node:/)
  })

  test('the element can be imported where there is no document', () => {
    expect(node(`import { LeadlineDock } from 'leadline'; process.stdout.write(typeof LeadlineDock)`)).toBe(
      'function',
    )
  })
})

describe('on a server', () => {
  const { fingerprint, totals } = demoDock as Dock
  const sent = {
    ...{ format: 'leadline/request', version: 1, at: '2026-05-01T12:00:00.000Z', design: demoDesign },
    ...{ catalog: { id: demoCatalog.id, version: demoCatalog.edition }, fingerprint, totals },
    contact: { name: 'A. Person', contact: 'a@example.test' },
  }
  const other = 'f'.repeat(64)
  const higher = { ...demoDesign, dock: { ...demoDesign.dock, deckHeight: 0.5 } }
  /** What is sent, and the paths that are told of it, worked out by hand. */
  const CASES: readonly (readonly [object, readonly string[]])[] = [
    [{ ...sent, id: 'as-it-was' }, []],
    [{ ...sent, id: 'as-it-was' }, []],
    [{ ...sent, id: 'price', totals: { ...totals, price: totals.price - 1 } }, ['totals.price']],
    [{ ...sent, id: 'catalog', fingerprint: { ...fingerprint, catalog: other } }, ['fingerprint.catalog']],
    [{ ...sent, id: 'engine', fingerprint: { ...fingerprint, engine: '0.0.1' } }, ['fingerprint.engine']],
  ]
  const script = `
    import { demoCatalog } from 'leadline/rules'
    import { receiver } from './receiver.js'
    globalThis.answerAll = async (bodies) => {
      const filed = new Map()
      const receive = receiver(demoCatalog, async (id, what) => filed.get(id) ?? filed.set(id, what).get(id))
      const answers = []
      for (const body of bodies) {
        const given = await receive(new Request('http://shop.test/requests', { method: 'POST', body }))
        answers.push([given.status, await given.json()])
      }
      answers.push([(await receive(new Request('http://shop.test/requests'))).status])
      return JSON.stringify({ answers, filed: [...filed].map(([id, { differs }]) => [id, differs.map((one) => one.split(':')[0])]) })
    }`

  interface Told {
    readonly answers: readonly (readonly [
      number,
      { received?: boolean; reference?: string; problems?: string[] },
    ])[]
    readonly filed: readonly (readonly [string, readonly string[]])[]
  }
  const bodies = [
    ...CASES.map(([body]) => JSON.stringify(body)),
    JSON.stringify({ ...sent, id: 'design', design: higher }),
    JSON.stringify({ ...sent, id: 'bad', design: { ...demoDesign, site: 7 } }),
    '{',
  ]

  function holds({ answers, filed }: Told): void {
    expect(answers.map(([status]) => status)).toEqual([200, 200, 200, 200, 200, 200, 422, 422, 405])
    expect(answers[0]![1]).toEqual({ received: true, reference: 'R-as-it-wa' })
    expect(answers[1]).toEqual(answers[0])
    expect(answers[6]![1].problems![0]).toMatch(/^design\.site: 7; expected an object/)
    // Sent twice, filed once; what is bad is not filed.
    expect(filed.map(([id]) => id)).toEqual(['as-it-was', 'price', 'catalog', 'engine', 'design'])
    for (const [{ id }, paths] of CASES as readonly (readonly [{ id: string }, readonly string[]])[])
      expect(filed.find(([one]) => one === id)![1], id).toEqual(paths)
    // A higher deck is another design; it takes other legs, so weight and price are others too.
    const design = filed.find(([one]) => one === 'design')![1]
    expect(design).toEqual(expect.arrayContaining(['fingerprint.design', 'fingerprint.all']))
    expect(design.filter((path) => path.startsWith('fingerprint.catalog'))).toEqual([])
  }

  beforeAll(() => {
    cpSync(installed('public/guide/receive/receiver.js'), join(packed.project, 'receiver.js'))
    writeFileSync(join(packed.project, 'answer.js'), script)
    writeFileSync(join(packed.project, 'bodies.json'), JSON.stringify(bodies))
  })

  test('the worked receiver names what was changed and files each request once, in Node', () => {
    const told = node(`
      import { readFileSync } from 'node:fs'
      await import('./answer.js')
      process.stdout.write(await answerAll(JSON.parse(readFileSync('bodies.json', 'utf8'))))`)
    holds(JSON.parse(told) as Told)
  })

  test('the server of the guide, as it is written there', async () => {
    const [, code] = /```js\n([\s\S]*?)```/.exec(readFileSync(installed('public/guide/receive.md'), 'utf8'))!
    const listening = '.listen(8080)'
    expect(code).toContain(listening)
    const own = '.listen(0, "127.0.0.1", function () { console.log(this.address().port) })'
    writeFileSync(join(packed.project, 'server.js'), code!.replace(listening, own))
    writeFileSync(join(packed.project, 'our-catalog.json'), JSON.stringify(demoCatalog))
    const server = spawn(process.execPath, ['server.js'], { cwd: packed.project })
    try {
      const [port] = (await once(server.stdout, 'data')) as [Buffer]
      const url = `http://127.0.0.1:${String(port).trim()}/dock-requests`
      const send = async (body: string) => {
        const given = await fetch(url, { method: 'POST', body, headers: { 'idempotency-key': 'x' } })
        return [given.status, await given.json()]
      }
      const taken = [200, { received: true, reference: 'R-as-it-wa' }]
      expect(await send(bodies[0]!)).toEqual(taken)
      expect(await send(bodies[0]!)).toEqual(taken)
      expect((await send('{'))[0]).toBe(422)
      expect((await send(' '.repeat(8 * 1024 * 1024 + 1)))[0]).toBe(413)
      expect((await fetch(url)).status).toBe(405)
    } finally {
      server.kill()
    }
  })

  test('and where there is no Node', async () => {
    const out = join(packed.project, 'receiver-bundle.js')
    await esbuild.build({
      absWorkingDir: packed.project,
      ...{ entryPoints: ['answer.js'], outfile: out, bundle: true, format: 'iife', platform: 'neutral' },
      logLevel: 'silent',
    })
    const given = { Request, Response, Headers, URL, TextEncoder, TextDecoder, structuredClone, performance }
    const bare = createContext(given)
    expect(runInContext('typeof process + typeof require + typeof Buffer', bare)).toBe('undefined'.repeat(3))
    runInContext(readFileSync(out, 'utf8'), bare)
    const answering = runInContext('answerAll', bare) as (bodies: readonly string[]) => Promise<string>
    holds(JSON.parse(await answering(bodies)) as Told)
  })
})

describe('to a compiler', () => {
  const CODE = `
    import { LeadlineDock, type LeadlineEvents } from 'leadline'
    import { derive, demoCatalog, parseDesign, type Dock } from 'leadline/rules'
    import { bedMesh } from 'leadline/geometry'
    const element = document.createElement('leadline-dock')
    const same: LeadlineDock = element
    element.addEventListener('leadline-change', (event) => { const dock: Dock = event.detail.dock; dock.totals.mass.toFixed() })
    const asked: LeadlineEvents['leadline-request']['detail']['fingerprint']['all'] = ''
    const parsed = parseDesign({})
    if (parsed.ok) derive(parsed.value, demoCatalog).legs[0]?.setHeight.toFixed()
    else parsed.issues[0]?.path.trim()
    void [same, asked, bedMesh]
    // @ts-expect-error: no such thing
    element.dock?.nothing`
  const JSX = `
    import 'leadline/react'
    export const page = <leadline-dock units="metric" link storage-key="mine" onleadline-change={(event) => event.detail.dock.totals} />
    // @ts-expect-error: no such unit
    export const wrong = <leadline-dock units="cubits" />`
  test.each(someOf(['nodenext', 'bundler'], 1))(
    'types hold without skipLibCheck, module resolution %s',
    (way) => {
      const folder = join(packed.project, way)
      mkdirSync(folder, { recursive: true })
      writeFileSync(join(folder, 'code.ts'), CODE)
      const module = way === 'bundler' ? 'esnext' : 'nodenext'
      const compilerOptions = {
        ...{ strict: true, noEmit: true, skipLibCheck: false, target: 'es2022', jsx: 'react-jsx', types: [] },
        ...{ lib: ['es2023', 'dom', 'dom.iterable'], module, moduleResolution: way },
      }
      writeFileSync(
        join(folder, 'tsconfig.json'),
        JSON.stringify({ compilerOptions, include: ['*.ts', '*.tsx'] }),
      )
      const right = { status: 0, told: '' }
      expect(bin('tsc', ['-p', folder])).toEqual(right)
      // A host that has React.
      for (const name of ['@types/react', 'csstype']) {
        const there = join(folder, 'node_modules', name)
        mkdirSync(dirname(there), { recursive: true })
        cpSync(join(ROOT, 'node_modules', name), there, { recursive: true })
      }
      cpSync(installed(), join(folder, 'node_modules/leadline'), { recursive: true })
      cpSync(join(ROOT, 'node_modules/valibot'), join(folder, 'node_modules/valibot'), { recursive: true })
      writeFileSync(join(folder, 'page.tsx'), JSX)
      expect(bin('tsc', ['-p', folder])).toEqual(right)
    },
  )

  test('publint and are-the-types-wrong find nothing', () => {
    expect(bin('publint', ['run', packed.file, '--strict']).told).toContain('All good')
    expect(bin('attw', [packed.file, '--profile', 'esm-only', '--format', 'ascii'])).toMatchObject({
      status: 0,
    })
  })
})

describe('in a terminal', () => {
  test('the command runs from what is installed, its fonts too', () => {
    const cli = installed('dist/node/cli.js')
    const design = join(packed.project, 'design.json')
    const paper = join(packed.project, 'paper.pdf')
    const { status, stderr } = spawnSync(
      process.execPath,
      [cli, 'sheet', design, '--out', paper, '--date', '2026-05-01'],
      { encoding: 'utf8' },
    )
    expect([status, stderr]).toEqual([0, ''])
    expect(readFileSync(paper).subarray(0, 5).toString()).toBe('%PDF-')
    const list = spawnSync(process.execPath, [cli, 'list', design, '--lang', 'de-AT'], { encoding: 'utf8' })
    expect([list.status, list.stderr]).toEqual([0, ''])
    expect(list.stdout).toContain(
      JSON.parse(readFileSync(installed('public/words/de.json'), 'utf8')).words.terminal.part,
    )
  })
})

describe('to an editor', () => {
  interface Named {
    readonly name: string
  }
  const names = (list: readonly Named[]): string[] => list.map(({ name }) => name).sort()

  test('its manifest tells the attributes, events and parts that it has', async () => {
    const { modules } = JSON.parse(readFileSync(installed('dist/custom-elements.json'), 'utf8')) as {
      modules: {
        path: string
        declarations: (Named &
          Record<'attributes' | 'events' | 'cssParts' | 'slots', Named[]> & {
            members: (Named & { kind: string; privacy?: string })[]
          })[]
      }[]
    }
    expect(existsSync(installed(modules[0]!.path))).toBe(true)
    const told = modules[0]!.declarations.find(({ name }) => name === 'LeadlineDock')!
    const { page, close } = await open()
    expect(names(told.attributes)).toEqual(
      await read(page, (e) =>
        [...(e.constructor as unknown as { observedAttributes: string[] }).observedAttributes].sort(),
      ),
    )
    const seen = await read(page, (e) =>
      [...e.shadowRoot!.querySelectorAll('[part]')].flatMap((one) => [...one.part]),
    )
    expect(names(told.cssParts)).toEqual(expect.arrayContaining([...new Set(seen)]))
    expect(names(told.slots)).toEqual(['actions', 'header', 'poster', 'request', 'tools'])
    expect(
      names(told.members.filter(({ kind, privacy }) => kind === 'method' && privacy !== 'private')),
    ).toEqual(expect.arrayContaining(['exportFile', 'reset', 'snapshot']))
    const guide = readFileSync(installed('public/guide/embed.md'), 'utf8')
    for (const { name } of told.events) expect(guide).toContain(`| \`${name}\``)
    expect(names(told.events)).toHaveLength(5)
    await close()
  })
})

describe('to a reader', () => {
  test('no link of the texts in it is dead', () => {
    const texts = [
      'README.md',
      'DEVELOPERS.md',
      'CHANGELOG.md',
      ...readdirSync(installed('public/guide')).flatMap((name) =>
        name.endsWith('.md') ? [`public/guide/${name}`] : [],
      ),
    ]
    const dead = texts.flatMap((text) =>
      [...readFileSync(installed(text), 'utf8').matchAll(/\]\((?!https?:|#|mailto:)([^)#\s]+)/g)]
        .map(([, path]) => path!)
        .filter((path) => !existsSync(installed(text, '..', path)))
        .map((path) => `${text}: ${path}`),
    )
    expect(dead).toEqual([])
  })

  test('what it brings along has its license beside it, and it installs one package more', () => {
    const { dependencies } = JSON.parse(readFileSync(installed('package.json'), 'utf8')) as {
      dependencies: object
    }
    expect(Object.keys(dependencies)).toEqual(['valibot'])
    for (const list of ['dist/leadline', 'dist/es', 'dist/node'])
      expect(readFileSync(installed(list, 'THIRD-PARTY.md'), 'utf8')).toMatch(
        /## valibot - [\s\S]*MIT License/,
      )
    const element = readFileSync(installed('dist/es/THIRD-PARTY.md'), 'utf8')
    for (const name of ['three', 'preact', 'react', '@react-three/fiber', 'zustand', 'jspdf'])
      expect(element).toContain(`## ${name} - `)
    for (const fonts of ['dist/leadline', 'dist/es', 'dist/node/fonts'])
      expect(readFileSync(installed(fonts, 'ROBOTO-LICENSE.txt'), 'utf8')).toContain('SIL OPEN FONT LICENSE')
    // What has others' code in it says so.
    const [first] = readdirSync(installed('dist/leadline')).filter((name) => /^app-.*\.js$/.test(name))
    for (const file of [`dist/leadline/${first}`, 'dist/es/chunk-scene.js', 'dist/es/assessment-worker.js'])
      expect(readFileSync(installed(file), 'utf8')).toContain('/*! Licenses: THIRD-PARTY.md */')
    const sbom = JSON.parse(readFileSync(installed('dist/sbom.cdx.json'), 'utf8')) as {
      bomFormat: string
      components: { name: string; licenses: unknown[] }[]
    }
    expect(sbom.bomFormat).toBe('CycloneDX')
    const brought = new Set(sbom.components.map(({ name }) => name))
    for (const name of ['three', 'preact', 'valibot', 'jspdf', '@noble/hashes'])
      expect(brought).toContain(name)
    for (const name of ['vite', 'vitest', 'typescript']) expect(brought).not.toContain(name)
    for (const { licenses } of sbom.components) expect(licenses.length).toBeGreaterThan(0)
  })
})
