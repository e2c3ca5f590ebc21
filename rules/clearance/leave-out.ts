/** The remedy of an extra that is in the way. */
import { text } from '../checks/check.ts'
import { pointer } from '../design/pointer.ts'
import type { Remedy } from '../dock.ts'
import type { Kit } from '../kit.ts'
import { factsOf } from '../part-kinds.ts'
import type { MeasuredPart } from './clearance.ts'

/** An extra can be left out; what the dock stands on cannot. */
export function leaveOutExtra(parts: readonly (MeasuredPart | null)[], kit: Kit): Remedy | null {
  for (const part of parts) {
    if (!part || factsOf(part.kind).group !== 'options') continue
    const extra = kit.shop.catalog.extras.find(({ code }) => part.of.startsWith(`${code}.`))
    if (!extra) continue
    return {
      key: 'leave-out-extra',
      values: { extra: text(extra.name) },
      patch: [{ op: 'remove', path: pathOf(part.of, extra.code, kit) }],
    }
  }
  return null
}

/** Where in the Design an extra is asked for. They are numbered by kind, first those with a place that there was, then those by rule. */
function pathOf(id: string, code: string, { design, extras }: Kit): string {
  const refused = new Set(extras.noPlace.map(({ index }) => index))
  const byHand = (design.dock.placed ?? [])
    .map((item, i) => ({ ...item, i, path: `/dock/placed/${i}` }))
    .filter((item) => item.code === code && !refused.has(item.i))
  return byHand[Number(id.slice(code.length + 1)) - 1]?.path ?? `/dock/extras/${pointer(code)}`
}
