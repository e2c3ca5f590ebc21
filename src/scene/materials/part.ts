/**
 * What the dock is made of, in one program: brushed aluminum, galvanized steel, cedar, plastic, rubber, and cloth for the
 * person. Every body of a solid has its own tone and its own direction of brushing or grain.
 */
import { DoubleSide, FrontSide, type IUniform, type ShaderMaterial } from 'three'
import { makeMaterial } from './make-material.ts'
import { FINISH } from './shader-chunks.ts'
import type { World } from './world.ts'

export type Surface =
  | 'aluminum'
  | 'steel'
  | 'wood'
  | 'plastic'
  | 'rubber'
  | 'cloth'
  | 'stone'
  | 'leaf'
  | 'decking'
  | 'needle'

const NUMBERS: Readonly<Record<Surface, number>> = {
  aluminum: 0,
  steel: 1,
  wood: 2,
  plastic: 3,
  rubber: 4,
  cloth: 5,
  stone: 6,
  leaf: 7,
  // Grained as wood is, in a color of its own.
  decking: 2.25,
  needle: 8,
}

/** Attributes: `aGrain` x tone, y axis (0, 1, 2) along the body, z half of the seam beside a plank (`parts/shape.ts`); the instance color carries marks: r picked, g pointed at, b warned of. */
/**
 * `baked`: vertices are in place already (`parts/baked.ts`), else instances. `sway`: by what each vertex's own movement (`aSway`) is
 * multiplied (`sway/`).
 */
export const makePartMaterial = (
  world: World,
  surface: Surface,
  baked: boolean,
  sway?: IUniform<number>,
): ShaderMaterial =>
  makeMaterial(world, {
    name: `part-${surface}`,
    shadow: 4,
    options: {
      defines: { ...(baked ? { BAKED: '' } : {}), ...(sway ? { SWAYS: '' } : {}) },
      side: NUMBERS[surface] >= NUMBERS.leaf ? DoubleSide : FrontSide,
    },
    uniforms: { uSurface: { value: NUMBERS[surface] }, ...(sway ? { uSway: sway } : {}) },
    vertex: VERTEX,
    fragment: FRAGMENT,
  })

const VERTEX = /* glsl */ `
attribute vec3 aGrain;
#ifdef BAKED
attribute vec3 aMark, aLocal, aAlong;
#endif
#ifdef SWAYS
attribute vec3 aSway;
uniform float uSway;
#endif
varying vec3 vWorld, vNormal, vAlong, vGrain, vMark;
varying vec2 vSeam;
varying float vTone;
void main() {
  #ifdef BAKED
  mat4 place = modelMatrix;
  vec3 local = aLocal;
  vAlong = aAlong;
  vTone = fract(aGrain.x);
  vMark = aMark;
  #else
  mat4 place = modelMatrix * instanceMatrix;
  vec3 local = position;
  vec3 axis = aGrain.y < 0.5 ? vec3(1, 0, 0) : aGrain.y < 1.5 ? vec3(0, 1, 0) : vec3(0, 0, 1);
  vAlong = mat3(place) * axis;
  vTone = fract(aGrain.x + hash(floor(place[3].xy * 50.0)));
  vMark = instanceColor;
  #endif
  vGrain = aGrain.y < 0.5 ? local : aGrain.y < 1.5 ? local.yzx : local.zxy;
  vec4 worldPosition = place * vec4(position, 1.0);
  #ifdef SWAYS
  worldPosition.xyz += uSway * aSway;
  #endif
  // Seams of planks that would be finer than a pixel are closed here and painted below: else they break up into dots.
  vSeam = vec2(0.0);
  if (aGrain.z != 0.0) {
    float pixel = -2.0 * (viewMatrix * worldPosition).z / (projectionMatrix[1][1] * uScreen.y);
    vSeam = vec2(sign(aGrain.z), smoothstep(0.15, 0.5, pixel / (2.0 * abs(aGrain.z))));
    worldPosition.xyz += normalize(cross(vAlong, vec3(0.0, 0.0, 1.0))) * aGrain.z * vSeam.y;
  }
  vWorld = worldPosition.xyz;
  vNormal = mat3(place) * normal;
  vec3 transformedNormal = mat3(viewMatrix) * vNormal;
  gl_Position = projectionMatrix * viewMatrix * worldPosition;
  #include <shadowmap_vertex>
}`

