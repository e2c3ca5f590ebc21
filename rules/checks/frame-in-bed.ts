import { clearanceUnder } from './clearance-under.ts'
import { type Check, meters, names, startByRule, worst } from './check.ts'

/** A frame would lie in the lake bed or the bank. */
export const frameInBed: Check = {
  code: 'frame-in-bed',
  severity: 'stop',
  basis: 'Geometry',
  find(kit) {
    const sunk = kit.layout.placed
      .filter((p) => p.role !== 'ramp')
      .map((p) => ({ id: p.id, clear: clearanceUnder(p, kit) }))
      .filter(({ clear }) => clear < -1e-6)
    if (sunk.length === 0) return []
    const deepest = worst(sunk, ({ clear }) => -clear)
    const ids = sunk.map(({ id }) => id)
    return [{ parts: ids, values: { sections: names(ids), depth: meters(-deepest.clear) }, remedy: startByRule(kit) }]
  },
}
