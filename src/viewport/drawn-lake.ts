/**
 * The dock in its lake as a block cut out of it, seen from above and beside: what is shown before the 3D scene has come, and in
 * its place where it cannot. A parallel view, so plain polygons do. Read from the Dock's placements; m in, pixels out.
 */
import { type Flat, inDock, nearness, obliqueEye, seenFrom } from '../../geometry/projection.ts'
import type { Dock, Project, Vec3 } from '../../rules/index.ts'
import { stanceOf, toPlan } from '../../rules/layout/footprint.ts'
import { PERSON_HEIGHT } from '../../rules/person.ts'
import type { StripRange } from '../state/strip-range.ts'

/** How the block is turned from the side view, and how far it is looked down on; degrees turned to sines. */
const TURN = (24 * Math.PI) / 180
const TILT = (27 * Math.PI) / 180
/** Half the width of the block of lake, m, and its ground below the deepest bed. */
const HALF = 4.2
const GROUND = 0.5

export interface Face {
  readonly name: string
  readonly path: string
  /** Depth of water over it, m; for the bed's tint. */
  readonly depth?: number
  readonly id?: string
}

export interface LakeDrawing {
  readonly viewBox: string
  readonly bed: readonly Face[]
  /** Seen through the water. */
  readonly under: readonly Face[]
  readonly water: readonly Face[]
  readonly over: readonly Face[]
  readonly person: string | null
  readonly lineWidth: number
}

const EYE = obliqueEye(TURN, TILT)

/** Screen x to the right, y down, in m of the picture. Lakeward goes right, the left side of the dock away. */
const onScreen = (place: Vec3): Flat => {
  const [right, up] = seenFrom(EYE, place)
  return [right, -up]
}
/** Greater is farther away. */
const farness = (x: number, y: number): number => -nearness(EYE, [x, y, 0])

export function drawLake(
  { dock, design, shop, bed }: Project,
  range: StripRange,
  level: number,
): LakeDrawing {
  const seen = frameOfPicture(range, dock)
  const at = (point: Vec3): string => {
    const [x, y] = onScreen(point)
    return `${((x - seen.x0) * 100).toFixed(1)} ${((y - seen.y0) * 100).toFixed(1)}`
  }
  const shape = (points: readonly Vec3[]): string => `M${points.map(at).join('L')}Z`
  const line = (a: Vec3, b: Vec3): string => `M${at(a)}L${at(b)}`

  const xs = steps(bed.knots(range.x0, range.x1), 0.6)
  const ys = bed.mode === 'area' ? steps([-seen.half, seen.half], 1) : [-seen.half, seen.half]
  const floor = range.z0 - GROUND
  const faces: Face[] = []
  let surface = ''
  for (let k = ys.length - 2; k >= 0; k--)
    for (let i = 0; i < xs.length - 1; i++) {
      const [xa, xb, ya, yb] = [xs[i]!, xs[i + 1]!, ys[k]!, ys[k + 1]!]
      const corner = (x: number, y: number): Vec3 => [x, y, bed.bedAt(x, y)]
      const quad = [corner(xa, ya), corner(xb, ya), corner(xb, yb), corner(xa, yb)]
      const mean = quad.reduce((sum, p) => sum + p[2], 0) / 4
      faces.push({ name: mean > 0 ? 'dry' : 'wet', path: shape(quad), depth: Math.max(0, level - mean) })
      // The water's quad ends where the bed comes through it.
      const wet = quad.filter((p) => p[2] < level)
      if (wet.length > 0) surface += shape(cutAtLevel(quad, level).map(([x, y]): Vec3 => [x, y, level]))
    }
  const front = -seen.half
  const edge = xs.map((x): Vec3 => [x, front, bed.bedAt(x, front)])
  const lakeEnd = ys.map((y): Vec3 => [range.x1, y, bed.bedAt(range.x1, y)])
  const down = ([x, y]: Vec3): Vec3 => [x, y, floor]
  const cut = (list: readonly Vec3[]): string => shape([...list, down(list.at(-1)!), down(list[0]!)])
  faces.push({ name: 'cut', path: cut(edge) }, { name: 'cut end', path: cut(lakeEnd) })
  const waterCut = (list: readonly Vec3[]): string => {
    const low = cutAtLevel([...list, [...list.at(-1)!.slice(0, 2), level] as unknown as Vec3], level)
    return low.length > 2 ? shape(low) : ''
  }
  const water: Face[] = [
    { name: 'surface', path: surface },
    { name: 'water-cut', path: waterCut(edge) },
    {
      name: 'water-cut end',
      path: shape([...lakeEnd, [range.x1, seen.half, level], [range.x1, front, level]]),
    },
  ]

  const under: Face[] = []
  const over: Face[] = []
  const upright = (id: string, name: string, x: number, y: number, low: number, high: number): void => {
    if (low < level)
      under.push({ id, name, path: line([x, y, Math.max(low, range.z0)], [x, y, Math.min(high, level)]) })
    if (high > level) tops.push({ id, name, path: line([x, y, Math.max(low, level)], [x, y, high]) })
  }
  const tops: Face[] = []
  const deck = design.dock.deckHeight
  for (const s of dock.sections) under.push({ id: s.id, name: 'shadow', path: shape(shadowOf(s, bed.bedAt)) })
  for (const leg of dock.legs) upright(leg.id, 'leg', leg.x, leg.y, leg.bed, deck - 0.1)
  const below = tops.splice(0)
  for (const placement of dock.placements) {
    const { kind, code, of } = placement
    if (kind !== 'brace') continue
    const { holes } = shop.braces.find((brace) => brace.code === code)!
    const [low, high] = [placement.at, inDock(placement, [holes, 0, 0])]
    const path = line(low, high)
    if (low[2] < level) under.push({ id: of, name: 'brace', path })
    else below.push({ id: of, name: 'brace', path })
  }
  over.push(...below)

  const frames = dock.placements.filter((p) => p.kind === 'frame')
  for (const placement of frames.sort((a, b) => farness(b.at[0], b.at[1]) - farness(a.at[0], a.at[1]))) {
    const { code, of } = placement
    const frame = shop.frames.get(code)!
    const { depth } = shop.shape(frame)
    const local = (own: Vec3): Vec3 => inDock(placement, own)
    const h = frame.width / 2
    const top = [
      local([0, -h, 0]),
      local([frame.length, -h, 0]),
      local([frame.length, h, 0]),
      local([0, h, 0]),
    ]
    const low = [
      local([0, -h, -depth]),
      local([frame.length, -h, -depth]),
      local([frame.length, h, -depth]),
      local([0, h, -depth]),
    ]
    // The two sides that face the eye: of each pair of opposite sides the nearer.
    const sides = [0, 1, 2, 3]
      .map((i) => ({
        i,
        far: farness((top[i]![0] + top[(i + 1) % 4]![0]) / 2, (top[i]![1] + top[(i + 1) % 4]![1]) / 2),
      }))
      .sort((a, b) => a.far - b.far)
      .slice(0, 2)
    for (const { i } of sides.reverse())
      over.push({
        id: of,
        name: 'rail',
        path: shape([top[i]!, top[(i + 1) % 4]!, low[(i + 1) % 4]!, low[i]!]),
      })
    over.push({ id: of, name: 'deck', path: shape(top) })
    let planks = ''
    const boards = Math.round(frame.length / 0.15)
    for (let i = 1; i < boards; i++) {
      const x = (frame.length * i) / boards
      planks += line(local([x, -h, 0]), local([x, h, 0]))
    }
    over.push({ id: of, name: 'planks', path: planks })
  }
  for (const leg of dock.legs)
    if (leg.aboveDeck !== null)
      upright(leg.id, 'leg', leg.x, leg.y, Math.max(deck, level), deck + leg.aboveDeck)
  over.push(...tops)

  const stand = dock.sections.findLast((s) => s.role !== 'ramp' && s.heading === 0)
  const foot: Vec3 | null = stand ? [stand.x + stand.length * 0.45, stand.y, deck] : null
  const [px, py] = foot ? onScreen(foot) : [0, 0]
  return {
    viewBox: `0 0 ${(seen.width * 100).toFixed(1)} ${(seen.height * 100).toFixed(1)}`,
    bed: faces,
    under,
    water,
    over,
    person: foot
      ? `translate(${((px - seen.x0) * 100).toFixed(1)} ${((py - seen.y0) * 100).toFixed(1)}) scale(${PERSON_HEIGHT * Math.cos(TILT)})`
      : null,
    lineWidth: 6,
  }
}

