/** The cost of a section does not grow with the dock. A ratio within one run; milliseconds do not gate. */
import { describe, expect, it } from 'vitest'
import { eighteenNodeDock, sixNodeDock } from './dock-like.ts'
import { timeFactor } from './measure-frame.ts'

describe('laying out and factoring a frame', () => {
  it.each([
    ['6 nodes a section', sixNodeDock],
    ['18 nodes a section', eighteenNodeDock],
  ] as const)('takes at most 1.5 times as long a section at 400 as at 40: %s', { retry: 3 }, (_, make) => {
    const at40 = timeFactor(make(40), 200).least / 40
    const at400 = timeFactor(make(400), 30).least / 400
    expect(at400 / at40).toBeLessThanOrEqual(1.5)
  })
})
