/** Parts at their places, worked by hand: which legs pair, where pieces of frames lie, how pieces turn. */
import { describe, expect, it } from 'vitest'
import { shopOf } from '../../rules/catalog-index.ts'
import { type Catalog, demoCatalog, demoDesign, deriveKit } from '../../rules/index.ts'
import type { PlacedSection } from '../../rules/layout/index.ts'
import { frameBody, padBody, padHeight, panelBody } from '../../rules/parts/bodies.ts'
import { type EmitPart, emitIn, type Pose, spread } from '../../rules/parts/emit-part.ts'
import { emitExtra } from '../../rules/parts/extras.ts'
import { emitFrame } from '../../rules/parts/frames.ts'
import type { PlacedLeg } from '../../rules/parts/legs.ts'
import { pairLegs } from '../../rules/parts/pairs.ts'
import { headingOf, headingTurn, yawPitch } from '../../rules/parts/turn.ts'
import { parsed } from '../support/by-hand.ts'

const shop = shopOf(demoCatalog)

/** A leg by itself at the end of a section of its own. */
const leg = (index: number, x: number, y: number, corner: PlacedLeg['corner'] = 'end.left'): PlacedLeg =>
  ({ id: `s${index}.${corner}`, section: { id: `s${index}`, index, c: 1, s: 0 }, corner, x, y }) as PlacedLeg
const pairIds = (...legs: PlacedLeg[]) => pairLegs(legs, shop, 'left').map(({ id }) => id)

describe('legs left over', () => {
  // The demo's braces span 0.99 to 1.1 and 1.295 to 1.405 m.
  it('pair wherever they stand, along and across, whichever comes first', () => {
    for (let ox = -3; ox < 3; ox += 0.37)
      for (let oy = -3; oy < 3; oy += 0.41)
        for (const [dx, dy] of [
          [1.05, 0],
          [0, 1.05],
          [-1.05, 0],
          [0, -1.05],
        ] as const)
          expect(pairIds(leg(1, ox, oy), leg(2, ox + dx, oy + dy))).toEqual(['s1.end.left~s2.end.left'])
  })

  it('pair from the shortest to the longest spacing of a brace, within 5 cm of one line', () => {
    const apart = (dx: number, dy = 0) => pairIds(leg(1, 0, 0), leg(2, dx, dy)).length
    expect([0.98, 0.9899, 0.99, 1.405, 1.4051, 2].map((d) => apart(d))).toEqual([0, 0, 1, 1, 0, 0])
    expect([0.05, 0.0501, -0.05, -0.0501].map((d) => apart(1.05, d))).toEqual([1, 0, 1, 0])
    expect(apart(0.05, 1.05)).toBe(1)
    expect(apart(0.0501, 1.05)).toBe(0)
    expect(apart(0.8, 0.8)).toBe(0)
  })

  it('pair nearest first, each once', () => {
    // 1.1 m to the first, 1.0 m to the second.
    expect(pairIds(leg(1, 0, 0), leg(2, 1.1, 0), leg(3, 2.1, 0))).toEqual(['s2.end.left~s3.end.left'])
    expect(pairIds(leg(1, 0, 0), leg(2, 1, 0), leg(3, 2.1, 0), leg(4, 3.1, 0))).toEqual([
      's1.end.left~s2.end.left',
      's3.end.left~s4.end.left',
    ])
    expect(pairIds(leg(1, 0, 0))).toEqual([])
  })

  it('of two as near as each other take the one of the earlier section, and its start before its end', () => {
    expect(pairIds(leg(1, 0, 0), leg(2, 1, 0), leg(3, 2, 0))).toEqual(['s1.end.left~s2.end.left'])
    const middle = leg(2, 1, 0)
    const by = (first: 'left' | 'right') =>
      pairLegs([leg(1, 0, 0, 'end.left'), leg(1, 2, 0, 'start.right'), middle], shop, first).map(
        ({ id }) => id,
      )
    // Start corners come before end corners.
    expect(by('left')).toEqual(['s1.start.right~s2.end.left'])
  })

  it('stand left first across, shore first along', () => {
    const first = (a: PlacedLeg, b: PlacedLeg) => {
      const [pair] = pairLegs([a, b], shop, 'left')
      return [pair!.legs[0].id, pair!.across, pair!.spacing]
    }
    expect(first(leg(1, 0, 0), leg(2, 0, 1.05))).toEqual(['s2.end.left', true, 1.05])
    expect(first(leg(1, 0, 1.05), leg(2, 0, 0))).toEqual(['s1.end.left', true, 1.05])
    expect(first(leg(1, 1.05, 0), leg(2, 0, 0))).toEqual(['s2.end.left', false, 1.05])
    expect(first(leg(1, 0, 0), leg(2, 1.05, 0))).toEqual(['s1.end.left', false, 1.05])
  })

  it('are those that no edge of their own pairs', () => {
    const section = { id: 's1', index: 1, c: 1, s: 0 }
    const own = (corner: PlacedLeg['corner'], x: number, y: number) =>
      ({ ...leg(1, x, y, corner), section }) as PlacedLeg
    const legs = [
      own('start.left', 0, 1),
      own('start.right', 0, 0),
      own('end.left', 2, 1),
      own('end.right', 2, 0),
    ]
    expect(pairIds(...legs)).toEqual(['s1.start', 's1.end'])
    expect(pairIds(legs[0]!, legs[2]!, legs[3]!)).toEqual(['s1.end'])
  })
})

