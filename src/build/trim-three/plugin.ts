/**
 * For the build: leaves out of three what this scene never asks for (most shaders, animation), and comments and indentation out of our
 * own shaders. What is kept is a list; a test holds it against what our materials include. README.md says what each part saves.
 */
import type { Plugin } from 'vite'
import { CORE_STUBS, withStubs } from './stubs.ts'

/** Chunks that our materials, the renderer's preamble and the shadow's depth material are made of. */
export const KEPT_CHUNKS: readonly string[] = [
  'common',
  'packing',
  'begin_vertex',
  'project_vertex',
  'shadowmap_pars_vertex',
  'shadowmap_vertex',
  'shadowmap_pars_fragment',
  'tonemapping_pars_fragment',
  'colorspace_pars_fragment',
]

/** What is only found in the two shaders of the depth material. */
const DEPTH_MATERIAL = /DEPTH_PACKING == 3200|vHighPrecisionZW/

/** `var chunk = "…";`, one line each, as three's module build writes its shaders. */
const SHADER = /^(var|const) (\w+(?:\$\w+)?) = "((?:[^"\\]|\\.)*)";$/gm

/** Empties what is not kept. Chunks stay defined: an `#include` of one is then nothing. */
export function trimShaders(code: string): string {
  return code.replace(SHADER, (line, keyword: string, name: string, text: string) =>
    /#|void |vec\d/.test(text) && !KEPT_CHUNKS.includes(name) && !DEPTH_MATERIAL.test(text)
      ? `${keyword} ${name} = "";`
      : line,
  )
}

/**
 * What three's core sets on classes of animation and loading after it has declared them, which keeps those classes in every build.
 * Neither moves nor loads anything here; where one of them came to be used, its test would tell.
 */
const AFTERTHOUGHT =
  /^(?:\w*KeyframeTrack|PropertyBinding|Loader)\.[\w.]+ = (?:\{\n[\s\S]*?\n\}|\[\n[\s\S]*?\n\]|[^\n;]*);$/gm

/** A scene written as JSON and read back: nothing here asks for it, and its methods are the longest of the core. */
const JSON_METHOD = /^\t(?:toJSON|fromJSON)\([^)]*\) \{\n[\s\S]*?^\t\}\n/gm

/** The scene's React binding makes a clock of the old kind for every canvas, which would be told in the console of every visitor. */
const CLOCK_WARNING = /^\t*warn\( 'Clock: [^\n]*\n/m

export const trimCore = (code: string): string =>
  [AFTERTHOUGHT, JSON_METHOD, CLOCK_WARNING].reduce((left, gone) => left.replace(gone, ''), code)

/** GLSL between backticks after the comment that marks it. Lines stay lines: the preprocessor needs them. */
export function trimGlsl(code: string): string {
  return code.replace(/(\/\* glsl \*\/ )`((?:[^`\\]|\\.)*)`/g, (_, mark: string, text: string) => {
    const trimmed = text
      .replace(/\/\*[\s\S]*?\*\//g, '')
      .replace(/\/\/[^\n]*/g, '')
      .replace(/\s*\n\s*/g, '\n')
      .replace(/[ \t]+/g, ' ')
      .replace(/^([^#\n]*)$/gm, (line) => line.replace(/ ?([-+*/=<>(),;{}?:&|!]) ?/g, '$1'))
    return `${mark}\`${trimmed}\``
  })
}

export function trimThree(): Plugin {
  return {
    name: 'leadline:trim-three',
    apply: 'build',
    // Before anything else: comments that mark GLSL are gone after types are.
    enforce: 'pre',
    transform(code, id) {
      const path = id.split('?')[0]!
      if (path.endsWith('/three/build/three.core.js'))
        return { code: withStubs(trimCore(code), CORE_STUBS, {}), map: null }
      if (path.endsWith('/three/build/three.module.js'))
        return { code: withStubs(trimShaders(code)), map: null }
      if (path.includes('/scene/materials/') && path.endsWith('.ts'))
        return { code: trimGlsl(code), map: null }
      return null
    },
  }
}
