/**
 * What a shop learns from its records: how far its soundings are off, and how far feet settle by bottom. With how many measurements that
 * is of, and how surely it is known; offered as changes of its catalog, and taken by nobody but the shop.
 */
import type { BottomKind, Catalog } from '../catalog/index.ts'
import type { PatchOperation } from '../dock.ts'
import { round6 } from '../numbers.ts'
import { type SoundingFit, type SoundingSample, soundingFit } from './learn-soundings.ts'
import type { Entry, EntryOf, SeasonRecord } from './schema.ts'
import { heldOf, stateIn } from './state.ts'

/** Of fewer measurements nothing is offered: with eight a spread is known to a quarter of it (1 / sqrt(2 · 8)). */
export const LEARN_LEAST = 8

/** How far feet with one pad settle in one kind of bottom, m. */
export interface Settling {
  readonly bottom: BottomKind
  /** Code of the foot pad. */
  readonly pad: string
  /** m; the spread of single legs, and one standard error of the mean. */
  readonly mean: number
  readonly sd: number | null
  readonly error: number | null
  readonly count: number
  /** What the catalog says so far, m. */
  readonly catalog: number
}

/** What seasons have shown: how far soundings are off, how far feet settle, and the catalog's change that follows. */
export interface Learned {
  readonly sounding: SoundingFit | null
  readonly settling: readonly Settling[]
  /** RFC 6902, on the catalog: only what `LEARN_LEAST` measurements or more are behind. */
  readonly patch: readonly PatchOperation[]
  /** Of how many records; how many say nothing of soundings, for they have no design. */
  readonly records: number
  readonly withoutDesign: number
}

/** Compares what was measured with what was expected, over any number of records. Lengths in m. */
export function learn(records: readonly SeasonRecord[], catalog: Catalog): Learned {
  const sounding = soundingFit(records.flatMap(soundingsOf))
  const settling = settlingOf(records, catalog)
  return {
    sounding,
    settling,
    patch: [...soundingPatch(sounding, catalog), ...settlingPatch(settling, catalog)],
    records: records.length,
    withoutDesign: records.filter(({ design }) => design === null).length,
  }
}

/** Depths measured at legs in the first season in which any were: later the bed is another one. */
function soundingsOf(record: SeasonRecord): SoundingSample[] {
  const { design } = record
  if (!design) return []
  const held = heldOf(record)
  for (const season of [...held.live.keys()].sort()) {
    const at = stateIn(held, season).legs.flatMap(({ leg: { x, y }, bed }) =>
      x === null || y === null || bed === null ? [] : [{ x, y, bed }],
    )
    if (at.length > 0) return [{ site: design.site, at }]
  }
  return []
}

function settlingOf(records: readonly SeasonRecord[], catalog: Catalog): Settling[] {
  const groups = new Map<string, { bottom: BottomKind; pad: string; values: number[] }>()
  for (const record of records) {
    const asked = record.design?.dock.pad
    const pad = catalog.pads.find(({ code }) => code === asked) ?? catalog.pads[0]!
    const bottoms = new Map(record.legs.map(({ id, bottom }) => [id, bottom]))
    for (const [leg, sunk] of [...heldOf(record).live.values()].flatMap(sunkIn)) {
      const bottom = bottoms.get(leg)
      if (!bottom) continue
      const key = `${pad.code}\n${bottom}`
      const group = groups.get(key) ?? { bottom, pad: pad.code, values: [] }
      group.values.push(sunk)
      groups.set(key, group)
    }
  }
  return [...groups.values()]
    .map(({ bottom, pad, values }): Settling => {
      const count = values.length
      const mean = values.reduce((sum, one) => sum + one, 0) / count
      const rest = values.reduce((sum, one) => sum + (one - mean) ** 2, 0)
      const sd = count > 1 ? Math.sqrt(rest / (count - 1)) : null
      return {
        ...{ bottom, pad, count, mean: round6(mean), sd: sd === null ? null : round6(sd) },
        error: sd === null ? null : round6(sd / Math.sqrt(count)),
        catalog: catalog.pads.find(({ code }) => code === pad)!.sinkage[bottom],
      }
    })
    .sort((a, b) => (a.pad < b.pad ? -1 : a.pad > b.pad ? 1 : a.bottom < b.bottom ? -1 : 1))
}

/**
 * How far each foot went in, of one season's entries, where somebody looked: as it was told, else by how much a level check made its leg longer. A
 * check sees only how legs differ, so the one that went in least counts as not at all. A leg that was read and not moved counts too:
 * else only the bad ones would.
 */
function sunkIn(own: readonly Entry[]): (readonly [leg: string, sunk: number])[] {
  const sets = own.filter((entry): entry is EntryOf<'set'> => entry.kind === 'set')
  const told = new Map<string, number>()
  for (const entry of own)
    if ((entry.kind === 'set' || entry.kind === 'out') && entry.leg !== undefined && entry.sunk !== undefined)
      told.set(entry.leg, entry.sunk)
  const read = new Set(
    own.flatMap((entry) => (entry.kind === 'check' ? (entry.readings ?? []).map(({ leg }) => leg) : [])),
  )
  const longer = [...new Set(sets.map(({ leg }) => leg))].flatMap((leg) => {
    const all = sets.filter((set) => set.leg === leg)
    const first = all.find(({ how }) => how !== 'by-check')
    const last = all.filter(({ how }) => how === 'by-check').at(-1)
    if (!first || !(last || read.has(leg))) return []
    return [[leg, last ? last.height - first.height : 0] as const]
  })
  const least = Math.min(0, ...longer.map(([, by]) => by))
  return [...told, ...longer.filter(([leg]) => !told.has(leg)).map(([leg, by]) => [leg, by - least] as const)]
}

/** To whole millimeters: nothing here is known better. */
const millimeters = (value: number): number => Math.round(value * 1000) / 1000

function soundingPatch(fit: SoundingFit | null, { survey }: Catalog): PatchOperation[] {
  if (!fit || fit.count < LEARN_LEAST) return []
  const value = { soundingError: millimeters(fit.sd), measurements: fit.count }
  return [{ op: survey ? 'replace' : 'add', path: '/survey', value: { ...survey, ...value } }]
}

const settlingPatch = (settling: readonly Settling[], { pads }: Catalog): PatchOperation[] =>
  settling
    .filter(({ count }) => count >= LEARN_LEAST)
    .map(({ bottom, pad, mean }) => ({
      op: 'replace',
      path: `/pads/${pads.findIndex(({ code }) => code === pad)}/sinkage/${bottom}`,
      value: millimeters(Math.min(1, Math.max(0, mean))),
    }))
