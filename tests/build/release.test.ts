/** What a release is held to: two builds compared to the byte, one version in all places, an archive that no clock is in. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { strFromU8, unzipSync } from 'fflate'
import { afterAll, describe, expect, it } from 'vitest'
import { standalone, zipOf } from '../../src/build/release/archive.ts'
import { differences } from '../../src/build/release/compare.ts'
import { placesIn, versionOf } from '../../src/build/release/versions.ts'

const root = mkdtempSync(join(tmpdir(), 'leadline-'))
afterAll(() => rmSync(root, { recursive: true }))

function folder(name: string, files: Readonly<Record<string, string>>): string {
  for (const [path, text] of Object.entries(files)) {
    const at = join(root, name, path)
    mkdirSync(join(at, '..'), { recursive: true })
    writeFileSync(at, text)
  }
  return join(root, name)
}

describe('Two builds', () => {
  const first = folder('first', { 'leadline.js': 'one', 'leadline/app-1.js': 'app', 'empty.js': '' })

  it('are the same where every byte is', () => {
    const same = folder('same', { 'leadline/app-1.js': 'app', 'empty.js': '', 'leadline.js': 'one' })
    expect(differences(first, same)).toEqual([])
  })

  it('are told apart by one byte, a byte more, a file that one lacks, each by its name', () => {
    const other = folder('other', {
      'leadline.js': 'onf',
      'leadline/app-2.js': 'app',
      'empty.js': ' ',
    })
    expect(differences(first, other)).toEqual([
      'empty.js: differs at byte 0, of 0 and 1',
      'leadline.js: differs at byte 2, of 3 and 3',
      'leadline/app-1.js: only in the first',
      'leadline/app-2.js: only in the second',
    ])
  })
})

describe('The files for a static host', () => {
  const built = folder('built', {
    LICENSE: 'MIT',
    'dist/leadline.js': 'one',
    'dist/leadline/app-1.js': 'app',
    'dist/es/leadline.js': 'es',
    'dist/index.html': 'the demo',
  })
  const packed = ['dist/leadline.js', 'dist/leadline', 'dist/es', 'public/guide']

  it('are those of the package that need no bundler, with its license', () => {
    const read = unzipSync(zipOf(standalone(built, packed)))
    expect(Object.entries(read).map(([name, bytes]) => [name, strFromU8(bytes)])).toEqual([
      ['LICENSE', 'MIT'],
      ['leadline.js', 'one'],
      ['leadline/app-1.js', 'app'],
    ])
  })

  it('are the same archive whatever clock and order they were written by', () => {
    const before = process.env.TZ
    const one = zipOf(standalone(built, packed))
    process.env.TZ = before === 'Pacific/Auckland' ? 'UTC' : 'Pacific/Auckland'
    const again = folder('again', {
      'dist/leadline/app-1.js': 'app',
      'dist/leadline.js': 'one',
      LICENSE: 'MIT',
    })
    const other = zipOf(standalone(again, ['dist/leadline', 'dist/leadline.js']))
    if (before === undefined) delete process.env.TZ
    else process.env.TZ = before
    expect(Buffer.from(other).equals(Buffer.from(one))).toBe(true)
  })

  it('are not made where one that is promised was not built', () => {
    expect(() => standalone(built, [...packed, 'dist/frame.html'])).toThrow('dist/frame.html')
  })
})

describe('Versions', () => {
  const places = placesIn(join(import.meta.dirname, '../..'))

  it('agree: package, lockfile, engine, changelog', () => {
    expect(versionOf(places)).toMatch(/^\d+\.\d+\.\d+$/)
  })

  it.each(Object.keys(places) as (keyof typeof places)[])('are told where %s has another', (file) => {
    const version = versionOf(places)
    const other = { ...places, [file]: places[file].replace(version, '9.9.9') }
    expect(() => versionOf(other)).toThrow(`${file} 9.9.9`)
    expect(() => versionOf({ ...places, [file]: '' })).toThrow(`${file} none`)
  })
})
