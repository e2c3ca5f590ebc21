import type { Kit } from '../kit.ts'
import { type Check, meters, names, worst } from './check.ts'
import { clearancesUnder, type Under } from './clearance-under.ts'
import { startByRule } from './start-by-rule.ts'

const sunkFrames = (kit: Kit): Under[] => clearancesUnder(kit).filter(({ clear }) => clear < -1e-6)

/** A frame would lie in the lake bed or the bank. */
export const frameInBed: Check = {
  code: 'frame-in-bed',
  severity: 'stop',
  basis: 'Geometry',
  find(kit) {
    const sunk = sunkFrames(kit)
    if (sunk.length === 0) return []
    const ids = sunk.map(({ id }) => id)
    return [
      {
        parts: ids,
        values: { sections: names(ids), depth: meters(-worst(sunk, ({ clear }) => -clear).clear) },
        remedy: startByRule(kit, (other) => sunkFrames(other).length === 0),
      },
    ]
  },
}
