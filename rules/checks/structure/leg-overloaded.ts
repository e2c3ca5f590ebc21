import { loadCase, share, text } from '../check.ts'
import { againstPush, braceAgain, byPush, endBefore, inWeather, type StructureCheck } from './judged.ts'

/** A leg carries more than its tube may: bent and pressed together, in its worst case. */
export const legOverloaded: StructureCheck = {
  code: 'leg-overloaded',
  severity: 'stop',
  basis: 'Aluminum Design Manual 2020, Part I, chapters C to H, ASD; steel by AISC 360-16',
  find({ kit, structure }) {
    return structure.legs
      .filter((leg) => leg.use > 1)
      .map(({ leg, use, case: name }) => {
        const placed = kit.legs.find(({ id }) => id === leg)!
        const pair = kit.pairs.find(({ pair }) => pair.legs.includes(placed))
        return {
          parts: [leg],
          values: { leg: text(leg), use: share(use), case: loadCase(name) },
          remedy:
            (pair && braceAgain(kit, pair.pair.id)) ??
            (inWeather(name) || byPush(name) ? againstPush(kit, name) : null) ??
            endBefore(kit, placed.section.id),
        }
      })
  },
}
