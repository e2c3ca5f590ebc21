import { loadCase, share, text } from '../check.ts'
import { againstPush, byPush, inWeather, type StructureCheck } from './judged.ts'

/** A frame's rail is bent by more than it may be, softened beside its welds. */
export const railOverloaded: StructureCheck = {
  code: 'rail-overloaded',
  severity: 'stop',
  basis: 'Aluminum Design Manual 2020, Part I, chapters F to H, welded metal, ASD',
  find: ({ kit, structure }) =>
    structure.rails
      .filter((rail) => rail.use > 1)
      .map(({ section, use, case: name }) => ({
        parts: [section],
        values: { section: text(section), use: share(use), case: loadCase(name) },
        remedy: inWeather(name) || byPush(name) ? againstPush(kit, name) : null,
      })),
}
