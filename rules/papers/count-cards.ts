/** The card that lies in each bag: what is in it, how many, where it goes, which wrench, how tight. */
import type { Catalog } from '../catalog/index.ts'
import type { Dock, PartKind } from '../dock.ts'
import { type Bag, cartons, type Packages } from './cartons.ts'
import { sectionsInOrder } from './order.ts'
import { count, type Saying, saying, text } from './saying.ts'

export interface Turns {
  /** The shop's words: `carrier side`, say. */
  readonly at: string
  readonly from: number
  readonly to: number
  /** Past finger-tight, in fractions: `3/4`, `1 to 1 1/2`. */
  readonly say: Saying
}

export interface CountCardRow {
  readonly kind: PartKind
  readonly code: string
  readonly name: string
  /** In this bag, spares apart. */
  readonly quantity: number
  readonly spares: number
  /** Where on the dock it goes, in words. */
  readonly goes: Saying
  readonly wrench: string | null
  readonly turns: readonly Turns[]
  /** Pieces by section, in the order of work, of the whole dock (other bags of this letter too). Their sum is `needed`. */
  readonly places: readonly { readonly section: string; readonly count: number }[]
  readonly needed: number
}

export interface CountCard {
  readonly bag: Bag
  readonly rows: readonly CountCardRow[]
}

/** One for each bag, in the bags' order. */
export function countCards(
  dock: Dock,
  catalog: Catalog,
  packages: Packages = cartons(dock, catalog),
): CountCard[] {
  const bolts = new Map(catalog.hardware.map((bolt) => [`${bolt.kind}\n${bolt.code}`, bolt]))
  const places = placesOf(dock)
  return packages.bags.map((bag) => ({
    bag,
    rows: bag.items.map((item): CountCardRow => {
      const key = `${item.kind}\n${item.code}`
      const bolt = bolts.get(key)
      const at = places.get(key) ?? []
      return {
        kind: item.kind,
        code: item.code,
        name: item.name,
        quantity: item.quantity,
        spares: item.spares,
        goes: saying(`goes-${item.kind}`),
        wrench: bolt?.wrench ?? null,
        turns: (bolt?.turns ?? []).map((turn) => ({ ...turn, say: turnsSaid(turn) })),
        places: at,
        needed: at.reduce((sum, place) => sum + place.count, 0),
      }
    }),
  }))
}

function placesOf(dock: Dock): Map<string, { section: string; count: number }[]> {
  const counts = new Map<string, Map<string, number>>()
  for (const { kind, code, section } of dock.placements) {
    const key = `${kind}\n${code}`
    let sections = counts.get(key)
    if (!sections) {
      sections = new Map()
      counts.set(key, sections)
    }
    sections.set(section, (sections.get(section) ?? 0) + 1)
  }
  const order = sectionsInOrder(dock)
  return new Map(
    [...counts].map(([key, sections]) => [
      key,
      order.flatMap(({ id }) => {
        const n = sections.get(id)
        return n ? [{ section: id, count: n }] : []
      }),
    ]),
  )
}

/** `at`: how far past finger-tight. */
function turnsSaid({ at, from, to }: { at: string; from: number; to: number }): Saying {
  const values = { at: text(at), from: text(fraction(from)), to: text(fraction(to)), count: count(to) }
  return saying(from === to ? 'turns' : 'turns-between', values)
}

/** Quarters of a turn as fractions; what is no quarter in hundredths, which no hand tells apart. */
export function fraction(turns: number): string {
  const quarters = turns * 4
  if (Math.abs(quarters - Math.round(quarters)) > 0.02) return String(Math.round(turns * 100) / 100)
  const whole = Math.floor(Math.round(quarters) / 4)
  const part = ['', '1/4', '1/2', '3/4'][Math.round(quarters) - 4 * whole]!
  return [whole > 0 || part === '' ? String(whole) : '', part].filter(Boolean).join(' ')
}
