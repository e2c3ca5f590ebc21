/**
 * Pieces of GLSL that several materials share. World space throughout: m, x lakeward, y left, z up.
 *
 * The water needs no render target: each material below it computes its depth and the length of the view ray in the water, and
 * darkens and tints itself (Beer-Lambert, red first); the surface adds only what it mirrors.
 */

/** Uniforms of `World`; those of the moving surface are in `wave-chunk.ts`. */
export const WORLD = /* glsl */ `
uniform vec3 uCut, uSun, uSunLight, uZenith, uHorizon, uGlow, uHillsFar, uHillsNear, uBounce, uDeep, uAbsorb, uScreen;
uniform float uLevel, uGreen, uContour, uTime, uDeck, uEvenFrom;
uniform vec2 uShadowPerMeter;
uniform vec4 uDock;
uniform vec4 uSlabs[8];
uniform vec2 uSlabTurns[8];
uniform int uSlabCount;
/** How far behind the plane of the cut, m. */
float behindCut(vec3 p) { return dot(p.xy, uCut.xy) - uCut.z; }
/** A place on that plane, by where it is along it. */
vec2 onCut(float along) { return uCut.xy * uCut.z + abs(uCut.yx) * along; }
`

/** Value noise from an integer hash: the same on every graphics card. */
export const NOISE = /* glsl */ `
float hash(vec2 p) {
  uvec2 q = uvec2(ivec2(p)) * uvec2(0x9E3779B1u, 0x85EBCA77u);
  uint n = (q.x ^ (q.y >> 7u) ^ (q.y << 9u)) * 0xC2B2AE3Du;
  n ^= n >> 15u;
  n *= 0x27D4EB2Fu;
  return float(n >> 8u) / 16777216.0;
}
float corner(uint n) {
  n *= 0xC2B2AE3Du;
  return float((n ^ (n >> 16u)) >> 8u) / 16777216.0;
}
float noise(vec2 p) {
  vec2 i = floor(p), f = p - i;
  f = f * f * (3.0 - 2.0 * f);
  // Columns and rows are mixed once for the corners that they share.
  uvec4 q = uvec4(ivec4(i.x, i.x + 1.0, i.y, i.y + 1.0)) * uvec4(0x9E3779B1u, 0x9E3779B1u, 0x85EBCA77u, 0x85EBCA77u);
  q ^= q >> 15u;
  q.zw *= 0x27D4EB2Fu;
  return mix(mix(corner(q.x ^ q.z), corner(q.y ^ q.z), f.x), mix(corner(q.x ^ q.w), corner(q.y ^ q.w), f.x), f.y);
}
float fbm(vec2 p) {
  return 0.64 * noise(p) + 0.36 * noise(p * 2.63 + 7.7);
}
`

/** Sky by direction. `hills` also draws clouds and the far shore: three ridges in haze, the nearest of trees. */
export const SKY = /* glsl */ `
vec3 sky(vec3 d) {
  float up = max(d.z, 0.0);
  float s = max(dot(d, uSun), 0.0);
  // Warm toward the sun, cool away from it.
  float warm = 0.5 + 0.5 * dot(d.xy, uSun.xy) / max(length(d.xy) * length(uSun.xy), 1e-4);
  vec3 low = mix(mix(uHorizon, uZenith, 0.6) * 1.1, uHorizon, warm * warm);
  vec3 c = mix(low, uZenith, 1.0 - exp(-up * 6.0));
  float s4 = s * s * s * s;
  float s16 = s4 * s4 * s4 * s4;
  return c + uGlow * (0.16 * s4 * s + 0.3 * s16 * s4 + 0.35 * s16 * s16 * s16 * s16);
}
/** Crowns of trees side by side: domes of uneven height. */
float crowns(float a) {
  float f = fract(a) - 0.5;
  return sqrt(1.0 - 3.4 * f * f) * (0.45 + 0.55 * hash(vec2(floor(a) + 300.0, 7.0)));
}
/** \`blur\`: how soft the ridges are, as a slope. */
vec3 skyAndHills(vec3 d, float blur) {
  vec3 c = sky(d);
  // A few clouds, long and thin toward the horizon, lit from the side of the sun.
  float high = d.z - 0.03;
  if (high > 0.0) {
    vec2 q = d.xy / (d.z + 0.11);
    float puff = fbm(q * vec2(0.75, 1.15) + 3.0) + 0.16 * noise(q * 5.3);
    float cloud = smoothstep(0.56, 0.86, puff) * smoothstep(0.0, 0.09, high);
    float side = max(dot(normalize(d.xy), normalize(uSun.xy)), 0.0);
    c = mix(c, mix(uHorizon, uZenith, 0.18) * 1.25 + uGlow * 0.4 * side * side, 0.75 * cloud);
  }
  // No ridge reaches higher, so most pixels skip the rest.
  if (d.z > 0.13 + blur) return c;
  float a = atan(d.y, d.x) * 1.9;
  float s = max(dot(d, uSun), 0.0);
  vec3 haze = mix(uHillsFar, mix(uHorizon, uZenith, 0.3), 0.5) + uGlow * 0.16 * s * s * s;
  float e = 0.0012 + blur;
  float far = 0.024 + 0.034 * noise(vec2(a * 3.0, 1.0));
  float farther = 0.035 + 0.06 * noise(vec2(a * 1.7, 5.0)) * noise(vec2(a * 0.6, 2.0)) + 0.012 * noise(vec2(a * 9.0, 4.0));
  c = mix(c, mix(haze, c, 0.55), 1.0 - smoothstep(farther - e, farther + e, d.z));
  // Haze lies in the folds of the land.
  c = mix(c, mix(haze, uHorizon, 0.35 * (1.0 - smoothstep(0.0, far, d.z))), 1.0 - smoothstep(far - e, far + e, d.z));
  // Higher behind the shore, low across the lake.
  float near = 0.5 - 0.5 * d.x / max(length(d.xy), 1e-4);
  float crown = blur > 0.004 ? 0.6 : max(crowns(a * 52.0), crowns(a * 33.0 + 0.4)) * (0.5 + near) + 0.3 * crowns(a * 190.0);
  float trees = 0.007 + 0.034 * near * near + (0.01 + 0.008 * near) * noise(vec2(a * 7.0, 9.0)) + 0.009 * crown;
  if (d.z > trees + e) return c;
  // The nearer trees: lighter crowns, darker between them, haze at their feet.
  float leaf = blur > 0.004 ? 0.5 : noise(vec2(a * 160.0, d.z * 300.0 + 3.0 * crown));
  vec3 wood = mix(uHillsNear * (0.75 + 0.5 * leaf), haze, mix(0.42, 0.12, near)) + uGlow * 0.05 * s * s;
  return mix(c, wood, 1.0 - smoothstep(trees - e, trees + e, d.z));
}
`

