/** Clashes by hand: docks of which one can see on paper what is in whose way. */
import { describe, expect, it } from 'vitest'
import { clashFindings, clearances } from '../../geometry/index.ts'
import { demoCatalog, derive, makeBed } from '../../rules/index.ts'
import { parsedDesign } from '../support/arbitraries.ts'
import { contractDemo } from '../support/worked-designs.ts'

function look(dockPart: object, sitePart: object = {}) {
  const design = parsedDesign({
    ...contractDemo,
    site: { ...contractDemo.site, ...sitePart },
    dock: { ...contractDemo.dock, ...dockPart },
  })
  const dock = derive(design, demoCatalog)
  const found = clearances(dock, design, demoCatalog, makeBed(design.site))
  return { dock, found, findings: clashFindings(found, dock) }
}

describe('clashes', () => {
  it('are none in the demo dock', () => {
    const { found, findings } = look({})
    expect(found.length).toBeGreaterThan(10)
    expect(found.filter((c) => c.clash)).toEqual([])
    expect(findings).toEqual([])
  })

  it('tell a leg from the rail of its own frame: 2 in rail, axis 3.4375 in off the edge, so 0.087313 − 0.0508 − 0.0301625 = 6.35 mm', () => {
    const { found } = look({})
    const gaps = found.filter(
      (c) => c.a.kind === 'frame' && c.b?.kind === 'leg' && c.a.section === c.b.section,
    )
    expect(gaps.length).toBe(10)
    for (const { gap } of gaps) expect(gap).toBeCloseTo(0.0063505, 6)
  })

  it('are found where a mud pad 14 in wide reaches under an anchor post 3 in off the edge', () => {
    const { found, findings } = look({ pad: 'mud-pad-14' })
    const clash = found.find((c) => c.clash)!
    expect([clash.a.kind, clash.b?.kind]).toEqual(['foot-pad', 'anchor-post'])
    expect(findings[0]).toMatchObject({
      code: 'clash',
      severity: 'stop',
      parts: ['s5.end.left', 'anchor-post.1'],
      values: { a: { value: 'foot-pad' }, b: { value: 'anchor-post' } },
    })
    expect(findings.map((f) => f.parts.join())).toEqual([...new Set(findings.map((f) => f.parts.join()))])
  })

  it('with the ground are left to the finding that the dock has of them', () => {
    const { dock, found, findings } = look({ start: -2.5, ramp: false, sections: 3 })
    expect(dock.findings.some((f) => f.code === 'frame-in-bed')).toBe(true)
    const sunk = found.filter((c) => c.clash && c.b === null && c.a.kind === 'frame')
    expect(sunk.length).toBeGreaterThan(0)
    expect(findings.filter((f) => f.values.b?.value === 'bed' && f.values.a?.value === 'frame')).toEqual([])
  })

  it('of sections that lie on one another are left to the finding that the dock has of them', () => {
    const plan = [
      { id: 's1', on: null },
      { id: 's2', on: 's1', edge: 'end', with: 'start' },
      { id: 's3', on: 's1', edge: 'left', with: 'start', along: 1 },
      { id: 's4', on: 's3', edge: 'right', with: 'start' },
      { id: 's5', on: 's4', edge: 'right', with: 'start' },
    ]
    const { dock, found, findings } = look({
      plan,
      sections: undefined,
      head: undefined,
      ramp: undefined,
      extras: {},
    })
    expect(dock.findings.some((f) => f.code === 'sections-overlap')).toBe(true)
    expect(found.some((c) => c.clash)).toBe(true)
    const told = dock.findings.filter((f) => f.code === 'sections-overlap').map((f) => f.parts)
    for (const f of findings) {
      const sections = f.parts.map((id) => id.split('.')[0]!)
      expect(told.some((ids) => sections.every((id) => ids.includes(id)))).toBe(false)
    }
  })

  it('are not what only touches: a frame flush with the wall that it starts at', () => {
    const { found } = look(
      { start: 0, ramp: false, sections: 2, deckHeight: 0.5, extras: {} },
      {
        shore: { kind: 'wall', height: 0.45 },
        soundings: contractDemo.site.soundings.map((s) => ({ ...s, depth: s.depth + 0.6 })),
      },
    )
    const atWall = found.find((c) => c.b === null && c.a.kind === 'frame' && c.a.section === 's1')
    expect(atWall).toMatchObject({ gap: 0, clash: false })
  })
})
