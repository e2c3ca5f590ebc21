/** What the build cuts from three: parts that the scene never gets to. */
import { readdirSync, readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { parseSync } from 'vite'
import { describe, expect, it } from 'vitest'
import { CORE_STUBS, EMPTIED, STUBS, withStubs } from '../../src/build/trim-three/stubs.ts'

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

describe('parts of the core that the scene never gets to', () => {
  const core = readFileSync(
    join(dirname(createRequire(import.meta.url).resolve('three')), 'three.core.js'),
    'utf8',
  )

  it('are replaced by stubs that are modules still', () => {
    const cut = withStubs(core, CORE_STUBS, {})
    for (const stub of Object.values(CORE_STUBS)) expect(cut).toContain(stub)
    expect(parseSync('cut.js', cut).errors).toEqual([])
    expect(core.length - cut.length).toBeGreaterThan(20_000)
  })

  it('are named nowhere in the scene, whose meshes are all drawn wherever they stand', () => {
    const folder = join(import.meta.dirname, '../../src/scene')
    for (const file of readdirSync(folder, { recursive: true, encoding: 'utf8' })) {
      if (!/\.tsx?$/.test(file)) continue
      const text = readFileSync(join(folder, file), 'utf8')
      expect(text, file).not.toMatch(
        /\b(?:Raycaster|Ray|Triangle|Frustum|FrustumArray|MeshBasicMaterial|MeshDistanceMaterial)\b[^'"`]*\bfrom 'three'/,
      )
      expect(text, file).not.toMatch(/\bwireframe\b|\bresetState\b/)
      // A color by name would be black.
      for (const [, color] of text.matchAll(/new Color\(['"]([^'"]+)['"]\)/g))
        expect(color, file).toMatch(/^#/)
      const meshes = text.match(/new (?:Instanced)?Mesh\(|<mesh\b/g)?.length ?? 0
      expect(text.match(/frustumCulled(?: = |=\{)false/g)?.length ?? 0, file).toBe(meshes)
    }
  })
})
