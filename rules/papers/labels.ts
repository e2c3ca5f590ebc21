/**
 * Labels that stay on frames and legs over the years: which one it is, what it is, where it goes; and those on packages: which of how many,
 * how heavy, what is in it. With what a phone reads off each.
 */
import type { Ramp, Section } from '../dock.ts'
import { type LegPlace, legNumber, legPlace } from '../leg-places.ts'
import type { Project } from '../project.ts'
import { type Bag, cartons, type Package, type PackedItem } from './cartons.ts'
import { nameOf } from './names.ts'
import { groupBy, sectionsInOrder } from './order.ts'
import { packagingOf } from './packaging.ts'
import { list, meters, type Saying, saying, text } from './saying.ts'

export interface PartLabel {
  readonly kind: 'frame' | 'leg'
  /** `s3`, `s3.end.left` */
  readonly id: string
  /** Of a leg: the number that it has on every paper; null of a frame. */
  readonly number: number | null
  readonly code: string
  readonly name: string
  /** Where it goes, a line each. */
  readonly where: readonly Saying[]
  /** What the square code says: the id and the dock's check code, with a space between. */
  readonly qr: string
}

export interface PackageLabel {
  readonly kind: 'package'
  /** `package-4` */
  readonly id: string
  readonly number: number
  /** How many packages there are. */
  readonly of: number
  readonly packing: Package['kind']
  /** kg */
  readonly mass: number
  /** Who carry it, by what the shop lets one person carry. */
  readonly people: number
  readonly bags: readonly Bag[]
  /** Of what is in no bag. */
  readonly items: readonly PackedItem[]
  /** As of parts. */
  readonly qr: string
}

/** One for each package, in their order. */
export function packageLabels({ dock, catalog }: Pick<Project, 'dock' | 'catalog'>): PackageLabel[] {
  const { packages } = cartons(dock, catalog)
  const person = packagingOf(catalog).person / 1000
  const code = dock.fingerprint.all.slice(0, CODE)
  return packages.map(({ number, kind, mass, bags, items }) => ({
    kind: 'package',
    id: `package-${number}`,
    number,
    of: packages.length,
    packing: kind,
    mass,
    people: Math.max(1, Math.ceil(mass / person - 1e-9)),
    bags,
    items,
    qr: `package-${number} ${code}`,
  }))
}

/** Of a package by the id on its label; null for what is none. */
export const packageNumber = (id: string): number | null => {
  const [, digits] = /^package-([1-9]\d{0,8})$/.exec(id) ?? []
  return digits === undefined ? null : Number(digits)
}

/** Characters of the check code on a label: as on all papers. */
const CODE = 12

/** Frames in the order of work, each followed by its legs. A leg that no stock length suits has no label: there is nothing to stick it on. */
export function labels({ dock, shop }: Pick<Project, 'dock' | 'shop'>): PartLabel[] {
  const code = dock.fingerprint.all.slice(0, CODE)
  const legs = groupBy(dock.legs, (leg) => leg.section)
  const order = sectionsInOrder(dock)
  return order.flatMap((section, i) => [
    {
      kind: 'frame' as const,
      id: section.id,
      number: null,
      code: section.frame,
      name: nameOf(shop, 'frame', section.frame),
      where: frameGoes(section, dock.ramp, i + 1, order.length),
      qr: `${section.id} ${code}`,
    },
    ...(legs.get(section.id) ?? []).flatMap((leg): PartLabel[] =>
      leg.code === null
        ? []
        : [
            {
              kind: 'leg',
              id: leg.id,
              number: legNumber(dock, leg.id),
              code: leg.code,
              name: nameOf(shop, 'leg', leg.code),
              where: [
                legGoes(legPlace(dock, leg)),
                saying('label-set-height', {
                  height: meters(leg.setHeight),
                  frame: meters(leg.setHeightFrame),
                }),
              ],
              qr: `${leg.id} ${code}`,
            },
          ],
    ),
  ])
}

/** How far out, on which side; of a head also how far aside. */
function legGoes({ out, side, aside }: LegPlace): Saying {
  const at = meters(Math.abs(out))
  if (out < 0) return saying(`label-leg-ashore-${side}`, { out: at })
  return aside === null
    ? saying(`label-leg-out-${side}`, { out: at })
    : saying(`label-leg-aside-${side}`, { out: at, aside: meters(aside) })
}

/** A ramp from where it comes down, as the sheets say it. */
function frameGoes({ id, role, on, x: begins }: Section, ramp: Ramp | null, n: number, of: number): Saying[] {
  const x = role === 'ramp' && ramp ? ramp.shoreX : begins
  const values = { section: text(id), on: list(on === null ? [] : [on]) }
  return [
    saying(`label-frame-${role}`, values),
    saying(x < 0 ? 'label-frame-order-ashore' : 'label-frame-order', {
      n: { value: n, unit: 'count' },
      of: { value: of, unit: 'count' },
      from: meters(Math.abs(x)),
    }),
  ]
}
