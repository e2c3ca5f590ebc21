/** Shaders that the build leaves out are none that ours include. */
import { readdirSync, readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { ShaderChunk, ShaderLib, type ShaderMaterial } from 'three'
import { parseSync } from 'vite'
import { describe, expect, it } from 'vitest'
import { KEPT_CHUNKS, trimCore, trimGlsl, trimShaders } from '../../src/build/trim-three/plugin.ts'
import { makeGroundMaterial } from '../../src/scene/materials/ground.ts'
import { makeLineMaterial } from '../../src/scene/materials/line.ts'
import { makePartMaterial } from '../../src/scene/materials/part.ts'
import { makeSectionMaterial } from '../../src/scene/materials/section.ts'
import { makeSkyMaterial } from '../../src/scene/materials/sky.ts'
import { makeWaterMaterial } from '../../src/scene/materials/water.ts'
import { makeWorld } from '../../src/scene/materials/world.ts'

const world = makeWorld()
const materials: ShaderMaterial[] = [
  makeGroundMaterial(world),
  makeLineMaterial(world),
  makePartMaterial(world, 'wood', true),
  makePartMaterial(world, 'leaf', false),
  makeSectionMaterial(world),
  makeSkyMaterial(world),
  makeWaterMaterial(world),
]
const includes = (text: string): string[] => [...text.matchAll(/#include <(\w+)>/g)].map((match) => match[1]!)
const source = readFileSync(
  join(dirname(createRequire(import.meta.url).resolve('three')), 'three.module.js'),
  'utf8',
)

describe('the shaders that are kept', () => {
  it('hold every chunk that our materials include', () => {
    const wanted = new Set(
      materials.flatMap((m) => [...includes(m.vertexShader), ...includes(m.fragmentShader)]),
    )
    expect(wanted.size).toBeGreaterThan(4)
    for (const name of wanted) expect(KEPT_CHUNKS).toContain(name)
    // Nor does a kept one include what is left out.
    for (const name of KEPT_CHUNKS)
      for (const inner of includes(ShaderChunk[name as keyof typeof ShaderChunk]))
        expect(KEPT_CHUNKS).toContain(inner)
  })

  it('are there in three, word for word, and most others are not', () => {
    const trimmed = trimShaders(source)
    const has = (text: string): boolean => trimmed.includes(JSON.stringify(text))
    for (const name of KEPT_CHUNKS) {
      const text = ShaderChunk[name as keyof typeof ShaderChunk]
      expect(source.includes(JSON.stringify(text)), `${name} in three as this test expects it`).toBe(true)
      expect(has(text), name).toBe(true)
    }
    for (const shader of [ShaderLib.depth.vertexShader, ShaderLib.depth.fragmentShader])
      expect(has(shader)).toBe(true)
    expect(has(ShaderLib.physical.fragmentShader)).toBe(false)
    expect(source.length - trimmed.length).toBeGreaterThan(100_000)
  })

  it('keep the code around them', () => {
    const strip = (text: string): string =>
      text.replace(/^(?:var|const) \w+(?:\$\w+)? = "(?:[^"\\]|\\.)*";$/gm, '')
    expect(strip(trimShaders(source))).toBe(strip(source))
  })
})

describe('the classes of animation and loading', () => {
  const core = readFileSync(
    join(dirname(createRequire(import.meta.url).resolve('three')), 'three.core.js'),
    'utf8',
  )

  it('are let go by the core, and nothing else is', () => {
    const trimmed = trimCore(core)
    expect(trimmed).not.toMatch(/^(\w*KeyframeTrack|PropertyBinding|Loader)\.[\w.]+ =/m)
    for (const kept of [
      'Euler.DEFAULT_ORDER =',
      'Object3D.DEFAULT_UP =',
      'Color.NAMES =',
      'class PropertyBinding {',
    ])
      expect(trimmed).toContain(kept)
    const declared = (text: string) => text.match(/^(class|function|const|let) /gm)!.length
    expect(declared(trimmed)).toBe(declared(core))
    expect(core.length - trimmed.length).toBeLessThan(60_000)
    expect(parseSync('core.js', trimmed).errors).toEqual([])
  })

  it('are let go with the methods that write a scene as JSON, and no other method is', () => {
    const methods = (text: string): string[] => text.match(/^\t\w+\([^)]*\) \{$/gm)!
    const left = new Set(methods(trimCore(core)))
    const gone = methods(core).filter((line) => !left.has(line))
    expect(gone.length).toBeGreaterThan(10)
    for (const line of gone) expect(line).toMatch(/^\t(toJSON|fromJSON)\(/)
  })

  it('leave a console without the warning of a clock that is not ours', () => {
    expect(core.match(/warn\( 'Clock: /g)).toHaveLength(1)
    const clock = trimCore(core).split('\nclass Clock {')[1]!.split('\n}\n')[0]!
    expect(clock).not.toContain('warn(')
    expect(clock).toContain('getDelta() {')
  })

  it('are used nowhere in the scene', () => {
    const folder = join(import.meta.dirname, '../../src/scene')
    for (const file of readdirSync(folder, { recursive: true, encoding: 'utf8' }))
      if (/\.tsx?$/.test(file))
        expect(readFileSync(join(folder, file), 'utf8'), file).not.toMatch(
          /\b(toJSON|fromJSON|Animation(Mixer|Clip|Action)|\w*KeyframeTrack|PropertyBinding|\w*Loader)\b/,
        )
  })
})

describe('our GLSL in the build', () => {
  it('loses comments and spaces, and neither words nor lines of the preprocessor', () => {
    const code =
      'const a = /* glsl */ `\n  // why\n  float a = 1.0 - b;  /* c */\n  #include <common>\n  #if X > 0 && Y\n`'
    expect(trimGlsl(code)).toBe(
      'const a = /* glsl */ `\nfloat a=1.0-b;\n#include <common>\n#if X > 0 && Y\n`',
    )
  })

  it('leaves other strings alone', () => {
    const code = 'const a = `one  // two`'
    expect(trimGlsl(code)).toBe(code)
  })
})