const FRAGMENT = /* glsl */ `
uniform float uSurface;
uniform vec3 uDecking;
varying vec3 vWorld, vNormal, vAlong, vGrain, vMark;
varying vec2 vSeam;
varying float vTone;
/** The surroundings as a rough surface mirrors them. */
vec3 around(vec3 d, float rough) {
  float wide = 0.06 + 0.6 * rough;
  // Below lie lit sand and water, which mirrors the sky in its turn.
  vec3 air = mix(uHorizon, uZenith, 0.55);
  vec3 below = uBounce * 0.62 + uDeep * 0.4 + 0.36 * air;
  vec3 above = mix(sky(normalize(vec3(d.xy, abs(d.z) + 0.3 * rough))), air, 0.45);
  vec3 c = mix(below, above, smoothstep(-wide, wide, d.z));
  float ridge = 1.0 - smoothstep(0.0, 0.1 + wide * 0.4, abs(d.z - 0.03));
  return mix(c, mix(uHillsNear, uHillsFar, 0.6), 0.35 * ridge);
}
/** The same under water: sky only through the round window overhead, elsewhere scattered light and the lit bed. */
vec3 aroundUnder(vec3 d, float rough, float depth) {
  vec3 haze = hazeAt(depth);
  vec3 water = mix(vec3(dot(haze, vec3(0.3, 0.5, 0.2))), haze, 0.5) * 1.5 + uBounce * (0.14 + 0.26 * max(-d.z, 0.0));
  return mix(water, around(d, rough), smoothstep(0.5, 0.9, d.z));
}
void main() {
  // The dock stands whole behind a cut along it, and is cut with one across; what grows on the shore always is, and not seen from under water.
  if ((uSurface > 5.5 || uCut.x < -0.5) && cutAway(vWorld)) discard;
  if (uSurface > 5.5 && cameraPosition.z < uLevel && vWorld.z > uLevel) discard;
  vec3 n = normalize(vNormal);
  vec3 view = normalize(cameraPosition - vWorld);
  vec3 along = normalize(vAlong);
  float depth = uLevel - vWorld.z;
  float pixel = max(length(dFdx(vGrain.yz)), length(dFdy(vGrain.yz)));
  float fine = 1.0 - smoothstep(0.0012, 0.008, pixel);
  vec3 base = vec3(0.5);
  float metal = 0.0, rough = 0.5, spec = 0.04;

  if (uSurface < 0.5) {
    // Brushed along the stock: streaks that tilt the normal across it.
    vec3 across = normalize(cross(along, n) + 1e-5);
    float streak = fine <= 0.0 ? 0.5 : noise(vec2(vGrain.x * 3.0 + vTone * 71.0, dot(vGrain.yz, vec2(613.0, 457.0))));
    float band = noise(vec2(vGrain.x * 0.9 + vTone * 9.0, dot(vGrain.yz, vec2(61.0, 47.0))));
    n = normalize(n + across * ((streak - 0.5) * 0.22 * fine + (band - 0.5) * 0.1));
    base = vec3(0.87, 0.885, 0.905) * (0.9 + 0.05 * vTone + 0.12 * (streak - 0.5) * fine + 0.13 * (band - 0.5));
    metal = 0.86;
    rough = 0.38;
  } else if (uSurface < 1.5) {
    // Zinc in flakes.
    float flake = noise(vGrain.xy * 90.0 + vGrain.z * 70.0) * 0.6 + 0.4 * noise(vGrain.yz * 170.0 + vGrain.x * 40.0);
    base = vec3(0.53, 0.55, 0.56) * (0.78 + 0.3 * mix(0.5, flake, fine) + 0.05 * vTone);
    metal = 0.7;
    rough = 0.5;
  } else if (uSurface < 2.5) {
    vec2 q = vec2(vGrain.x, abs(n.z) > 0.5 || abs(dot(n, along)) > 0.5 ? vGrain.y + vGrain.z : vGrain.z - vGrain.y);
    float lie = vTone * 97.0;
    float wave = 0.012 * sin(q.x * 2.1 + lie) + 0.008 * sin(q.x * 5.3 + lie * 1.7);
    float rings = noise(vec2(q.x * 0.6 + lie, (q.y + wave) * 46.0 + lie));
    float fibre = fine > 0.0 ? noise(vec2(q.x * 9.0 + lie, (q.y + wave) * 320.0)) : 0.5;
    float cathedral = smoothstep(0.45, 0.75, noise(vec2(q.x * 0.35 + lie * 2.0, (q.y + wave) * 17.0 + lie)));
    vec3 pale = vec3(0.62, 0.385, 0.205), warm = vec3(0.42, 0.205, 0.088), silver = vec3(0.47, 0.41, 0.335);
    base = mix(pale, warm, clamp(0.2 + 0.55 * vTone + 0.3 * (cathedral - 0.4), 0.0, 1.0));
    base = mix(base, silver, 0.22 * fract(vTone * 7.3));
    if (uSurface > 2.1) base = uDecking * (0.9 + 0.14 * vTone + 0.08 * (cathedral - 0.4));
    base *= 0.82 + 0.26 * mix(0.5, rings, 1.0 - smoothstep(0.008, 0.03, pixel)) + 0.18 * (fibre - 0.5) * fine;
    n = normalize(n + 0.1 * fine * cross(along, n) * (fibre - 0.5));
    // What a seam has of the pixel: its half of the band on either side of the edge.
    float wide = max(fwidth(vSeam.x), 1e-4), edge_ = abs(vSeam.x);
    float seam = max(min(1.04, edge_ + wide * 0.5) - max(0.96, edge_ - wide * 0.5), 0.0) / wide;
    base *= 1.0 - 0.75 * vSeam.y * max(min(seam, 1.0), 0.04 * smoothstep(0.5, 2.0, wide));
    rough = 0.7;
    spec = 0.03;
  } else if (uSurface < 3.5) {
    base = vec3(0.055, 0.058, 0.06);
    rough = 0.45;
  } else if (uSurface < 4.5) {
    base = vec3(0.035, 0.042, 0.05) * (0.9 + 0.2 * noise(vGrain.xy * 240.0));
    rough = 0.8;
    spec = 0.03;
  } else if (uSurface < 5.5) {
    // The person: trousers, shirt, skin, hair.
    base = vTone < 0.25 ? vec3(0.075, 0.1, 0.14) : vTone < 0.5 ? vec3(0.115, 0.2, 0.25) : vTone < 0.95 ? vec3(0.42, 0.26, 0.18) : vec3(0.1, 0.07, 0.05);
    rough = 0.9;
    spec = 0.02;
  } else if (uSurface < 6.5) {
    float patch_ = noise(vGrain.xy * 5.0 + vTone * 40.0) * 0.6 + noise(vGrain.yz * 17.0 + vTone * 9.0) * 0.4;
    base = mix(vec3(0.27, 0.265, 0.25), vec3(0.42, 0.38, 0.33), vTone) * (0.7 + 0.6 * patch_);
    rough = 0.95;
    spec = 0.02;
  } else {
    // Blades: dark at the foot, some of them dry; lit from both sides.
    bool needle = uSurface > 7.5;
    base = (needle ? mix(vec3(0.085, 0.15, 0.065), vec3(0.15, 0.22, 0.08), vTone) : mix(vec3(0.09, 0.135, 0.04), vec3(0.3, 0.29, 0.12), vTone)) * (0.45 + 0.75 * clamp(vGrain.x * 2.0, 0.0, 1.0));
    n = needle ? normalize(vec3(vNormal.xy, 0.5 * length(vNormal.xy))) : normalize(vec3(n.xy * (gl_FrontFacing ? 0.5 : -0.5), 0.8));
    rough = 1.0;
    spec = 0.0;
  }

  // Wet just over the water, and slime green under it as the years go.
  float wet = smoothstep(0.07, 0.0, -depth) ;
  base *= mix(1.0, metal > 0.5 ? 0.86 : 0.62, wet);

  float facing = max(dot(n, uSun), 0.0);
  float sun = facing > 0.0 ? sunAt(vWorld, 0.012 + 0.03 * max(uDeck - vWorld.z, 0.0)) : 0.0;
  vec3 down = vec3(1.0);
  vec3 sunlight = uSunLight * sun;
  if (depth > 0.0) {
    down = downTo(depth);
    if (sun > 0.0) sunlight *= 1.0 + 0.8 * caustics(vWorld.xy * 1.5 + vWorld.z) * exp(-depth * 0.42);
  }
  // Beneath the deck little sky is seen.
  float roof = 1.0 - 0.5 * smoothstep(0.05, -0.4, beyondDeck(vWorld.xy)) * smoothstep(uDeck - 0.02, uDeck - 0.2, vWorld.z);
  vec3 ambient = mix(mix(uBounce, uDeep, 0.3), mix(uHorizon, uZenith, 0.5), 0.5 + 0.5 * n.z) * 0.78 * roof;
  vec3 c = base * (1.0 - metal) * (sunlight * facing + ambient);

  vec3 half_ = normalize(uSun + view);
  vec3 mirror = reflect(-view, n);
  float away = 1.0 - max(dot(n, view), 0.0);
  float edge = away * away * away * away * away;
  if (metal > 0.0) {
    // Long highlights square to the brushing.
    float th = dot(along, half_);
    float shine = pow(max(1.0 - th * th, 0.0), 22.0) * pow(max(dot(n, half_), 0.0), 9.0);
    vec3 tint = mix(base, vec3(1.0), edge * 0.5);
    vec3 seen = depth > 0.0 ? mix(around(mirror, rough), aroundUnder(mirror, rough, depth), smoothstep(0.0, 0.06, depth)) : around(mirror, rough);
    c += tint * metal * (seen * roof * (0.92 + 0.1 * n.z) + sunlight * (0.2 * facing + 0.55 * shine * step(0.0, dot(n, uSun))));
  } else {
    float shine = pow(max(dot(n, half_), 0.0), mix(90.0, 9.0, rough)) * (1.0 - rough);
    c += (spec + 0.3 * edge * (1.0 - rough)) * around(mirror, rough) * roof + sunlight * shine * 0.5 * facing;
  }
  c *= down;

  c = underWater(c, vWorld);
  // Marks: light of their own, strongest at the rim, so that they show on every material.
  if (vMark.r + vMark.g + vMark.b > 0.0) {
    float turned = 1.0 - abs(dot(normalize(vNormal), view));
    float rim = 0.35 + 0.65 * turned * sqrt(turned);
    vec3 picked = vec3(0.05, 0.55, 1.0), warned = vMark.b > 0.75 ? vec3(1.0, 0.16, 0.05) : vec3(1.0, 0.5, 0.04);
    c = mix(c, warned * (0.55 + 0.6 * rim), step(0.25, vMark.b) * 0.62);
    c = mix(c, picked * (0.6 + 0.8 * rim), max(vMark.r * 0.88, vMark.g * 0.45));
  }

  // The waterline drawn in.
  float line = abs(depth) / max(fwidth(depth), 0.0025);
  if (uSurface < 5.5) c = mix(c, uHorizon * 1.25, 0.9 * (1.0 - smoothstep(0.8, 1.8, line)));
  gl_FragColor = vec4(c, 1.0);
${FINISH}
}`
