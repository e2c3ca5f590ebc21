/** Builds every material: shared uniforms, three's shadow uniforms, our GLSL. */
import {
  type IUniform,
  ShaderMaterial,
  type ShaderMaterialParameters,
  UniformsLib,
  UniformsUtils,
} from 'three'
import { DECK, NOISE, SHADOW, SKY, WATER, WORLD } from './shader-chunks.ts'
import { SEA } from './wave-chunk.ts'
import type { World } from './world.ts'

export interface MaterialParts {
  readonly name: string
  readonly uniforms?: Record<string, IUniform>
  readonly vertex: string
  readonly fragment: string
  /**
   * Receives shadow, averaged over this many samples. Needs `worldPosition` and `transformedNormal` at the end of the vertex
   * shader.
   */
  readonly shadow?: number
  readonly options?: ShaderMaterialParameters
}

const SHADOW_PARS_VERTEX = /* glsl */ `
#include <common>
#include <shadowmap_pars_vertex>
`
const SHADOW_PARS_FRAGMENT = /* glsl */ `
#include <common>
#include <shadowmap_pars_fragment>
`

/** The caller disposes it. */
export function makeMaterial(world: World, parts: MaterialParts): ShaderMaterial {
  const shadow = parts.shadow !== undefined
  const material = new ShaderMaterial({
    name: parts.name,
    lights: shadow,
    toneMapped: false,
    vertexShader: `${shadow ? SHADOW_PARS_VERTEX : '#include <common>\n'}${WORLD}${SEA}${NOISE}${parts.vertex}`,
    fragmentShader: `${shadow ? SHADOW_PARS_FRAGMENT : '#include <common>\n'}#include <tonemapping_pars_fragment>\n${WORLD}${SEA}${NOISE}${SKY}${WATER}${DECK}${shadow ? `#define TAPS ${parts.shadow}\n${SHADOW}` : ''}${parts.fragment}`,
    ...parts.options,
  })
  Object.assign(
    material.uniforms,
    shadow ? UniformsUtils.clone(UniformsLib.lights) : {},
    world,
    parts.uniforms,
  )
  return material
}
