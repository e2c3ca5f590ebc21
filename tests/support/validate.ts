/**
 * An independent check of a Dock: conservation laws that hold for every sound dock, recomputed from the Design and the Catalog by
 * code that shares nothing with the engine but its types. Every test that derives a dock may ask it.
 *
 * A law is one small named function; `tests/rules/validate.test.ts` shows each to fail on a dock broken on purpose.
 */
import type { Catalog } from '../../rules/catalog/schema.ts'
import type { Design } from '../../rules/design/schema.ts'
import type { Dock } from '../../rules/dock.ts'
import * as boats from './laws/boats.ts'
import * as braces from './laws/braces.ts'
import * as counts from './laws/counts.ts'
import * as figures from './laws/figures.ts'
import type { Law } from './laws/law.ts'
import * as layout from './laws/layout.ts'
import * as legs from './laws/legs.ts'
import * as limits from './laws/limits.ts'
import * as pairs from './laws/pairs.ts'
import * as papers from './laws/papers.ts'
import * as places from './laws/places.ts'
import * as ramp from './laws/ramp.ts'
import * as structure from './laws/structure.ts'
import * as sums from './laws/sums.ts'
import * as waves from './laws/waves.ts'

/** All laws by name. */
export const LAWS: Readonly<Record<string, Law>> = {
  ...layout,
  ...legs,
  ...pairs,
  ...braces,
  ...ramp,
  ...counts,
  ...places,
  ...sums,
  ...papers,
  ...figures,
  ...structure,
  ...waves,
  ...boats,
  ...limits,
}

/** What is wrong with a dock: `law: sentence` for every violation; empty where it is sound. */
export function validate(dock: Dock, design: Design, catalog: Catalog): string[] {
  return Object.entries(LAWS).flatMap(([name, law]) =>
    law(dock, design, catalog).map((sentence) => `${name}: ${sentence}`),
  )
}
