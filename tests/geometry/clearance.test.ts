/**
 * Clearances against manifold-3d: the drawn solids put where the placements say, the ground as blocks, `minGap` between all that is
 * near. Seeded random docks of both shops, clashing ones among them.
 */
import fc from 'fast-check'
import type { Manifold } from 'manifold-3d'
import { beforeAll, describe, expect, it } from 'vitest'
import { type Clearance, clearancesWithDepth, TOUCHING } from '../../rules/clearance/clearance.ts'
import { type Bed, type Dock, makeBed, type Placement, shopOf } from '../../rules/index.ts'
import { anyCase, type Case } from '../support/arbitraries.ts'
import { deriveAtOnce } from '../support/at-once.ts'
import { runs } from '../support/runs.ts'
import { groundManifold, matrixOf, partManifold } from './support/manifold.ts'

const DOCKS = runs(75)
const SEED = 20_261
/** Gaps up to this are compared, m: a number that no dock of round measures has for a gap. */
const WITHIN = 0.1237

const KINDS = ['frame', 'leg', 'foot-pad', 'brace', 'brace-clamp', 'deck-panel', 'anchor-post']
const OVER_GROUND = ['frame', 'brace', 'brace-clamp']

interface Measured {
  readonly gap: number
  readonly clash: boolean
}

/** Overlap of more than a touch: of some piece of what they share, twice volume over surface is its thickness where it is thin. */
function measure(a: Manifold, b: Manifold): Measured {
  const gap = a.minGap(b, WITHIN)
  if (gap > 0) return { gap, clash: false }
  const common = a.intersect(b)
  const thick = Math.max(0, ...common.decompose().map((m) => (2 * m.volume()) / m.surfaceArea()))
  common.delete()
  return { gap, clash: thick > 2 * TOUCHING }
}

/** The trade's intended contacts, said once more. */
function meant(a: Placement, b: Placement, dock: Dock): boolean {
  const kinds = [a.kind, b.kind].sort().join('+')
  const isJoined = dock.joints.some(
    ({ between }) => between.includes(a.section) && between.includes(b.section) && a.section !== b.section,
  )
  const pairOf = (part: Placement, leg: Placement): boolean =>
    dock.pairs.some((pair) => pair.id === part.of && pair.legs.includes(leg.of))
  switch (kinds) {
    case 'foot-pad+leg':
    case 'brace+brace-clamp':
      return a.of === b.of
    case 'brace-clamp+leg':
      return a.kind === 'leg' ? pairOf(b, a) : pairOf(a, b)
    case 'deck-panel+frame':
    case 'deck-panel+deck-panel':
      return a.section === b.section || isJoined
    case 'frame+frame':
      return isJoined
    default:
      return false
  }
}

type Box = ReturnType<Manifold['boundingBox']>
const near = (a: Box, b: Box): boolean =>
  [0, 1, 2].every((k) => a.min[k]! <= b.max[k]! + WITHIN && b.min[k]! <= a.max[k]! + WITHIN)

/** Whether the blocks of the ground are all of it round a part: in area mode only within the soundings, and away from a wall. */
function groundKnown(bed: Bed, { design }: Case, { min, max }: Box): boolean {
  if (bed.mode === 'line') return true
  const xs = [min[0] - 2 * WITHIN, max[0] + 2 * WITHIN]
  const ys = [min[1] - 2 * WITHIN, max[1] + 2 * WITHIN]
  if (design.site.shore?.kind === 'wall' && xs[0]! <= 0) return false
  return xs.every((x) => ys.every((y) => bed.measured(x, y)))
}

/** All pairs that are near by their bounding boxes, measured by the library; keyed by placements, -1 for the ground. */
function byLibrary(item: Case, dock: Dock, bed: Bed): { gaps: Map<string, Measured>; skipped: Set<number> } {
  const { catalog } = item
  const gaps = new Map<string, Measured>()
  const skipped = new Set<number>()
  const resting = dock.ramp ? dock.sections.filter((s) => s.role === 'ramp').map((s) => s.id) : []
  const parts = dock.placements
    .map((p, index) => ({ p, index }))
    .filter(({ p }) => KINDS.includes(p.kind))
    .map(({ p, index }) => {
      const solid = partManifold(p.kind, p.code, catalog).transform(matrixOf(p))
      return { p, index, solid, box: solid.boundingBox() }
    })
  const over = parts.filter(
    ({ p }) => OVER_GROUND.includes(p.kind) && !(p.kind === 'frame' && resting.includes(p.section)),
  )
  for (const { solid, index, box } of over) {
    if (!groundKnown(bed, item, box)) {
      skipped.add(index)
      continue
    }
    // A part near or under the highest ground of its surroundings.
    const [x0, x1, y0, y1] = [box.min[0] - 0.2, box.max[0] + 0.2, box.min[1] - 0.2, box.max[1] + 0.2]
    const ground = groundManifold(bed, x0, x1, y0, y1)
    gaps.set(`${index} -1`, measure(solid, ground))
    ground.delete()
  }
  for (let i = 0; i < parts.length; i++)
    for (let k = i + 1; k < parts.length; k++) {
      const [a, b] = [parts[i]!, parts[k]!]
      if (!near(a.box, b.box) || meant(a.p, b.p, dock)) continue
      const through = a.p.section === b.p.section && [a.p.kind, b.p.kind].includes('leg')
      const [p, q] = [a, b].map((part) => {
        if (!through || part.p.kind !== 'frame') return part.solid
        return partManifold('frame', part.p.code, catalog, false).transform(matrixOf(part.p))
      })
      gaps.set(`${a.index} ${b.index}`, measure(p!, q!))
    }
  for (const { solid } of parts) solid.delete()
  return { gaps, skipped }
}

