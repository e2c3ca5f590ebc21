/** Paint, alloy, cushions and glass of boats, by vertex: one program and one draw for all of them. They go up and down with the waves. */
import { DoubleSide, type ShaderMaterial } from 'three'
import { makeMaterial } from '../materials/make-material.ts'
import { FINISH } from '../materials/shader-chunks.ts'
import type { World } from '../materials/world.ts'

export const makeBoatMaterial = (world: World): ShaderMaterial =>
  makeMaterial(world, {
    name: 'boats',
    shadow: 4,
    options: { side: DoubleSide },
    vertex: VERTEX,
    fragment: FRAGMENT,
  })

/** `aBerth`: the boat's middle in plan, and a quarter of its length along it. */
const VERTEX = /* glsl */ `
attribute vec4 aPaint, aBerth;
varying vec3 vWorld, vNormal;
varying vec4 vPaint;
void main() {
  vec4 worldPosition = modelMatrix * vec4(position, 1.0);
  float fore = levelAt(aBerth.xy + aBerth.zw), aft = levelAt(aBerth.xy - aBerth.zw);
  float along = dot(position.xy - aBerth.xy, aBerth.zw) / max(dot(aBerth.zw, aBerth.zw), 1e-4);
  worldPosition.z += mix(aft, fore, 0.5 + 0.5 * along) - uLevel;
  vWorld = worldPosition.xyz;
  vNormal = normal;
  vPaint = aPaint;
  vec3 transformedNormal = mat3(viewMatrix) * vNormal;
  gl_Position = projectionMatrix * viewMatrix * worldPosition;
  #include <shadowmap_vertex>
}`

const FRAGMENT = /* glsl */ `
varying vec3 vWorld, vNormal;
varying vec4 vPaint;
void main() {
  vec3 n = normalize(vNormal);
  vec3 view = normalize(cameraPosition - vWorld);
  float depth = uLevel - vWorld.z;
  vec3 base = vPaint.rgb * mix(1.0, 0.7, smoothstep(0.05, 0.0, -depth));
  float facing = max(dot(n, uSun), 0.0);
  float sun = facing > 0.0 ? sunAt(vWorld, 0.03) : 0.0;
  vec3 sunlight = uSunLight * sun;
  vec3 air = mix(uHorizon, uZenith, 0.5);
  vec3 ambient = mix(mix(uBounce, uDeep, 0.3), air, 0.5 + 0.5 * n.z) * 0.78;
  vec3 c = base * (sunlight * facing + ambient);
  vec3 mirror = reflect(-view, n);
  float away = 1.0 - max(dot(n, view), 0.0);
  float rim = away * away * away * away * away;
  vec3 seen = mix(uBounce * 0.6 + uDeep * 0.4 + 0.3 * air, sky(normalize(vec3(mirror.xy, abs(mirror.z) + 0.05))), smoothstep(-0.15, 0.15, mirror.z));
  vec3 half_ = normalize(uSun + view);
  c += vPaint.a * ((0.05 + 0.4 * rim) * seen + 0.6 * sunlight * facing * pow(max(dot(n, half_), 0.0), 60.0));
  if (depth > 0.0) c *= downTo(depth) * (1.0 + 0.5 * sun * caustics(vWorld.xy * 1.5 + vWorld.z));
  gl_FragColor = vec4(underWater(c, vWorld), 1.0);
${FINISH}
}`
