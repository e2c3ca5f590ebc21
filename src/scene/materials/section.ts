/** The cut face: ground in its layers, and the water's line along it. One strip along the dock, from the bed to below. */
import type { ShaderMaterial } from 'three'
import { DoubleSide } from 'three'
import { makeMaterial } from './make-material.ts'
import { FINISH } from './shader-chunks.ts'
import type { World } from './world.ts'

/** `position`: place along the plane, elevation of the ground there, own elevation; the plane is a uniform. */
export const makeSectionMaterial = (world: World): ShaderMaterial =>
  makeMaterial(world, {
    name: 'section',
    options: { side: DoubleSide },
    vertex: /* glsl */ `
attribute vec3 aTint;
varying vec3 vWorld, vTint;
varying float vGround, vAlong;
void main() {
  vWorld = vec3(onCut(position.x), position.z);
  vAlong = position.x;
  vGround = position.y;
  vTint = aTint;
  gl_Position = projectionMatrix * viewMatrix * vec4(vWorld, 1.0);
}`,
    fragment: /* glsl */ `
varying vec3 vWorld, vTint;
varying float vGround, vAlong;
void main() {
  float under = vGround - vWorld.z;
  vec2 p = vec2(vAlong, vWorld.z);
  float layers = noise(vec2(p.x * 0.3, under * 4.0 + 0.7 * noise(p * 0.6)));
  float grit = noise(p * 29.0) * 0.5 + noise(p * 71.0) * 0.5;
  // Sand above, browner and firmer below.
  vec3 soil = mix(vTint * vec3(0.56, 0.52, 0.48), vec3(0.25, 0.2, 0.15), smoothstep(0.1, 1.6, under) * 0.75);
  soil *= (0.86 + 0.26 * layers) * (0.9 + 0.2 * grit);
  float pebble = smoothstep(0.8, 0.86, noise(p * vec2(15.0, 21.0) + 5.0)) * smoothstep(0.1, 0.35, under);
  soil = mix(soil, vec3(0.36, 0.33, 0.29), pebble * 0.35);
  float top = 1.0 - smoothstep(0.05, 0.14, under + 0.04 * noise(p * 3.0));
  vec3 c = mix(soil, vTint * 0.78 * (0.85 + 0.3 * grit), top);
  c = mix(c, vec3(0.09, 0.075, 0.045), (1.0 - smoothstep(0.02, 0.1, under)) * smoothstep(0.0, 0.1, vGround - uGreen));
  c *= (uSunLight * 0.16 + mix(uHorizon, uZenith, 0.5) * 0.55) * mix(1.0, 0.55, smoothstep(0.1, 2.6, under));
  // The ground's own line.
  float line = under / max(fwidth(under), 0.002);
  c = mix(c, uHorizon * 0.8, 0.55 * (1.0 - smoothstep(0.8, 1.8, line)));
  gl_FragColor = vec4(c, 1.0);
${FINISH}
}`,
  })
