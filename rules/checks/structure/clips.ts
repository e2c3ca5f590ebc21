/** Crests under the planks pull at the clips that hold deck panels down. */
import { panelFor } from '../../catalog-index.ts'
import type { Waves } from '../../dock.ts'
import type { Kit } from '../../kit.ts'
import { BLOW } from '../../site/waves/crest.ts'
import { G } from '../../structure/dock/basic-loads.ts'
import { mostPressure } from '../../structure/dock/uplift.ts'
import { SLIP_SAFETY } from '../../structure/strength/index.ts'
import { newtons, text, worst } from '../check.ts'
import { raiseOverCrests, type StructureCheck } from './judged.ts'
import { sectionFloats } from './section-floats.ts'

interface Pull {
  readonly section: string
  /** Of one clip, N: by the slowly varying uplift, less 0.6 of the panel's weight; and for a moment as the crest meets the planks. */
  readonly pull: number
  readonly blow: number
}

/** Sections whose clips are pulled at, under the crest at the high level. */
function pulls(kit: Kit, waves: Waves | null): Pull[] {
  if (!waves) return []
  const { shop, design, layout } = kit
  const { clipsPerPanel } = shop.rules
  if (clipsPerPanel === 0) return []
  const high = Math.max(0, design.site.levels.high)
  return layout.placed.flatMap((p): Pull[] => {
    if (p.role === 'ramp') return []
    const panel = panelFor(shop, design.dock.finish, p.frame)
    const lift = mostPressure(kit, waves, high, p) * panel.length * panel.width
    const weight = 0.6 * (shop.type('deck-panel', panel.code).grams / 1000) * G
    const pull = (lift - weight) / clipsPerPanel
    return pull > 0 ? [{ section: p.id, pull, blow: (BLOW * lift - weight) / clipsPerPanel }] : []
  })
}

const BASIS = 'Uplift by Douglass, Chen and Olsen, Wave Forces on Bridge Decks, FHWA 2006 (memory)'

/** By more than they are stated to hold. */
export const clipsLift: StructureCheck = {
  code: 'clips-lift',
  severity: 'warn',
  basis: `${BASIS}; what the shop measured, over ${SLIP_SAFETY} (judgment)`,
  find(stood) {
    const { kit, waves } = stood
    const stated = kit.shop.catalog.decking.clip.holds
    if (stated === undefined) return []
    const holds = stated / SLIP_SAFETY
    const over = pulls(kit, waves).filter(({ pull }) => pull > holds)
    // Where whole sections are lifted that is told, and mended by the same deck.
    if (over.length === 0 || sectionFloats.find(stood).length > 0) return []
    const most = worst(over, ({ pull }) => pull)
    return [
      {
        parts: over.map(({ section }) => section),
        values: {
          section: text(most.section),
          pull: newtons(most.pull),
          blow: newtons(most.blow),
          holds: newtons(holds),
        },
        remedy: raiseOverCrests(kit, waves!),
      },
    ]
  },
}

/** Where nobody has stated what they hold. */
export const clipsUnstated: StructureCheck = {
  code: 'clips-unstated',
  severity: 'note',
  basis: BASIS,
  find({ kit, waves }) {
    if (kit.shop.catalog.decking.clip.holds !== undefined) return []
    const pulled = pulls(kit, waves)
    if (pulled.length === 0) return []
    const most = worst(pulled, ({ pull }) => pull)
    return [
      {
        parts: pulled.map(({ section }) => section),
        values: { section: text(most.section), pull: newtons(most.pull), blow: newtons(most.blow) },
        remedy: raiseOverCrests(kit, waves!),
      },
    ]
  },
}
