/**
 * `npm run test:mutants`: puts small faults into the sources, one at a time, and counts those that no test tells of.
 *
 * A sample of each folder's faults, the same for the same seed; `--all` takes them all, which takes a day. Each is tried on the test
 * files that run the function it is in, the quickest and those that tell most first, until one fails or they have had `--seconds` of time: so what is told
 * is no more than the whole suite would find. Standing between rounding and a figure, numbers under 1e-5 are made a thousand times
 * as large, not a tenth. Faults that change nothing are listed with the reason in `equivalent.json`.
 *
 *     npm run test:mutants -- [FOLDER …] [--seed 1] [--sample 120] [--all] [--seconds 60] [--jobs 1]
 *
 * What a test file found before is not asked again while neither it nor the engine has changed. Exits with 1 where a folder has
 * under 85 %.
 */
import { type ChildProcess, fork } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { parseArgs } from 'node:util'
import { parseSync } from 'vite'
import equivalent from './equivalent.json' with { type: 'json' }
import { functionsOf, type Mutant, mutantsOf, mutated, sampled } from './mutate.ts'
import type { Order, Report } from './worker.ts'

const ROOT = resolve(import.meta.dirname, '../..')
const CACHE = join(ROOT, 'node_modules/.cache/leadline')
const COVERAGE = join(CACHE, 'mutants-coverage.json')
const LAST = join(CACHE, 'mutants.json')
const LEAST = 0.85

/** What is asked about, and what of it. */
const FOLDERS: Readonly<Record<string, RegExp>> = {
  'rules/parts': /\.ts$/,
  'rules/checks': /\.ts$/,
  'rules/structure/dock': /\.ts$/,
  'rules/papers': /^quote.*\.ts$/,
}
/** Where tests are that run the engine in their own process. Left out are those that compare times, which fail by chance, and drawings, which are slow. */
const TESTS = ['tests/rules', 'tests/reference', 'tests/geometry']
const LEFT = /growth\.test\.ts$|geometry\/(paper|drawing|export)\//

const { values: options, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    seed: { type: 'string', default: '1' },
    sample: { type: 'string', default: '120' },
    seconds: { type: 'string', default: '60' },
    jobs: { type: 'string', default: '1' },
    all: { type: 'boolean', default: false },
  },
})
const folders = positionals.length > 0 ? positionals : Object.keys(FOLDERS)
for (const folder of folders)
  if (!FOLDERS[folder]) throw new Error(`${folder}: not one of ${Object.keys(FOLDERS).join(', ')}`)

type Verdict = 'killed' | 'timeout' | 'survived' | 'uncovered' | 'equivalent'
interface Tried {
  readonly mutant: Mutant
  readonly folder: string
  readonly verdict: Verdict
  readonly by: string | null
  /** Of that test file and of the engine, as they were. */
  readonly as: string
}

const print = (line: string): void => void process.stdout.write(`${line}\n`)
const read = (file: string): string => readFileSync(join(ROOT, file), 'utf8')
const filesIn = (folder: string, name: RegExp): string[] =>
  readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .filter((file) => name.test(file))
    .map((file) => `${folder}/${file}`)
    .sort()
const hash = (texts: readonly string[]): string => {
  const sum = createHash('sha256')
  for (const text of texts) sum.update(text)
  return sum.digest('hex')
}

/** Without a word for so long nothing goes on, ms. */
const STUCK = 900_000

/** A worker with its ears: `limit` gives how much of a processor a test file may take, ms. */
class Worker {
  #child: ChildProcess | null = null
  /** Of a processor so far, ms. */
  #used = 0
  constructor(
    readonly how: 'cover' | 'try',
    readonly env: Readonly<Record<string, string>>,
  ) {}

  #start(): Promise<ChildProcess> {
    const child = fork(join(import.meta.dirname, 'worker.ts'), [this.how], {
      execArgv: ['--import', 'tsx'],
      env: { ...process.env, ...this.env },
      stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
    })
    this.#child = child
    this.#used = 0
    return new Promise((resolve) => child.once('message', () => resolve(child)))
  }

  stop(): void {
    this.#child?.kill('SIGKILL')
    this.#child = null
  }

  /** Which test file fails, null for none, 'timeout' where one does not end. What no test of it tells of must fail in a fresh process too. */
  async run(order: Order, limit: (test: string) => number, hear?: (report: Report) => void) {
    const { by, sure } = await this.#once(order, limit, hear)
    if (by === null || by === 'timeout' || sure) return by
    this.stop()
    return (await this.#once(order, limit, hear)).by
  }

  async #once(order: Order, limit: (test: string) => number, hear: (report: Report) => void = () => {}) {
    const child = this.#child ?? (await this.#start())
    return new Promise<{ by: string | null; sure: boolean }>((resolve) => {
      let timer: NodeJS.Timeout | undefined
      let most = Number.POSITIVE_INFINITY
      const end = (by: string | null, sure = false): void => {
        clearTimeout(timer)
        child.off('message', listen)
        child.off('exit', gone)
        resolve({ by, sure })
      }
      const tooLong = (): void => {
        this.stop()
        end('timeout')
      }
      const wait = (): void => {
        clearTimeout(timer)
        timer = setTimeout(tooLong, STUCK)
      }
      const gone = (): void => {
        this.#child = null
        end('the end of the process')
      }
      const listen = (report: Report): void => {
        hear(report)
        if (report.kind === 'done') end(report.by, report.sure)
        else if (report.kind === 'used') {
          this.#used = report.ms
          if (report.ms > most) tooLong()
        } else if (report.kind === 'begun') {
          most = this.#used + limit(report.test)
          wait()
        }
      }
      child.on('message', listen)
      child.once('exit', gone)
      wait()
      child.send(order)
    })
  }
}

