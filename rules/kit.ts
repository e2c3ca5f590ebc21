/**
 * The kit: placing, fitting and counting, before anything is judged. Synchronous and cheap enough for every pointer move.
 * Checks and reasons read it; `derive` publishes it as the Dock.
 */
import type { Catalog } from './catalog/index.ts'
import { type Shop, shopOf } from './catalog-index.ts'
import type { Design } from './design/index.ts'
import type { Corner, Existing, Placement } from './dock.ts'
import { existingOf } from './existing/existing.ts'
import {
  hasHooks,
  type Joints,
  join,
  type Layout,
  type PlacedJoint,
  type PlacedSection,
  place,
  planOf,
  shoreEndOf,
} from './layout/index.ts'
import { groundAlong, type RampContact, rampContact, rampPoint, rampShape } from './layout/ramp-rest.ts'
import { bearing, findStart, type Start } from './layout/start.ts'
import { type Once, onceOf } from './memo.ts'
import { round6 } from './numbers.ts'
import { braceAlong } from './parts/along.ts'
import { emitBrace } from './parts/brace-parts.ts'
import { type BracedPair, braceAll } from './parts/braces.ts'
import type { EmitPart, Pose } from './parts/emit-part.ts'
import { type Extras, emitExtra, type PlacedExtra, placeExtras } from './parts/extras.ts'
import type { EachFamily } from './parts/family.ts'
import { emitFrame } from './parts/frames.ts'
import { emitHinge, emitHooks, emitTies } from './parts/joint-parts.ts'
import { emitLeg } from './parts/leg-parts.ts'
import { type PlacedLeg, placeLegs } from './parts/legs.ts'
import { pairLegs } from './parts/pairs.ts'
import { type Count, countParts } from './parts/parts-list.ts'
import { type Bed, makeBed } from './site/index.ts'

export interface RampRest {
  /** Null where it meets no ground: then it is shown level. */
  readonly contact: RampContact | null
  readonly pose: Pose
  readonly hingeZ: number
  /** How much of it lies on a wall's top, m; Infinity on a bank, 0 where it rests on nothing. */
  readonly bearing: number
  /** Ground to the deck surface at the shoreward edge, m. */
  readonly step: number
  /** How far the ground lies under its left and right rail where it rests, m: on a bank that falls to one side one corner hangs. */
  readonly gaps: readonly [left: number, right: number]
}

/** A dock laid out, fitted and counted, before anything is judged. What `publishKit` and `assess` go on from. */
export interface Kit {
  readonly design: Design
  readonly shop: Shop
  readonly bed: Bed
  readonly start: Start
  readonly layout: Layout
  readonly joints: Joints
  readonly ramp: RampRest | null
  readonly legs: readonly PlacedLeg[]
  readonly pairs: readonly BracedPair[]
  readonly extras: Extras
  readonly count: Count
  /** What of the parts is owned already; null where the Design tells of none. */
  readonly existing: Existing | null
  /** What several checks ask of the same kit. */
  readonly once: Once<Kit>
}

/** Before its parts are counted. */
type PlacedKit = Omit<Kit, 'count' | 'existing' | 'once'>

/**
 * Everything that follows from a valid Design by geometry and counting. Pure; never throws on a valid Design and Catalog.
 *
 * @param bed of the same site, where it is at hand: off a line it is dear to make.
 */
export function deriveKit(design: Design, catalog: Catalog, bed: Bed = makeBed(design.site)): Kit {
  const shop = shopOf(catalog)
  const plan = planOf(design, shop)

  const shoreEnd = shoreEndOf(plan, shop)
  const start: Start = shoreEnd
    ? findStart(design, shop, bed, shoreEnd)
    : { x: design.dock.start ?? 0, by: 'given', found: true }
  const layout = place(plan, shop, start.x)
  const joints = join(layout, shop)

  const first = design.dock.bracing?.first ?? 'left'
  const legs = placeLegs(layout, joints, { design, shop, bed })
  const across = braceAll(pairLegs(legs, shop, first), { design, shop, bed })
  const pairs = [...across, ...braceAlong(layout.placed, legs, across, { design, shop, bed })]
  const extras = placeExtras(layout, joints, legs, { design, shop, bed })
  const ramp = layout.ramp ? restRamp(layout, design, shop, bed, start.x) : null

  const placed = { design, shop, bed, start, layout, joints, ramp, legs, pairs, extras }
  const count = countParts(familiesOf(placed), layout, shop)
  const kit: Kit = {
    ...placed,
    count,
    existing: existingOf({ ...placed, count }),
    once: onceOf(() => kit),
  }
  return kit
}

