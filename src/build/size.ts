/**
 * What the page weighs on the way, gzip -9, kB of 1000 bytes, against `budgets.json`. `npm run size` builds the page and prints the table;
 * the tests in a browser read the same figures here.
 *
 * Three kinds, and the catalog editor, a page of its own: what comes before the first picture (`leadline.js` and all that it imports at once), the same with the 3D scene, and
 * every other chunk by itself, which comes when it is asked for. A chunk without a budget is over it, and so that none is forgotten
 * a budget without a chunk is told too.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { basename, join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { gzipSync } from 'node:zlib'
import { parseSync } from 'vite'
import budgets from './budgets.json' with { type: 'json' }

export interface Budgets {
  readonly first: number
  readonly all: number
  /** By the name of the chunk, without its hash. */
  readonly chunks: Readonly<Record<string, number>>
  readonly editor?: number
}

export interface Weight {
  readonly name: string
  readonly bytes: number
  /** None: a chunk that the budgets do not know. */
  readonly budget: number | undefined
  readonly files: readonly string[]
}

export interface Sizes {
  readonly first: Weight
  readonly all: Weight
  readonly chunks: readonly Weight[]
  /** The script of the catalog editor's page; none where it is not built. */
  readonly editor: Weight | null
  /** Names of the budgets that no chunk answers to. */
  readonly gone: readonly string[]
}

/** The chunk that the 3D scene begins with. */
const SCENE = 'scene'

/** `scene-CKBRLLRV.js` is `scene`. */
const nameOf = (file: string): string => basename(file).replace(/-[\w-]{8}\.js$/, '')

const weigh = (file: string): number => gzipSync(readFileSync(file), { level: 9 }).length

/** A file and all that it imports at once, not on demand. */
function withImports(file: string, seen: Set<string>): Set<string> {
  if (seen.has(file)) return seen
  seen.add(file)
  const { module, errors } = parseSync(file, readFileSync(file, 'utf8'))
  if (errors.length > 0) throw new Error(`${file} is no script: ${errors[0]!.message}`)
  const names = [
    ...module.staticImports.map((i) => i.moduleRequest.value),
    ...module.staticExports.flatMap((e) => e.entries.flatMap((entry) => entry.moduleRequest?.value ?? [])),
  ]
  for (const name of names) withImports(join(file, '..', name), seen)
  return seen
}

/** Throws where no page is built in the folder. */
export function readSizes(dist: string, limits: Budgets = budgets): Sizes {
  const folder = join(dist, 'leadline')
  const editor = join(dist, 'catalog-editor.js')
  const scripts = readdirSync(folder)
    .filter((file) => file.endsWith('.js'))
    .map((file) => join(folder, file))
  const first = withImports(join(dist, 'leadline.js'), new Set())
  const all = new Set(first)
  for (const file of scripts) if (nameOf(file) === SCENE) withImports(file, all)
  if (all.size === first.size) throw new Error(`no ${SCENE} chunk in ${folder} beside what comes first`)

  const weight = (name: string, files: Iterable<string>, budget: number | undefined): Weight => {
    const list = [...files]
    return { name, bytes: list.reduce((sum, file) => sum + weigh(file), 0), budget, files: list }
  }
  const later = new Map<string, string[]>()
  for (const file of scripts)
    if (!all.has(file)) later.set(nameOf(file), [...(later.get(nameOf(file)) ?? []), file])
  return {
    first: weight('before the first picture', first, limits.first),
    all: weight('all with the 3D scene', all, limits.all),
    chunks: [...later]
      .map(([name, files]) => weight(name, files, limits.chunks[name]))
      .sort((a, b) => b.bytes - a.bytes),
    editor: existsSync(editor) ? weight('the catalog editor', [editor], limits.editor) : null,
    gone: Object.keys(limits.chunks).filter((name) => !later.has(name)),
  }
}

/** What is wrong, a line each; none where all keep to their budgets. */
export function faultsOf({ first, all, chunks, editor, gone }: Sizes): string[] {
  return [
    ...[first, all, ...(editor ? [editor] : []), ...chunks].flatMap(({ name, bytes, budget }) => {
      if (budget === undefined) return [`${name}: ${bytes} bytes, and no budget`]
      return bytes > budget ? [`${name}: ${bytes} bytes, ${bytes - budget} over its budget of ${budget}`] : []
    }),
    ...gone.map((name) => `${name}: a budget, and no chunk`),
  ]
}

const kB = (bytes: number): string => (bytes / 1000).toFixed(1)

export function tableOf({ first, all, chunks, editor }: Sizes): string {
  const row = (name: string, bytes: string, budget: string): string =>
    `${name.padEnd(28)}${bytes.padStart(9)}${budget.padStart(9)}\n`
  const line = ({ name, bytes, budget }: Weight): string =>
    row(name, kB(bytes), budget === undefined ? 'none' : kB(budget))
  return [
    row('gzip -9, kB', 'bytes', 'budget'),
    line(first),
    line(all),
    ...(editor ? [line(editor)] : []),
    row('what comes when asked for', '', ''),
    ...chunks.map((chunk) => line({ ...chunk, name: `  ${chunk.name}` })),
  ].join('')
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const sizes = readSizes(resolve(process.argv[2] ?? 'dist'))
  process.stdout.write(tableOf(sizes))
  const faults = faultsOf(sizes)
  for (const fault of faults) process.stderr.write(`${fault}\n`)
  process.exitCode = faults.length > 0 ? 1 : 0
}
