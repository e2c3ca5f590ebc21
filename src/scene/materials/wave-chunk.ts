/** The same trains as `water/wave-trains.ts` for the shaders that look at the moving surface. */

/** Uniforms of `World`: x, y wave numbers, z phase now, w amplitude; share shown, sharpness, variance; where it is full along x. */
export const SEA = /* glsl */ `
uniform vec4 uSea[5];
uniform vec3 uSeaLook;
uniform vec2 uShoal;
/** Surface over still water, and its slope, where \`share\` of the full height stands. */
vec3 sea(vec2 p, float share) {
  if (uSeaLook.x <= 0.0 || share <= 0.0) return vec3(0.0);
  share *= uSeaLook.x;
  float z = 0.0;
  vec2 slope = vec2(0.0);
  for (int i = 0; i < 5; i++) {
    float a = dot(uSea[i].xy, p) + uSea[i].z;
    z += uSea[i].w * cos(a);
    slope -= uSea[i].w * sin(a) * uSea[i].xy;
  }
  z *= share;
  slope *= share;
  return vec3(z + uSeaLook.y * (z * z - share * share * uSeaLook.z), slope * (1.0 + 2.0 * uSeaLook.y * z));
}
/** Elevation of the surface at a place by the dock. */
float levelAt(vec2 p) {
  float share = uSeaLook.x * clamp((p.x - uShoal.x) * uShoal.y, 0.0, 1.0);
  if (share <= 0.0) return uLevel;
  float z = 0.0;
  for (int i = 0; i < 5; i++) z += uSea[i].w * cos(dot(uSea[i].xy, p) + uSea[i].z);
  z *= share;
  return uLevel + z + uSeaLook.y * (z * z - share * share * uSeaLook.z);
}
`
