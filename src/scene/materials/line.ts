/** Lines of one width on the screen however far they are: dimension lines and the level along the cut. */
import { DoubleSide, type ShaderMaterial } from 'three'
import { makeMaterial } from './make-material.ts'
import type { World } from './world.ts'

/** Attributes: `position` one end, `aOther` the other, `aSide` x ±1 across, y 0 at one end, 1 at the other; `aColor` as on the screen. */
export const makeLineMaterial = (world: World): ShaderMaterial =>
  makeMaterial(world, {
    name: 'line',
    options: {
      // Of the line, CSS px.
      defines: { WIDTH: '1.6' },
      transparent: true,
      depthTest: false,
      depthWrite: false,
      side: DoubleSide,
    },
    vertex: /* glsl */ `
attribute vec3 aOther;
attribute vec2 aSide;
attribute vec3 aColor;
varying vec3 vColor;
varying float vAcross;
void main() {
  float width = WIDTH * uScreen.z;
  mat4 m = projectionMatrix * viewMatrix;
  vec4 a = m * vec4(position, 1.0), b = m * vec4(aOther, 1.0);
  // An end behind the eye is drawn up to the near plane only.
  float near = 0.01;
  if (a.w < near && b.w > near) a = mix(a, b, (near - a.w) / (b.w - a.w));
  else if (b.w < near && a.w > near) b = mix(b, a, (near - b.w) / (a.w - b.w));
  vec4 here = aSide.y < 0.5 ? a : b;
  vec2 along = normalize((b.xy / b.w - a.xy / a.w) * uScreen.xy + 1e-6);
  float half_ = width * 1.6 + 0.75;
  here.xy += vec2(-along.y, along.x) * aSide.x * half_ * 2.0 / uScreen.xy * here.w;
  vAcross = aSide.x * half_;
  vColor = aColor;
  gl_Position = here;
}`,
    fragment: /* glsl */ `
varying vec3 vColor;
varying float vAcross;
void main() {
  float width = WIDTH * uScreen.z;
  float line = 1.0 - smoothstep(width * 0.5 - 0.5, width * 0.5 + 0.5, abs(vAcross));
  // A faint dark rim, to be seen on bright planks too.
  float rim = 0.42 * (1.0 - smoothstep(width * 0.6, width * 1.6, abs(vAcross)));
  gl_FragColor = vec4(mix(vec3(0.02, 0.1, 0.13), vColor, line), max(line, rim));
}`,
  })
