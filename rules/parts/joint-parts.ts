/** Hook brackets with their bolts, tie plates, the hinge: what holds sections together. */
import type { Placement } from '../dock.ts'
import type { PlacedJoint } from '../layout/index.ts'
import type { Shop } from '../shop.ts'
import { frameTop, inSection, type Pose, put, spread } from './put.ts'
import { headingOf, quarterTurn } from './turn.ts'

/** Spacing of bolts or brackets that sit side by side, m. */
const BESIDE = 0.04

export function putJoint(out: Placement[], joint: PlacedJoint, deck: number, shop: Shop): void {
  if (joint.kind === 'hook') putHooks(out, joint, deck, shop)
  else if (joint.kind === 'tie') putTies(out, joint, deck, shop)
}

function putHooks(out: Placement[], joint: PlacedJoint, deck: number, shop: Shop): void {
  const { id, nx, ny, host, guest, hooks } = joint
  const { rules } = shop
  const { bracket } = shop.catalog.hooks
  const bolt = shop.bolt('hook-bolt')
  const top = deck + frameTop(shop)
  const middle = top - bracket.size[2] / 2
  const out_ = quarterTurn(headingOf(nx, ny))
  const in_ = quarterTurn(headingOf(-nx, -ny))
  for (const hook of hooks)
    for (const aside of spread(rules.bracketsPerHook, rules.bracketsPerHook * bracket.size[1])) {
      const at = { x: hook.x - ny * aside, y: hook.y + nx * aside }
      put(out, 'hook-bracket', bracket.code, id, host.id, { ...at, z: top, turn: out_ })
      for (const d of spread(rules.boltsCarrier, rules.boltsCarrier * BESIDE))
        put(out, 'hook-bolt', bolt.code, id, host.id, { x: at.x - ny * d, y: at.y + nx * d, z: middle, turn: in_ })
      for (const d of spread(rules.boltsHung, rules.boltsHung * BESIDE)) {
        const x = at.x - ny * d + nx * rules.jointGap
        const y = at.y + nx * d + ny * rules.jointGap
        put(out, 'hook-bolt', bolt.code, id, guest.id, { x, y, z: middle, turn: out_ })
      }
    }
}

function putTies(out: Placement[], joint: PlacedJoint, deck: number, shop: Shop): void {
  const [a, b] = joint.hooks
  if (!a || !b) return
  const { nx, ny } = joint
  const n = shop.rules.tiesPerTie
  const half = shop.rules.jointGap / 2
  for (let i = 0; i < n; i++) {
    const t = n === 1 ? 0.5 : i / (n - 1)
    const x = a.x + t * (b.x - a.x) + nx * half
    const y = a.y + t * (b.y - a.y) + ny * half
    const turn = quarterTurn(headingOf(nx, ny))
    put(out, 'accessory', shop.catalog.tie.code, joint.id, joint.host.id, { x, y, z: deck + frameTop(shop), turn })
  }
}

/** Bar and bar bolts on the standing section, pins and their bolts on the ramp. */
export function putHinge(out: Placement[], joint: PlacedJoint, standing: Pose, ramp: Pose, shop: Shop): void {
  const { rules, catalog } = shop
  const { bar, pin, drop } = catalog.hinge
  const own = standing.placed
  // The middle of what the two edges share, in each section's own frame.
  const middle = standing.placed.frame.width / 2 - (joint.from + joint.to) / 2 + hingeShift(joint)
  const onRamp = joint.host.frame.width / 2 - (joint.from + joint.to) / 2
  put(out, 'hinge-bar', bar.code, joint.id, own.id, inSection(standing, 0, middle, -drop))
  for (const y of spread(rules.barBolts, bar.length))
    put(out, 'bar-bolt', shop.bolt('bar-bolt').code, joint.id, own.id, inSection(standing, 0, middle + y, -drop))
  for (const y of spread(rules.hingePins, bar.length)) {
    const rampId = joint.host.id
    const at = (dy: number) => inSection(ramp, joint.host.frame.length, onRamp + y + dy, -drop)
    put(out, 'hinge-pin', pin.code, joint.id, rampId, at(0))
    for (const dy of spread(rules.pinBolts, rules.pinBolts * BESIDE))
      put(out, 'pin-bolt', shop.bolt('pin-bolt').code, joint.id, rampId, at(dy))
  }
}

/** From the ramp's left corner to the standing section's, along the hinge. */
const hingeShift = (joint: PlacedJoint): number => joint.guest.plan.along
