/**
 * Where every section must lie, from the Design alone: the plan of `sections`, `ramp` and `head` written out, and each section's
 * place from its host. Poses are level in plan: a ramp's is that of the ramp laid flat.
 */
import type { Catalog } from '../../../rules/catalog/schema.ts'
import type { Design } from '../../../rules/design/schema.ts'
import type { Edge, Role } from '../../../rules/dock.ts'
import { frameOf } from './law.ts'

export type Point = readonly [x: number, y: number]

export interface PlanItem {
  readonly id: string
  readonly on: string | null
  readonly ramp: boolean
  readonly edge: Edge
  readonly with: Edge
  readonly along: number
  readonly frame: string
}

export interface Placed extends PlanItem {
  readonly role: Role
  /** The section that carries it: null for ramp and standing section. */
  readonly carrier: string | null
  /** Middle of its start edge. */
  readonly x: number
  readonly y: number
  readonly heading: number
  readonly length: number
  readonly width: number
  readonly turn?: number | undefined
}

export interface Rectangle {
  readonly x: number
  readonly y: number
  readonly heading: number
  readonly length: number
  readonly width: number
  /** Of a corner piece, degrees. */
  readonly turn?: number | undefined
}

export const EDGES: readonly Edge[] = ['start', 'end', 'left', 'right']

/** The plan as asked for, `sections`, `ramp` and `head` written out. */
export function planOf(design: Design, catalog: Catalog): PlanItem[] {
  const { dock } = design
  if (dock.plan !== undefined) {
    return dock.plan.map((p) => ({
      id: p.id,
      on: p.on,
      ramp: p.role === 'ramp',
      edge: p.edge ?? 'end',
      with: p.with ?? 'start',
      along: p.along ?? 0,
      frame: p.frame ?? dock.frame,
    }))
  }
  const frame = frameOf(catalog, dock.frame)
  if (frame === undefined) return []
  const n = dock.sections ?? 0
  const item = (id: string, on: string | null, more: Partial<PlanItem> = {}): PlanItem => ({
    id,
    on,
    ramp: false,
    edge: 'end',
    with: 'start',
    along: 0,
    frame: dock.frame,
    ...more,
  })
  const items: PlanItem[] = []
  for (let i = 1; i <= n; i++)
    items.push(item(`s${i}`, i === 1 ? null : `s${i - 1}`, { ramp: i === 1 && dock.ramp === true }))
  const shape = dock.head?.shape ?? 'straight'
  const heads = shape === 'straight' ? 0 : (dock.head?.sections ?? 0)
  if (shape === 'wide') {
    for (let i = 1; i <= heads; i++)
      items.push(item(`h${i}`, `s${n - heads + i}`, { edge: 'left', with: 'right' }))
    return items
  }
  const rows: [Edge, number][] =
    shape === 'tee'
      ? [
          ['left', heads / 2],
          ['right', heads / 2],
        ]
      : [[shape === 'right' ? 'right' : 'left', heads]]
  let next = 1
  for (const [edge, count] of rows) {
    for (let i = 0; i < count; i++) {
      const first = i === 0
      items.push(
        item(
          `h${next}`,
          first ? `s${n}` : `h${next - 1}`,
          first ? { edge, along: frame.length - frame.width } : {},
        ),
      )
      next++
    }
  }
  return items
}

/** Poses of all sections that can be reached from the root, for a first standing section's start edge at `start`. */
export function placePlan(design: Design, catalog: Catalog, start: number): Placed[] {
  const items = planOf(design, catalog)
  const placed = new Map<string, Placed>()
  let progress = true
  while (progress) {
    progress = false
    for (const item of items) {
      if (placed.has(item.id)) continue
      const frame = frameOf(catalog, item.frame)
      if (frame === undefined) continue
      const size = { length: frame.length, width: frame.width, turn: frame.turn }
      if (item.on === null) {
        const x = item.ramp ? start - frame.length : start
        placed.set(item.id, {
          ...item,
          ...size,
          role: item.ramp ? 'ramp' : 'standing',
          carrier: null,
          x,
          y: 0,
          heading: 0,
        })
        progress = true
        continue
      }
      const host = placed.get(item.on)
      if (host === undefined) continue
      const hinge = host.role === 'ramp'
      const gap = hinge ? 0 : catalog.rules.jointGap.value
      placed.set(item.id, {
        ...item,
        ...size,
        role: hinge ? 'standing' : 'following',
        carrier: hinge ? null : item.on,
        ...mate(host, item.edge, item.with, item.along, gap, size),
      })
      progress = true
    }
  }
  // The dock's center line is that of the section that stands first: a ramp may hang to its side.
  const shift = [...placed.values()].find((p) => p.role === 'standing')?.y ?? 0
  return items.flatMap((i) => {
    const p = placed.get(i.id)
    return p === undefined ? [] : [{ ...p, y: p.y - shift }]
  })
}

