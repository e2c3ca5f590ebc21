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
}

export interface Rectangle {
  readonly x: number
  readonly y: number
  readonly heading: number
  readonly length: number
  readonly width: number
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
      const size = { length: frame.length, width: frame.width }
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
  size: { length: number; width: number },
): { x: number; y: number; heading: number } {
  const line = edgeLine(host, edge)
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

function rotate([x, y]: Point, degrees: number): Point {
  const a = (degrees * Math.PI) / 180
  return [x * Math.cos(a) - y * Math.sin(a), x * Math.sin(a) + y * Math.cos(a)]
}

/** A place in a section's own frame, from above. */
export function inPlan(section: Rectangle, local: Point): Point {
  const [dx, dy] = rotate(local, section.heading)
  return [section.x + dx, section.y + dy]
}

/** An edge from its start corner (start and end edges: from the left corner), with its outward normal. */
function edgeLine(section: Rectangle, edge: Edge) {
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
