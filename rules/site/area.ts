/** A bed from soundings off one line: kriging, tabulated; of many soundings what their means miss is triangulated on top. */
import {
  type Covariance,
  covarianceOf,
  type Factor,
  factorOf,
  meanAlong,
  type Places,
  STRIDE,
  solved,
} from './kriging.ts'
import { meansOf } from './spread.ts'
import { makeSurface, type Surface } from './surface.ts'
import { makeTable, type Table, tableAt, tableReach } from './table.ts'

/** More soundings than this are kriged by their means: the work grows with the cube. */
export const KRIGED = 150

/** A sounding at the water's edge this far off a depth of 0 denies it, m. */
const DENIED = 0.1

export interface Area {
  readonly covariance: Covariance
  /** Of all places; null for many. */
  readonly factor: Factor | null
  /** Of what the means of many soundings miss; null for few. */
  readonly surface: Surface | null
  /** In the order of the values given. */
  readonly beds: readonly AreaBed[]
}

export interface AreaBed {
  readonly table: Table
  readonly missed: Float64Array | null
  at(x: number, y: number): number
  reachOf(z: number): number
}

/** `values`: elevations by place, several sets. `top`: height of the bank or Infinity. */
export function makeArea(places: Places, values: readonly Float64Array[], wall: boolean, top: number): Area {
  const many = places.x.length > KRIGED
  const surface = many ? makeSurface(places) : null
  const known = many ? meansOf(places, values) : { ...places, values }
  const edge = !wall && !values[0]!.some((z, i) => places.x[i] === 0 && Math.abs(z) > DENIED)
  const covariance = covarianceOf(edge)
  const factor = factorOf(known, covariance)
  const [x0, x1] = [places.x[0]!, places.x.at(-1)!]
  const xs = ascending([...known.x, 0, x0, x1])
  const ys = ascending([...known.y, -STRIDE, 0, STRIDE])
  const beds = known.values.map((list, k): AreaBed => {
    const weights = solved(factor, list)
    const exact = nodesOf(known, list)
    const table = makeTable(xs, ys, wall, (y, j, out) => {
      meanAlong(known, weights, edge, xs, y, out)
      // What rounding left, where two soundings are a hair apart.
      for (const [x, z] of exact.get(ys[j]!) ?? []) out[xs.indexOf(x)] = z
    })
    if (!surface)
      return {
        table,
        missed: null,
        at: (x, y) => tableAt(table, top, x, y),
        reachOf: (z) => tableReach(table, z),
      }
    const missed = values[k]!.map((z, i) => z - tableAt(table, top, places.x[i]!, places.y[i]!))
    const most = missed.reduce((a, b) => Math.max(a, b), 0)
    return {
      table,
      missed,
      at: (x, y) => tableAt(table, top, x, y) + surface.at(missed, x, y),
      reachOf: (z) => tableReach(table, z - most),
    }
  })
  return { covariance, factor: many ? null : factor, surface, beds }
}

const ascending = (list: readonly number[]): Float64Array =>
  Float64Array.from(new Set(list.map((v) => v + 0))).sort()

/** By offset, the soundings there. */
function nodesOf({ x, y }: Places, z: Float64Array): Map<number, [number, number][]> {
  const rows = new Map<number, [number, number][]>()
  for (let i = 0; i < x.length; i++) {
    const row = rows.get(y[i]! + 0)
    if (row) row.push([x[i]!, z[i]!])
    else rows.set(y[i]! + 0, [[x[i]!, z[i]!]])
  }
  return rows
}
