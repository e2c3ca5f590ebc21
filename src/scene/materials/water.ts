/** The surface: sky by Fresnel, a few summed waves for its normal. Parts under water are tinted by their own materials. */
import type { ShaderMaterial } from 'three'
import { DoubleSide } from 'three'
import { makeMaterial } from './make-material.ts'
import { FINISH } from './shader-chunks.ts'
import type { World } from './world.ts'

export const makeWaterMaterial = (world: World): ShaderMaterial =>
  makeMaterial(world, {
    name: 'water',
    options: { transparent: true, depthWrite: false, side: DoubleSide },
    vertex: VERTEX,
    fragment: FRAGMENT,
  })

const VERTEX = /* glsl */ `
attribute vec2 aSea;
varying vec3 vWorld;
varying float vSea;
void main() {
  vWorld = vec3(position.xy, uLevel + sea(position.xy, aSea.x).x);
  vSea = aSea.y;
  gl_Position = projectionMatrix * viewMatrix * vec4(vWorld, 1.0);
}`

const FRAGMENT = /* glsl */ `
varying vec3 vWorld;
varying float vSea;
/** Slope of the ripples; those smaller than a pixel are left out. */
vec2 ripples(vec2 p, float pixel) {
  float calm = 0.35 + 0.65 * smoothstep(0.25, 0.7, noise(p * vec2(0.06, 0.1) + 4.0));
  p += 0.5 * vec2(sin(p.y * 0.61 + 1.3 * sin(p.x * 0.23)), sin(p.x * 0.53 + 1.1 * sin(p.y * 0.31)));
  vec2 s = vec2(0.0);
  float k = 1.2, a = 0.05, turn = 0.0;
  for (int i = 0; i < 6; i++) {
    float seen = 1.0 - smoothstep(0.25, 0.9, pixel * k * 0.5);
    // The rest is smaller still.
    if (seen <= 0.0) break;
    vec2 dir = vec2(cos(turn), sin(turn));
    s += dir * (a * seen * cos(dot(p, dir) * k + uTime * sqrt(9.81 * k) * 0.35 + float(i) * 1.7));
    turn += 2.1 + float(i) * 0.27;
    k *= 1.75;
    a *= 0.82;
  }
  return s * calm * 0.42;
}
/** The deck in the mirror of the water: sides and underside of its rectangles along a ray. -1 where it goes by. */
vec4 deckAlong(vec3 from, vec3 d) {
  // The ray is as high as the deck this far off: by then it must have come to it.
  vec2 at = from.xy + d.xy * ((uDeck - uLevel) / max(d.z, 0.02));
  vec2 low = min(at, from.xy), high = max(at, from.xy);
  if (any(greaterThan(low, uDock.yw)) || any(lessThan(high, uDock.xz))) return vec4(0.0);
  float best = 1e3;
  vec4 c = vec4(0.0);
  for (int i = 0; i < 8; i++) {
    if (i >= uSlabCount) break;
    vec4 s = uSlabs[i];
    vec2 t = uSlabTurns[i];
    mat2 turn = mat2(t.x, -t.y, t.y, t.x);
    vec3 o = vec3(turn * from.xy, from.z), e = vec3(turn * d.xy, d.z);
    vec3 low = vec3(s.x, s.z, uDeck - 0.17), high = vec3(s.y, s.w, uDeck);
    vec3 a = (low - o) / e, b = (high - o) / e;
    vec3 near = min(a, b), far = max(a, b);
    float enter = max(max(near.x, near.y), near.z), leave = min(min(far.x, far.y), far.z);
    if (enter > leave || enter < 0.0 || enter > best) continue;
    best = enter;
    bool under = near.z >= enter - 1e-4;
    vec3 side = mix(uHorizon, uZenith, 0.5) * 0.5;
    c = vec4(under ? uHillsNear * 0.3 + uDeep * 0.25 : side, 1.0);
  }
  return c;
}
void main() {
  // Slightly behind the cut face, to avoid z-fighting.
  if (cutAway(vWorld - vec3(0.004 * uCut.xy, 0.0))) discard;
  vec3 ray = vWorld - cameraPosition;
  float far = length(ray);
  vec3 view = -ray / far;
  float pixel = max(length(dFdx(vWorld.xy)), length(dFdy(vWorld.xy)));
  vec2 slope = ripples(vWorld.xy, pixel);
  if (uSeaLook.x > 0.0) slope += sea(vWorld.xy, vSea).yz * (1.0 - smoothstep(0.7, 2.0, pixel * length(uSea[0].xy)));
  float up = gl_FrontFacing ? 1.0 : -1.0;
  vec3 n = normalize(vec3(-slope, 1.0)) * up;
  float facing = max(dot(n, view), 0.0);
  vec3 c;
  float alpha;
  if (up > 0.0) {
    vec3 r = reflect(-view, n);
    r.z = abs(r.z);
    float away = 1.0 - facing;
    float fresnel = 0.02 + 0.98 * away * away * away * away * away;
    // Unseen ripples widen the mirror image of the far shore: look a little higher.
    r = normalize(r + vec3(0.0, 0.0, 0.03 * smoothstep(0.02, 0.5, pixel)));
    c = skyAndHills(r, 0.006 + 0.02 * smoothstep(8.0, 60.0, far));
    vec4 deck = deckAlong(vWorld, normalize(r + vec3(-slope * 0.5, 0.0)));
    c = mix(c, deck.rgb, deck.a);
    // Of the facets that nobody can tell apart, so many mirror the sun; each is bright for itself.
    float glint = 0.0;
    vec3 h = view + uSun;
    vec2 tilt = h.xy / h.z + slope;
    float facets = exp(-dot(tilt, tilt) / (0.01 + 0.01 * smoothstep(0.02, 0.4, pixel)));
    if (deck.a < 0.5 && facets > 0.01) {
      vec2 grid = vWorld.xy * min(19.0, 0.7 / pixel);
      float spark = noise(grid) * noise(grid * 1.31 + 31.0);
      glint = facets * (0.05 + 5.0 * smoothstep(0.5, 0.8, spark + 0.22 * facets));
    }
    c += uSunLight * glint * 0.75;
    // Where the deck stands in for a bright sky, its dark image shows all the same.
    fresnel = max(fresnel, deck.a * 0.16);
    alpha = clamp(fresnel + glint * 0.5, 0.0, 0.985);
  } else {
    // From below: the sky in a round window, beyond its edge the mirrored bed, both moved by the ripples.
    vec3 m = normalize(vec3(-slope * 2.2, -1.0));
    float cosWater = max(dot(m, view), 0.0);
    float sin2 = 1.77 * (1.0 - cosWater * cosWater);
    float window = 1.0 - smoothstep(0.8, 1.05, sin2);
    vec3 up_ = normalize(vec3(-view.xy * 1.33 + slope, sqrt(max(1.0 - sin2, 0.03))));
    float path = waterPath(vWorld);
    vec3 through = exp(-uAbsorb * path);
    float shimmer = 0.75 + 6.0 * clamp(dot(slope, vec2(0.7, 0.6)), -0.06, 0.12);
    vec3 mirrored = (uDeep * 1.7 + uBounce * 0.4) * shimmer;
    c = mix(mirrored, sky(up_) * 1.1, window) * through + hazeAt(0.0) * (1.0 - through);
    alpha = mix(0.72, 0.42, window);
  }
  gl_FragColor = vec4(c, alpha);
${FINISH}
}`