/** Pose of a section whose edge `own` meets the host's edge, over a gap. */
function mate(
  host: Rectangle,
  edge: Edge,
  own: Edge,
  along: number,
  gap: number,
  size: { length: number; width: number; turn?: number | undefined },
): { x: number; y: number; heading: number } {
  const line = edgeLine(host, edge)
  if (size.turn !== undefined || host.turn !== undefined || host.heading % 90 !== 0)
    return mateAskew(line, own, along, gap, size)
  const half = along + (own === 'left' || own === 'right' ? size.length : size.width) / 2
  const [mx, my]: Point = [
    line.from[0] + line.direction[0] * half + line.normal[0] * gap,
    line.from[1] + line.direction[1] * half + line.normal[1] * gap,
  ]
  const outward = Math.round((Math.atan2(line.normal[1], line.normal[0]) * 180) / Math.PI)
  // The new edge looks back at the host: its own outward normal is the opposite of the host's.
  const turn = { start: 0, end: 180, left: 90, right: -90 }[own]
  const heading = (((outward + turn) % 360) + 360) % 360
  const local: Point = {
    start: [0, 0] as const,
    end: [size.length, 0] as const,
    left: [size.length / 2, size.width / 2] as const,
    right: [size.length / 2, -size.width / 2] as const,
  }[own]
  const [dx, dy] = rotate(local, heading)
  return { x: mx - dx, y: my - dy, heading }
}

/** The same by the two edges alone: turned until they look at each other, then shifted. */
function mateAskew(
  line: ReturnType<typeof edgeLine>,
  own: Edge,
  along: number,
  gap: number,
  size: { length: number; width: number; turn?: number | undefined },
): { x: number; y: number; heading: number } {
  const flat = edgeLine({ x: 0, y: 0, heading: 0, ...size }, own)
  const degrees = (of: Point) => (Math.atan2(of[1], of[0]) * 180) / Math.PI
  const raw = degrees(line.normal) + 180 - degrees(flat.normal)
  const heading = Math.round((((raw % 360) + 360) % 360) * 1e9) / 1e9
  const middle: Point = [
    flat.from[0] + (flat.direction[0] * flat.size) / 2,
    flat.from[1] + (flat.direction[1] * flat.size) / 2,
  ]
  const [dx, dy] = rotate(middle, heading)
  const t = along + flat.size / 2
  return {
    x: line.from[0] + line.direction[0] * t + line.normal[0] * gap - dx,
    y: line.from[1] + line.direction[1] * t + line.normal[1] * gap - dy,
    heading: heading === 360 ? 0 : heading,
  }
}

function rotate([x, y]: Point, degrees: number): Point {
  const a = (degrees * Math.PI) / 180
  return [x * Math.cos(a) - y * Math.sin(a), x * Math.sin(a) + y * Math.cos(a)]
}

/** A place in a section's own frame, from above. */
export function inPlan(section: Rectangle, local: Point): Point {
  const [dx, dy] = rotate(local, section.heading)
  return [section.x + dx, section.y + dy]
}

/**
 * A corner piece's corners in its own frame: its end edge is its start edge turned about the place on the left where the lines of both meet,
 * as far off as makes the left side so long.
 */
function ownCorners({
  length,
  width,
  turn,
}: Pick<Rectangle, 'length' | 'width' | 'turn'>): Record<string, Point> {
  const pivot: Point = [0, width / 2 + length / 2 / Math.sin((turn! * Math.PI) / 360)]
  const turned = (p: Point): Point => {
    const [dx, dy] = rotate([p[0] - pivot[0], p[1] - pivot[1]], turn!)
    return [pivot[0] + dx, pivot[1] + dy]
  }
  const left: Point = [0, width / 2]
  const right: Point = [0, -width / 2]
  return { 'start.left': left, 'start.right': right, 'end.left': turned(left), 'end.right': turned(right) }
}

const BETWEEN: Readonly<Record<Edge, readonly [string, string]>> = {
  start: ['start.left', 'start.right'],
  end: ['end.left', 'end.right'],
  left: ['start.left', 'end.left'],
  right: ['start.right', 'end.right'],
}

function askewEdge(section: Rectangle, edge: Edge) {
  const own = ownCorners(section)
  const [a, b] = BETWEEN[edge].map((name) => own[name]!) as [Point, Point]
  const size = Math.hypot(b[0] - a[0], b[1] - a[1])
  const direction: Point = [(b[0] - a[0]) / size, (b[1] - a[1]) / size]
  const all = Object.values(own)
  const inward = all.some((p) => -direction[1] * (p[0] - a[0]) + direction[0] * (p[1] - a[1]) > 1e-9)
  const normal: Point = inward ? [direction[1], -direction[0]] : [-direction[1], direction[0]]
  return {
    from: inPlan(section, a),
    direction: rotate(direction, section.heading),
    normal: rotate(normal, section.heading),
    size,
  }
}

