/** A fitted brace with its two clamps and its bolts. */
import type { Placement } from '../dock.ts'
import type { Shop } from '../shop.ts'
import type { BraceFit } from './braces.ts'
import { put } from './put.ts'
import { yawPitch } from './turn.ts'

export function putBrace(out: Placement[], pairId: string, fit: BraceFit, shop: Shop): void {
  const { low, high, brace, lowZ, highZ } = fit
  const { clamp } = shop.catalog
  const yaw = Math.atan2(high.y - low.y, high.x - low.x)
  const [ux, uy] = [Math.cos(yaw), Math.sin(yaw)]
  const pitch = Math.asin(fit.rise / brace.holes)
  const holes = [
    { leg: low, x: low.x + ux * clamp.reach, y: low.y + uy * clamp.reach, z: lowZ, toward: yaw },
    { leg: high, x: high.x - ux * clamp.reach, y: high.y - uy * clamp.reach, z: highZ, toward: yaw + Math.PI },
  ]
  const lowHole = holes[0]!
  put(out, 'brace', brace.code, pairId, low.section.id, { ...lowHole, turn: yawPitch(yaw, pitch) })
  for (const { leg, z, toward } of holes)
    put(out, 'brace-clamp', clamp.code, pairId, leg.section.id, { x: leg.x, y: leg.y, z, turn: yawPitch(toward, 0) })
  const bolt = shop.bolt('brace-bolt')
  for (let i = 0; i < shop.rules.braceBolts; i++) {
    const hole = holes[i % 2]!
    put(out, 'brace-bolt', bolt.code, pairId, hole.leg.section.id, { ...hole, turn: yawPitch(yaw + Math.PI / 2, 0) })
  }
}
