/** What presses each joint's hooks down, what pulls them up, and whether a lock gives way. */
import type { HookUse } from '../../dock.ts'
import { round6 } from '../../numbers.ts'
import type { DockFrame } from './frame.ts'
import type { Solved } from './soften.ts'

interface HooksJudge {
  visit(solved: Pick<Solved, 'carried' | 'combination' | 'lifted'>): void
  /** The worst of each joint's hooks. */
  uses(): HookUse[]
}

export function hooksJudge(frame: DockFrame): HooksJudge {
  const hooks = frame.links.map(() => ({
    down: 0,
    up: 0,
    upCase: null as string | null,
    openCase: null as string | null,
  }))
  const linkOf = new Map(frame.links.map(({ member }, i) => [member, i]))
  return {
    visit({ carried, combination: { name }, lifted }) {
      frame.links.forEach(({ member }, i) => {
        const hook = hooks[i]!
        // What the carrying side does to the link: up is bearing.
        const up = carried[frame.slot[member]! * 12 + 2]!
        if (up > hook.down) hook.down = up
        if (-up > hook.up) {
          hook.up = -up
          hook.upCase = name
        }
      })
      for (const i of lifted) {
        const { kind, member } = frame.contacts[i]!
        if (kind === 'hook') hooks[linkOf.get(member)!]!.openCase ??= name
      }
    },
    uses: () => {
      const byJoint = new Map<string, HookUse>()
      frame.links.forEach(({ joint }, i) => {
        const hook = hooks[i]!
        const known = byJoint.get(joint.id)
        byJoint.set(joint.id, {
          joint: joint.id,
          down: round6(Math.max(hook.down, known?.down ?? 0)),
          up: round6(Math.max(hook.up, known?.up ?? 0)),
          upCase: known && known.up >= hook.up ? known.upCase : hook.upCase,
          opens: hook.openCase !== null || (known?.opens ?? false),
          openCase: known?.openCase ?? hook.openCase,
        })
      })
      return [...byJoint.values()]
    },
  }
}