/** A vector turned by a unit quaternion. */
function turned([x, y, z, w]: readonly number[], [a, b, c]: readonly [number, number, number]): number[] {
  const [tx, ty, tz] = [2 * (y! * c - z! * b), 2 * (z! * a - x! * c), 2 * (x! * b - y! * a)]
  return [a + w! * tx + y! * tz - z! * ty, b + w! * ty + z! * tx - x! * tz, c + w! * tz + x! * ty - y! * tx]
}
const close = (actual: readonly number[], expected: readonly number[]): void => {
  actual.forEach((value, i) => {
    expect(value).toBeCloseTo(expected[i]!, 5)
  })
}

describe('turns', () => {
  it('by quarters carry the x axis round, w never under nothing', () => {
    for (const [heading, to] of [
      [0, [1, 0, 0]],
      [90, [0, 1, 0]],
      [180, [-1, 0, 0]],
      [270, [0, -1, 0]],
      [-90, [0, -1, 0]],
      [450, [0, 1, 0]],
    ] as const) {
      close(turned(headingTurn(heading), [1, 0, 0]), to)
      expect(headingTurn(heading)[3]).toBeGreaterThanOrEqual(0)
      expect(headingOf(to[0], to[1])).toBe(((heading % 360) + 360) % 360)
    }
  })

  it('by yaw and pitch point where they say, y level', () => {
    for (const yaw of [0, 1, 2.5, Math.PI, -2])
      for (const pitch of [0, 0.5, -0.7]) {
        const q = yawPitch(yaw, pitch)
        expect(q[3]).toBeGreaterThanOrEqual(0)
        close(turned(q, [1, 0, 0]), [
          Math.cos(yaw) * Math.cos(pitch),
          Math.sin(yaw) * Math.cos(pitch),
          Math.sin(pitch),
        ])
        close(turned(q, [0, 1, 0]), [-Math.sin(yaw), Math.cos(yaw), 0])
      }
  })

  it('on a tilted ramp are the quarter first, then the tilt; its places go down with it', () => {
    const tilt = 0.3
    const pose = { placed: { heading: 0 } as PlacedSection, x: 2, y: 0.5, z: 1, tilt } satisfies Pose
    const seen: number[][] = []
    const emit: EmitPart = (_type, _of, _section, x, y, z, turn) => void seen.push([x, y, z, ...turn])
    for (const quarter of [0, 90, 180, 270]) emitIn(emit, shop.types.tie, 'r', pose, 1, 0.2, 0.1, quarter)
    const [c, s] = [Math.cos(tilt), Math.sin(tilt)]
    const axes = [
      [c, 0, s],
      [0, 1, 0],
      [-c, 0, -s],
      [0, -1, 0],
    ]
    seen.forEach(([x, y, z, ...q], i) => {
      // 1 m along and 0.1 m over the ramp's own plane.
      close([x!, y!, z!], [2 + c - 0.1 * s, 0.7, 1 + s + 0.1 * c])
      close(turned(q, [1, 0, 0]), axes[i]!)
      close(turned(q, [0, 0, 1]), [-s, 0, c])
      expect(q[3]).toBeGreaterThanOrEqual(0)
    })
  })

  it('spread evenly about the middle', () => {
    expect([0, 1, 2, 3].map((i) => spread(i, 4, 8))).toEqual([-3, -1, 1, 3])
    expect(spread(0, 1, 8)).toBe(0)
  })
})