interface Covered {
  readonly text: string
  readonly ms: number
  readonly failed: boolean
  /** `file#function` */
  readonly hits: readonly string[]
}

/** What each test file runs; what was measured before is kept while neither the file nor anything under it has changed. */
async function coverage(): Promise<{ engine: string; covered: Map<string, Covered> }> {
  const sources = Object.entries(FOLDERS).flatMap(([folder, name]) => filesIn(folder, name))
  const first: Record<string, number> = {}
  const names: string[] = []
  for (const file of sources) {
    first[file] = names.length
    functionsOf(file, read(file)).forEach((_, i) => {
      names.push(`${file}#${i}`)
    })
  }
  const engine = hash(
    [...filesIn('rules', /\.(ts|json)$/), ...filesIn('tests/support', /\.(ts|json)$/)].map(read),
  )
  const tests = TESTS.flatMap((folder) => filesIn(folder, /\.test\.ts$/)).filter((file) => !LEFT.test(file))
  const known: { engine: string; tests: Record<string, Covered> } = existsSync(COVERAGE)
    ? JSON.parse(readFileSync(COVERAGE, 'utf8'))
    : { engine: '', tests: {} }
  const kept = known.engine === engine ? known.tests : {}
  const texts = new Map(tests.map((file) => [file, hash([read(file)])]))
  const asked = tests.filter((file) => kept[file]?.text !== texts.get(file))
  const all = new Map(tests.filter((file) => !asked.includes(file)).map((file) => [file, kept[file]!]))
  if (asked.length > 0) {
    print(`coverage of ${asked.length} test files …`)
    mkdirSync(CACHE, { recursive: true })
    const told = join(CACHE, 'mutants-hits.jsonl')
    rmSync(told, { force: true })
    const times = new Map<string, { ms: number; loading: number; failed: boolean }>()
    const worker = new Worker('cover', { LEADLINE_HITS: told })
    await worker.run(
      { kind: 'cover', first, tests: asked },
      () => Number.POSITIVE_INFINITY,
      (report) => {
        if (report.kind === 'ended') times.set(report.test, report)
      },
    )
    worker.stop()
    // All load the engine; what one takes longer for than the others it does itself while it is loaded.
    const engineLoading = Math.min(...[...times.values()].map(({ loading }) => loading))
    for (const line of readFileSync(told, 'utf8').trim().split('\n')) {
      const { test, hits } = JSON.parse(line) as { test: string; hits: number[] }
      const file = test.slice(ROOT.length + 1)
      const { ms, loading, failed } = times.get(file)!
      all.set(file, {
        text: texts.get(file)!,
        ms: ms + loading - engineLoading,
        failed,
        hits: hits.map((n) => names[n]!),
      })
    }
    writeFileSync(COVERAGE, JSON.stringify({ engine, tests: Object.fromEntries(all) }))
  }
  for (const [file, { failed }] of all)
    if (failed) {
      print(`${file} fails without any fault: left out`)
      all.delete(file)
    }
  return { engine, covered: all }
}

const line = (file: string, at: number): string => read(file).slice(0, at).split('\n').length.toString()

const lineText = ({ file, start }: Mutant): string =>
  read(file).split('\n')[Number(line(file, start)) - 1]!.trim()

interface Explained {
  readonly file: string
  /** The line as it stands, without its indent. */
  readonly line: string
  readonly changes: readonly (readonly string[])[]
  readonly why: string
}
const explained: readonly Explained[] = equivalent

const why = (mutant: Mutant): string | undefined =>
  explained.find(
    (one) =>
      one.file === mutant.file &&
      one.line === lineText(mutant) &&
      one.changes.some(([from, to]) => from === mutant.from && to === mutant.to),
  )?.why

const parses = (mutant: Mutant): boolean =>
  parseSync(mutant.file, mutated(read(mutant.file), mutant)).errors.length === 0

const keyOf = ({ file, start, end, from, to }: Mutant): string => [file, start, end, from, to].join('|')

