/** A project as papers show it: made once for all views of a file. */
import type { Project, Reader } from '../rules/index.ts'
import { type Once, onceOf } from '../rules/memo.ts'

export interface Drawn extends Project, Reader {
  /** What several views of it share: a paper has as many pictures of one dock as that has sections. */
  readonly once: Once<Drawn>
}

/** What else `project` may hold is of no account. */
export function drawnOf({ design, catalog, shop, bed, dock }: Project, { units, language }: Reader): Drawn {
  const drawn: Drawn = { design, catalog, shop, bed, dock, units, language, once: onceOf(() => drawn) }
  return drawn
}
