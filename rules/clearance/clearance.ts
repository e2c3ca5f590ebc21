/**
 * Clearances of a dock as it stands: parts to parts and parts to the ground, exactly.
 *
 * A part is measured as full cylinders and boxes of its true size, the ground as the triangles that it consists of. Contacts that are meant
 * (`contacts.ts`) are left out. m, the dock's frame of reference.
 */
import type { Catalog } from '../catalog/index.ts'
import type { Dock, Placement, Vec3 } from '../dock.ts'
import { factsOf } from '../part-kinds.ts'
import type { Bed } from '../site/index.ts'
import { meantContacts } from './contacts.ts'
import {
  type Box,
  boundsNear,
  type Convex,
  type Cylinder,
  joinBounds,
  middleOf,
  moved,
  type ShapeBounds,
  shapeBounds,
  shrunk,
} from './convex.ts'
import { distance } from './distance.ts'
import { type Ground, makeGround } from './ground.ts'
import { liftOf, overlapOf } from './overlap.ts'
import { isMeasured, type MeasuredKind, type PartShape, shapesOf } from './shapes.ts'

export interface MeasuredPart {
  readonly kind: MeasuredKind
  /** Id of the section, leg, pair or extra that it belongs to. */
  readonly of: string
  readonly section: string
  /** Its number in `dock.placements`. */
  readonly placement: number
}

export interface Clearance {
  readonly a: MeasuredPart
  /** Null: the ground. */
  readonly b: MeasuredPart | null
  /** Least distance; 0 where they touch or overlap. */
  readonly gap: number
  /** The nearest point of each; a point in both where they overlap. */
  readonly from: Vec3
  readonly to: Vec3
  /** They overlap; parts that only touch do not clash. */
  readonly clash: boolean
}

/** A clearance as it is found: how far into each other its parts are is worked out only where somebody asks. */
export interface Found extends Clearance {
  /** The least shift that takes the parts that clash apart, or the least lift out of the ground, m. */
  readonly depth: () => number
}

export interface ClearanceOptions {
  /** Gaps up to this are told, m; those to the ground up to `ground`, where it is given. */
  readonly within?: number
  readonly ground?: number
  /** Only of the parts of one section, leg, pair or extra, by its id. */
  readonly of?: string
}

/** Nearer than this, and overlapping by no more than twice this, is touching, m. */
export const TOUCHING = 1e-4
const WITHIN = 0.05
/** Cells of the broad search, m: about a section's width. */
const CELL = 1.5

/** A measured part where it stands. */
export interface StandingPart extends MeasuredPart {
  readonly placed: Placement
  readonly shapes: readonly Solid[]
  readonly bounds: ShapeBounds
}
interface Solid {
  readonly shape: Cylinder | Box
  readonly sleeve: boolean
  readonly bounds: ShapeBounds
}

/**
 * All pairs within `within` of each other but those that are meant to touch, each once, in the order of the placements; a part that lies
 * under the ground as a whole has gap 0 too.
 */
export function clearances(
  dock: Dock,
  catalog: Catalog,
  bed: Bed,
  options: ClearanceOptions = {},
): Clearance[] {
  return clearancesWithDepth(dock, catalog, bed, options).map(({ depth: _, ...clearance }) => clearance)
}

/** The same, each with how deep its parts are in each other. */
export function clearancesWithDepth(
  dock: Dock,
  catalog: Catalog,
  bed: Bed,
  { within = WITHIN, ground: deep = within, of }: ClearanceOptions = {},
): Found[] {
  const parts = standingParts(dock, catalog)
  const meant = meantContacts(dock)
  const out: Found[] = []
  // A ramp rests on the shore; one that comes to rest nowhere, and is shown level, may be in it.
  const resting = new Set(dock.sections.filter((s) => s.role === 'ramp' && dock.ramp).map((s) => s.id))
  const ground = makeGround(bed)
  const wanted = (part: StandingPart): boolean => of === undefined || part.of === of
  for (const part of parts) {
    if (
      !wanted(part) ||
      factsOf(part.kind).measured !== 'to-all' ||
      (part.kind === 'frame' && resting.has(part.section))
    )
      continue
    const found = overGround(part, ground, deep)
    if (found) out.push(found)
  }
  for (const [a, b] of nearPairs(parts, within)) {
    if (!(wanted(a) || wanted(b)) || meant(a.placed, b.placed)) continue
    const found = between(a, b, within)
    if (found) out.push(found)
  }
  return out
}

