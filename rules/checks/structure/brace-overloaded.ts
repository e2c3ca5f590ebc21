import { loadCase, newtons, share, text } from '../check.ts'
import { againstPush, byPush, endBefore, inWeather, type StructureCheck } from './judged.ts'

/** A brace carries more than its tube or its bolts may. */
export const braceOverloaded: StructureCheck = {
  code: 'brace-overloaded',
  severity: 'stop',
  basis: 'Aluminum Design Manual 2020 chapters D, E and J; bolts by AISC 360-16 J3',
  find({ kit, structure }) {
    return structure.braces
      .filter((brace) => brace.use > 1 && brace.governs !== 'clamp')
      .map(({ pair, axial, use, case: name }) => ({
        parts: [pair],
        values: { pair: text(pair), axial: newtons(Math.abs(axial)), use: share(use), case: loadCase(name) },
        remedy:
          (inWeather(name) || byPush(name) ? againstPush(kit, name) : null) ??
          endBefore(kit, kit.pairs.find((p) => p.pair.id === pair)!.pair.legs[0].section.id),
      }))
  },
}
