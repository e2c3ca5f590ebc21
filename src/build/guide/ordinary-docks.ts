/**
 * Ordinary docks by seed: what a builder on inland lakes sells week by week, to count how often each finding is raised on them. Nothing
 * here looks at a finding: a draw is put back only where the depth at the lake end, or under the boat, is not what was asked for.
 *
 * Why each range is ordinary (common practice, no published source, unless said):
 * - 3 to 8 sections, one of them the ramp, of every frame that the shop makes: 7 to 24 m, from a swimmer's dock to a long one on a flat
 *   beach. Longer ones are made of other stuff.
 * - Deck 0.35 to 0.6 m over the water: a step up from a boat, and 21 in on exposed water; so the upper half of it on the open lake. Never
 *   nearer to the high level than a hand's breadth (0.16 m) or the shop's own rule, whichever is more: both are told to every customer.
 * - The bed falls 1 in 8 to 1 in 25, a little hollow or round: steeper shores have no beach to take a dock out over, flatter ones need a
 *   dock too long. A few cm of ripples, as sand and gravel have.
 * - A bank that rises 1 in 3 to 1 in 8: steeper gets a wall or stairs. Sounded some 3 m back, where the ramp will come down, or one
 *   sounding farther where it is so flat that it needs it.
 * - 4 to 8 soundings under water, not more than every other section apart, out to a little past the lake end, with a rod or a weighted
 *   tape from a boat: good to 2 or 3 cm. Two more off the line where a head goes out to the side.
 * - Sand, gravel, clay; a sixth muck, and there the shop's mud pads, which every shop sells for it.
 * - Levels: 0.1 to 0.3 m down by autumn, 0.1 to 0.25 m up in a wet spring: a lake held by a weir or dam.
 * - 0.7 to 2.0 m at the lake end: enough to swim and moor, and legs are still set standing in it or from the deck. Asked for evenly over
 *   that range; the number of sections that comes nearest is taken, as a builder does.
 * - Three of four straight; else an L, a T, or a part twice as wide.
 * - Wind and open water: `SCENES`. A cove is a few hundred meters wide and gets the wind of a summer storm broken by trees (8 to 10 m/s);
 *   a small lake is 0.6 to 2 km across and gets it whole (12 to 15 m/s, Beaufort 6 to 7).
 * - Boats: a runabout of 5 to 6 m (700 to 1500 kg, 0.4 to 0.5 m down to the drive) or a pontoon boat of 6 to 7 m (1000 to 1400 kg, 0.3 to
 *   0.45 m with its motor); it floats at its place at the low level, or nobody would moor it there.
 */
import { straightFrames } from '../../../rules/catalog/straight.ts'
import { lowLevel, underKeel } from '../../../rules/clearance/keel.ts'
import { type Catalog, type Design, deriveKit, type Kit, parseDesign } from '../../../rules/index.ts'
import { berthsOf } from '../../../rules/layout/berth.ts'
import { toPlan } from '../../../rules/layout/index.ts'
import { type Draw, drawing } from './draw.ts'
import { type Shore, shoreOf, soundingsOf } from './ordinary-shores.ts'

export type Scene = 'quiet cove' | 'open small lake'

interface SceneRanges {
  /** m/s, m, and m over the water. */
  readonly wind: readonly [number, number]
  readonly fetch: readonly [number, number]
  readonly deck: readonly [number, number]
}
export const SCENES: Readonly<Record<Scene, SceneRanges>> = {
  'quiet cove': { wind: [8, 10], fetch: [100, 400], deck: [0.35, 0.6] },
  'open small lake': { wind: [12, 15], fetch: [600, 2000], deck: [0.45, 0.6] },
}

export interface Wanted {
  readonly scene: Scene
  /** Anchor posts. */
  readonly posts: number
  readonly boat: boolean
}

const HAND = 0.16
const SECTIONS = [3, 4, 5, 6, 7, 8] as const
const END_DEPTH = [0.7, 2] as const
/** Half a section on the steepest bed: farther off, no dock of 3 to 8 comes to the depth that was asked for, m. */
const NEAR = 0.15
/** Draws for one dock before it is called a mistake here: one in two or three is kept. */
const MOST_DRAWS = 500

/**
 * The dock of a seed: the same one for any number of posts.
 *
 * @throws where the catalog sells no post or no mud pad, or no draw fits: a mistake of this generator, not of the engine
 */
export function ordinaryDock(seed: number, wanted: Wanted, catalog: Catalog): Design {
  const draw = drawing(seed)
  for (let n = 0; n < MOST_DRAWS; n++) {
    const raw = drawDock(draw, wanted, catalog)
    if (!raw) continue
    const parsed = parseDesign(raw.design)
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
    if (fits(deriveKit(parsed.value, catalog), raw.shore)) return parsed.value
  }
  throw new Error(`no ordinary dock in ${MOST_DRAWS} draws`)
}

