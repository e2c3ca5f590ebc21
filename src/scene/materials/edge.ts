/** The surface where the lake is cut open, while it moves: a line, and under it the water of the crests. */
import type { ShaderMaterial } from 'three'
import { DoubleSide } from 'three'
import { makeMaterial } from './make-material.ts'
import type { World } from './world.ts'

/** `position`: place along the plane, share of the full height, 0 at the lower edge and 1 at the upper one; the plane is a uniform. */
export const makeEdgeMaterial = (world: World): ShaderMaterial =>
  makeMaterial(world, {
    name: 'edge',
    // Of the line, CSS px.
    options: { defines: { WIDTH: '1.8' }, transparent: true, depthWrite: false, side: DoubleSide },
    vertex: /* glsl */ `
varying float vUp, vSurface;
void main() {
  vec3 at = vec3(onCut(position.x), 0.0);
  vSurface = uLevel + sea(at.xy, position.y).x;
  vec4 clip = projectionMatrix * viewMatrix * vec4(at.xy, vSurface, 1.0);
  float pixel = 2.0 * max(clip.w, 0.01) / (projectionMatrix[1][1] * uScreen.y);
  vUp = position.z > 0.5 ? vSurface + 3.0 * WIDTH * uScreen.z * pixel : min(vSurface, uLevel) - 3.0 * WIDTH * uScreen.z * pixel;
  gl_Position = projectionMatrix * viewMatrix * vec4(at.xy, vUp, 1.0);
}`,
    fragment: /* glsl */ `
varying float vUp, vSurface;
void main() {
  float over = vUp - vSurface;
  float width = WIDTH * uScreen.z;
  // Straight across the line, however steep it runs.
  float steep = dFdx(vSurface) / max(abs(dFdy(vUp)), 1e-6);
  float away = abs(over) / max(abs(dFdy(vUp)), 1e-6) * inversesqrt(1.0 + steep * steep);
  float line = 1.0 - smoothstep(width * 0.5 - 0.5, width * 0.5 + 0.5, away);
  float crest = over < 0.0 && vUp > uLevel ? 0.8 : 0.0;
  vec3 water = sRGBTransferOETF(vec4(ACESFilmicToneMapping(hazeAt(0.0) * 1.2), 1.0)).rgb;
  gl_FragColor = vec4(mix(water, vec3(0.86, 0.96, 0.95), line), max(line, crest));
}`,
  })
