/** The sky behind everything, with the far shore; under water the color of water without end. One triangle over the screen. */
import type { ShaderMaterial } from 'three'
import { makeMaterial } from './make-material.ts'
import { FINISH } from './shader-chunks.ts'
import type { World } from './world.ts'

export const makeSkyMaterial = (world: World): ShaderMaterial =>
  makeMaterial(world, {
    name: 'sky',
    // At the far plane and last of the opaque meshes, so that only uncovered pixels are shaded.
    options: { depthWrite: false },
    vertex: /* glsl */ `
varying vec3 vRay;
void main() {
  gl_Position = vec4(position.xy, 1.0, 1.0);
  vec4 eye = inverse(projectionMatrix) * vec4(position.xy, 1.0, 1.0);
  vRay = (inverse(viewMatrix) * vec4(eye.xyz / eye.w, 0.0)).xyz;
}`,
    fragment: /* glsl */ `
varying vec3 vRay;
void main() {
  vec3 d = normalize(vRay);
  vec3 c;
  if (cameraPosition.z < uLevel) c = lit(cameraPosition + d * 9.0, 9.0);
  // Under the surface the water goes on beyond the last of the bed; its far end mirrors the shore.
  else c = mix(hazeAt(4.0), skyAndHills(vec3(d.xy, abs(d.z)), 0.0), smoothstep(-0.006, -0.002, d.z));
  gl_FragColor = vec4(c, 1.0);
${FINISH}
}`,
  })
