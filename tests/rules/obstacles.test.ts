/** What lies on the bed: its solids by hand, what is found of it with figures worked by hand, and the ways round it. */
import jsonPatch, { type Operation } from 'fast-json-patch'
import { describe, expect, it } from 'vitest'
import { assessKit } from '../../rules/assess-kit.ts'
import { clashesOf, withClashes } from '../../rules/clearance/clashes.ts'
import { support } from '../../rules/clearance/convex.ts'
import { distance } from '../../rules/clearance/distance.ts'
import { overlapOf } from '../../rules/clearance/overlap.ts'
import type { Obstacle } from '../../rules/design/index.ts'
import {
  type Design,
  type Dock,
  demoCatalog,
  derive,
  deriveKit,
  english,
  type Finding,
  findingText,
  makeBed,
  parseDesign,
  remedyText,
} from '../../rules/index.ts'
import { obstacleOutline, obstacleProfile, obstacleSolid } from '../../rules/site/obstacles.ts'
import { cylinder } from '../geometry/support/shapes.ts'
import { validate } from '../support/validate.ts'
import { designOf, flat } from './findings/support.ts'

const level = { bedAt: () => -1 }
const of = (more: Partial<Obstacle>): Obstacle => ({
  id: 'b1',
  kind: 'boulder',
  x: 4,
  y: 0,
  length: 0.8,
  width: 0.6,
  height: 0.5,
  heading: 0,
  ...more,
})

describe('the solid of an obstacle', () => {
  it('is as long, wide and high as it was measured', () => {
    for (const kind of ['boulder', 'stump', 'other'] as const) {
      const solid = obstacleSolid(of({ kind }), level)
      expect(support(solid, [1, 0, 0])[0], kind).toBeCloseTo(4.4, 9)
      expect(support(solid, [0, 1, 0])[1], kind).toBeCloseTo(0.3, 9)
      expect(support(solid, [0, 0, 1])[2], kind).toBeCloseTo(-0.5, 9)
      const turned = obstacleSolid(of({ kind, heading: 90 }), level)
      expect(support(turned, [1, 0, 0])[0], kind).toBeCloseTo(4.3, 9)
      expect(support(turned, [0, 1, 0])[1], kind).toBeCloseTo(0.4, 9)
    }
  })

  it('stands on the lowest bed under its rim, with its top over the bed at its middle', () => {
    // Falls 1 in 2 lakeward: under the far edge 0.2 m lower than at the middle.
    const slope = { bedAt: (x: number) => -x / 2 }
    for (const kind of ['stump', 'other'] as const) {
      const solid = obstacleSolid(of({ kind }), slope)
      expect(support(solid, [0, 0, -1])[2]).toBeCloseTo(-2.2, 9)
      expect(support(solid, [0, 0, 1])[2]).toBeCloseTo(-1.5, 9)
    }
  })

  it('clears a tube by what circles say', () => {
    // A boulder as round as a ball of 0.5 m, its middle on the bed; a leg of 0.05 m 1.2 m off: 1.2 - 0.5 - 0.05.
    const ball = obstacleSolid(of({ length: 1, width: 1 }), level)
    const tube = (x: number) => cylinder([4 + x, 0, 0], [0, 0, 1], 2, 0.05)
    expect(distance(tube(1.2), ball).gap).toBeCloseTo(0.65, 5)
    // Its middle 0.5 m off: it is to be shifted 0.5 + 0.05 - 0.5.
    expect(overlapOf(tube(0.5), ball)).toBeCloseTo(0.05, 3)
    // A tube over it: its foot 0.1 m over the top, -1 + 0.5.
    expect(distance(cylinder([4, 0, 0.6], [0, 0, 1], 1, 0.05), ball).gap).toBeCloseTo(0.1, 5)
  })

  it('is drawn as it is measured', () => {
    const outline = obstacleOutline(of({ heading: 90 }))
    expect(Math.max(...outline.map(([, y]) => y))).toBeCloseTo(0.4, 9)
    expect(Math.max(...outline.map(([x]) => x))).toBeCloseTo(4.3, 9)
    const profile = obstacleProfile(of({}), level)
    expect(Math.max(...profile.map(([, z]) => z))).toBeCloseTo(-0.5, 9)
    expect([profile[0]![0], profile.at(-1)![0]]).toEqual([3.6, 4.4])
  })
})

