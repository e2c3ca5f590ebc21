/** The bed from above on a canvas: where places fall on it and back, what is under a finger. Pure; m and px. */
import type { Design, Dock } from '../../../rules/index.ts'
import { footprintOfAll } from '../../../rules/layout/footprint.ts'

export interface PlanView {
  readonly width: number
  readonly height: number
  /** Of a place in the dock's plan, px. */
  toScreen(x: number, y: number): readonly [px: number, py: number]
  toPlan(px: number, py: number): readonly [x: number, y: number]
}

/** What can be picked: a sounding or an obstacle, by its place in the design's list. */
export interface Picked {
  readonly what: 'sounding' | 'obstacle'
  readonly index: number
}

/** Around what is shown, m; and the least that is shown across. */
const AROUND = 1.5
const LEAST = 6
/** Of the picture's height to its width. */
const FLAT = { least: 0.4, most: 1 } as const

/** Lake to the right, as in the section. All soundings, obstacles and sections lie in it. */
export function planView(design: Design, sections: Dock['sections'], width: number): PlanView {
  const { soundings, obstacles = [] } = design.site
  let { x0, x1, y0, y1 } = footprintOfAll(sections) ?? { x0: 0, x1: 0, y0: 0, y1: 0 }
  const take = (x: number, y: number): void => {
    x0 = Math.min(x0, x)
    x1 = Math.max(x1, x)
    y0 = Math.min(y0, y)
    y1 = Math.max(y1, y)
  }
  take(0, 0)
  for (const { distance, offset } of soundings) take(distance, offset)
  for (const { x, y } of obstacles) take(x, y)
  const wide = Math.max(LEAST, x1 - x0 + 2 * AROUND)
  const high = Math.max(LEAST, y1 - y0 + 2 * AROUND)
  const height = Math.round(width * Math.min(FLAT.most, Math.max(FLAT.least, high / wide)))
  const scale = Math.min(width / wide, height / high)
  const [cx, cy] = [(x0 + x1) / 2, (y0 + y1) / 2]
  return {
    width,
    height,
    toScreen: (x, y) => [width / 2 + (x - cx) * scale, height / 2 - (y - cy) * scale],
    toPlan: (px, py) => [cx + (px - width / 2) / scale, cy - (py - height / 2) / scale],
  }
}

/** What is nearest to a place on the screen, within reach of it; an obstacle only where no sounding is. */
export function pickAt(design: Design, view: PlanView, px: number, py: number, reach: number): Picked | null {
  const nearest = (what: Picked['what'], places: number, at: (i: number) => readonly [number, number]) => {
    let found: Picked | null = null
    let least = reach
    for (let i = 0; i < places; i++) {
      const [qx, qy] = view.toScreen(...at(i))
      const far = Math.hypot(qx - px, qy - py)
      if (far <= least) {
        least = far
        found = { what, index: i }
      }
    }
    return found
  }
  const { soundings, obstacles = [] } = design.site
  return (
    nearest('sounding', soundings.length, (i) => [soundings[i]!.distance, soundings[i]!.offset]) ??
    nearest('obstacle', obstacles.length, (i) => [obstacles[i]!.x, obstacles[i]!.y])
  )
}

/** Where something picked lies; null where it is gone. */
export function placeOf({ site }: Design, { what, index }: Picked): readonly [x: number, y: number] | null {
  if (what === 'obstacle') {
    const one = site.obstacles?.[index]
    return one ? [one.x, one.y] : null
  }
  const one = site.soundings[index]
  return one ? [one.distance, one.offset] : null
}

/** All that can be picked, by distance and then offset: the order that keys go through. */
const inOrder = (design: Design): Picked[] =>
  [
    ...design.site.soundings.map((_, index): Picked => ({ what: 'sounding', index })),
    ...(design.site.obstacles ?? []).map((_, index): Picked => ({ what: 'obstacle', index })),
  ].sort((a, b) => {
    const [[ax, ay], [bx, by]] = [placeOf(design, a)!, placeOf(design, b)!]
    return ax - bx || ay - by
  })

/** The next one up or down in that order, round and round; the first or the last where none is picked. */
export function nextOf(design: Design, picked: Picked | null, way: 1 | -1): Picked | null {
  const order = inOrder(design)
  const now = order.findIndex((one) => one.what === picked?.what && one.index === picked.index)
  const next = now + (now < 0 && way < 0 ? 0 : way)
  return order[(next + order.length) % order.length] ?? null
}
