/** What is near a picked part, by hand. */
import { describe, expect, it } from 'vitest'
import { gapsOf } from '../../geometry/index.ts'
import { demoCatalog, makeBed, projectOf, shopOf } from '../../rules/index.ts'
import { parsedDesign } from '../support/arbitraries.ts'
import { deriveAtOnce } from '../support/at-once.ts'
import { contractDemo } from '../support/worked-designs.ts'

function look(id: string, dockPart: object = {}, sitePart: object = {}) {
  const design = parsedDesign({
    ...contractDemo,
    site: { ...contractDemo.site, ...sitePart },
    dock: { ...contractDemo.dock, ...dockPart },
  })
  const dock = deriveAtOnce(design, demoCatalog)
  return { dock, bed: makeBed(design.site), gaps: gapsOf(id, projectOf(design, demoCatalog, dock)) }
}

describe('the gaps of a picked part', () => {
  it('of a section over a level bed is its frame’s underside over the bed', () => {
    const level = { soundings: [-3, 0, 30].map((distance) => ({ distance, depth: 1 })) }
    const { dock, gaps } = look('s3', {}, level)
    const s3 = dock.sections.find((s) => s.id === 's3')!
    const { lowest } = shopOf(demoCatalog).shape(demoCatalog.frames.find((f) => f.code === s3.frame)!)
    expect(gaps.length).toBe(1)
    expect(gaps[0]!.to).toBe(null)
    expect(gaps[0]!.gap).toBeCloseTo(contractDemo.dock.deckHeight - lowest + 1, 6)
  })

  it('of a section over a slope lies at its shoreward end, square to the slope, with both ends where they are', () => {
    const { dock, bed, gaps } = look('s4')
    const [{ gap, line }] = gaps as [(typeof gaps)[0]]
    const [[x, y, z], foot] = line
    const s4 = dock.sections.find((s) => s.id === 's4')!
    expect(x).toBeLessThan(s4.x + 0.1)
    expect(z).toBeGreaterThan(bed.bedAt(x, y))
    expect(foot[2]).toBeCloseTo(bed.bedAt(foot[0], foot[1]), 4)
    expect(Math.hypot(x - foot[0], y - foot[1], z - foot[2])).toBeCloseTo(gap, 6)
    // Shorter than straight down.
    expect(gap).toBeLessThan(z - bed.bedAt(x, y))
  })

  it('of a leg is that to a post beside it, and the same seen from the post', () => {
    const { dock, gaps } = look('s5.end.left', {
      placed: [{ code: 'anchor-post', section: 's5', edge: 'left', along: 2.2 }],
    })
    const posts = dock.placements.filter((p) => p.kind === 'anchor-post').map((p) => p.of)
    expect(gaps.map((g) => g.to?.kind)).toEqual(['anchor-post'])
    const back = look(posts.find((of) => of === gaps[0]!.to!.of)!, {
      placed: [{ code: 'anchor-post', section: 's5', edge: 'left', along: 2.2 }],
    }).gaps
    expect(back.find((g) => g.to?.of === 's5.end.left')!.gap).toBeCloseTo(gaps[0]!.gap, 9)
    expect(back[0]!.line[0]).toEqual(gaps[0]!.line[1])
  })

  it('of a pair is not told to the ground: the dock has it; and of what is not there is none', () => {
    const { dock } = look('s5')
    const pair = dock.pairs.find((p) => p.brace)!
    expect(look(pair.id).gaps.some((g) => g.to === null)).toBe(false)
    expect(look('nothing').gaps).toEqual([])
  })
})