/** Every part family of a dock, in a steady order. */
const familiesOf =
  ({ design, shop, layout, joints, ramp, legs, pairs, extras }: PlacedKit): EachFamily =>
  (take) => {
    const deck = design.dock.deckHeight
    const pose = (p: PlacedSection): Pose => poseOf(p, { design, ramp })
    const legged = (p: PlacedSection): readonly Corner[] => joints.legCorners[p.index] ?? NO_CORNERS
    take<PlacedSection>({
      all: layout.placed,
      alike: (a, b) => a.frame === b.frame && legged(a) === legged(b),
      carriers: { first: (p) => p, second: (p) => p },
      emit: (emit, p) => emitFrame(emit, pose(p), legged(p), shop, design.dock.finish),
    })
    take<PlacedLeg>({
      all: legs,
      alike: (a, b) => a.stock === b.stock && a.pad === b.pad,
      carriers: { first: (leg) => leg.section, second: (leg) => leg.section },
      emit: (emit, leg) => emitLeg(emit, leg, deck, shop),
    })
    take<BracedPair>({
      all: pairs.filter(({ fit }) => fit),
      alike: (a, b) => a.fit!.brace === b.fit!.brace && ontoItself(a) === ontoItself(b),
      carriers: { first: ({ fit }) => fit!.low.section, second: ({ fit }) => fit!.high.section },
      emit: (emit, { pair, fit }) => emitBrace(emit, pair, fit!, shop),
    })
    take<PlacedJoint>({
      all: joints.all,
      alike: (a, b) => a.kind === b.kind && hasHooks(a) === hasHooks(b),
      carriers: { first: (joint) => joint.host, second: (joint) => joint.guest },
      emit: (emit, joint) => {
        if (joint.kind === 'hinge') emitHinge(emit, joint, pose(joint.guest), ramp!.pose, shop)
        else if (joint.kind === 'hook') emitHooks(emit, joint, deck, shop)
        else emitTies(emit, joint, deck, shop)
      },
    })
    take<PlacedExtra>({
      all: extras.placed,
      alike: (a, b) => a.extra === b.extra && a.post?.stock === b.post?.stock,
      carriers: { first: (extra) => extra.section, second: (extra) => extra.section },
      emit: (emit, extra) => emitExtra(emit, extra, deck, shop),
    })
  }

const NO_CORNERS: readonly Corner[] = []

/** Both legs on one section. */
const ontoItself = ({ pair: { legs } }: BracedPair): boolean => legs[0].section === legs[1].section

/** Every piece of a dock, each once, in a steady order. */
function emitAll(kit: PlacedKit, emit: EmitPart): void {
  familiesOf(kit)((family) => {
    for (const item of family.all) family.emit(emit, item)
  })
}

/** The same as the Dock lists them. */
export function placementsOf(kit: Kit): Placement[] {
  const placements: Placement[] = []
  emitAll(kit, ({ kind, code }, of, section, x, y, z, turn) => {
    placements.push({ kind, code, of, section: section.id, at: [round6(x), round6(y), round6(z)], turn })
  })
  return placements
}

/** A section in space: level at the deck's height, or the ramp as it rests. */
export const poseOf = (p: PlacedSection, { design, ramp }: Pick<Kit, 'design' | 'ramp'>): Pose =>
  p.role === 'ramp' && ramp ? ramp.pose : { placed: p, x: p.x, y: p.y, z: design.dock.deckHeight, tilt: 0 }

function restRamp(layout: Layout, design: Design, shop: Shop, bed: Bed, hingeX: number): RampRest {
  const deck = design.dock.deckHeight
  const placed = layout.ramp!
  const { frame, y } = placed
  const { depth } = shop.shape(frame)
  const shape = rampShape(frame, depth, shop.catalog.hinge.drop)
  const hingeZ = deck - shape.drop
  const radius = Math.hypot(shape.length, shape.under)
  const contact = rampContact(
    shape,
    hingeX,
    hingeZ,
    groundAlong(bed, hingeX - radius - 0.01, hingeX, y, frame.width),
  )
  const tilt = contact?.tilt ?? 0
  const [x, z] = rampPoint(hingeX, hingeZ, tilt, shape.length, shape.drop)
  // From the ground below the deck's edge; at a wall from its top, though that edge may lie a thumb's breadth before it.
  const from = contact && design.site.shore?.kind === 'wall' ? contact.z : bed.bedAt(x, y)
  const onWall = contact ? bearing(design, shape, hingeX, hingeZ, contact) : 0
  const gaps =
    contact && design.site.shore?.kind !== 'wall' ? cornerGaps(contact, bed, y, frame.width) : LEVEL
  return { contact, hingeZ, bearing: onWall, pose: { placed, x, y, z, tilt }, step: z - from, gaps }
}

const LEVEL = [0, 0] as const
/** A gap under this is none, m. */
const NO_GAP = 1e-4

/** From the nearer of both corners: a crown between them counts as ground under that one. */
function cornerGaps({ x }: RampContact, bed: Bed, y: number, width: number): readonly [number, number] {
  const left = bed.bedAt(x, y + width / 2)
  const right = bed.bedAt(x, y - width / 2)
  const high = Math.max(left, right)
  const gap = (ground: number): number => (high - ground < NO_GAP ? 0 : high - ground)
  return [gap(left), gap(right)]
}