/** What the water does to a color seen through it, and the light that comes down to a depth. */
export const WATER = /* glsl */ `
bool cutAway(vec3 p) { return behindCut(p) < 0.0; }
/** Length of the view ray in the water between eye and point, m. A ray that comes in from above is bent: it never runs flat. */
float waterPath(vec3 p) {
  vec3 ray = p - cameraPosition;
  float enter = 0.0, leave = 1.0;
  bool fromAbove = false;
  float level = uLevel;
  // Far below the surface a wave makes no visible difference, except where the lake is cut.
  bool cut = uCut.z > -1e5;
  float near = cut ? 1.0 : smoothstep(-1.0, -0.4, p.z - uLevel);
  if (uSeaLook.x > 0.0 && near > 0.0) {
    // As the surface stands where the ray comes in: through the cut, else from above.
    float t = cut ? -behindCut(cameraPosition) / dot(ray.xy, uCut.xy) : (uLevel - cameraPosition.z) / ray.z;
    level = mix(uLevel, levelAt(t > 0.0 && t < 1.0 ? cameraPosition.xy + t * ray.xy : p.xy), near);
  }
  float ez = cameraPosition.z - level, pz = p.z - level;
  if (ez > 0.0 && pz > 0.0) return 0.0;
  if (ez > 0.0) { enter = ez / (ez - pz); fromAbove = true; }
  else if (pz > 0.0) leave = ez / (ez - pz);
  if (cut) {
    float ey = behindCut(cameraPosition), py = behindCut(p);
    if (ey < 0.0 && py > 0.0) {
      float t = ey / (ey - py);
      if (t > enter) { enter = t; fromAbove = false; }
    }
  }
  float straight = max(leave - enter, 0.0) * length(ray);
  if (!fromAbove) return straight;
  float cosAir = abs(ray.z) / max(length(ray), 1e-4);
  float cosWater = sqrt(1.0 - (1.0 - cosAir * cosAir) / 1.77);
  return -pz / cosWater;
}
/** Light that the water itself gives back, by depth: less far down. */
vec3 hazeAt(float depth) {
  // An eye in the water sees it lit from above.
  float within = cameraPosition.z < uLevel ? 2.9 : 1.0;
  return uDeep * within * (0.62 + 0.75 * exp(-max(depth, 0.0) * 0.55));
}
/** What an eye in the water sees of it: rays of the sun come down where the surface lets them. */
vec3 lit(vec3 p, float far) {
  vec3 at = mix(cameraPosition, p, 0.5);
  vec2 q = at.xy + uSun.xy / max(uSun.z, 0.3) * 0.75 * (uLevel - at.z);
  float ray = noise(q * 2.3 + uTime * 0.08) * 0.6 + noise(q * vec2(5.1, 4.3) - uTime * 0.1) * 0.4;
  return hazeAt(uLevel - p.z) * (0.72 + 0.75 * smoothstep(0.38, 0.85, ray) * min(1.0, 0.4 * far));
}
vec3 underWater(vec3 color, vec3 p) {
  float path = waterPath(p);
  if (path <= 0.0) return color;
  if (cameraPosition.z < uLevel) return color * exp(-uAbsorb * 0.62 * path) + lit(p, 0.55 * path) * (1.0 - exp(-(uAbsorb * 0.3 + 0.055) * path));
  return color * exp(-uAbsorb * path) + hazeAt(uLevel - p.z) * (1.0 - exp(-(uAbsorb * 0.35 + 0.13) * path));
}
/** Share of the sunlight that comes down to a depth, by color. */
vec3 downTo(float depth) {
  return exp(-uAbsorb * 1.15 * max(depth, 0.0));
}
/** Bright net that waves throw on the bed. */
float caustics(vec2 p) {
  float t = uTime * 0.7;
  p += 0.27 * vec2(sin(p.y * 1.9 + t), sin(p.x * 1.7 - t + 1.6));
  p += 0.15 * vec2(sin(p.y * 4.3 - t * 1.3 + 1.0), sin(p.x * 3.7 + t * 0.9));
  vec3 a = sin(vec3(dot(p, vec2(3.3, 1.2)) + t, dot(p, vec2(-1.7, 3.1)) - t, dot(p, vec2(1.3, -3.7)) + 1.7));
  p = p * 1.71 + 3.1;
  vec3 b = sin(vec3(dot(p, vec2(2.9, -1.9)) - t, dot(p, vec2(2.1, 2.9)) + t, dot(p, vec2(-3.6, 0.8))));
  float m = 1.0 - abs(a.x + a.y + a.z) / 3.0, n = 1.0 - abs(b.x + b.y + b.z) / 3.0;
  m *= m * m; n *= n * n;
  // Bright where two nets meet, faint where only one runs.
  return 0.34 * m * m + 0.22 * n * n + 1.15 * m * n * (0.4 + 0.6 * m);
}
`

