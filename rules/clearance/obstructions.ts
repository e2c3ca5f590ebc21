/** What lies on the bed in the way of the dock, or of the boat at it, as findings. Words: `obstacles` in the language files. */
import { COMMON } from '../basis.ts'
import { type Found, key, meters, text } from '../checks/check.ts'
import { toFindings } from '../checks/index.ts'
import type { Obstacle } from '../design/index.ts'
import type { Dock, Figure, Finding } from '../dock.ts'
import type { Kit } from '../kit.ts'
import { type Berth, lying } from '../layout/berth.ts'
import { obstacleSolid } from '../site/obstacles.ts'
import { FOUND_LATER } from '../words/structure-words.ts'
import { type MeasuredPart, nearest } from './clearance.ts'
import { hullSolid } from './hull.ts'
import { lowLevel } from './keel.ts'
import { leaveOutExtra } from './leave-out.ts'
import { type ObstacleClearance, obstacleClearances } from './obstacles.ts'
import { overlapOf } from './overlap.ts'

/** Legs and what else stands beside an obstacle: where it lies is known no better than that, m. Judgment. */
const BESIDE = 0.1
/** A boat moves up and down and on its lines, m. Judgment. */
export const BOAT = 0.3

export const OBSTRUCTIONS = {
  leg: { code: 'leg-on-obstacle', severity: 'stop', basis: 'Geometry' },
  part: { code: 'part-in-obstacle', severity: 'stop', basis: 'Geometry' },
  near: { code: 'part-near-obstacle', severity: 'warn', basis: COMMON },
  boat: { code: 'boat-on-obstacle', severity: 'warn', basis: 'Geometry' },
  boatNear: { code: 'boat-near-obstacle', severity: 'warn', basis: COMMON },
} as const

const named = ({ kind, id }: Obstacle): Record<'obstacle' | 'id', Figure> => ({
  obstacle: key(kind),
  id: text(id),
})

/** So much room is wanted around a part: the shop's own measure over the bed for frames and braces. */
const roomFor = ({ kind }: MeasuredPart, { shop: { rules } }: Kit): number =>
  kind === 'frame' ? rules.frameToBed : kind === 'brace' ? rules.braceToBed : BESIDE

/** One finding for each obstacle and section, leg, pair or extra: of the parts that clash the one that is deepest in it, else the nearest. */
export function obstructionsOf(dock: Dock, kit: Kit): readonly Finding[] {
  const { site } = kit.design
  if (!site.obstacles?.length) return []
  const { rules } = kit.shop
  const most = Math.max(BESIDE, rules.frameToBed, rules.braceToBed)
  const groups = new Map<string, ObstacleClearance[]>()
  for (const found of obstacleClearances(dock, kit.shop.catalog, site, kit.bed, most)) {
    if (!found.clash && found.gap >= roomFor(found.part, kit) - 1e-6) continue
    const name = `${found.obstacle.id}\n${found.part.of}`
    groups.set(name, [...(groups.get(name) ?? []), found])
  }
  const findings = [...groups.values()].map((group) => ofGroup(group, dock, kit))
  return [...findings, ...ofBoats(kit)]
}

function ofGroup(group: readonly ObstacleClearance[], dock: Dock, kit: Kit): Finding {
  const clashing = group.filter(({ clash }) => clash)
  const parts = partsOf(group[0]!.part.of, dock)
  const tell = (what: Parameters<typeof toFindings>[0], found: Omit<Found, 'parts'>): Finding =>
    toFindings(what, [{ parts, ...found }], FOUND_LATER)[0]!
  if (clashing.length === 0) {
    const { part, obstacle, gap } = group.reduce((a, b) => (b.gap < a.gap ? b : a))
    return tell(OBSTRUCTIONS.near, {
      values: {
        ...named(obstacle),
        part: { value: part.kind, unit: 'kind' },
        of: text(part.of),
        clear: meters(gap),
        least: meters(roomFor(part, kit)),
        x: meters(obstacle.x),
        y: meters(obstacle.y),
      },
    })
  }
  const deep = clashing.map((found) => ({ ...found, by: found.depth() }))
  const { part, obstacle, by, from } = deep.reduce((a, b) => (b.by > a.by ? b : a))
  const isLeg = dock.legs.some(({ id }) => id === part.of)
  const place = { x: meters(from[0]), y: meters(from[1]), z: meters(from[2]) }
  return isLeg
    ? tell(OBSTRUCTIONS.leg, {
        values: {
          ...named(obstacle),
          part: { value: part.kind, unit: 'kind' },
          leg: text(part.of),
          depth: meters(by),
          ...place,
        },
      })
    : tell(OBSTRUCTIONS.part, {
        values: {
          ...named(obstacle),
          part: { value: part.kind, unit: 'kind' },
          of: text(part.of),
          depth: meters(by),
          ...place,
        },
        remedy: leaveOutExtra([part], kit),
      })
}

/** A pair is told with its legs, as its other findings are. */
const partsOf = (of: string, { pairs }: Dock): readonly string[] => [
  of,
  ...(pairs.find(({ id }) => id === of)?.legs ?? []),
]

/** Each boat at the low level, where it lies. */
const ofBoats = (kit: Kit): Finding[] => lying(kit).flatMap((berth) => ofBoat(berth, kit))

function ofBoat(berth: Berth, kit: Kit): Finding[] {
  const { site } = kit.design
  const hull = hullSolid(berth, lowLevel(site.levels))
  const at = berth.section
  return (site.obstacles ?? []).flatMap((obstacle) => {
    const solid = obstacleSolid(obstacle, kit.bed)
    const best = nearest(BOAT)
    best.try(hull, solid)
    const found = best.found()
    if (!found || (!found.clash && found.gap >= BOAT - 1e-6)) return []
    const values = {
      ...named(obstacle),
      section: text(at.id),
      x: meters(obstacle.x),
      y: meters(obstacle.y),
      ...(found.clash
        ? { depth: meters(overlapOf(hull, solid)) }
        : { clear: meters(found.gap), least: meters(BOAT) }),
    }
    const what = found.clash ? OBSTRUCTIONS.boat : OBSTRUCTIONS.boatNear
    return toFindings(what, [{ parts: [at.id], values }], FOUND_LATER)
  })
}
