import { postHold } from '../../structure/dock/post-hold.ts'
import { GUARD_PUSH } from '../../structure/strength/index.ts'
import { key, names, newtons, worst } from '../check.ts'
import type { StructureCheck } from './judged.ts'

/** Under this a post holds next to nothing at its clamp, N: what a hand leans on it with (judgment). */
const LITTLE = 50

/** Anchor posts where the bottom gives next to nothing. No other part of the shop would help: only a measured pull tells better. */
export const postHoldsLittle: StructureCheck = {
  code: 'post-holds-little',
  severity: 'note',
  basis: 'Broms 1964, short piles, on half-known soil (values by bottom: judgment)',
  find({ kit }) {
    const held = kit.extras.placed
      // An auger on rock has its own finding, and so has a post that is too short.
      .filter((e) => e.post?.stock && kit.bed.bottomAt(e.x, e.y) !== 'rock')
      .map((extra) => ({ extra, hold: postHold(kit, extra) }))
    const little = held.filter(({ hold }) => hold.soil !== null && hold.lateral < LITTLE)
    if (little.length === 0) return []
    const best = worst(little, ({ hold }) => hold.lateral)
    const ids = little.map(({ extra }) => extra.id)
    return [
      {
        parts: ids,
        values: {
          posts: names(ids),
          bottom: key(best.hold.soil!),
          hold: newtons(best.hold.lateral),
          total: newtons(little.reduce((sum, { hold }) => sum + hold.lateral, 0)),
          push: newtons(GUARD_PUSH),
        },
      },
    ]
  },
}