/** All that is measured, in the order of the placements. */
export function standingParts(dock: Dock, catalog: Catalog): StandingPart[] {
  const own = new Map<string, readonly PartShape[]>()
  const parts: StandingPart[] = []
  dock.placements.forEach((placed, placement) => {
    const { kind } = placed
    if (!isMeasured(kind)) return
    const key = `${kind}\n${placed.code}`
    const shapes = own.get(key) ?? shapesOf(kind, placed.code, catalog)
    own.set(key, shapes)
    const put = shapes.map(({ shape, sleeve }) => {
      const there = moved(shape, placed.at, placed.turn)
      return { shape: there, sleeve, bounds: shapeBounds(there) }
    })
    const { of, section } = placed
    parts.push({
      kind,
      of,
      section,
      placement,
      placed,
      shapes: put,
      bounds: joinBounds(put.map((s) => s.bounds)),
    })
  })
  return parts
}

/** Pairs whose bounds are near each other, each once, found by a grid in plan. */
function* nearPairs(parts: readonly StandingPart[], within: number): Generator<[StandingPart, StandingPart]> {
  const cells = new Map<string, number[]>()
  for (let n = 0; n < parts.length; n++) {
    const { bounds } = parts[n]!
    const cell = (v: number): number => Math.floor(v / CELL)
    const seen = new Set<number>()
    for (let i = cell(bounds.low[0] - within); i <= cell(bounds.high[0] + within); i++)
      for (let k = cell(bounds.low[1] - within); k <= cell(bounds.high[1] + within); k++) {
        const key = `${i},${k}`
        const list = cells.get(key)
        if (list) {
          for (const m of list) seen.add(m)
          list.push(n)
        } else cells.set(key, [n])
      }
    for (const m of [...seen].sort((p, q) => p - q))
      if (boundsNear(parts[m]!.bounds, bounds, within)) yield [parts[m]!, parts[n]!]
  }
}

function between(a: StandingPart, b: StandingPart, within: number): Found | null {
  // A leg goes through the sleeves of its own section.
  const through = a.section === b.section && (a.kind === 'leg' || b.kind === 'leg')
  const best = nearest(within)
  for (const p of a.shapes) {
    if (through && p.sleeve) continue
    for (const q of b.shapes) {
      if ((through && q.sleeve) || !boundsNear(p.bounds, q.bounds, best.gap)) continue
      best.try(p.shape, q.shape)
    }
  }
  return best.of(a, b, () => {
    let depth = 0
    for (const p of a.shapes)
      for (const q of b.shapes)
        if (!(through && (p.sleeve || q.sleeve)) && boundsNear(p.bounds, q.bounds, 0))
          depth = Math.max(depth, overlapOf(p.shape, q.shape))
    return depth
  })
}

function overGround(part: StandingPart, ground: Ground, within: number): Found | null {
  const best = nearest(within)
  const depth = (): number =>
    part.shapes.reduce((most, { shape, bounds: { low, high } }) => {
      const faces = ground.under(low[0], high[0], low[1], high[1])
      return Math.max(most, faces.length > 0 ? liftOf(shape, faces) : 0)
    }, 0)
  for (const { shape, bounds } of part.shapes) {
    const { low, high } = bounds
    const middle = middleOf(shape)
    if (ground.heightAt(middle[0], middle[1]) > middle[2]) {
      // Its middle is under the ground: so is all of it, or the ground passes through it.
      return { a: told(part), b: null, gap: 0, from: middle, to: middle, clash: true, depth }
    }
    const around = [low[0] - best.gap, high[0] + best.gap, low[1] - best.gap, high[1] + best.gap] as const
    if (low[2] - best.gap - ground.slack > ground.highest(...around)) continue
    for (const face of ground.under(...around))
      if (boundsNear(bounds, shapeBounds(face), best.gap)) best.try(shape, face)
  }
  return best.of(part, null, depth)
}

/** The nearest of several tries, and whether any of them is more than a touch. */
export function nearest(within: number) {
  let at: { from: Vec3; to: Vec3 } | null = null
  const best = {
    gap: within,
    clash: false,
    try(p: Cylinder | Box, q: Convex): void {
      const { gap, from, to } = distance(p, q, best.gap)
      if (gap > best.gap || best.clash) return
      const thin = q.shape === 'triangle' ? q : shrunk(q, TOUCHING)
      best.clash = gap < TOUCHING && distance(shrunk(p, TOUCHING), thin, 0).gap === 0
      best.gap = gap
      at = { from, to }
    },
    found: () => at && { gap: best.gap, ...at, clash: best.clash },
    of: (a: StandingPart, b: StandingPart | null, depth: () => number): Found | null =>
      at && { a: told(a), b: b && told(b), gap: best.gap, ...at, clash: best.clash, depth },
  }
  return best
}

const told = ({ kind, of, section, placement }: StandingPart): MeasuredPart => ({
  kind,
  of,
  section,
  placement,
})
