/** Clashes by hand: docks of which one can see on paper what is in whose way. */
import { describe, expect, it } from 'vitest'
import { clashesOf, withClashes } from '../../rules/clearance/clashes.ts'
import { clearances } from '../../rules/clearance/clearance.ts'
import {
  applyPatch,
  type Design,
  type Dock,
  demoCatalog,
  deriveKit,
  english,
  findingText,
  formatLength,
  makeBed,
  remedyText,
} from '../../rules/index.ts'
import { parsedDesign } from '../support/arbitraries.ts'
import { deriveAtOnce } from '../support/at-once.ts'
import { contractDemo } from '../support/worked-designs.ts'

const judged = (dock: Dock, design: Design): Dock =>
  withClashes(dock, clashesOf(dock, deriveKit(design, demoCatalog)))

function look(dockPart: object, sitePart: object = {}) {
  const design = parsedDesign({
    ...contractDemo,
    site: { ...contractDemo.site, ...sitePart },
    dock: { ...contractDemo.dock, ...dockPart },
  })
  const dock = deriveAtOnce(design, demoCatalog)
  const found = clearances(dock, demoCatalog, makeBed(design.site))
  const all = judged(dock, design)
  return { design, dock, found, all, findings: all.findings.filter((f) => !dock.findings.includes(f)) }
}

describe('clashes', () => {
  it('are none in the demo dock', () => {
    const { found, findings, dock, all } = look({})
    expect(found.length).toBeGreaterThan(10)
    expect(found.filter((c) => c.clash)).toEqual([])
    expect(findings).toEqual([])
    expect(all).toBe(dock)
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
    // By hand, 6 in from the corner: a post by rule keeps clear of it.
    const by = { code: 'anchor-post', section: 's5', edge: 'left', along: 2.286 }
    const bumper = { code: 'bumper', section: 's5', edge: 'left', along: 0.4 }
    const elsewhere = { ...by, section: 's9' }
    const { found, findings, all, design } = look({
      pad: 'mud-pad-14',
      placed: [elsewhere, bumper, by],
      extras: { 'anchor-post': 2 },
    })
    const clash = found.find((c) => c.clash)!
    expect([clash.a.kind, clash.b?.kind]).toEqual(['foot-pad', 'anchor-post'])
    expect(findings[0]).toMatchObject({
      code: 'parts-clash',
      severity: 'stop',
      parts: ['s5.end.left', 'anchor-post.1'],
      values: { a: { value: 'foot-pad' }, b: { value: 'anchor-post' } },
    })
    expect(findings.map((f) => f.parts.join())).toEqual([...new Set(findings.map((f) => f.parts.join()))])
    expect(findingText(findings[0]!, 'plain', english('imperial'))).toBe(
      `Two parts would be in the same spot, by ${inches(findings[0]!.values.depth!.value)}: foot pad and anchor post.`,
    )
    // Its remedy is a step that makes it go.
    expect(remedyText(findings[0]!.remedy!)).toBe('Leave out: Anchor post')
    expect(findings[0]!.remedy!.patch).toEqual([{ op: 'remove', path: '/dock/placed/2' }])
    const mended = applyPatch(design, findings[0]!.remedy!.patch)
    expect(judged(deriveAtOnce(mended, demoCatalog), mended).findings.map((f) => f.code)).not.toContain(
      'parts-clash',
    )
    expect(all.findings.map((f) => f.severity)).toEqual(
      [...all.findings].map((f) => f.severity).sort((a, b) => RANK.indexOf(a) - RANK.indexOf(b)),
    )
  })

  it('with the ground are left to the finding that the dock has of them', () => {
    const { dock, found, findings } = look({ start: -2.5, ramp: false, sections: 3 })
    expect(dock.findings.some((f) => f.code === 'frame-in-bed')).toBe(true)
    const sunk = found.filter((c) => c.clash && c.b === null && c.a.kind === 'frame')
    expect(sunk.length).toBeGreaterThan(0)
    expect(findings.filter((f) => f.code === 'part-in-bed' && f.values.a?.value === 'frame')).toEqual([])
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

  it('with the ground are told of a ramp that comes to rest nowhere, and is shown level', () => {
    // Hinged at a wall so little lower than the deck that it cannot be let down: 0.876 − 0.1778 = 0.6982 m is under 0.822 m.
    const wall = { shore: { kind: 'wall', height: 0.822 } }
    const { dock, findings } = look({ start: 0, deckHeight: 0.876, sections: 2, extras: {} }, wall)
    expect(dock.ramp).toBe(null)
    expect(dock.findings.map((f) => f.code)).toContain('ramp-no-bank')
    const sunk = findings.filter((f) => f.code === 'part-in-bed' && f.parts.includes('s1'))
    expect(sunk.map((f) => f.parts)).toEqual([['s1']])
    expect(Number(sunk[0]!.values.depth!.value)).toBeCloseTo(0.1238, 4)
    // One that rests on the shore is in its place.
    const resting = look({ start: 1, deckHeight: 0.876, sections: 2, extras: {} }, wall)
    expect(resting.dock.ramp).not.toBe(null)
    expect(resting.findings.filter((f) => f.parts.includes('s1'))).toEqual([])
  })

  it('with the ground tell how far the part must be lifted: a bed raised by 0.3 m under a brace', () => {
    const { dock } = look({})
    const pair = dock.pairs.find((p) => p.brace)!
    const low = dock.legs.find((leg) => leg.id === pair.brace!.low)!
    // A ridge across the dock, narrow enough to be between the pads and high enough to be in the brace.
    const ridge = contractDemo.site.soundings.flatMap((s) => [s])
    expect(low.x).toBeGreaterThan(ridge[0]!.distance)
    const clear = pair.brace!.bedClearance
    const sunk = {
      ...dock,
      placements: dock.placements.map((p) =>
        p.of === pair.id && p.kind === 'brace'
          ? { ...p, at: [p.at[0], p.at[1], p.at[2] - clear - 0.05] as const }
          : p,
      ),
    }
    const design = parsedDesign(contractDemo)
    const [finding] = judged(sunk, design).findings.filter((f) => f.code === 'part-in-bed')
    expect(finding).toMatchObject({ severity: 'stop', parts: [pair.id], remedy: null })
    // The Dock counts from half a clamp, 1 in, under the hole; the tube's end lies 0.0127 · 0.46762 + 0.015875 · 0.88392 = 0.019971 m
    // under it: 0.05 − 0.0254 + 0.019971 = 0.044571 m.
    expect(Math.abs(Number(finding!.values.depth!.value) - 0.044571)).toBeLessThan(2e-4)
  })
})

const RANK = ['stop', 'warn', 'note']
const inches = (meters: unknown): string => formatLength(Number(meters), english('imperial'))
