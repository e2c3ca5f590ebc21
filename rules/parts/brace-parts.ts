/** A fitted brace with its two clamps and its bolts. */
import type { Shop } from '../catalog-index.ts'
import { type BraceFit, riseOf } from './braces.ts'
import type { EmitPart } from './emit-part.ts'
import type { PlacedPair } from './pairs.ts'
import { yawPitch } from './turn.ts'

export function emitBrace(emit: EmitPart, pair: PlacedPair, fit: BraceFit, shop: Shop): void {
  const { low, high, brace, lowZ, highZ } = fit
  const { types } = shop
  const pairId = pair.id
  const { reach } = shop.catalog.clamp
  const yaw = Math.atan2(high.y - low.y, high.x - low.x)
  const rx = Math.cos(yaw) * reach
  const ry = Math.sin(yaw) * reach
  const pitch = Math.asin(riseOf(fit, pair, shop) / brace.holes)
  const braceType = shop.type('brace', brace.code)
  emit(braceType, pairId, low.section, low.x + rx, low.y + ry, lowZ, yawPitch(yaw, pitch))
  emit(types.clamp, pairId, low.section, low.x, low.y, lowZ, yawPitch(yaw, 0))
  emit(types.clamp, pairId, high.section, high.x, high.y, highZ, yawPitch(yaw + Math.PI, 0))
  const square = yawPitch(yaw + Math.PI / 2, 0)
  for (let i = 0; i < shop.rules.braceBolts; i++)
    if (i % 2 === 0) emit(types['brace-bolt'], pairId, low.section, low.x + rx, low.y + ry, lowZ, square)
    else emit(types['brace-bolt'], pairId, high.section, high.x - rx, high.y - ry, highZ, square)
}
