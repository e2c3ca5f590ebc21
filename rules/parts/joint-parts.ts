/** Hook brackets with their bolts, tie plates, the hinge: what holds sections together. */

import type { Shop } from '../catalog-index.ts'
import { edgeOf, hooksOf, type PlacedJoint } from '../layout/index.ts'
import { type EmitPart, emitIn, frameTop, type Pose, spread } from './emit-part.ts'
import { headingOf, headingTurn } from './turn.ts'

/** Spacing of bolts that sit side by side, m. */
const BESIDE = 0.04

/** Brackets and their bolts: fixed to the carrying edge, locked to the hung one. */
export function emitHooks(emit: EmitPart, joint: PlacedJoint, deck: number, shop: Shop): void {
  const { id, host, guest } = joint
  const { nx, ny } = edgeOf(host, joint.edge)
  const { rules, types } = shop
  const { bracket } = shop.catalog.hooks
  const top = deck + frameTop(shop)
  const middle = top - bracket.size[2] / 2
  const outward = headingTurn(headingOf(nx, ny))
  const inward = headingTurn(headingOf(-nx, -ny))
  for (const hook of hooksOf(joint, shop))
    for (let b = 0; b < rules.bracketsPerHook; b++) {
      const aside = spread(b, rules.bracketsPerHook, rules.bracketsPerHook * bracket.size[1])
      const x = hook.x - ny * aside
      const y = hook.y + nx * aside
      emit(types.bracket, id, host, x, y, top, outward)
      for (let i = 0; i < rules.boltsCarrier; i++) {
        const d = spread(i, rules.boltsCarrier, rules.boltsCarrier * BESIDE)
        emit(types['hook-bolt'], id, host, x - ny * d, y + nx * d, middle, inward)
      }
      for (let i = 0; i < rules.boltsHung; i++) {
        const d = spread(i, rules.boltsHung, rules.boltsHung * BESIDE)
        const gap = rules.jointGap
        emit(types['hook-bolt'], id, guest, x - ny * d + nx * gap, y + nx * d + ny * gap, middle, outward)
      }
    }
}

export function emitTies(emit: EmitPart, joint: PlacedJoint, deck: number, shop: Shop): void {
  const [a, b] = hooksOf(joint, shop)
  if (!a || !b) return
  const { nx, ny } = edgeOf(joint.host, joint.edge)
  const n = shop.rules.tiesPerTie
  const half = shop.rules.jointGap / 2
  const turn = headingTurn(headingOf(nx, ny))
  for (let i = 0; i < n; i++) {
    const t = n === 1 ? 0.5 : i / (n - 1)
    const x = a.x + t * (b.x - a.x) + nx * half
    const y = a.y + t * (b.y - a.y) + ny * half
    emit(shop.types.tie, joint.id, joint.host, x, y, deck + frameTop(shop), turn)
  }
}

/** Bar and bar bolts on the standing section, pins and their bolts on the ramp. */
export function emitHinge(emit: EmitPart, joint: PlacedJoint, standing: Pose, ramp: Pose, shop: Shop): void {
  const { rules, types } = shop
  const { bar, drop } = shop.catalog.hinge
  // The middle of what the two edges share, in each section's own frame.
  const onRamp = joint.host.frame.width / 2 - (joint.from + joint.to) / 2
  const onBar = joint.guest.frame.width / 2 - (joint.from + joint.to) / 2 + joint.guest.plan.along
  const { length } = joint.host.frame
  emitIn(emit, types.hingeBar, joint.id, standing, 0, onBar, -drop)
  for (let i = 0; i < rules.barBolts; i++)
    emitIn(
      emit,
      types['bar-bolt'],
      joint.id,
      standing,
      0,
      onBar + spread(i, rules.barBolts, bar.length),
      -drop,
    )
  for (let i = 0; i < rules.hingePins; i++) {
    const y = onRamp + spread(i, rules.hingePins, bar.length)
    emitIn(emit, types.hingePin, joint.id, ramp, length, y, -drop)
    for (let k = 0; k < rules.pinBolts; k++)
      emitIn(
        emit,
        types['pin-bolt'],
        joint.id,
        ramp,
        length,
        y + spread(k, rules.pinBolts, rules.pinBolts * BESIDE),
        -drop,
      )
  }
}
