/** What is found about a dock after the frame of its edit. A chunk of its own: nothing of it is there before the first picture. */
import { clashSteps, withClashes } from '../../geometry/index.ts'
import type { Catalog, Design, Dock } from '../../rules/index.ts'

/** Which parts are in each other's way or in the ground. Yields now and then: whoever runs it may let others go first, or drop it. */
export function* judge(design: Design, catalog: Catalog, dock: Dock): Generator<undefined, Dock> {
  return withClashes(dock, yield* clashSteps(dock, design, catalog))
}
