import { upliftOf } from '../../structure/dock/uplift.ts'
import { SLIP_SAFETY } from '../../structure/strength/index.ts'
import { loadCase, newtons, text, worst } from '../check.ts'
import { againstPush, inWeather, OURS, raiseOverCrests, type StructureCheck } from './judged.ts'

/** A hung section is lifted off its hooks by more than their locks are stated to hold. */
export const hooksLift: StructureCheck = {
  code: 'hooks-lift',
  severity: 'warn',
  basis: `What the shop measured, over ${SLIP_SAFETY}. ${OURS}`,
  find({ kit, waves, structure }) {
    const { lock } = kit.shop.catalog.hooks
    const holds = ((lock ?? 0) * kit.shop.rules.bracketsPerHook) / SLIP_SAFETY
    const hinge = kit.joints.all.find((joint) => joint.kind === 'hinge')?.id
    const over = structure.hooks.filter((hook) => hook.joint !== hinge && (hook.opens || hook.up > holds))
    if (over.length === 0) return []
    const most = worst(over, (hook) => hook.up)
    const high = Math.max(0, kit.design.site.levels.high)
    // Posts hold nothing up or down: what crests lift is to be raised.
    const lifted =
      waves && inWeather(most.upCase ?? '') && upliftOf(kit, waves, high, 'left', 'tenth') !== null
    return [
      {
        parts: over.map((hook) => hook.joint),
        values: {
          joint: text(most.joint),
          up: newtons(most.up),
          holds: newtons(holds),
          case: loadCase(most.upCase ?? ''),
        },
        remedy: lifted ? raiseOverCrests(kit, waves) : againstPush(kit, most.upCase ?? ''),
      },
    ]
  },
}
