/** How a record is begun: with the dock that was planned, or with one that stands already and of which nothing is known but its legs. */
import { legPlace } from '../leg-places.ts'
import { round6 } from '../numbers.ts'
import { liftOf } from '../papers/steps/hands.ts'
import { mustStay } from '../parts/legs.ts'
import type { Project } from '../project.ts'
import { errorsOf } from '../site/error-at.ts'
import { footingAt } from '../site/footing.ts'
import type { LegNamed, SeasonRecord, SectionNamed } from './schema.ts'

/** Which record is begun, by whom and when. */
export interface Begun {
  /** New, at random. */
  readonly id: string
  readonly device: string
  /** By the device's clock: `new Date().toISOString()`. */
  readonly at: string
  /** What the dock is called; where absent the design's own name. */
  readonly name?: string
}

/** For the dock of a project: names, places and planned heights of its legs are in it from then on. */
export function beginRecord(project: Project, { id, device, at, name }: Begun): SeasonRecord {
  const { design, catalog, dock, shop } = project
  const { stake, benchmark } = design.site
  return {
    format: 'leadline/record',
    version: 1,
    id,
    name: (name ?? design.name).slice(0, 200),
    dock: dock.fingerprint.all,
    design,
    catalog: { id: catalog.id.slice(0, 60), edition: catalog.edition },
    stake: stake ? { name: stake.name, x: stake.x } : null,
    mark: benchmark ? { name: benchmark.name, above: benchmark.above } : null,
    deckHeight: design.dock.deckHeight,
    rise: shop.catalog.decking.rise,
    legs: legsOf(project),
    sections: sectionsOf(project),
    made: { at, device },
    others: [],
    entries: [],
  }
}

function legsOf(project: Project): LegNamed[] {
  const { dock, shop, bed } = project
  const errors = errorsOf(bed)
  return dock.legs.map((leg, i): LegNamed => {
    const { id, section, x, y, setHeight, setHeightFrame, code, stock } = leg
    const { side, aside } = legPlace(dock, leg)
    const pad = shop.pads.get(leg.pad)
    return {
      ...{ id, number: i + 1, section, x, y, side, aside: aside === null ? null : round6(aside) },
      bottom: footingAt(bed, x, y),
      planned: {
        bed: leg.bed,
        sd: round6(errors.at(x, y)),
        height: setHeight,
        frame: setHeightFrame,
        stock: code,
        length: stock,
        sole: pad?.sole ?? 0,
        stay: pad ? round6(mustStay({ x, y, pad }, project)) : 0,
      },
    }
  })
}

function sectionsOf({ dock, catalog }: Project): SectionNamed[] {
  return dock.workOrder.flatMap((id) => {
    const section = dock.sections.find((one) => one.id === id)
    if (!section) return []
    const { role, on, lift } = section
    const { people } = liftOf(section, 'shore', catalog)
    return [{ id, ramp: role === 'ramp', on, lift, people }]
  })
}

/** What a user tells of a dock that no design is of. */
export interface OldDock {
  /** Pairs of legs, from the shore outward: the left leg of each before the right one. */
  readonly pairs: number
  /** Of each pair, from the stake, m: as many as are known. */
  readonly out?: readonly (number | null)[]
  /** Stake that they are measured from. */
  readonly stake?: string
  /** Deck surface over today's water, m: from then on today's water is what levels are over. */
  readonly deckHeight?: number
  /** Deck surface over the frame's top, m. */
  readonly rise?: number
  readonly mark?: { readonly name: string; readonly above: number }
}

/** A record of a dock that stands already and of which there is no design: its legs in pairs, from the shore. */
export function beginOldDock(old: OldDock, { id, device, at, name = '' }: Begun): SeasonRecord {
  const legs = Array.from({ length: old.pairs * 2 }, (_, i): LegNamed => {
    const [pair, side] = [Math.floor(i / 2), i % 2 === 0 ? 'left' : 'right'] as const
    return {
      ...{ id: `pair-${pair + 1}.${side}`, number: i + 1, section: null, x: old.out?.[pair] ?? null },
      ...{ y: null, side, aside: null, bottom: null, planned: null },
    }
  })
  return {
    format: 'leadline/record',
    version: 1,
    id,
    name: name.slice(0, 200),
    dock: null,
    design: null,
    catalog: null,
    stake: old.stake === undefined ? null : { name: old.stake, x: 0 },
    mark: old.mark ?? null,
    deckHeight: old.deckHeight ?? null,
    rise: old.rise ?? null,
    legs,
    sections: [],
    made: { at, device },
    others: [],
    entries: [],
  }
}
