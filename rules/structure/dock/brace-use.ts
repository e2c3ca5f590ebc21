/**
 * The worst of each brace over all cases: as a strut between its holes, pulled, in its bolts, and in the grip of its clamps.
 */
import type { BraceUse } from '../../dock.ts'
import { round6 } from '../../numbers.ts'
import { riseOf } from '../../parts/braces.ts'
import { braceStrength, braceUse } from '../strength/index.ts'
import type { DockFrame } from './frame.ts'

export interface BraceJudge {
  visit(forces: Float64Array, name: string): void
  uses(): BraceUse[]
}

export function braceJudge({ kit, braces, slot }: DockFrame): BraceJudge {
  const pulled = braces.map(() => ({ axial: 0, name: '' }))
  const pressed = braces.map(() => ({ axial: 0, name: '' }))
  return {
    visit(forces, name) {
      braces.forEach(({ member }, i) => {
        const axial = forces[slot[member]! * 12 + 6]!
        if (axial > pulled[i]!.axial) pulled[i] = { axial, name }
        if (axial < pressed[i]!.axial) pressed[i] = { axial, name }
      })
    },
    uses: () =>
      braces.map(({ pair }, i): BraceUse => {
        const { brace } = pair.fit!
        const rise = riseOf(pair.fit!, pair.pair, kit.shop)
        const strength = braceStrength(kit.shop.catalog, brace)!
        const tell = ({ axial, name }: { axial: number; name: string }) => ({
          axial,
          name,
          ...braceUse(strength, axial, rise / brace.holes),
        })
        const pull = tell(pulled[i]!)
        const push = tell(pressed[i]!)
        const worst = pull.use >= push.use ? pull : push
        return {
          pair: pair.pair.id,
          axial: round6(worst.axial),
          use: round6(worst.use),
          governs: worst.part === 'tube' ? worst.by : worst.part,
          case: worst.name,
        }
      }),
  }
}
