import { describe, expect, it } from 'vitest'
import { gapsOf } from '../../geometry/index.ts'
import { demoCatalog, english, formatLength, parseDesign, projectOf } from '../../rules/index.ts'
import { measureGaps } from '../../src/scene/measures/clearances.ts'
import { deriveAtOnce } from '../support/at-once.ts'
import { contractDemo } from '../support/worked-designs.ts'

const parsed = parseDesign({
  ...contractDemo,
  dock: {
    ...contractDemo.dock,
    placed: [{ code: 'anchor-post', section: 's5', edge: 'left', along: 2.2 }],
  },
})
if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
const design = parsed.value
const dock = deriveAtOnce(design, demoCatalog)

describe('the gaps in the picture', () => {
  it('are lines as long as they are, with the length and what it is to in words', () => {
    for (const [id, words] of [
      ['s3', ' clear of the ground'],
      ['s5.end.left', ' to the anchor post'],
    ] as const) {
      const gaps = gapsOf(id, projectOf(design, demoCatalog, dock))
      const { lines, notes } = measureGaps(gaps, english('imperial'))
      expect(notes.map((n) => n.text)).toEqual(
        gaps.map((g) => `${formatLength(g.gap, english('imperial'))}${words}`),
      )
      expect(lines.length).toBe(1)
      const [{ from, to, stroke }] = lines as [(typeof lines)[0]]
      expect(Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2])).toBeCloseTo(gaps[0]!.gap, 6)
      expect(Math.hypot(...stroke!)).toBeCloseTo(0.05, 6)
      expect(stroke![0] * (to[0] - from[0]) + stroke![1] * (to[1] - from[1])).toBeCloseTo(0, 6)
    }
  })

  it('are none where nothing is near', () => {
    expect(measureGaps([], english('metric'))).toEqual({ lines: [], notes: [] })
  })
})
