import { loadCase, share } from '../check.ts'
import { againstPush, FRICTION, holdIn, inWeather, type StructureCheck } from './judged.ts'

/** The whole dock is pushed by more than its feet and posts hold. */
export const dockSlides: StructureCheck = {
  code: 'dock-slides',
  severity: 'warn',
  basis: FRICTION,
  // Where the same weather carries it over, that is told: posts are asked for by either.
  find: ({ kit, structure: { slides, falls } }) =>
    slides.slides && !(inWeather(slides.case ?? '') && falls.some(inWeather))
      ? [
          {
            parts: [],
            values: { push: share(slides.push), case: loadCase(slides.case ?? ''), hold: holdIn(kit) },
            remedy: againstPush(kit, slides.case ?? ''),
          },
        ]
      : [],
}
