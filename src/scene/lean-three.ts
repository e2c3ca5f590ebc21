/**
 * For the build: leaves out of three what this scene never asks for (a quarter of its bytes: most shaders, animation), and comments and
 * indentation out of our own. What is kept is a list; a test holds it against what our materials include.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Plugin } from 'vite'
import { keptNames, readSource, type Source, withoutMethods, wordsOf } from './lean/methods.ts'
import { withStubs } from './lean/stubs.ts'

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
export function leanShaders(code: string): string {
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

export const leanCore = (code: string): string => code.replace(AFTERTHOUGHT, '')

/** GLSL between backticks after the comment that marks it. Lines stay lines: the preprocessor needs them. */
export function leanGlsl(code: string): string {
  return code.replace(/(\/\* glsl \*\/ )`((?:[^`\\]|\\.)*)`/g, (_, mark: string, text: string) => {
    const lean = text
      .replace(/\/\*[\s\S]*?\*\//g, '')
      .replace(/\/\/[^\n]*/g, '')
      .replace(/\s*\n\s*/g, '\n')
      .replace(/[ \t]+/g, ' ')
      .replace(/^([^#\n]*)$/gm, (line) => line.replace(/ ?([-+*/=<>(),;{}?:&|!]) ?/g, '$1'))
    return `${mark}\`${lean}\``
  })
}

/** All words of our own code, of what draws it, and of the helpers that it takes from drei: what three is asked for. */
function askedFor(root: string): Set<string> {
  const sources = readdirSync(join(root, 'src'), { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.tsx?$/.test(file) && !/scene.lean/.test(file))
    .map((file) => readFileSync(join(root, 'src', file), 'utf8'))
  const packages = join(root, 'node_modules/@react-three')
  const fiber = readdirSync(join(packages, 'fiber/dist')).filter((file) =>
    /^(events|react).*\.esm\.js$/.test(file),
  )
  const drei = sources.flatMap((text) =>
    [...text.matchAll(/'@react-three\/(drei\/[^']+)'/g)].map((m) => `${m[1]}.js`),
  )
  for (const file of [...fiber.map((name) => `fiber/dist/${name}`), ...drei])
    sources.push(readFileSync(join(packages, file), 'utf8'))
  return new Set(sources.flatMap((text) => [...wordsOf(text)]))
}

export function leanThree(): Plugin {
  let root = ''
  let kept: ReadonlySet<string> | null = null
  const sources = new Map<string, Source>()
  /** Both modules are looked at together: each names what is in the other. */
  const lean = (folder: string, name: string): string => {
    if (!kept) {
      for (const [file, first] of [
        ['three.core.js', leanCore],
        ['three.module.js', (code: string) => withStubs(leanShaders(code))],
      ] as const)
        sources.set(file, readSource(file, first(readFileSync(join(folder, file), 'utf8'))))
      kept = keptNames([...sources.values()], askedFor(root))
    }
    return withoutMethods(sources.get(name)!, kept)
  }
  return {
    name: 'leadline-lean-three',
    apply: 'build',
    // Before anything else: comments that mark GLSL are gone after types are.
    enforce: 'pre',
    configResolved(config) {
      root = config.root
    },
    transform(code, id) {
      const path = id.split('?')[0]!
      const three = /^(.*\/three\/build)\/(three\.(?:core|module)\.js)$/.exec(path)
      if (three) return { code: lean(three[1]!, three[2]!), map: null }
      if (path.includes('/scene/look/') && path.endsWith('.ts')) return { code: leanGlsl(code), map: null }
      return null
    },
  }
}
