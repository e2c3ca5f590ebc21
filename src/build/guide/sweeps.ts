/** The docks that the guide's tables and plots are made from: the demo shop's parts on an even bed, and one input changed at a time. */
import {
  type Catalog,
  type Design,
  demoCatalog,
  deriveKit,
  parseCatalog,
  parseDesign,
  type Structure,
} from '../../../rules/index.ts'
import { wavesOf } from '../../../rules/site/waves/waves.ts'
import { whyNotJudged } from '../../../rules/structure/dock/not-judged.ts'
import { structureOf } from '../../../rules/structure/dock/structure.ts'

/** Five sections without a ramp on a bed that is even from half a meter off the shore on. */
export function evenDock(
  depth: number,
  dock: Record<string, unknown> = {},
  site: Record<string, unknown> = {},
): Design {
  const parsed = parseDesign({
    format: 'leadline/design',
    version: 1,
    site: {
      soundings: [
        { distance: -2, depth: -0.5 },
        { distance: 0, depth },
        { distance: 30, depth },
      ],
      levels: { low: -0.2, high: 0.2 },
      bottom: 'sand',
      wind: { speed: 10, fetch: 400 },
      ...site,
    },
    dock: { deckHeight: 0.45, frame: '4x8', sections: 5, ramp: false, start: 0.2, extras: {}, ...dock },
  })
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
  return parsed.value
}

/** The demo catalog with something else in it. */
export function shopWith(change: (catalog: Mutable) => void): Catalog {
  const copy = structuredClone(demoCatalog) as Mutable
  change(copy)
  const parsed = parseCatalog(copy)
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
  return parsed.value
}

// biome-ignore lint/suspicious/noExplicitAny: a catalog is changed by hand here, and parsed again
type Mutable = any

/** Every pair braced, however short its legs, where a brace fits. */
export const BRACE_ALL = shopWith((shop) => {
  shop.rules.braceFrom.value = 0
  for (const brace of shop.braces) brace.legs = { from: 0.1, to: 10 }
})
/** No pair braced. */
export const BRACE_NONE = shopWith((shop) => {
  shop.rules.braceFrom.value = 20
})

export interface Judged {
  readonly structure: Structure
  /** Longest leg, m. */
  readonly leg: number
  readonly braced: boolean
}

/** Null where the shop's parts make no dock there. */
export function judge(design: Design, catalog: Catalog = demoCatalog): Judged | null {
  const kit = deriveKit(design, catalog)
  if (whyNotJudged(kit)) return null
  return {
    structure: structureOf(kit, wavesOf(kit)),
    leg: kit.legs.reduce((most, leg) => Math.max(most, leg.stock?.length ?? 0), 0),
    braced: kit.pairs.some((pair) => pair.fit),
  }
}

export const worstLeg = ({ legs }: Structure): number =>
  legs.reduce((most, leg) => Math.max(most, leg.use), 0)
export const worstBrace = ({ braces }: Structure): number =>
  braces.reduce((most, brace) => Math.max(most, brace.use), 0)
export const worstFoot = ({ feet }: Structure): number =>
  feet.reduce((most, foot) => Math.max(most, foot.pressure), 0)
