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

export function drawLake(
  { dock, design, shop, bed }: Project,
  range: StripRange,
  level: number,
): LakeDrawing {
  const block = blockOf(range, dock)
  const pen = penFor(block)
  const deck = design.dock.deckHeight
  const { faces, water } = drawGround(pen, block, range, bed, level)
  const under: Face[] = dock.sections.map((s) => ({
    id: s.id,
    name: 'shadow',
    path: pen.shape(shadowOf(s, bed.bedAt)),
  }))
  const over: Face[] = []
  const upright = (id: string, x: number, y: number, low: number, high: number): void => {
    const put = (to: Face[], from: number, upTo: number): number =>
      to.push({ id, name: 'leg', path: pen.line([x, y, from], [x, y, upTo]) })
    if (low < level) put(under, Math.max(low, range.z0), Math.min(high, level))
    if (high > level) put(over, Math.max(low, level), high)
  }
  for (const leg of dock.legs) upright(leg.id, leg.x, leg.y, leg.bed, deck - 0.1)
  for (const placement of dock.placements) {
    if (placement.kind !== 'brace') continue
    const { holes } = shop.braces.find((brace) => brace.code === placement.code)!
    const [low, high] = [placement.at, inDock(placement, [holes, 0, 0])]
    ;(low[2] < level ? under : over).push({ id: placement.of, name: 'brace', path: pen.line(low, high) })
  }
  const frames = dock.placements.filter((p) => p.kind === 'frame')
  for (const placement of frames.sort((a, b) => farness(b.at[0], b.at[1]) - farness(a.at[0], a.at[1]))) {
    const frame = shop.frames.get(placement.code)!
    over.push(...drawFrame(pen, placement, frame, shop.shape(frame).depth))
  }
  for (const { id, x, y, aboveDeck } of dock.legs)
    if (aboveDeck !== null) upright(id, x, y, Math.max(deck, level), deck + aboveDeck)
  const { width, height } = block
  return {
    viewBox: `0 0 ${(width * 100).toFixed(1)} ${(height * 100).toFixed(1)}`,
    bed: faces,
    under,
    water,
    over,
    person: personIn(pen, dock, deck),
    lineWidth: 6,
  }
}

const EYE = obliqueEye(TURN, TILT)

/** Screen x to the right, y down, in m of the picture. Lakeward goes right, the left side of the dock away. */
const onScreen = (place: Vec3): Flat => {
  const [right, up] = seenFrom(EYE, place)
  return [right, -up]
}
/** Greater is farther away. */
const farness = (x: number, y: number): number => -nearness(EYE, [x, y, 0])

/** Writes places of the lake as paths of the picture. */
interface Pen {
  /** `x y`, px. */
  at(point: Vec3): string
  shape(points: readonly Vec3[]): string
  line(a: Vec3, b: Vec3): string
}

function penFor({ x0, y0 }: Block): Pen {
  const at = (point: Vec3): string => {
    const [x, y] = onScreen(point)
    return `${((x - x0) * 100).toFixed(1)} ${((y - y0) * 100).toFixed(1)}`
  }
  return {
    at,
    shape: (points) => `M${points.map(at).join('L')}Z`,
    line: (a, b) => `M${at(a)}L${at(b)}`,
  }
}

