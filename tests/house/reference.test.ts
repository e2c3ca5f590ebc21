/** The reference is what the sources say now, and every name that can be imported says something. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { ENTRIES, exported, REFERENCE, referenceOf } from '../../src/build/guide/reference.ts'

const { exports } = JSON.parse(readFileSync(join(import.meta.dirname, '../../package.json'), 'utf8')) as {
  readonly exports: Readonly<Record<string, { readonly types?: string } | string>>
}

describe('The reference', () => {
  const all = exported()

  it('is what the sources say now (npm run build:reference renews it)', () => {
    expect(referenceOf(all)).toBe(readFileSync(REFERENCE, 'utf8'))
  })

  it('has each module that the package exports with types', () => {
    const typed = Object.entries(exports).flatMap(([path, to]) =>
      typeof to === 'object' && to.types ? [[path.replace('.', 'leadline'), to.types]] : [],
    )
    const types = Object.entries(ENTRIES).map(([name, file]) => [
      name,
      `./dist/types/${file.replace(/\.ts$/, '.d.ts')}`,
    ])
    expect(types).toEqual(expect.arrayContaining(typed))
    expect(types).toHaveLength(typed.length)
  })

  it('has a signature and a docstring for every name', () => {
    const told = Object.values(all).flat()
    expect(told.filter(({ doc }) => doc === '').map(({ name, file }) => `${name} of ${file}`)).toEqual([])
    expect(told.filter(({ signature }) => signature.trim() === '')).toEqual([])
    // By hand: a function, a type, a method of the element, a module that is exported whole.
    const of = (name: string) => told.find((one) => one.name === name)
    expect(of('derive')?.signature).toBe('derive(design: Design, catalog: Catalog): Dock')
    expect(of('Corner')?.signature).toBe(
      "type Corner = 'start.left' | 'start.right' | 'end.left' | 'end.right'",
    )
    expect(of('LeadlineDock')?.signature).toContain('exportFile(wanted: ExportWanted): Promise<File>')
    expect(of('LeadlineDock')?.signature).not.toContain('#session')
    expect(of('bodies')?.signature).toContain('frameBody(catalog: Catalog, frame: Frame): Piece[]')
  })

  it('is not made where nobody has said what a name belongs to', () => {
    const stray = { name: 'stray', file: 'rules/elsewhere.ts', signature: 'stray(): void', doc: 'One.' }
    expect(() => referenceOf({ ...all, leadline: [stray] })).toThrow('stray of rules/elsewhere.ts')
  })
})
