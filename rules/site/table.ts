/** A bed over a grid of distances and offsets: bilinear between them, level to the sides, its end slopes going on. */

export interface Table {
  /** Ascending, m. Between them (and beyond the last) the bed is bilinear. */
  readonly xs: Float64Array
  readonly ys: Float64Array
  /** Elevation at xs[k], ys[j]: number j * xs.length + k. */
  readonly z: Float64Array
  /** Of each row, landward of the first distance and lakeward of the last; lakeward never rising. */
  readonly land: Float64Array
  readonly lake: Float64Array
  /** Numbers of the distances that the end slopes reach back to. */
  readonly inner: number
  readonly outer: number
}

/** Soundings this near to the end of what was sounded do not make its slope by themselves, m. */
const END = 1

/** `rowAt` fills in the elevations of a row. `wall`: level landward, for there is no bank that a slope could belong to. */
export function makeTable(
  xs: Float64Array,
  ys: Float64Array,
  wall: boolean,
  rowAt: (y: number, j: number, out: Float64Array) => void,
): Table {
  const n = xs.length
  const last = n - 1
  const [inner, outer] = ends(xs)
  const rows = Array.from(ys, (y, j) => {
    const z = new Float64Array(n)
    rowAt(y, j, z)
    const slope = (a: number, b: number): number => (b > a ? (z[b]! - z[a]!) / (xs[b]! - xs[a]!) : 0)
    return { y, z, land: wall ? 0 : slope(0, inner), lake: slope(outer, last) }
  })
  // Where the slope out there comes to rise the bed goes on level: a crease, and so a row.
  for (let j = rows.length - 1; j > 0; j--) {
    const [a, b] = [rows[j - 1]!, rows[j]!]
    if (a.lake * b.lake >= 0) continue
    const t = a.lake / (a.lake - b.lake)
    const mix = (p: number, q: number): number => p + t * (q - p)
    const row = {
      y: mix(a.y, b.y),
      z: a.z.map((z, k) => mix(z, b.z[k]!)),
      land: mix(a.land, b.land),
      lake: 0,
    }
    if (row.y > a.y && row.y < b.y) rows.splice(j, 0, row)
  }
  const z = new Float64Array(rows.length * n)
  rows.forEach((row, j) => {
    z.set(row.z, j * n)
  })
  return {
    xs,
    ys: Float64Array.from(rows, (row) => row.y),
    z,
    land: Float64Array.from(rows, (row) => row.land),
    lake: Float64Array.from(rows, (row) => Math.min(0, row.lake)),
    inner,
    outer,
  }
}

/** Distances that the end slopes reach back to, not across the water's edge. */
function ends(xs: Float64Array): [number, number] {
  const last = xs.length - 1
  let inner = Math.min(1, last)
  while (inner < last && xs[inner]! < xs[0]! + END && xs[inner] !== 0) inner++
  let outer = Math.max(0, last - 1)
  while (outer > 0 && xs[outer]! > xs[last]! - END && xs[outer] !== 0) outer--
  return [inner, outer]
}

/** Number of the stretch of an ascending list that holds a place; the first or last one for a place beyond. */
function stretchOf(list: Float64Array, at: number): number {
  let low = 0
  let high = list.length - 1
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (list[middle]! <= at) low = middle
    else high = middle
  }
  return low
}

/** `top`: landward the bed never gets higher, unless it begins higher, m. */
export function tableAt({ xs, ys, z, land, lake }: Table, top: number, x: number, y: number): number {
  const n = xs.length
  const j = ys.length > 1 ? stretchOf(ys, y) : 0
  const u = ys.length > 1 ? Math.min(1, Math.max(0, (y - ys[j]!) / (ys[j + 1]! - ys[j]!))) : 0
  const a = j * n
  const b = ys.length > 1 ? a + n : a
  const i = j + (ys.length > 1 ? 1 : 0)
  // Weighted, not added to: at a node it is the node's elevation to the last bit.
  const across = (p: number, q: number): number => (u === 0 ? p : p * (1 - u) + q * u)
  if (x <= xs[0]!) {
    const edge = across(z[a]!, z[b]!)
    return Math.min(Math.max(top, edge), edge + across(land[j]!, land[i]!) * (x - xs[0]!))
  }
  if (x >= xs[n - 1]!)
    return across(z[a + n - 1]!, z[b + n - 1]!) + across(lake[j]!, lake[i]!) * (x - xs[n - 1]!)
  const k = stretchOf(xs, x)
  const t = (x - xs[k]!) / (xs[k + 1]! - xs[k]!)
  return across(z[a + k]!, z[b + k]!) * (1 - t) + across(z[a + k + 1]!, z[b + k + 1]!) * t
}

/** Beyond this distance nothing of the table is as high as `least`; -Infinity where nothing is. */
export function tableReach({ xs, ys, z }: Table, least: number): number {
  const n = xs.length
  for (let k = n - 1; k >= 0; k--)
    for (let j = 0; j < ys.length; j++) if (z[j * n + k]! >= least) return xs[Math.min(k + 1, n - 1)]!
  return Number.NEGATIVE_INFINITY
}