describe('a frame', () => {
  const frame = demoCatalog.frames[0]!
  const mid = ({ from, to }: { from: readonly number[]; to: readonly number[] }) =>
    from.map((v, k) => (v + to[k]!) / 2)

  it('of 4 x 8 ft is two rails, two ends, three cross members at the quarters on its underside, four sleeves', () => {
    const pieces = frameBody(demoCatalog, frame)
    expect(pieces).toHaveLength(2 + 2 + 3 + 4)
    // Top of the frame 25.4 mm down; rails 152.4 mm high and 50.8 mm wide, cross members 50.8 mm square.
    close(mid(pieces[0]!), [1.2192, 0.6096 - 0.0254, -0.0254 - 0.0762])
    close(mid(pieces[1]!), [1.2192, -0.6096 + 0.0254, -0.0254 - 0.0762])
    close(mid(pieces[2]!), [0.0254, 0, -0.1016])
    close(mid(pieces[3]!), [2.4384 - 0.0254, 0, -0.1016])
    for (const i of [0, 1, 2]) {
      close(mid(pieces[4 + i]!), [0.6096 * (i + 1), 0, -0.0254 - 0.1524 + 0.0254])
      close(pieces[4 + i]!.from, [0.6096 * (i + 1), -0.5588, -0.1524])
    }
    const sleeves = pieces.slice(7).map(mid)
    expect(sleeves).toHaveLength(4)
    for (const [i, [x, y]] of [
      [0.087313, 0.522287],
      [0.087313, -0.522287],
      [2.351087, 0.522287],
      [2.351087, -0.522287],
    ].entries())
      close(sleeves[i]!, [x!, y!, -0.0254 - 0.0762])
  })

  it('has its clips at the edges of each panel, an odd one on the left', () => {
    const copy = structuredClone(demoCatalog) as unknown as { rules: { clipsPerPanel: { value: number } } }
    const clips = (count: number) => {
      copy.rules.clipsPerPanel.value = count
      const own = shopOf(structuredClone(copy) as unknown as Catalog)
      const seen: number[][] = []
      const placed = { frame, id: 's1', heading: 0, c: 1, s: 0 } as PlacedSection
      emitFrame(
        (type, _of, _section, x, y, z) => void (type.kind === 'deck-clip' && seen.push([x, y, z])),
        { placed, x: 0, y: 0, z: 0, tilt: 0 },
        [],
        own,
        undefined,
      )
      return seen
    }
    // Two panels, their middles at 0.6096 and 1.8288 m, 1.21285 m long, 1.2192 m wide.
    const two = clips(2)
    expect(two).toHaveLength(4)
    close(
      two.flat(),
      [0.6096, 0.6096, -0.0254, 0.6096, -0.6096, -0.0254, 1.8288, 0.6096, -0.0254, 1.8288, -0.6096, -0.0254],
    )
    const three = clips(3)
    const quarter = 1.21285 / 4
    close(three.slice(0, 3).flat(), [
      0.6096 - quarter,
      0.6096,
      -0.0254,
      0.6096 - quarter,
      -0.6096,
      -0.0254,
      0.6096 + quarter,
      0.6096,
      -0.0254,
    ])
  })
})