/** The bed with the faces of the cut, and the water over it. */
function drawGround(
  { shape }: Pen,
  { half }: Block,
  range: StripRange,
  bed: Project['bed'],
  level: number,
): { faces: Face[]; water: Face[] } {
  const xs = steps(bed.knots(range.x0, range.x1), 0.6)
  const ys = bed.mode === 'area' ? steps([-half, half], 1) : [-half, half]
  const corner = (x: number, y: number): Vec3 => [x, y, bed.bedAt(x, y)]
  const faces: Face[] = []
  let surface = ''
  for (let k = ys.length - 2; k >= 0; k--)
    for (let i = 0; i < xs.length - 1; i++) {
      const [xa, xb, ya, yb] = [xs[i]!, xs[i + 1]!, ys[k]!, ys[k + 1]!]
      const quad = [corner(xa, ya), corner(xb, ya), corner(xb, yb), corner(xa, yb)]
      const mean = quad.reduce((sum, p) => sum + p[2], 0) / 4
      faces.push({ name: mean > 0 ? 'dry' : 'wet', path: shape(quad), depth: Math.max(0, level - mean) })
      // The water's quad ends where the bed comes through it.
      const wet = quad.filter((p) => p[2] < level)
      if (wet.length > 0) surface += shape(cutAtLevel(quad, level).map(([x, y]): Vec3 => [x, y, level]))
    }
  const edge = xs.map((x) => corner(x, -half))
  const lakeEnd = ys.map((y) => corner(range.x1, y))
  const down = ([x, y]: Vec3): Vec3 => [x, y, range.z0 - GROUND]
  const cut = (list: readonly Vec3[]): string => shape([...list, down(list.at(-1)!), down(list[0]!)])
  faces.push({ name: 'cut', path: cut(edge) }, { name: 'cut end', path: cut(lakeEnd) })
  const [lastX, lastY] = edge.at(-1)!
  const low = cutAtLevel([...edge, [lastX, lastY, level]], level)
  return {
    faces,
    water: [
      { name: 'surface', path: surface },
      { name: 'water-cut', path: low.length > 2 ? shape(low) : '' },
      {
        name: 'water-cut end',
        path: shape([...lakeEnd, [range.x1, half, level], [range.x1, -half, level]]),
      },
    ],
  }
}

type Piece = Dock['placements'][number]

/** The two sides of a section that face the eye, its deck and the gaps between its boards. */
function drawFrame(
  { shape, line }: Pen,
  placement: Piece,
  { length, width }: { readonly length: number; readonly width: number },
  depth: number,
): Face[] {
  const id = placement.of
  const h = width / 2
  const cornersAt = (z: number): Vec3[] =>
    [
      [0, -h],
      [length, -h],
      [length, h],
      [0, h],
    ].map(([x, y]) => inDock(placement, [x!, y!, z]))
  const [top, low] = [cornersAt(0), cornersAt(-depth)]
  // Of each pair of opposite sides the nearer.
  const sides = [0, 1, 2, 3]
    .map((i) => {
      const [a, b] = [top[i]!, top[(i + 1) % 4]!]
      return { i, far: farness((a[0] + b[0]) / 2, (a[1] + b[1]) / 2) }
    })
    .sort((a, b) => a.far - b.far)
    .slice(0, 2)
    .reverse()
  const boards = Math.round(length / 0.15)
  let planks = ''
  for (let i = 1; i < boards; i++) {
    const x = (length * i) / boards
    planks += line(inDock(placement, [x, -h, 0]), inDock(placement, [x, h, 0]))
  }
  return [
    ...sides.map(({ i }) => ({
      id,
      name: 'rail',
      path: shape([top[i]!, top[(i + 1) % 4]!, low[(i + 1) % 4]!, low[i]!]),
    })),
    { id, name: 'deck', path: shape(top) },
    { id, name: 'planks', path: planks },
  ]
}

/** Where a person stands, as a transform; null where there is nothing to stand on. */
function personIn({ at }: Pen, dock: Dock, deck: number): string | null {
  const stand = dock.sections.findLast((s) => s.role !== 'ramp' && s.heading === 0)
  if (!stand) return null
  return `translate(${at([stand.x + stand.length * 0.45, stand.y, deck])}) scale(${PERSON_HEIGHT * Math.cos(TILT)})`
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

/** The block of lake that is cut out: half its width, and where it is in the picture, m. */
interface Block {
  readonly half: number
  readonly x0: number
  readonly y0: number
  readonly width: number
  readonly height: number
}

/** With room for a person and for what reaches aside. */
function blockOf(range: StripRange, dock: Dock): Block {
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
