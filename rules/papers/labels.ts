/** Labels that stay on frames and legs over the years: which one it is, what it is, where it goes, and a code for a phone to read. */
import type { Section } from '../dock.ts'
import type { Project } from '../project.ts'
import { nameOf } from './names.ts'
import { groupBy, sectionsInOrder } from './order.ts'
import { list, meters, type Saying, saying, text } from './saying.ts'

export interface PartLabel {
  readonly kind: 'frame' | 'leg'
  /** `s3`, `s3.end.left` */
  readonly id: string
  readonly code: string
  readonly name: string
  /** Where it goes, a line each. */
  readonly where: readonly Saying[]
  /** What the square code says: the id and the dock's check code, with a space between. */
  readonly qr: string
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
      code: section.frame,
      name: nameOf(shop, 'frame', section.frame),
      where: frameGoes(section, i + 1, order.length),
      qr: `${section.id} ${code}`,
    },
    ...(legs.get(section.id) ?? []).flatMap((leg): PartLabel[] =>
      leg.code === null
        ? []
        : [
            {
              kind: 'leg',
              id: leg.id,
              code: leg.code,
              name: nameOf(shop, 'leg', leg.code),
              where: [
                saying(`label-leg-${leg.corner}`, { section: text(section.id) }),
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

function frameGoes({ id, role, on, x }: Section, n: number, of: number): Saying[] {
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
