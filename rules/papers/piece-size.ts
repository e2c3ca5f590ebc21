/** How long a piece is over all: what a carrier asks, and what decides whether it goes into a carton. */
import type { Shop } from '../catalog-index.ts'
import type { PartKind } from '../dock.ts'
import { round6 } from '../numbers.ts'

/** Longest side of a piece of the catalog, m; 0 for a code that it has not. */
export const pieceLength = (shop: Shop, kind: PartKind, code: string): number =>
  shop.once(allLengths).get(`${kind}\n${code}`) ?? 0

function allLengths({ catalog }: Shop): ReadonlyMap<string, number> {
  const lengths = new Map<string, number>()
  /** The first of a kind and code counts, as in the parts list. */
  const add = (kind: PartKind, code: string, ...sides: readonly number[]): void => {
    const key = `${kind}\n${code}`
    if (!lengths.has(key)) lengths.set(key, round6(Math.max(...sides)))
  }
  const { clamp, hooks, tie, hinge, decking, caps } = catalog
  for (const { code, length, width } of catalog.frames) add('frame', code, length, width)
  for (const { code, length } of catalog.legs) add('leg', code, length)
  for (const { code, holes, end } of catalog.braces) add('brace', code, holes + 2 * end)
  for (const { code, plate } of catalog.pads) add('foot-pad', code, plate.length, plate.width)
  for (const { code, length, width } of decking.panels) add('deck-panel', code, length, width)
  for (const { kind, code, length } of catalog.hardware) add(kind, code, length)
  add('brace-clamp', clamp.code, clamp.reach, clamp.width, clamp.height)
  add('hook-bracket', hooks.bracket.code, ...hooks.bracket.size)
  add('accessory', tie.code, ...tie.size)
  add('hinge-bar', hinge.bar.code, hinge.bar.length)
  add('hinge-pin', hinge.pin.code, ...hinge.pin.size)
  add('deck-clip', decking.clip.code, ...decking.clip.size)
  add('leg-cap', caps.leg.code, ...caps.leg.size)
  add('sleeve-cap', caps.sleeve.code, ...caps.sleeve.size)
  for (const extra of catalog.extras) {
    for (const { kind, code, size } of extra.parts) add(kind, code, ...size)
    if (extra.place === 'post') for (const { code, length } of extra.posts) add('anchor-post', code, length)
  }
  return lengths
}
