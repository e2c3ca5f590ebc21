/** The house holds: imports run src → geometry → rules, and the engine needs neither DOM, React, three nor Node. */
import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, normalize, relative } from 'node:path'
import { parseSync } from 'vite'
import { describe, expect, it } from 'vitest'

const ROOT = join(import.meta.dirname, '../..')

/** What each folder may import besides itself: folders of ours, and packages. The longest name that fits goes. */
const MAY: Record<string, { folders: string[]; packages: RegExp }> = {
  rules: { folders: [], packages: /^(valibot|delaunator|canonicalize|@noble\/hashes\/.+)$/ },
  geometry: { folders: ['rules'], packages: /^delaunator$/ },
  'geometry/paper': { folders: ['rules'], packages: /^(uqr|fflate)$/ },
  'geometry/export': {
    folders: ['rules'],
    packages: /^(jspdf|@gltf-transform\/core|@tarikjabiri\/dxf|fflate)$/,
  },
  src: { folders: ['geometry', 'rules'], packages: /./ },
}

const filesOf = (folder: string): string[] =>
  readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.tsx?$/.test(file))
    .map((file) => join(folder, file))

/** Everything that a file imports: static, re-exported, dynamic, as a type alike. */
function importsOf(file: string, text: string): string[] {
  const { module, errors } = parseSync(file, text)
  expect(errors, file).toEqual([])
  return [
    ...module.staticImports.map((i) => i.moduleRequest.value),
    ...module.staticExports.flatMap((e) =>
      e.entries.flatMap((entry) => (entry.moduleRequest ? [entry.moduleRequest.value] : [])),
    ),
    ...module.dynamicImports.map((i) =>
      text.slice(i.moduleRequest.start, i.moduleRequest.end).replace(/^['"`]|['"`]$/g, ''),
    ),
  ]
}

/** What in a file goes against the direction. */
function against(file: string, text: string): string[] {
  const home = file.split('/')[0]!
  const { folders, packages } = Object.entries(MAY)
    .filter(([place]) => file === place || file.startsWith(`${place}/`))
    .sort(([a], [b]) => b.length - a.length)[0]![1]
  return importsOf(file, text).flatMap((name) => {
    const wrong = name.startsWith('.')
      ? ![home, ...folders].includes(normalize(join(dirname(file), name)).split('/')[0]!)
      : !packages.test(name)
    return wrong ? [`${file} imports ${name}`] : []
  })
}

describe('imports', () => {
  for (const folder of ['rules', 'geometry', 'src'])
    it(`of ${folder}/ run in one direction`, () => {
      const files = filesOf(folder)
      expect(files.length).toBeGreaterThan(3)
      expect(files.flatMap((file) => against(file, readFileSync(join(ROOT, file), 'utf8')))).toEqual([])
    })

  it.each([
    ['rules/x/y.ts', "import type { A } from '../../geometry/index.ts'"],
    ['rules/x/y.ts', "import * as THREE from 'three'"],
    ['rules/x/y.ts', "import { useState } from 'react'"],
    ['rules/x/y.ts', "import { readFileSync } from 'node:fs'"],
    ['rules/x/y.ts', "export { a } from '../../src/cli/run.ts'"],
    ['rules/x.ts', "const a = () => import('../src/cli/run.ts')"],
    ['geometry/x.ts', "export * from '../src/cli/run.ts'"],
    ['geometry/x.ts', "import * as THREE from 'three'"],
    ['geometry/x.ts', "import { jsPDF } from 'jspdf'"],
    ['geometry/export/pdf.ts', "import * as THREE from 'three'"],
    ['src/x.ts', "import { validate } from '../tests/support/validate.ts'"],
  ])('are told when they run the other way: %s: %s', (file, text) => {
    expect(against(file, text)).toHaveLength(1)
  })

  it('within the direction are not told', () => {
    expect(
      against(
        'src/a/b.ts',
        "import { derive } from '../../rules/index.ts'; import './c.css?inline'; import React from 'react'",
      ),
    ).toEqual([])
    expect(against('geometry/a.ts', "import type { Dock } from '../rules/index.ts'")).toEqual([])
  })
})

describe('the engine', () => {
  it('is checked without the types of a DOM or of Node', () => {
    for (const folder of ['rules', 'geometry']) {
      const { compilerOptions } = JSON.parse(readFileSync(join(ROOT, folder, 'tsconfig.json'), 'utf8'))
      expect(compilerOptions).toMatchObject({ lib: ['ES2023'], types: [] })
    }
  })

  it('has no path of a machine or a registry in it', () => {
    const files = ['rules', 'geometry', 'src'].flatMap(filesOf)
    for (const file of files)
      expect(readFileSync(join(ROOT, file), 'utf8'), relative(ROOT, file)).not.toMatch(
        /(^|[^A-Za-z0-9_.])\/(work|root|home)\//,
      )
  })
})

/** What the scene takes of the solver besides types: that would have it loaded on the page. */
const solvesIn = (text: string): string[] =>
  [...text.matchAll(/^import (?!type )([^'"]*)['"][^'"]*\/rules\/(?:structure|derive)\b[^'"]*['"]/gm)]
    .map(([, names]) => names!)
    .filter((names) => !/^\{(?:\s*type \w+,?)+\s*\} from $/.test(names))

it('The scene solves nothing: what moves and what holds is worked out in a worker', () => {
  for (const file of filesOf('src/scene'))
    expect(solvesIn(readFileSync(join(ROOT, file), 'utf8')), file).toEqual([])
  expect(solvesIn("import { type A, solve } from '../../../rules/structure/x.ts'")).toHaveLength(1)
  expect(solvesIn("import { type A, type B } from '../../../rules/structure/x.ts'")).toEqual([])
})
