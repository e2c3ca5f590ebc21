/** For the builds: what is of others says so where it stands, and which of it there is is told for programs too. */
import { execFileSync } from 'node:child_process'
import { readFileSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { basename, dirname, join, resolve } from 'node:path'
import type { Plugin } from 'vite'

/** What a file that has others' code in it begins with; the licenses lie in the folder of the files. */
export const noticeOf = ({ moduleIds }: { readonly moduleIds: readonly string[] }): string =>
  moduleIds.some((id) => id.includes('/node_modules/')) ? '/*! Licenses: THIRD-PARTY.md */' : ''

/** `name@version` of each package in a list of licenses as the builds write it, and its license. */
export const licensesIn = (list: string): [string, string][] =>
  [...list.matchAll(/^## (\S+) - (\S+) \((.+)\)$/gm)].map(([, name, version, license]) => [
    `${name}@${version}`,
    license!,
  ])

const MIT = `Permission is hereby granted, free of charge, to any person obtaining a copy of this software and associated documentation files (the "Software"), to deal in the Software without restriction, including without limitation the rights to use, copy, modify, merge, publish, distribute, sublicense, and/or sell copies of the Software, and to permit persons to whom the Software is furnished to do so, subject to the following conditions:

The above copyright notice and this permission notice shall be included in all copies or substantial portions of the Software.

THE SOFTWARE IS PROVIDED "AS IS", WITHOUT WARRANTY OF ANY KIND, EXPRESS OR IMPLIED, INCLUDING BUT NOT LIMITED TO THE WARRANTIES OF MERCHANTABILITY, FITNESS FOR A PARTICULAR PURPOSE AND NONINFRINGEMENT. IN NO EVENT SHALL THE AUTHORS OR COPYRIGHT HOLDERS BE LIABLE FOR ANY CLAIM, DAMAGES OR OTHER LIABILITY, WHETHER IN AN ACTION OF CONTRACT, TORT OR OTHERWISE, ARISING FROM, OUT OF OR IN CONNECTION WITH THE SOFTWARE OR THE USE OR OTHER DEALINGS IN THE SOFTWARE.`

/** Whom a package names as its author. */
function authorOf(name: string): string {
  const require = createRequire(import.meta.url)
  let folder = dirname(require.resolve(name))
  while (basename(folder) !== basename(name)) folder = dirname(folder)
  const { author } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as {
    readonly author?: string | { readonly name?: string }
  }
  return (typeof author === 'string' ? author : author?.name) || `the authors of ${name}`
}

/** A list in which a package that brings no text of its license has it all the same. Throws where that is none of which the text is known. */
export const withTexts = (list: string, author: (name: string) => string = authorOf): string =>
  list.replace(/^## (\S+) - \S+ \((.+)\)\n(?=\s*(?:^## |$(?![\s\S])))/gm, (head, name, license) => {
    if (license !== 'MIT') throw new Error(`${name}: no text of its license, ${license}`)
    return `${head}\nMIT License\n\nCopyright (c) ${author(name)}\n\n${MIT}\n`
  })

/** For the builds, after their list of licenses. @param fileName within the output */
export const wholeLicenses = (fileName: string): Plugin => {
  let folder = ''
  return {
    name: 'leadline:whole-licenses',
    apply: 'build',
    enforce: 'post',
    configResolved({ root, build }) {
      folder = resolve(root, build.outDir)
    },
    writeBundle: {
      order: 'post',
      handler() {
        const file = join(folder, fileName)
        writeFileSync(file, withTexts(readFileSync(file, 'utf8')))
      },
    },
  }
}

/** Of CycloneDX 1.5, what is touched here. */
export interface Sbom {
  readonly bomFormat: string
  readonly specVersion: string
  serialNumber?: string
  readonly metadata: {
    timestamp?: string
    lifecycles?: readonly { readonly phase: string }[]
    readonly component: { name: string; readonly version: string; readonly 'bom-ref': string }
  }
  components: readonly Component[]
  dependencies?: unknown
}
interface Component {
  readonly 'bom-ref': string
  readonly purl: string
  scope?: string
  properties?: unknown
  readonly licenses?: readonly unknown[]
  readonly hashes?: readonly { readonly alg: string; readonly content: string }[]
}

/** All that the lockfile has, by npm. */
export const lockedIn = (root: string): string =>
  execFileSync('npm', ['sbom', '--sbom-format', 'cyclonedx', '--package-lock-only', '--include', 'dev'], {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
  })

/**
 * What is in the built files, as CycloneDX JSON: npm's own list of the lockfile, less what is only built and tested with. The same for the
 * same lockfile: no time, no number of its own.
 * @param lists the lists of licenses of the builds; `told`: what npm says of the lockfile. Throws where one of their packages is not in the lockfile.
 */
export function sbomOf(root: string, lists: readonly string[], told: string = lockedIn(root)): string {
  const all = JSON.parse(told) as Sbom
  const { name } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { readonly name: string }
  const wanted = new Map(lists.flatMap((list) => licensesIn(readFileSync(list, 'utf8'))))
  const known = new Map(all.components.map((one) => [one['bom-ref'], one]))
  const components = [...wanted.keys()].sort().map((ref) => {
    const one = known.get(ref)
    if (!one)
      throw new Error(`${ref}, of ${lists.map((list) => basename(list)).join()}, is not in the lockfile`)
    // It is in the files, whatever it is to those who build them.
    const { scope: _scope, properties: _properties, ...rest } = one
    // npm tells those alone that have a name of SPDX.
    const licenses = rest.licenses?.length ? rest.licenses : [{ license: { name: wanted.get(ref) } }]
    return { ...rest, licenses, scope: 'required' }
  })
  const { serialNumber: _serial, dependencies: _dependencies, metadata, ...rest } = all
  const { timestamp: _time, lifecycles: _phases, ...about } = metadata
  const component = { ...about.component, name }
  return `${JSON.stringify({ ...rest, metadata: { ...about, component }, components }, null, 2)}\n`
}
