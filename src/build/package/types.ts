/**
 * Of declarations that the compiler wrote, those that the package's entries reach: the rest tells of what no one can import. Imports in
 * them are named as a reader's compiler looks for them; the compiler leaves the sources' own endings, and data as it lies.
 */
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'

const IMPORT = /((?:from\s+|import\s*\(\s*|import\s+)['"])(\.[^'"]+)(['"])(\s+with\s*\{[^}]*\})?/g

/** The type of plain data, as text. */
function typeOf(value: unknown): string {
  if (value === null) return 'null'
  if (Array.isArray(value)) return `readonly (${[...new Set(value.map(typeOf))].join(' | ') || 'never'})[]`
  if (typeof value !== 'object') return typeof value
  return `{ ${Object.entries(value)
    .map(([key, entry]) => `readonly ${JSON.stringify(key)}: ${typeOf(entry)}`)
    .join('; ')} }`
}

/** Removes from `types` every declaration that no entry reaches. @param sources where data lies that a declaration imports */
export function keepReachable(types: string, sources: string, entries: readonly string[]): Set<string> {
  const kept = new Set<string>()
  const open = entries.map((entry) => resolve(types, entry))
  for (let file = open.pop(); file; file = open.pop()) {
    if (kept.has(file)) continue
    kept.add(file)
    const from = dirname(file)
    const text = readFileSync(file, 'utf8').replace(IMPORT, (_, before, path: string, after) => {
      const data = path.endsWith('.json')
      const target = resolve(from, path.replace(/(?<!\.d)\.(?:tsx?|json)$/, ''))
      const declared = `${target}.d.ts`
      if (data) {
        const value: unknown = JSON.parse(readFileSync(`${target.replace(types, sources)}.json`, 'utf8'))
        mkdirSync(dirname(declared), { recursive: true })
        writeFileSync(declared, `declare const data: ${typeOf(value)}\nexport default data\n`)
      }
      if (!existsSync(declared)) throw new Error(`${file}: nothing declares ${path}`)
      open.push(declared)
      return `${before}${path.replace(/\.(?:tsx?|json)$/, '.js')}${after}`
    })
    writeFileSync(file, text)
  }
  sweep(types, kept)
  return kept
}

function sweep(folder: string, kept: ReadonlySet<string>): void {
  for (const name of readdirSync(folder)) {
    const path = join(folder, name)
    if (statSync(path).isDirectory()) {
      sweep(path, kept)
      if (readdirSync(path).length === 0) rmSync(path, { recursive: true })
    } else if (!kept.has(path)) rmSync(path)
  }
}
