/** What the build cuts from three: methods that nobody calls, and parts that the scene never gets to. */
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { keptNames, readSource, withoutMethods, wordsOf } from '../../src/scene/lean/methods.ts'
import { EMPTIED, STUBS, withStubs } from '../../src/scene/lean/stubs.ts'

const folder = dirname(createRequire(import.meta.url).resolve('three'))
const three = (file: string): string => readFileSync(join(folder, file), 'utf8')

/** The code that is left where only `asked` is named from outside. */
function lean(asked: string, ...codes: string[]): string[] {
  const sources = codes.map((code, i) => readSource(`${i}.js`, code))
  const kept = keptNames(sources, wordsOf(asked))
  return sources.map((source) => withoutMethods(source, kept))
}

describe('methods that nobody calls', () => {
  it('go, and what is named from outside stays, with what it names in its turn', () => {
    const code = `class A {
  used() { return this.inner() }
  inner() { return 1 }
  unused() { return this.alone() }
  alone() { return 2 }
}`
    const [left] = lean('new A().used()', code)
    expect(left).toContain('used()')
    expect(left).toContain('inner()')
    expect(left).not.toMatch(/unused|alone/)
  })

  it('stay where their name is a string, a property or part of what is taken apart', () => {
    const code = 'class A { a() {} b() {} c() {} d() {} }'
    const [left] = lean(`A; x['a']; ({ b }) => b; const { c } = y`, code)
    expect(left).toMatch(/a\(\)/)
    expect(left).toMatch(/b\(\)/)
    expect(left).toMatch(/c\(\)/)
    expect(left).not.toMatch(/d\(\)/)
  })

  it('are not kept by comments, by what is itself let go, or by a class that nobody names', () => {
    const code = `class A {
  // see gone()
  stays() {}
  gone() {}
  /** calls helper */
  dead() { helper.other() }
  other() {}
}
class Unnamed { go() { a.gone() } }
function helper() { return a.dead() }`
    const [left] = lean('A.stays', code)
    expect(left).toContain('stays()')
    expect(left).not.toMatch(/gone\(\) \{\}|dead\(\) \{|other\(\) \{\}/)
  })

  it('stay across modules: the one names what is in the other', () => {
    const [a, b] = lean(
      'make',
      'class A { used() {} unused() {} }',
      'function make() { return new A().used() }',
    )
    expect(a).toContain(' used()')
    expect(a).not.toContain('unused')
    expect(b).toContain('make')
  })

  it('never are constructors, accessors, statics by expression, nor statements of a module', () => {
    const code = `class A { constructor() { this.x = 1 } get y() { return 1 } set y(v) {} [Symbol.iterator]() {} }
A.prototype.isA = true`
    expect(lean('nothing', code)[0]).toBe(code)
  })

  it('are functions that a constructor sets, too', () => {
    const code = 'class A { constructor() { this.a = function () { return 1 }; this.b = function () {} } }'
    expect(lean('A.a', code)[0]).toBe('class A { constructor() { this.a = function () { return 1 };  } }')
  })

  it('are a tenth of three’s core and more', () => {
    const core = three('three.core.js')
    const [left] = lean('Mesh BufferGeometry Scene PerspectiveCamera updateMatrixWorld', core)
    expect(left!.length).toBeLessThan(core.length * 0.9)
    expect(left).toContain('updateMatrixWorld( force )')
    expect(() => readSource('left.js', left!)).not.toThrow()
  })
})

describe('parts that the scene never gets to', () => {
  const code = three('three.module.js')
  const cut = withStubs(code)

  it('are replaced by stubs that are modules still', () => {
    for (const stub of Object.values(STUBS)) expect(cut).toContain(stub)
    for (const name of Object.values(EMPTIED).flat())
      expect(cut).toMatch(new RegExp(`function ${name}\\([^)]*\\) \\{\\}`))
    expect(() => readSource('cut.js', cut)).not.toThrow()
    expect(code.length - cut.length).toBeGreaterThan(60_000)
  })

  it('are there in this three: with another, the build says what is to be looked at', () => {
    expect(() => withStubs(code.replace('class WebXRManager', 'class OtherManager'))).toThrow(
      'withStubs: three has no WebXRManager',
    )
    expect(() => withStubs(code.replace('function VSMPass', 'function otherPass'))).toThrow(
      'withStubs: three has no WebGLShadowMap.VSMPass',
    )
  })
})