const withObstacles = (obstacles: Partial<Obstacle>[], dock: Record<string, unknown> = {}): Design =>
  designOf({ site: { ...flat(0.9), obstacles: obstacles.map((o) => of(o)) }, dock })
/** But for its structure, which says nothing of it. */
function found(design: Design): Dock {
  const kit = deriveKit(design, demoCatalog)
  const dock = assessKit(kit)
  return withClashes(dock, clashesOf(dock, kit))
}
const told = (design: Design, code: string): Finding[] =>
  found(design).findings.filter((f) => f.code === code)
const plain = found(withObstacles([]))
const leg = plain.legs.find(({ id }) => id === 's3.end.left')!
const pair = plain.pairs.find(({ id }) => id === 's3.end')!
const brace = pair.brace!

describe('what is found of it', () => {
  it('a leg that would stand on it, with how far', () => {
    const [hit, ...more] = told(
      withObstacles([{ kind: 'other', x: leg.x + 0.3, y: leg.y, length: 0.7, width: 0.4, height: 0.3 }]),
      'leg-on-obstacle',
    )
    expect(more).toEqual([])
    expect(hit!.severity).toBe('stop')
    expect(hit!.parts).toEqual([leg.id])
    // Its edge is 0.05 m before the leg's axis; the pad, half a plate long, is deeper in it than the tube.
    const pad = demoCatalog.pads.find(({ code }) => code === leg.pad)!
    expect(hit!.values.part!.value).toBe('foot-pad')
    expect(Number(hit!.values.depth!.value)).toBeLessThanOrEqual(pad.plate.length / 2 + 0.05 + 1e-3)
    expect(Number(hit!.values.depth!.value)).toBeGreaterThan(0.02)
  })

  it('a brace that would run into it, and one that comes near', () => {
    // Under the middle of the brace: half way between its holes, in a boulder whose top is 5 cm over it.
    const middle = (brace.lowZ + brace.highZ) / 2
    const under = (over: number) =>
      withObstacles([{ x: leg.x, y: 0, length: 0.1, width: 0.1, height: middle + 0.9 + over }])
    const [hit] = told(under(0.05), 'part-in-obstacle')
    expect(hit!.parts).toEqual([pair.id, ...pair.legs])
    expect(hit!.values.part!.value).toBe('brace')
    expect(told(under(-0.06), 'part-in-obstacle')).toEqual([])
    const [near] = told(under(-0.06), 'part-near-obstacle')
    expect(near!.parts[0]).toBe(pair.id)
    expect(Number(near!.values.least!.value)).toBeCloseTo(0.0762, 4)
    expect(Number(near!.values.clear!.value)).toBeLessThan(0.06)
    expect(told(under(-0.25), 'part-near-obstacle')).toEqual([])
  })

  it('a leg nearer to it than it is known, and none that is farther', () => {
    // The pad reaches half a plate's width aside of the leg; the box's edge stands that and 5 cm off, or 15.
    const pad = demoCatalog.pads.find(({ code }) => code === leg.pad)!
    const beside = (off: number) =>
      withObstacles([
        {
          kind: 'other',
          x: leg.x,
          y: leg.y + pad.plate.width / 2 + off + 0.1,
          length: 0.2,
          width: 0.2,
          height: 0.02,
        },
      ])
    const [near] = told(beside(0.05), 'part-near-obstacle')
    expect(near!.parts).toEqual([leg.id])
    expect(near!.values.clear!.value).toBeCloseTo(0.05, 4)
    expect(told(beside(0.15), 'part-near-obstacle')).toEqual([])
  })

  it('the boat over it at the low level, by its draught', () => {
    const boat = { length: 4, height: 0.5, draught: 0.2, mass: 500, side: 'left' }
    const last = plain.sections.at(-1)!
    const low = withObstacles([]).site.levels.low
    // Water over the top at the low level, less the draught: 0.9 + low - height - 0.2.
    const over = (clear: number) =>
      withObstacles(
        [
          {
            kind: 'other',
            x: last.x + last.length / 2,
            y: last.width / 2 + 0.4,
            length: 0.2,
            width: 0.2,
            height: 0.9 + low - 0.2 - clear,
          },
        ],
        { boat },
      )
    const [hit] = told(over(-0.1), 'boat-on-obstacle')
    expect(hit!.parts).toEqual([last.id])
    expect(hit!.values.depth!.value).toBeCloseTo(0.1, 3)
    const [near] = told(over(0.2), 'boat-near-obstacle')
    expect(near!.values.clear!.value).toBeCloseTo(0.2, 4)
    expect(told(over(0.35), 'boat-near-obstacle')).toEqual([])
  })

  it('is told in words in both units', () => {
    const design = withObstacles([
      { x: leg.x, y: leg.y },
      { id: 'b2', kind: 'stump', x: leg.x + 1.2, y: 0, height: 1.25 },
    ])
    const dock = found(design)
    expect(validate(dock, design, demoCatalog)).toEqual([])
    const { findings } = dock
    const codes = new Set(findings.map(({ code }) => code))
    expect(codes).toContain('leg-on-obstacle')
    expect(codes).toContain('part-in-obstacle')
    for (const finding of findings)
      for (const form of ['plain', 'text'] as const)
        for (const units of ['metric', 'imperial'] as const)
          expect(findingText(finding, form, english(units))).not.toMatch(/[{}]|undefined|NaN|name\./)
  })

  it('two of one id are refused with their place', () => {
    const design = withObstacles([])
    const twice = { ...design, site: { ...design.site, obstacles: [of({}), of({ x: 9 })] } }
    expect(parseDesign(twice)).toMatchObject({
      ok: false,
      issues: [{ path: 'site.obstacles[1].id', expected: 'ids that differ' }],
    })
  })
})

