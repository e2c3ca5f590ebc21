/** The cost of a section does not grow with the dock. A ratio within one run; milliseconds do not gate. */
import { describe, expect, it } from 'vitest'
import { factorFrame } from '../../../rules/structure/index.ts'
import { growth } from '../../bench/measure.ts'
import { eighteenNodeDock, sixNodeDock } from './dock-like.ts'

describe('laying out and factoring a frame', () => {
  it.each([
    ['6 nodes a section', sixNodeDock],
    ['18 nodes a section', eighteenNodeDock],
  ] as const)('takes at most 1.5 times as long a section at 400 as at 40: %s', { retry: 2 }, (_, like) => {
    const factored = (sections: number) => {
      const model = like(sections)
      return () => void factorFrame(model)
    }
    expect(growth(factored, [40, 400], { turns: 60, warm: 10 })).toBeLessThanOrEqual(1.5)
  })
})