const { engine, covered } = await coverage()
const runs = new Map([...covered].map(([test, { hits }]) => [test, new Set(hits)]))
/** Of any test file, besides what it does, ms. */
const LOADING = 400
/** How often a test file was the one to tell. */
const told = new Map<string, number>()
/** Quick ones first, and those that tell much. */
const cost = (test: string): number => (covered.get(test)!.ms + LOADING) / (1 + 4 * (told.get(test) ?? 0))
const testsOf = ({ file, within }: Mutant): string[] => {
  const order = [...covered]
    .filter(([test]) =>
      within >= 0
        ? runs.get(test)!.has(`${file}#${within}`)
        : covered.get(test)!.hits.some((hit) => hit.startsWith(`${file}#`)),
    )
    .sort(([a], [b]) => cost(a) - cost(b))
  let left = Number(options.seconds) * 1000
  return order.flatMap(([test, { ms }], i) => {
    left -= ms
    return i === 0 || left > 0 ? [test] : []
  })
}

const last = new Map<string, Tried>(existsSync(LAST) ? JSON.parse(readFileSync(LAST, 'utf8')) : [])
const asOf = (by: string): string => `${engine} ${covered.get(by)?.text ?? ''}`
const asked = folders.flatMap((folder) => {
  const all = filesIn(folder, FOLDERS[folder]!).flatMap((file) => mutantsOf(file, read(file)))
  const some = options.all ? all : sampled(all, Number(options.sample), Number(options.seed))
  return some.filter(parses).map((mutant) => ({ folder, mutant }))
})
// Those of one file in a row: less is loaded anew.
asked.sort((a, b) => (keyOf(a.mutant) < keyOf(b.mutant) ? -1 : 1))

const begun = Date.now()
const tried: Tried[] = []
/** What is known so far. */
const keep = (): void => {
  for (const one of tried) last.set(keyOf(one.mutant), one)
  writeFileSync(LAST, JSON.stringify([...last]))
}
const queue = [...asked]
const sound = new Set<string>()
const unsound = new Set<string>()
/** Whether a test file that tells passes without any fault, asked in the very same way: else it tells nothing. */
async function isSound(worker: Worker, test: string, limit: (test: string) => number): Promise<boolean> {
  if (sound.has(test)) return true
  const passes = (await worker.run({ kind: 'try', mutant: null, tests: [test] }, limit)) === null
  ;(passes ? sound : unsound).add(test)
  if (!passes) print(`${test} fails without any fault: left out`)
  return passes
}

async function work(): Promise<void> {
  const worker = new Worker('try', {})
  for (let next = queue.shift(); next; next = queue.shift()) {
    const { mutant, folder } = next
    const tests = testsOf(mutant)
    let by: string | null = null
    let verdict: Verdict = 'uncovered'
    const known = last.get(keyOf(mutant))
    if (why(mutant)) verdict = 'equivalent'
    else if (known?.by && known.as === asOf(known.by)) ({ by, verdict } = known)
    else if (tests.length > 0) {
      const limit = (test: string): number => 30_000 + 10 * (covered.get(test)?.ms ?? 0)
      do
        by = await worker.run(
          { kind: 'try', mutant, tests: tests.filter((test) => !unsound.has(test)) },
          limit,
        )
      while (by && covered.has(by) && !(await isSound(worker, by, limit)))
      verdict = by === 'timeout' ? 'timeout' : by ? 'killed' : 'survived'
    }
    if (by) told.set(by, (told.get(by) ?? 0) + 1)
    tried.push({ mutant, folder, verdict, by, as: asOf(by ?? '') })
    if (verdict === 'survived' || verdict === 'uncovered')
      print(
        `${verdict} ${mutant.file}:${line(mutant.file, mutant.start)}  ${mutant.from.replace(/\s+/g, ' ').slice(0, 90)}  →  ${mutant.to.replace(/\s+/g, ' ').slice(0, 90)}`,
      )
    keep()
    if (tried.length % 20 > 0) continue
    print(`… ${tried.length} of ${asked.length}, ${Math.round((Date.now() - begun) / 1000)} s`)
  }
  worker.stop()
}
await Promise.all(Array.from({ length: Number(options.jobs) }, work))

keep()
let low = false
print('folder                 faults  killed  timeout  survived  uncovered  explained  score')
for (const folder of folders) {
  const here = tried.filter((t) => t.folder === folder)
  const n = (verdict: Verdict): number => here.filter((t) => t.verdict === verdict).length
  const score = (n('killed') + n('timeout')) / Math.max(1, here.length - n('equivalent'))
  low ||= score < LEAST
  const cells = [here.length, n('killed'), n('timeout'), n('survived'), n('uncovered'), n('equivalent')]
  print(
    `${folder.padEnd(21)}${cells.map((cell, i) => String(cell).padStart([8, 8, 9, 10, 11, 11][i]!)).join('')}  ${(score * 100).toFixed(1)} %`,
  )
}
process.exitCode = low ? 1 : 0