/** Every third one is let down where it stands until its lowest frame is 5 cm in the ground to 10 cm over it. */
function lowered(item: Case, i: number): Case {
  const { design, catalog } = item
  const { sections, start } = deriveAtOnce(design, catalog)
  const standing = sections.filter((s) => s.role !== 'ramp')
  if (i % 3 !== 0 || standing.length === 0) return item
  const bed = makeBed(design.site)
  const under = standing.map(({ x, y, heading, length, width, frame }) => {
    const [c, s] = [Math.cos((heading * Math.PI) / 180), Math.sin((heading * Math.PI) / 180)]
    const xs = [x - (s * width) / 2, x + (s * width) / 2].flatMap((v) => [v, v + c * length])
    const ys = [y - (c * width) / 2, y + (c * width) / 2].flatMap((v) => [v, v + s * length])
    const { lowest } = shopOf(catalog).shape(catalog.frames.find((f) => f.code === frame)!)
    return lowest + bed.highest(Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys))
  })
  const deckHeight = Math.max(...under) - 0.05 + (i % 45) / 300
  return { catalog, design: { ...design, dock: { ...design.dock, deckHeight, start } } }
}

const keyOf = ({ a, b }: Clearance): string => `${a.placement} ${b?.placement ?? -1}`

describe(`clearances of ${DOCKS} random docks (seed ${SEED})`, () => {
  const cases = fc.sample(anyCase, { seed: SEED, numRuns: DOCKS }).map(lowered)
  const differences: string[] = []
  const clashing = new Set<Case>()
  const seen = { pairs: 0, clashes: 0, ground: 0, line: 0, area: 0, worst: 0, skipped: 0 }

  beforeAll(() => {
    for (const item of cases) {
      const dock = deriveAtOnce(item.design, item.catalog)
      const bed = makeBed(item.design.site)
      const ours = new Map(
        clearancesWithDepth(dock, item.catalog, bed, { within: WITHIN }).map((c) => [keyOf(c), c]),
      )
      const { gaps, skipped } = byLibrary(item, dock, bed)
      seen.skipped += skipped.size
      for (const key of ours.keys()) {
        const [a, b] = key.split(' ').map(Number)
        if (!gaps.has(key) && !(b === -1 && skipped.has(a!)))
          differences.push(`${key}: not near by the library`)
      }
      for (const [key, theirs] of gaps) {
        const own = ours.get(key)
        const gap = own?.gap ?? WITHIN
        seen.pairs++
        if (key.endsWith('-1')) seen.ground++
        if (key.endsWith('-1') && theirs.gap > 0 && theirs.gap < WITHIN) seen[bed.mode]++
        if (theirs.clash) {
          seen.clashes++
          clashing.add(item)
        }
        seen.worst = Math.max(seen.worst, Math.abs(gap - theirs.gap))
        // Parts less than a millimeter into each other touch by one measure and clash by the other.
        const barely = own?.clash && own.depth() < 1e-3
        if (Math.abs(gap - theirs.gap) > 1e-3 || ((own?.clash ?? false) !== theirs.clash && !barely)) {
          const [i, k] = key.split(' ').map(Number)
          const name = (n: number): string =>
            n < 0 ? 'ground' : `${dock.placements[n]!.kind} ${dock.placements[n]!.of}`
          differences.push(
            `${item.catalog.id} ${name(i!)} / ${name(k!)}: ${gap} ${own?.clash}, library ${theirs.gap} ${theirs.clash}`,
          )
        }
      }
    }
  }, 600_000)

  it('agree with the library in gap within 1 mm and in verdict, pair by pair', () => {
    expect(differences).toEqual([])
    expect(seen.pairs).toBeGreaterThan(runs(1250))
    expect(seen.line).toBeGreaterThan(runs(12))
    expect(seen.area).toBeGreaterThan(runs(1))
  })

  it('were tried on docks of which a fifth and more clash', () => {
    expect(clashing.size).toBeGreaterThanOrEqual(DOCKS / 5)
  })
})
