/** The one version of a release, in all places that name it. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'

const PLACES = {
  'package.json': /^ {2}"version": "([^"]+)"/m,
  'package-lock.json': /^ {2}"version": "([^"]+)"/m,
  'rules/version.ts': /ENGINE_VERSION = '([^']+)'/,
  // The newest stands on top.
  'CHANGELOG.md': /^## (\S+)$/m,
} as const

export type Places = Readonly<Record<keyof typeof PLACES, string>>

/** The texts of those places. */
export const placesIn = (root: string): Places =>
  Object.fromEntries(
    Object.keys(PLACES).map((file) => [file, readFileSync(join(root, file), 'utf8')]),
  ) as Record<keyof typeof PLACES, string>

/** @throws where they are not of one version, with what each says. */
export function versionOf(texts: Places): string {
  const told = Object.entries(PLACES).map(([file, place]) => [
    file,
    place.exec(texts[file as keyof Places])?.[1] ?? 'none',
  ])
  const [[, version]] = told as [[string, string]]
  if (told.every(([, each]) => each === version) && version !== 'none') return version
  throw new Error(`not of one version: ${told.map(([file, each]) => `${file} ${each}`).join(', ')}`)
}
