/**
 * A dock that can be worked by hand: three sections of 4 x 8 ft from 3 m on, without a ramp, in 1.2 m of level water over sand, no wind;
 * with what a test has otherwise.
 */
import { type Catalog, demoCatalog, demoDesign, deriveKit } from '../../rules/index.ts'
import type { Kit } from '../../rules/kit.ts'
import { parsed } from './by-hand.ts'

const { wind: _wind, ...calm } = demoDesign.site
export const level = (depth: number) => ({ soundings: [0, 60].map((distance) => ({ distance, depth })) })

export function kitOf(
  dock: Record<string, unknown> = {},
  site: Record<string, unknown> = {},
  catalog: Catalog = demoCatalog,
): Kit {
  const design = parsed({
    ...demoDesign,
    site: { ...calm, ...level(1.2), ...site },
    dock: { ...demoDesign.dock, ramp: false, start: 3, sections: 3, extras: {}, ...dock },
  })
  return deriveKit(design, catalog)
}
