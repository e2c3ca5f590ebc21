/** The files that run by themselves, as an archive for who puts them on a host by hand: the same bytes for the same files. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { type Zippable, zipSync } from 'fflate'
import { filesIn } from './compare.ts'

/** What a bundler or Node is for, and not a host. */
const BUILT_ON = /^dist\/(?:es|node|types)$/

/** Of what the package has in it, files for a static host, with `dist/` left off. @param packed `files` of package.json */
export function standalone(root: string, packed: readonly string[]): Readonly<Record<string, string>> {
  const wanted = packed.filter((path) => path.startsWith('dist/') && !BUILT_ON.test(path))
  const dist = filesIn(join(root, 'dist')).map((file) => `dist/${file}`)
  const files = wanted.flatMap((path) => {
    const found = dist.filter((file) => file === path || file.startsWith(`${path}/`))
    if (found.length === 0) throw new Error(`${path}: in package.json's files, and not built`)
    return found
  })
  return Object.fromEntries(
    [
      ...files.map((file) => [file.slice('dist/'.length), file] as const),
      ['LICENSE', 'LICENSE'] as const,
    ].map(([name, file]) => [name, join(root, file)]),
  )
}

/** @param files where each of them lies, by its name in the archive */
export function zipOf(files: Readonly<Record<string, string>>): Uint8Array {
  // The earliest that an archive can have, by the clock of wherever it is made: that is how it is written down.
  const mtime = new Date(1980, 0, 1)
  const all: Zippable = {}
  for (const name of Object.keys(files).sort())
    all[name] = [readFileSync(files[name]!), { level: 9, mtime, os: 3 }]
  return zipSync(all)
}
