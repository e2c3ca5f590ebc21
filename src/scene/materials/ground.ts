/** The bed and the bank: one material, wet or dry by its own height against the level of the water. */
import type { ShaderMaterial } from 'three'
import { DoubleSide } from 'three'
import { makeMaterial } from './make-material.ts'
import { FINISH } from './shader-chunks.ts'
import type { World } from './world.ts'

export const makeGroundMaterial = (world: World): ShaderMaterial =>
  makeMaterial(world, {
    name: 'ground',
    shadow: 8,
    options: { side: DoubleSide },
    vertex: VERTEX,
    fragment: FRAGMENT,
  })

const VERTEX = /* glsl */ `
attribute vec3 aTint;
attribute vec2 aStone;
varying vec3 vWorld, vNormal, vTint;
varying vec2 vStone;
void main() {
  vWorld = position;
  vNormal = normal;
  vTint = aTint;
  vStone = aStone;
  vec4 worldPosition = vec4(position, 1.0);
  vec3 transformedNormal = normalMatrix * normal;
  gl_Position = projectionMatrix * viewMatrix * worldPosition;
  #include <shadowmap_vertex>
}`

const FRAGMENT = /* glsl */ `
varying vec3 vWorld, vNormal, vTint;
varying vec2 vStone;
/** Stones in cells: xyz tilts the normal and sets the height, w is a random tone. */
vec4 stones(vec2 p) {
  vec2 cell = floor(p), f = p - cell;
  float best = 9.0;
  vec2 to = vec2(0.0);
  float tone = 0.0;
  for (int j = -1; j <= 1; j++) for (int i = -1; i <= 1; i++) {
    vec2 g = vec2(i, j), id = cell + g;
    vec2 at = g + 0.5 + 0.42 * vec2(hash(id) * 2.0 - 1.0, hash(id + 57.0) * 2.0 - 1.0) - f;
    float size = 0.6 + 0.8 * hash(id + 11.0);
    float d = dot(at, at) / (size * size);
    if (d < best) { best = d; to = at; tone = hash(id + 31.0); }
  }
  return vec4(-to, clamp(1.0 - best * 1.6, 0.0, 1.0), tone);
}
void main() {
  if (cutAway(vWorld)) discard;
  vec2 p = vWorld.xy;
  float depth = uLevel - vWorld.z;
  float pixel = max(length(dFdx(p)), length(dFdy(p)));
  vec3 n = normalize(vNormal) * (gl_FrontFacing ? 1.0 : -1.0);
  float wall = 1.0 - smoothstep(0.2, 0.45, abs(n.z));
  float close = 1.0 - smoothstep(0.004, 0.03, pixel);
  float broad = fbm(p * 0.45);

  // Where the bank gets green, with a ragged edge.
  float dry = vWorld.z - uGreen;
  float green = 0.0;
  if (dry > -0.3) green = smoothstep(0.0, 0.22, dry + 0.3 * (fbm(p * 1.15) - 0.5) + 0.12 * (noise(p * 6.0) - 0.5)) * (1.0 - wall);

  vec3 base = vTint * (0.8 + 0.34 * broad);
  if (green < 0.99) {
    if (close > 0.0) {
      float grain = noise(p * 31.0), speck = noise(p * 117.0);
      base *= 1.0 + close * (0.1 * (grain - 0.5) + 0.07 * (speck - 0.5));
      // Bits of shell, in drifts.
      float shell = close * smoothstep(0.88, 0.94, noise(p * 23.0 + 40.0)) * smoothstep(0.5, 0.6, broad);
      base = mix(base, vec3(0.75, 0.68, 0.58) * (0.7 + 0.5 * speck), shell * 0.5);
    }
    // Ripples of sand along the shore, where there is water over them.
    float ripple = (1.0 - vStone.x) * smoothstep(0.02, 0.2, depth) * (1.0 - smoothstep(0.03, 0.12, pixel)) * (0.3 + 0.8 * broad);
    if (ripple > 0.0) {
      float phase = p.x * 26.0 + 5.0 * noise(p * vec2(0.9, 0.5)) + 2.0 * sin(p.y * 2.3 + p.x * 1.1);
      n = normalize(n + vec3(-0.22 * cos(phase) * ripple, 0.0, 0.0));
      base *= 1.0 + 0.07 * sin(phase) * ripple;
    }
    if (vStone.x > 0.02) {
      float cover = vStone.x * (1.0 - wall) * (1.0 - green);
      vec4 s = stones(p / vStone.y);
      vec3 tone = mix(vec3(0.62, 0.64, 0.66), vec3(1.18, 1.1, 0.98), s.w) * (0.55 + 0.55 * s.z);
      vec2 tilt = s.xy * 0.9;
      if (close > 0.0) {
        vec4 t = stones(p / (vStone.y * 0.37) + 19.0);
        tone *= mix(1.0, 0.75 + 0.4 * t.z * (0.6 + 0.6 * t.w), close);
        tilt += t.xy * 0.25 * close;
      }
      base = mix(base, vTint * tone, cover);
      n = normalize(n + vec3(tilt * cover, 0.0));
    }
  }
  if (wall > 0.0) {
    vec2 q = vec2(p.y, vWorld.z) / vec2(0.62, 0.28);
    q.x += 0.5 * mod(floor(q.y), 2.0) + 0.2 * hash(vec2(floor(q.y), 3.0));
    vec2 f = abs(fract(q) - 0.5);
    float seam = smoothstep(0.5, 0.46, f.x) * smoothstep(0.5, 0.44, f.y);
    vec3 block = vec3(0.36, 0.34, 0.31) * (0.75 + 0.5 * hash(floor(q))) * (0.85 + 0.3 * noise(p.yx * 9.0 + vWorld.z * 13.0));
    base = mix(base, mix(vec3(0.12, 0.115, 0.11), block, seam), wall);
  }
  if (green > 0.0) {
    float blades = mix(0.5, noise(vec2(p.x * 19.0 + 2.0 * sin(p.y * 7.0), p.y * 47.0)), 1.0 - smoothstep(0.01, 0.2, pixel));
    vec3 grass = mix(vec3(0.05, 0.085, 0.026), vec3(0.17, 0.2, 0.065), 0.5 * broad + 0.5 * blades) * (0.7 + 0.6 * fbm(p * 0.16 + 3.0));
    grass = mix(grass, vec3(0.27, 0.23, 0.11), 0.5 * smoothstep(0.5, 0.8, noise(p * 0.33 + 11.0)) * (1.0 - smoothstep(0.2, 1.2, dry)));
    base = mix(base, grass, green);
    n = normalize(n + green * 0.3 * vec3(blades - 0.5, fract(blades * 7.3) - 0.5, 0.0));
  }
  // Wet sand.
  float wet = 1.0 - smoothstep(-0.015, 0.075, 0.06 * (broad - 0.5) - depth);
  base *= mix(1.0, 0.56, wet * (depth > 0.0 ? 0.55 : 1.0));

  float over = max(uDeck - vWorld.z, 0.0);
  float sunny = max(dot(n, uSun), 0.0);
  if (sunny > 0.0) sunny *= sunAt(vWorld, 0.025 + 0.055 * over);
  vec3 direct = uSunLight * sunny;
  if (depth > 0.0 && sunny > 0.0) {
    float seen = smoothstep(0.0, 0.22, depth) * exp(-depth * 0.42) * (1.0 - smoothstep(0.05, 0.3, pixel));
    float net = seen > 0.01 ? caustics(p * 1.5) * seen : 0.0;
    direct *= mix(1.0, 0.76 + 1.2 * net, smoothstep(0.0, 0.15, depth));
  }
  // Under the deck the sky is missing too.
  float beside = beyondDeck(p);
  float roof = 1.0 - 0.4 * (1.0 - smoothstep(-0.4, 0.9, beside)) * smoothstep(2.4, 0.2, over);
  vec3 ambient = (mix(uHorizon, uZenith, 0.55) * (0.5 + 0.5 * n.z) * 0.78 + uBounce * 0.5) * roof;
  vec3 c = base * (direct + ambient);
  float far = length(p);
  if (depth > 0.0) c *= downTo(depth);
  // A dry field goes into the haze of the far shore.
  else c = mix(c, uHillsNear + 0.1 * uHorizon, smoothstep(30.0, 120.0, far) * 0.8);

  c = underWater(c, vWorld);
  if (uContour > 0.0 && depth > 0.02) {
    float f = depth / uContour;
    float line = 1.0 - smoothstep(0.5, 1.3, abs(fract(f - 0.5) - 0.5) / max(fwidth(f), 1e-5));
    // Beyond the dock nobody measured.
    line *= (1.0 - smoothstep(0.25, 0.6, fwidth(f))) * (1.0 - smoothstep(4.0, 11.0, beside));
    c = mix(c, c * 0.4 + 0.42 * mix(uHorizon, uZenith, 0.4), 0.5 * line);
  }
  // The waterline on the shore: a lip of light that wanders, and breaks off. From under water there is none.
  if (cameraPosition.z > uLevel) {
    float lap = depth + 0.014 * (noise(p * 2.7) - 0.5) + 0.006 * (noise(p * 13.0) - 0.5);
    float edge = abs(lap) / max(fwidth(depth), 0.0035);
    c = mix(c, uHorizon * 1.1, (0.2 + 0.5 * broad) * (1.0 - smoothstep(0.3, 1.2, edge)) * (1.0 - smoothstep(60.0, 120.0, far)));
  }
  gl_FragColor = vec4(c, 1.0);
${FINISH}
}`
