/** What the build cuts from three: parts that the scene never gets to. */
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { parseSync } from 'vite'
import { describe, expect, it } from 'vitest'
import { EMPTIED, STUBS, withStubs } from '../../src/build/trim-three/stubs.ts'

describe('parts that the scene never gets to', () => {
  const code = readFileSync(
    join(dirname(createRequire(import.meta.url).resolve('three')), 'three.module.js'),
    'utf8',
  )
  const cut = withStubs(code)

  it('are replaced by stubs that are modules still', () => {
    for (const stub of Object.values(STUBS)) expect(cut).toContain(stub)
    for (const name of Object.values(EMPTIED).flat())
      expect(cut).toMatch(new RegExp(`function ${name}\\([^)]*\\) \\{\\}`))
    expect(parseSync('cut.js', cut).errors).toEqual([])
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