describe('a panel and a pad', () => {
  const panel = demoCatalog.decking.panels[0]!
  it('is planks from end to end, the outer ones cut back for the legs, on battens', () => {
    const pieces = panelBody(demoCatalog, panel)
    expect(pieces).toHaveLength(8 + 3)
    const wide = (i: number) => pieces[i]!.to[1] - pieces[i]!.from[1]
    const plank = demoCatalog.stock[panel.plank.stock] as { width: number; height: number }
    expect(pieces[0]!.from[0]).toBeCloseTo(-1.21285 / 2 + plank.width / 2, 9)
    expect(pieces[7]!.from[0]).toBeCloseTo(1.21285 / 2 - plank.width / 2, 9)
    // 5 1/2 in of notch take one plank of as much: 1.2192 − 2 · 0.1397 m.
    expect(pieces.slice(0, 8).map((_, i) => Math.round(wide(i) * 1e4) / 1e4)).toEqual([
      ...Array(7).fill(1.2192),
      0.9398,
    ])
    // Battens under the planks at a sixth, the middle, five sixths of the width.
    expect(pieces.slice(8).map(({ from }) => Math.round(from[1] * 1e4) / 1e4)).toEqual([-0.4064, 0, 0.4064])
    const batten = demoCatalog.stock[panel.batten.stock] as { height: number }
    expect(pieces[8]!.from[2]).toBeCloseTo(-plank.height - batten.height / 2, 9)
  })

  it('of one plank has it in the middle', () => {
    const one = { ...panel, plank: { ...panel.plank, count: 1 } }
    expect(panelBody(demoCatalog, one)[0]!.from[0]).toBe(0)
  })

  it('is a plate, its upturned edge at its far end, and a socket; as high as the higher of both', () => {
    const pad = demoCatalog.pads[0]!
    const [plate, lip, socket] = padBody(demoCatalog, pad)
    close([...plate!.from, ...plate!.to], [-0.0889, 0, 0.003175, 0.0889, 0, 0.003175])
    close([...lip!.from, ...lip!.to], [0.0889 - 0.003175, 0, 0.00635, 0.0889 - 0.003175, 0, 0.0381])
    close([...socket!.from, ...socket!.to], [0, 0, 0.00635, 0, 0, 0.08255])
    expect(padHeight(pad)).toBeCloseTo(0.08255, 9)
    expect(padHeight({ ...pad, lip: 0.1 })).toBe(0.1)
  })
})

describe('an anchor post', () => {
  it('stands off its edge, two clamps at the quarters of the frame’s height, their bolts inward', () => {
    const { wind: _wind, ...site } = demoDesign.site
    for (const [edge, x, y, inward] of [
      ['left', 5, 0.6096 + 0.1016, [0, -1, 0]],
      ['right', 5, -0.6096 - 0.1016, [0, 1, 0]],
    ] as const) {
      const design = parsed({
        ...demoDesign,
        site: { ...site, soundings: [0, 60].map((distance) => ({ distance, depth: 1.2 })) },
        dock: {
          ...demoDesign.dock,
          ramp: false,
          start: 3,
          sections: 2,
          extras: {},
          placed: [{ code: 'anchor-post', section: 's1', edge, along: 2 }],
        },
      })
      const kit = deriveKit(design, demoCatalog)
      const [post] = kit.extras.placed
      close([post!.x, post!.y], [x, y])
      // 0.45 + 0.1524 + 1.2 + 0.9144 = 2.7168 m: the one of 10 ft.
      expect(post!.post!.required).toBeCloseTo(2.7168, 6)
      expect(post!.post!.stock!.code).toBe('post-10')
      const seen: { kind: string; at: number[]; turn: readonly number[] }[] = []
      emitExtra(
        (type, _of, _section, px, py, pz, turn) =>
          void seen.push({ kind: type.kind, at: [px, py, pz], turn }),
        post!,
        0.45,
        shop,
      )
      const of = (kind: string) => seen.filter((one) => one.kind === kind)
      close(of('anchor-post')[0]!.at, [x, y, -1.2 - 0.9144])
      close(of('auger')[0]!.at, [x, y, -1.2])
      const clamps = of('post-clamp')
      // Frame from 0.4246 m down by 0.1524 m: 0.3865 and 0.3103 m.
      close(
        clamps.flatMap(({ at }) => at),
        [x, y, 0.3865, x, y, 0.3103],
      )
      for (const { turn } of clamps) close(turned(turn, [1, 0, 0]), inward)
      expect(of('auger')[0]!.turn).toEqual(headingTurn(headingOf(0, edge === 'left' ? 1 : -1)))
    }
  })
})
