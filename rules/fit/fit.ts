/** How surely the legs fit, what would help, and the finding where it is little. Comes with what is found after the frame of a drag. */
import { COMMON, key, meters, names, share } from '../checks/check.ts'
import { toFindings } from '../checks/index.ts'
import type { Finding, Fit, Severity } from '../dock.ts'
import type { Kit } from '../kit.ts'
import { round6 } from '../numbers.ts'
import { errorsOf } from '../site/error-at.ts'
import { sideOf } from '../words/fit-text.ts'
import { FOUND_LATER } from '../words/structure-words.ts'
import { type Chance, chancesOf } from './chances.ts'
import { IN_DOUBT, nextSounding } from './next-sounding.ts'
import { SIGMAS_95 } from './normal.ts'
import { chancesTogether } from './together.ts'

/** So sure is sure enough: no more spare legs are told of. */
const ENOUGH = 0.95
/** Spare legs that are told of. */
const SPARES = 4
/** More likely than not that a leg is too short. */
const LIKELY = 0.5

/** Null where no leg has a length. */
export function fitOf(kit: Kit): Fit | null {
  const errors = errorsOf(kit.bed)
  const all = chancesOf(kit, errors)
  if (all.length === 0) return null
  const longest = spareFor(all, kit)
  const longer = ({ leg }: Chance): number | null => longest && longest.length - leg.stock!.length
  const [own, ...spared] = chancesTogether(all, errors, SPARES, longer)
  const enough = spared.findIndex((chance) => chance >= ENOUGH)
  return {
    legs: all.map(({ leg, stays, room, error, chance }) => ({
      leg: leg.id,
      chance: round6(chance),
      error: round6(error),
      room: round6(room),
      reserve95: round6(stays + SIGMAS_95 * error),
    })),
    all: round6(own!),
    spares:
      longest && own! < ENOUGH
        ? {
            code: longest.code,
            length: longest.length,
            chances: spared.slice(0, enough < 0 ? SPARES : enough + 1).map(round6),
          }
        : null,
    sounding: rounded(nextSounding(all, errors)),
  }
}

const rounded = (place: Fit['sounding']): Fit['sounding'] =>
  place && { ...place, x: round6(place.x), y: round6(place.y) }

/** The stock length after that of the longest leg in doubt: long enough for any of them. */
function spareFor(all: readonly Chance[], { shop }: Kit) {
  const doubted = all.filter(({ chance }) => chance < IN_DOUBT)
  if (doubted.length === 0) return null
  const most = Math.max(...doubted.map(({ leg }) => leg.stock!.length))
  return shop.legs.find(({ length }) => length > most + 1e-6) ?? null
}

/** A note, for a leg that is too short is seen while it is set, and costs a way; a warning where one is to be expected. */
export function doubtsOf(fit: Fit | null, { shop }: Kit): Finding[] {
  if (!fit || fit.all >= shop.rules.fitChanceMin - 1e-6) return []
  const doubted = fit.legs.filter(({ chance }) => chance < IN_DOUBT).map(({ leg }) => leg)
  const severity: Severity = fit.sounding && fit.all < LIKELY ? 'warn' : 'note'
  const values = {
    chance: share(fit.all),
    least: share(shop.rules.fitChanceMin),
    legs: names(doubted),
  }
  const { sounding } = fit
  return toFindings(
    { code: sounding ? 'soundings-leave-doubt' : 'legs-in-doubt', severity, basis: COMMON },
    [
      {
        parts: doubted,
        values: sounding
          ? {
              ...values,
              x: { value: round6(sounding.x), unit: 'm-rough' },
              y: meters(sounding.y),
              place: key(sideOf(sounding.y)),
            }
          : values,
      },
    ],
    FOUND_LATER,
  )
}