/** How far a place is outside of a section's outline, m; negative inside. */
export const outsideOf = (section: Rectangle, [x, y]: Point): number =>
  Math.max(
    ...EDGES.map((edge) => {
      const { from, normal } = edgeLine(section, edge)
      return (x - from[0]) * normal[0] + (y - from[1]) * normal[1]
    }),
  )

/** What two sections both cover, m2: the first cut off at each edge of the second. */
export function sharedArea(a: Rectangle, b: Rectangle): number {
  let left = ['start.left', 'end.left', 'end.right', 'start.right'].map((corner) => cornerAt(a, corner))
  for (const edge of EDGES) {
    const { from, normal } = edgeLine(b, edge)
    const off = (p: Point) => (p[0] - from[0]) * normal[0] + (p[1] - from[1]) * normal[1]
    left = left.flatMap((p, i) => {
      const q = left[(i + 1) % left.length]!
      const [m, n] = [off(p), off(q)]
      const at = m / (m - n)
      const cut: Point[] = m < 0 !== n < 0 ? [[p[0] + at * (q[0] - p[0]), p[1] + at * (q[1] - p[1])]] : []
      return m < 0 ? [p, ...cut] : cut
    })
  }
  const twice = left.reduce((sum, p, i) => {
    const q = left[(i + 1) % left.length]!
    return sum + p[0] * q[1] - p[1] * q[0]
  }, 0)
  return Math.abs(twice) / 2
}

/** An edge from its start corner (start and end edges: from the left corner), with its outward normal. */
export function edgeLine(section: Rectangle, edge: Edge) {
  if (section.turn !== undefined) return askewEdge(section, edge)
  const { length: l, width: w } = section
  const local = {
    start: { from: [0, w / 2], direction: [0, -1], normal: [-1, 0], size: w },
    end: { from: [l, w / 2], direction: [0, -1], normal: [1, 0], size: w },
    left: { from: [0, w / 2], direction: [1, 0], normal: [0, 1], size: l },
    right: { from: [0, -w / 2], direction: [1, 0], normal: [0, -1], size: l },
  }[edge]
  return {
    from: inPlan(section, local.from as unknown as Point),
    direction: rotate(local.direction as unknown as Point, section.heading),
    normal: rotate(local.normal as unknown as Point, section.heading),
    size: local.size,
  }
}

/** Corner of the frame, or the leg axis that far in from it. */
export function cornerAt(section: Rectangle, corner: string, along = 0, across = 0): Point {
  const [end, side] = corner.split('.')
  if (section.turn !== undefined) {
    // Where the two edges of that corner meet, each moved inward.
    const [p, q] = [askewEdge(section, end as Edge), askewEdge(section, side as Edge)]
    const [a, b] = [
      p.from[0] * p.normal[0] + p.from[1] * p.normal[1] - along,
      q.from[0] * q.normal[0] + q.from[1] * q.normal[1] - across,
    ]
    const det = p.normal[0] * q.normal[1] - p.normal[1] * q.normal[0]
    return [(a * q.normal[1] - b * p.normal[1]) / det, (p.normal[0] * b - q.normal[0] * a) / det]
  }
  return inPlan(section, [
    end === 'start' ? along : section.length - along,
    side === 'left' ? section.width / 2 - across : -section.width / 2 + across,
  ])
}

/** How an edge of one section faces an edge of another: gap between them and the stretch of overlap along the first; null if it does not. */
export function facing(a: Rectangle, edgeA: Edge, b: Rectangle, edgeB: Edge) {
  const ea = edgeLine(a, edgeA)
  const eb = edgeLine(b, edgeB)
  if (ea.normal[0] * eb.normal[0] + ea.normal[1] * eb.normal[1] > -0.999999) return null
  const dot = (p: Point, q: Point) => p[0] * q[0] + p[1] * q[1]
  const from: Point = [eb.from[0] - ea.from[0], eb.from[1] - ea.from[1]]
  const far: Point = [from[0] + eb.direction[0] * eb.size, from[1] + eb.direction[1] * eb.size]
  const [p, q] = [dot(from, ea.direction), dot(far, ea.direction)]
  const lo = Math.max(0, Math.min(p, q))
  const hi = Math.min(ea.size, Math.max(p, q))
  return { gap: dot(from, ea.normal), lo, hi, overlap: hi - lo, line: ea }
}

/** Where the two hooks of a section's carrying joint sit, on the carrying edge; null where the overlap is too short to say. */
export function hooksOf(host: Rectangle, section: Placed, catalog: Catalog): Point[] | null {
  const face = facing(host, section.edge, section, section.with)
  const inset = catalog.rules.hookInset.value
  // The brackets of the two hooks sit side by side at the closest.
  const brackets = catalog.rules.bracketsPerHook.value * catalog.hooks.bracket.size[1]
  if (face === null || face.overlap < 2 * inset + brackets - 1e-6) return null
  const { from, direction } = face.line
  return [face.lo + inset, face.hi - inset].map(
    (t) => [from[0] + direction[0] * t, from[1] + direction[1] * t] as Point,
  )
}