/** The part of a polygon under the level; the rest is cut off where its edges come through. */
function cutAtLevel(points: readonly Vec3[], level: number): Vec3[] {
  const kept: Vec3[] = []
  points.forEach((a, i) => {
    const b = points[(i + 1) % points.length]!
    if (a[2] <= level) kept.push([a[0], a[1], a[2]])
    if (a[2] < level !== b[2] < level && a[2] !== b[2]) {
      const t = (level - a[2]) / (b[2] - a[2])
      kept.push([a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]), level])
    }
  })
  return kept
}

/** More places between those given, so that none lie farther apart than `most`. */
function steps(list: readonly number[], most: number): number[] {
  const out = [list[0]!]
  for (let i = 1; i < list.length; i++) {
    const [a, b] = [list[i - 1]!, list[i]!]
    const n = Math.min(200, Math.ceil((b - a) / most))
    for (let k = 1; k <= n; k++) out.push(a + ((b - a) * k) / n)
  }
  return out
}

/** What a section shades, on the bed: along both sides in steps, for the bed under it is not level. */
function shadowOf(section: Dock['sections'][number], bedAt: (x: number, y: number) => number): Vec3[] {
  const half = section.width / 2
  const right = [0, 0.25, 0.5, 0.75, 1].map((t) => [t * section.length, -half] as const)
  const left = [1, 0.75, 0.5, 0.25, 0].map((t) => [t * section.length, half] as const)
  const stance = stanceOf(section)
  return [...right, ...left].map(([along, across]): Vec3 => {
    const [x, y] = toPlan(stance, along, across)
    return [x, y, bedAt(x, y)]
  })
}

/** The corners of the block in the picture, with room for a person and for what reaches aside. */
function frameOfPicture(range: StripRange, dock: Dock) {
  const aside = dock.legs.reduce((y, leg) => Math.max(y, Math.abs(leg.y)), 0)
  const half = Math.max(HALF, aside + 1.5)
  const points: Flat[] = []
  for (const x of [range.x0, range.x1])
    for (const y of [-half, half])
      for (const z of [range.z0 - GROUND, Math.max(range.z1, 2.1)]) points.push(onScreen([x, y, z]))
  const xs = points.map((p) => p[0])
  const ys = points.map((p) => p[1])
  const [x0, y0] = [Math.min(...xs), Math.min(...ys)]
  return { half, x0, y0, width: Math.max(...xs) - x0, height: Math.max(...ys) - y0 }
}
