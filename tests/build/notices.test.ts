/** Licenses go with what they are of, and the list of it for programs is whole, and the same each time. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, it } from 'vitest'
import { licensesIn, lockedIn, noticeOf, type Sbom, sbomOf, withTexts } from '../../src/build/notices.ts'

const ROOT = join(import.meta.dirname, '../..')
const folder = mkdtempSync(join(tmpdir(), 'leadline-'))
afterAll(() => rmSync(folder, { recursive: true }))

const LIST = `# Licenses

## @a/b - 1.0.0 (MIT)

## c - 2.0.0 (ISC)

ISC License: its text

## d - 3.0.0 (MIT)
`

it('a file with others’ code in it says where its licenses lie, and one without says nothing', () => {
  expect(noticeOf({ moduleIds: ['/x/src/a.ts', '/x/node_modules/preact/index.js'] })).toContain(
    'THIRD-PARTY.md',
  )
  expect(noticeOf({ moduleIds: ['/x/src/a.ts', '/x/src/node_modules.ts'] })).toBe('')
})

it('a package that brings no text of its license has it, with its author; an unknown license is not passed over', () => {
  const whole = withTexts(LIST, (name) => `A. Author of ${name}`)
  expect(licensesIn(whole)).toEqual([
    ['@a/b@1.0.0', 'MIT'],
    ['c@2.0.0', 'ISC'],
    ['d@3.0.0', 'MIT'],
  ])
  for (const name of ['@a/b', 'd'])
    expect(whole).toContain(`Copyright (c) A. Author of ${name}\n\nPermission is hereby granted`)
  expect(whole).not.toContain('A. Author of c')
  expect(withTexts(whole, () => 'nobody')).toBe(whole)
  expect(() => withTexts('## e - 1.0.0 (Zlib)\n\n## f - 1.0.0 (MIT)\n\nText')).toThrow(
    /e: no text of its license, Zlib/,
  )
})

it('the list for programs has what is in the files, as the lockfile has it, and nothing else', () => {
  const { packages } = JSON.parse(readFileSync(join(ROOT, 'package-lock.json'), 'utf8')) as {
    packages: Record<string, { version: string; integrity: string }>
  }
  const lists = [
    ['preact', '@noble/hashes'],
    ['preact', 'valibot'],
  ].map((names, i) => {
    const file = join(folder, `${i}.md`)
    writeFileSync(
      file,
      names
        .map((name) => `## ${name} - ${packages[`node_modules/${name}`]!.version} (MIT)\n\nText\n`)
        .join('\n'),
    )
    return file
  })
  const locked = lockedIn(ROOT)
  const told = sbomOf(ROOT, lists, locked)
  const { bomFormat, specVersion, serialNumber, metadata, components } = JSON.parse(told) as Sbom
  expect([bomFormat, specVersion, serialNumber, metadata.timestamp]).toEqual([
    'CycloneDX',
    '1.5',
    undefined,
    undefined,
  ])
  expect(metadata.component).toMatchObject({
    name: 'leadline',
    'bom-ref': `leadline@${metadata.component.version}`,
  })
  const versionOf = (name: string) => packages[`node_modules/${name}`]!.version
  expect(components.map(({ purl }) => purl)).toEqual([
    `pkg:npm/%40noble/hashes@${versionOf('@noble/hashes')}`,
    `pkg:npm/preact@${versionOf('preact')}`,
    `pkg:npm/valibot@${versionOf('valibot')}`,
  ])
  for (const [i, name] of ['@noble/hashes', 'preact', 'valibot'].entries()) {
    const [hash] = components[i]!.hashes!
    // The lockfile has it in base64.
    expect(Buffer.from(hash!.content, 'hex').toString('base64')).toBe(
      packages[`node_modules/${name}`]!.integrity.replace(/^sha512-/, ''),
    )
    expect(components[i]!.licenses).toEqual([{ license: { id: 'MIT' } }])
  }
  const gone = join(folder, 'gone.md')
  writeFileSync(gone, '## preact - 0.0.1 (MIT)\n')
  expect(() => sbomOf(ROOT, [gone], locked)).toThrow(/preact@0\.0\.1.*not in the lockfile/)
}, 60_000)
