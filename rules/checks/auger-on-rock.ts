import { pointer } from '../design/pointer.ts'
import { type Check, COMMON, names, remedy, remove } from './check.ts'

/** An auger cannot be turned into rock. */
export const augerOnRock: Check = {
  code: 'auger-on-rock',
  severity: 'stop',
  basis: COMMON,
  find({ extras, bed, design }) {
    const stuck = extras.placed.filter(
      (e) => e.extra.parts.some((part) => part.kind === 'auger') && bed.bottomAt(e.x, e.y) === 'rock',
    )
    if (stuck.length === 0) return []
    const code = stuck[0]!.extra.code
    const byCount = Object.hasOwn(design.dock.extras, code)
    return [
      {
        parts: stuck.map((e) => e.id),
        values: { posts: names(stuck.map((e) => e.id)) },
        remedy: byCount ? remedy('leave-out', [remove(`/dock/extras/${pointer(code)}`)]) : null,
      },
    ]
  },
}
