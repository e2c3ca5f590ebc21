import { loadCase, share } from '../check.ts'
import { FRICTION, morePosts, type StructureCheck } from './judged.ts'

/** The whole dock is pushed by more than its feet and posts hold. */
export const dockSlides: StructureCheck = {
  code: 'dock-slides',
  severity: 'warn',
  basis: FRICTION,
  find: ({ kit, structure: { slides } }) =>
    slides.slides
      ? [
          {
            parts: [],
            values: { push: share(slides.push), case: loadCase(slides.case ?? '') },
            remedy: morePosts(kit),
          },
        ]
      : [],
}
