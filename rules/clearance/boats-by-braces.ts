/** A boat beside a lengthwise brace, which runs where its side goes up and down: along its own edge, as no other brace does. Words: `obstacles` in the language files. */
import { meters, text } from '../checks/check.ts'
import { toFindings } from '../checks/index.ts'
import type { Dock, Finding } from '../dock.ts'
import type { Kit } from '../kit.ts'
import { lying } from '../layout/berth.ts'
import { FOUND_LATER } from '../words/structure-words.ts'
import { nearest, standingParts } from './clearance.ts'
import { hullSolid } from './hull.ts'
import { lowLevel } from './keel.ts'
import { BOAT } from './obstructions.ts'

/** Its hull is a box that no boat fills, and bumpers keep it off: told, no more. */
const BY_BRACE = {
  code: 'boat-near-brace',
  severity: 'note',
  basis: 'Judgment, no published source',
} as const

/** At the low level, today's and the high one, the nearest counts; of each boat the brace that it lies nearest to. */
export function boatsByBraces(dock: Dock, kit: Kit): readonly Finding[] {
  const along = new Map(kit.pairs.flatMap(({ pair, fit }) => (pair.along && fit ? [[pair.id, pair]] : [])))
  if (along.size === 0) return []
  const { levels } = kit.design.site
  const heights = [...new Set([lowLevel(levels), 0, Math.max(0, levels.high)])]
  const braces = standingParts(dock, kit.shop.catalog).filter(
    ({ kind, of }) => kind === 'brace' && along.has(of),
  )
  return lying(kit).flatMap((berth) => {
    let least = { gap: BOAT, pair: '' }
    for (const level of heights)
      for (const { of, shapes } of braces) {
        const [a, b] = along.get(of)!.legs
        const { dx, dy } = berth.line
        if (Math.abs(dx * (b.y - a.y) - dy * (b.x - a.x)) > Math.abs(dx * (b.x - a.x) + dy * (b.y - a.y)))
          continue
        const best = nearest(least.gap)
        for (const { shape } of shapes) best.try(shape, hullSolid(berth, level))
        const found = best.found()
        if (found && found.gap < least.gap - 1e-6) least = { gap: found.gap, pair: of }
      }
    if (least.pair === '') return []
    const values = {
      section: text(berth.section.id),
      pair: text(least.pair),
      clear: meters(least.gap),
      least: meters(BOAT),
    }
    return toFindings(BY_BRACE, [{ parts: [least.pair, berth.section.id], values }], FOUND_LATER)
  })
}
