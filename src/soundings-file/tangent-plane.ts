/**
 * Places on earth as places in the dock's plan: the plane that touches the WGS 84 ellipsoid at an origin, turned so that x is lakeward.
 * Distances in it are those along the ground but for d³/(6 R²), 0.03 mm at 2 km. (Geodetic to earth-centered coordinates and back as in
 * any textbook of geodesy; the way back by Bowring, Survey Review 23, 1976.)
 */

/** Semi-major axis, m, and flattening: WGS 84's defining constants. */
const A = 6_378_137
const F = 1 / 298.257_223_563
const B = A * (1 - F)
const E2 = F * (2 - F)
const EP2 = E2 / (1 - E2)
const RAD = Math.PI / 180

/** Where x = 0, y = 0 is, degrees, and the compass bearing of +x, degrees. */
export interface Placing {
  readonly latitude: number
  readonly longitude: number
  readonly bearing: number
}

interface Plane {
  /** Degrees to m. */
  toPlan(latitude: number, longitude: number): readonly [x: number, y: number]
  /** And back. */
  toEarth(x: number, y: number): readonly [latitude: number, longitude: number]
}

function centered(latitude: number, longitude: number): readonly [number, number, number] {
  const [p, l] = [latitude * RAD, longitude * RAD]
  const n = A / Math.sqrt(1 - E2 * Math.sin(p) ** 2)
  return [n * Math.cos(p) * Math.cos(l), n * Math.cos(p) * Math.sin(l), n * (1 - E2) * Math.sin(p)]
}

export function tangentPlane({ latitude, longitude, bearing }: Placing): Plane {
  const [p, l] = [latitude * RAD, longitude * RAD]
  const [sp, cp, sl, cl] = [Math.sin(p), Math.cos(p), Math.sin(l), Math.cos(l)]
  const origin = centered(latitude, longitude)
  const turned = turn(bearing)
  return {
    toPlan(lat, lon) {
      const at = centered(lat, lon)
      const [dx, dy, dz] = [at[0] - origin[0], at[1] - origin[1], at[2] - origin[2]]
      return turned.toPlan(-sl * dx + cl * dy, -sp * cl * dx - sp * sl * dy + cp * dz)
    },
    toEarth(x, y) {
      const [east, north] = turned.toGrid(x, y)
      const at = [
        origin[0] - sl * east - sp * cl * north,
        origin[1] + cl * east - sp * sl * north,
        origin[2] + cp * north,
      ] as const
      const r = Math.hypot(at[0], at[1])
      const t = Math.atan2(at[2] * A, r * B)
      const lat = Math.atan2(at[2] + EP2 * B * Math.sin(t) ** 3, r - E2 * A * Math.cos(t) ** 3)
      return [lat / RAD, Math.atan2(at[1], at[0]) / RAD]
    },
  }
}

/** East and north to lakeward and left, m. @param bearing of lakeward, compass degrees */
export function turn(bearing: number) {
  const [s, c] = [Math.sin(bearing * RAD), Math.cos(bearing * RAD)]
  return {
    toPlan: (east: number, north: number): readonly [x: number, y: number] => [
      east * s + north * c,
      north * s - east * c,
    ],
    toGrid: (x: number, y: number): readonly [east: number, north: number] => [x * s - y * c, x * c + y * s],
  }
}