describe('a way round it', () => {
  const mended = (design: Design, finding: Finding): Design => {
    const parsed = parseDesign(
      jsonPatch.applyPatch(
        structuredClone(design),
        structuredClone([...finding.remedy!.patch]) as Operation[],
        true,
      ).newDocument,
    )
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
    return parsed.value
  }
  const ways: readonly [string, string, Design][] = [
    [
      'leg-on-obstacle',
      'slide-(out|back)',
      withObstacles([{ x: leg.x, y: leg.y, length: 0.3, width: 0.3, height: 0.2 }]),
    ],
    [
      'part-in-obstacle',
      'turn-braces',
      withObstacles([
        {
          x: leg.x,
          y: leg.y > 0 === (brace.low === leg.id) ? 0.25 : -0.25,
          length: 0.2,
          width: 0.2,
          height: 0.55,
        },
      ]),
    ],
    // A sill all along the dock: sliding meets it everywhere, and whichever way the braces slope.
    [
      'part-in-obstacle',
      'skip-brace',
      withObstacles([
        {
          kind: 'other',
          x: leg.x,
          y: 0,
          length: 4.8,
          width: 0.2,
          height: (brace.lowZ + brace.highZ) / 2 + 0.9,
        },
      ]),
    ],
    [
      'boat-on-obstacle',
      'boat-over',
      withObstacles([{ x: plain.sections.at(-1)!.x + 1, y: 1.2, length: 0.8, width: 0.6, height: 0.6 }], {
        boat: { length: 4, height: 0.5, draught: 0.3, mass: 500, side: 'left' },
      }),
    ],
  ]
  it.each(ways)('of %s: %s, and the finding is gone', (code, key, design) => {
    const { findings } = derive(design, demoCatalog)
    const offered = findings.filter((f) => f.code === code && f.remedy)
    expect(offered.map(({ remedy }) => remedy!.key).join()).toMatch(new RegExp(`^${key}`))
    const finding = offered[0]!
    expect(remedyText(finding.remedy!)).not.toMatch(/[{}]|undefined|NaN|^remedy/)
    const before = told(design, code).length
    expect(told(mended(design, finding), code).length).toBeLessThan(before)
  })
})

describe('what lies elsewhere', () => {
  it('changes nothing of the dock', () => {
    const far = withObstacles([{ x: 60, y: 40 }])
    const { fingerprint: _, ...dock } = found(far)
    const { fingerprint: __, ...before } = plain
    expect(dock).toEqual(before)
    expect(makeBed(far.site).bedAt(3, 0)).toBe(makeBed(withObstacles([]).site).bedAt(3, 0))
  })
})
