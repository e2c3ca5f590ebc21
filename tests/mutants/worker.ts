/**
 * A process that runs test files on sources with a fault in them. It stays: starting it takes longer than most faults live. Its
 * parent ends it where a fault never ends.
 */
import { relative, resolve } from 'node:path'
import type { Plugin } from 'vite'
import {
  BaseSequencer,
  createVitest,
  type Reporter,
  type TestModule,
  type TestSpecification,
} from 'vitest/node'
import { type Mutant, mutated, telling } from './mutate.ts'

export type Order =
  /** Which functions of the sources each test file runs: `first` numbers those of a file from there on. */
  | {
      readonly kind: 'cover'
      readonly first: Readonly<Record<string, number>>
      readonly tests: readonly string[]
    }
  /** Without a mutant: as they are. */
  | { readonly kind: 'try'; readonly mutant: Mutant | null; readonly tests: readonly string[] }

export type Report =
  | { readonly kind: 'ready' }
  | { readonly kind: 'begun'; readonly test: string }
  | {
      readonly kind: 'ended'
      readonly test: string
      readonly ms: number
      readonly loading: number
      readonly failed: boolean
    }
  /** Of a processor, by all of this process so far: what a wall clock tells on a shared machine is no measure. */
  | { readonly kind: 'used'; readonly ms: number }
  /** `by`: the test file that fails, or null; `sure` where a test of it does, and not what loads or starts it. */
  | { readonly kind: 'done'; readonly by: string | null; readonly sure: boolean }

const ROOT = resolve(import.meta.dirname, '../..')
const short = (path: string): string => relative(ROOT, path)
const say = (report: Report): void => void process.send!(report)

let order: Order | null = null
let first: string[] = []

const faults: Plugin = {
  name: 'faults',
  enforce: 'pre',
  transform(code, id) {
    const file = short(id.split('?')[0]!)
    if (order?.kind === 'try') return order.mutant?.file === file ? mutated(code, order.mutant) : undefined
    const number = order?.first[file]
    return number === undefined ? undefined : telling(file, code, number)
  },
}

/** As they were asked for, the quickest first. */
class AsAsked extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    return [...files].sort((a, b) => first.indexOf(short(a.moduleId)) - first.indexOf(short(b.moduleId)))
  }
}

const failed = (module: TestModule): boolean => module.state() === 'failed' || module.errors().length > 0

const reporter: Reporter = {
  onTestModuleQueued: (module) => say({ kind: 'begun', test: short(module.moduleId) }),
  onTestModuleStart: (module) => say({ kind: 'begun', test: short(module.moduleId) }),
  onTestModuleEnd(module) {
    const { duration, collectDuration } = module.diagnostic()
    say({
      kind: 'ended',
      test: short(module.moduleId),
      ms: duration,
      loading: collectDuration,
      failed: failed(module),
    })
  },
}

const covers = process.argv[2] === 'cover'
const vitest = await createVitest(
  'test',
  {
    root: ROOT,
    config: false,
    watch: false,
    include: ['tests/**/*.test.ts'],
    pool: 'threads',
    // What one file has worked out another would not run again: to see what each runs, each is alone.
    isolate: covers,
    maxWorkers: covers ? 2 : 1,
    bail: covers ? 0 : 1,
    testTimeout: 120_000,
    setupFiles: covers ? ['tests/mutants/hits.ts'] : ['tests/mutants/short.ts'],
    sequence: { sequencer: AsAsked },
    reporters: [reporter],
  },
  { plugins: [faults], logLevel: 'silent' },
)

process.on('message', async (message: Order) => {
  const before = order?.kind === 'try' ? order.mutant?.file : null
  order = message
  first = [...message.tests]
  for (const file of [before, message.kind === 'try' ? message.mutant?.file : null])
    if (file) vitest.invalidateFile(resolve(ROOT, file))
  const project = vitest.getRootProject()
  const { testModules, unhandledErrors } = await vitest.runTestSpecifications(
    message.tests.map((test) => project.createSpecification(resolve(ROOT, test))),
  )
  const module = testModules.find(failed)
  const tests = module ? [...module.children.allTests('failed')] : []
  say({
    kind: 'done',
    by: module ? short(module.moduleId) : unhandledErrors.length > 0 ? 'an unhandled error' : null,
    sure: tests.length > 0,
  })
})
process.on('disconnect', () => process.exit())
setInterval(() => {
  const { user, system } = process.cpuUsage()
  say({ kind: 'used', ms: (user + system) / 1000 })
}, 500).unref()
say({ kind: 'ready' })