/** How far a place in plan is beyond the edge of the deck, m; negative under it. */
export const DECK = /* glsl */ `
float beyondDeck(vec2 p) {
  vec2 box = max(uDock.xz - p, p - uDock.yw);
  float d = max(box.x, box.y);
  // Far from the dock a rough distance is enough.
  if (d > 3.0) return d;
  d = 1e3;
  for (int i = 0; i < 8; i++) {
    if (i >= uSlabCount) break;
    vec4 s = uSlabs[i];
    vec2 t = uSlabTurns[i], r = vec2(dot(p, t), p.y * t.x - p.x * t.y);
    vec2 q = max(s.xz - r, r - s.yw);
    d = min(d, length(max(q, 0.0)) + min(max(q.x, q.y), 0.0));
  }
  return d;
}
`

/** Sun through the shadow map, softer the farther the shadow falls. Needs three's shadow chunks around it. */
export const SHADOW = /* glsl */ `
#if defined(USE_SHADOWMAP) && NUM_DIR_LIGHT_SHADOWS > 0
/** Share of sun at the fragment; \`blur\` is the radius that is averaged over, m. \`TAPS\` places are looked at. */
float sunAt(vec3 p, float blur) {
  // Only what lies on the way of the light from deck, legs or person can be in their shadow.
  vec2 per = uSun.xy / max(uSun.z, 0.05);
  float up = max(uDeck - p.z, 0.0);
  vec2 deck = p.xy + per * up, head = deck + per * 1.8;
  if (min(min(beyondDeck(deck), beyondDeck(head)), beyondDeck(p.xy + per * up * 0.5)) > 0.7 + 0.55 * length(per) * max(0.5 * up, 1.0)) return 1.0;
  vec3 c = vDirectionalShadowCoord[0].xyz / vDirectionalShadowCoord[0].w;
  c.z += directionalLightShadows[0].shadowBias;
  vec2 r = blur * uShadowPerMeter;
  if (c.z > 1.0 || any(lessThan(c.xy, r)) || any(greaterThan(c.xy, 1.0 - r))) return 1.0;
  // Near the edge of the deck's own shadow its true shape is known, which no map has as fine: its upper and its lower face, seen from the sun.
  float own = min(beyondDeck(deck), beyondDeck(deck - per * 0.17));
  float soft = 0.02 + 0.06 * up;
  float known = (1.0 - smoothstep(1.0, 1.7, abs(own) / soft)) * step(uEvenFrom + soft, deck.x) * step(0.3, up);
  float edge_ = smoothstep(-soft, soft, own);
  if (known > 0.999) return edge_;
  float sum = 0.0;
  for (int i = 0; i < TAPS; i++) {
    float angle = float(i) * 2.3999632;
    vec2 at = vec2(cos(angle), sin(angle)) * sqrt((float(i) + 0.3) / float(TAPS));
    sum += texture(directionalShadowMap[0], vec3(c.xy + at * r, c.z));
  }
  return mix(sum / float(TAPS), edge_, known);
}
#else
float sunAt(vec3 p, float blur) { return 1.0; }
#endif
`

/**
 * Linear light to the screen: curve and color space here, not by three, whose programs would differ between a frame drawn on the
 * canvas and one drawn beside it.
 */
export const FINISH = /* glsl */ `
  gl_FragColor.rgb = sRGBTransferOETF(vec4(ACESFilmicToneMapping(gl_FragColor.rgb), 1.0)).rgb;
`
