/** Two folders that should be the same, byte by byte: what in them is not. */
import { readdirSync, readFileSync } from 'node:fs'
import { join, relative, sep } from 'node:path'

/** Files in it and below, as paths with `/` from it, sorted the same everywhere. */
export const filesIn = (folder: string): readonly string[] =>
  readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).replaceAll(sep, '/'))
    .sort((a, b) => (a < b ? -1 : 1))

/** A line for each file that only one of them has or that differs, and where it first does. Empty: they are the same. */
export function differences(first: string, second: string): readonly string[] {
  const [here, there] = [new Set(filesIn(first)), new Set(filesIn(second))]
  return [...new Set([...here, ...there])].sort().flatMap((file) => {
    if (!there.has(file)) return [`${file}: only in the first`]
    if (!here.has(file)) return [`${file}: only in the second`]
    const [a, b] = [readFileSync(join(first, file)), readFileSync(join(second, file))]
    if (a.equals(b)) return []
    const same = a.findIndex((byte, i) => byte !== b[i])
    return [`${file}: differs at byte ${same === -1 ? a.length : same}, of ${a.length} and ${b.length}`]
  })
}
