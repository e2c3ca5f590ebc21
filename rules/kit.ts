/**
 * The kit: placing, fitting and counting, before anything is judged. Synchronous and cheap enough for every pointer move.
 * Checks and reasons read it; `derive` publishes it as the Dock.
 */
import type { Catalog } from './catalog/index.ts'
import type { Design } from './design/index.ts'
import { findStart, type Start } from './layout/start.ts'
import { join, type Joints, type Layout, place, planOf } from './layout/index.ts'
import { putBrace } from './parts/brace-parts.ts'
import { type BracedPair, braceAll } from './parts/braces.ts'
import { type Count, countParts } from './parts/count.ts'
import { type Extras, placeExtras, putExtra } from './parts/extras.ts'
import { putFrame } from './parts/frames.ts'
import { putHinge, putHooks, putTies } from './parts/joint-parts.ts'
import { putLeg } from './parts/leg-parts.ts'
import { type PlacedLeg, placeLegs } from './parts/legs.ts'
import { pairLegs } from './parts/pairs.ts'
import { noPuts, type Pose, type Puts } from './parts/put.ts'
import { type RampContact, groundAlong, rampContact, rampPoint, rampShape } from './parts/ramp.ts'
import { type Shop, shopOf } from './shop.ts'
import { type Bed, makeBed } from './site/index.ts'

export interface RampRest {
  /** Null where it meets no ground: then it is shown level. */
  readonly contact: RampContact | null
  readonly pose: Pose
  readonly hingeZ: number
  /** Ground to the deck surface at the shoreward edge, m. */
  readonly step: number
}

export interface Kit {
  readonly design: Design
  readonly shop: Shop
  readonly bed: Bed
  readonly start: Start
  readonly layout: Layout
  readonly joints: Joints
  readonly poses: ReadonlyMap<string, Pose>
  readonly ramp: RampRest | null
  readonly legs: readonly PlacedLeg[]
  readonly pairs: readonly BracedPair[]
  readonly extras: Extras
  readonly puts: Puts
  readonly count: Count
}

/** Pieces that a section comes to, generously. */
const PIECES = 48

/** Everything that follows from a valid Design by geometry and counting. Pure; never throws on a valid Design and Catalog. */
export function deriveKit(design: Design, catalog: Catalog): Kit {
  const shop = shopOf(catalog)
  const bed = makeBed(design.site)
  const deck = design.dock.deckHeight
  const plan = planOf(design, shop)

  // Where it begins depends on the ramp's and the standing section's frames alone, so a first placing at 0 tells them.
  const draft = place(plan, shop, 0)
  const start: Start = draft.standing
    ? findStart(design, shop, bed, draft.ramp?.frame ?? null, draft.ramp?.y ?? 0, draft.standing.frame)
    : { x: design.dock.start ?? 0, by: 'given', found: true }
  const layout = place(plan, shop, start.x)
  const joints = join(layout, shop)

  const first = design.dock.bracing?.first ?? 'left'
  const legs = placeLegs(layout, joints, design, shop, bed)
  const pairs = braceAll(pairLegs(legs, shop, first), design, shop, bed)
  const extras = placeExtras(layout, joints, design, shop, bed)
  const ramp = layout.ramp ? restRamp(layout, shop, bed, start.x, deck) : null

  const poses = new Map<string, Pose>()
  for (const p of layout.placed)
    poses.set(p.id, p.role === 'ramp' ? ramp!.pose : { placed: p, x: p.x, y: p.y, z: deck, tilt: 0 })

  const puts = noPuts(PIECES * layout.placed.length)
  const hungOn = new Map<number, string>()
  for (const p of layout.placed) putFrame(puts, poses.get(p.id)!, joints.legCorners.get(p.id) ?? [], shop)
  for (const leg of legs) putLeg(puts, leg, deck, shop)
  for (const { pair, fit } of pairs) if (fit) putBrace(puts, pair.id, fit, shop)
  for (const joint of joints.all)
    switch (joint.kind) {
      case 'hinge':
        putHinge(puts, joint, poses.get(joint.guest.id)!, ramp!.pose, shop)
        break
      case 'hook':
        hungOn.set(joint.guest.index, joint.id)
        putHooks(puts, joint, deck, shop)
        break
      case 'tie':
        putTies(puts, joint, deck, shop)
    }
  for (const item of extras.placed) putExtra(puts, item, deck, shop)
  const count = countParts(puts, layout, hungOn, shop)
  return { design, shop, bed, start, layout, joints, poses, ramp, legs, pairs, extras, puts, count }
}

function restRamp(layout: Layout, shop: Shop, bed: Bed, hingeX: number, deck: number): RampRest {
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
  return { contact, hingeZ, pose: { placed, x, y, z, tilt }, step: z - bed.bedAt(x, y) }
}