/** Null where no number of sections comes to such a depth. */
function drawDock(
  draw: Draw,
  { scene, posts, boat }: Wanted,
  catalog: Catalog,
): { readonly design: unknown; readonly shore: Shore } | null {
  const ranges = SCENES[scene]
  const frame = draw.of(straightFrames(catalog))
  const levels = { low: -draw.cm(0.1, 0.3), high: draw.cm(0.1, 0.25) }
  const over = Math.max(HAND, catalog.rules.deckOverHigh.value)
  const deckHeight = draw.cm(Math.max(ranges.deck[0], levels.high + over), ranges.deck[1])
  const shore = shoreOf(draw)
  // The ramp comes down on the bank where that is the shop's margin over the high level; the rest is one pitch each.
  const foot = -(levels.high + catalog.rules.startMargin.value) / shore.bank
  const endOf = (sections: number): number =>
    foot + sections * frame.length + (sections - 2) * catalog.rules.jointGap.value
  const asked = draw.between(...END_DEPTH)
  const off = (n: number): number => Math.abs(shore.depthAt(endOf(n)) - asked)
  const sections = SECTIONS.reduce<number>((best, n) => (off(n) < off(best) ? n : best), SECTIONS[0])
  const head = drawHead(draw)
  const wind = { speed: draw.tenth(...ranges.wind), fetch: Math.round(draw.between(...ranges.fetch)) }
  const bottom = draw.weighed([
    ['sand', 40] as const,
    ['gravel', 25] as const,
    ['clay', 20] as const,
    ['muck', 15] as const,
  ])
  if (off(sections) > NEAR) return null
  const aside = head.shape === 'left' || head.shape === 'right' || head.shape === 'tee'
  const soundings = soundingsOf(draw, shore, {
    foot,
    end: endOf(sections) + (aside ? frame.width : 0),
    side: aside ? frame.width / 2 + frame.length : 0,
  })
  const post = catalog.extras.find((extra) => extra.place === 'post')
  const bumper = catalog.extras.find((extra) => extra.place === 'edge')
  const mud = catalog.pads.find((pad) => pad.mud)
  if (!post || !bumper || !mud) throw new Error(`${catalog.id}: no post, bumper or mud pad`)
  return {
    shore,
    design: {
      format: 'leadline/design',
      version: 1,
      site: { ...soundings, levels, bottom, wind },
      dock: {
        deckHeight,
        frame: frame.code,
        sections,
        ramp: true,
        head: {
          ...head,
          sections: head.shape === 'wide' ? Math.min(head.sections, sections - 1) : head.sections,
        },
        extras: { [bumper.code]: 2, ...(posts > 0 && { [post.code]: posts }) },
        ...(bottom === 'muck' && { pad: mud.code }),
        ...(boat && { boat: drawBoat(draw) }),
      },
    },
  }
}

const drawHead = (draw: Draw): { readonly shape: string; readonly sections: number } =>
  draw.weighed([
    [{ shape: 'straight', sections: 0 }, 75],
    [{ shape: 'left', sections: 1 }, 5],
    [{ shape: 'right', sections: 1 }, 5],
    [{ shape: 'tee', sections: 2 }, 5],
    [{ shape: 'wide', sections: 1 }, 5],
    [{ shape: 'wide', sections: 2 }, 5],
  ])

/** Half of them runabouts, half pontoon boats; the side that is stepped over is half a meter up in both. */
function drawBoat(draw: Draw): Record<string, number | string> {
  const pontoon = draw.chance(0.5)
  return {
    length: pontoon ? draw.tenth(6, 7) : draw.tenth(5, 6),
    height: draw.cm(0.4, 0.6),
    draught: pontoon ? draw.cm(0.3, 0.45) : draw.cm(0.4, 0.5),
    mass: pontoon ? Math.round(draw.between(1000, 1400)) : Math.round(draw.between(700, 1500)),
    side: draw.of(['left', 'right']),
  }
}

const within = (value: number, [from, to]: readonly [number, number]): boolean => value >= from && value <= to

/** Is it as deep at the lake end as was asked for, and does the boat float at its place at the low level? */
function fits({ design, layout, bed }: Kit, shore: Shore): boolean {
  const corners = layout.placed.flatMap((p) => {
    const half = p.frame.width / 2
    return [0, p.frame.length].flatMap((x) => [toPlan(p, x, half), toPlan(p, x, -half)])
  })
  if (!within(shore.depthAt(Math.max(...corners.map(([x]) => x))), END_DEPTH)) return false
  const low = lowLevel(design.site.levels)
  const berths = berthsOf(design.dock, layout.placed)
  return (!design.dock.boat || berths.length > 0) && berths.every((berth) => underKeel(berth, bed, low) >= 0)
}
