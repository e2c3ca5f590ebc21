/** What a dock is over, worked out anew from the Design, the Catalog and the published sections. */
import type { Dock, Section } from '../../../rules/dock.ts'
import { makeBed } from '../../../rules/site/index.ts'
import type { Law } from './law.ts'
import { cornerAt } from './plan.ts'

type Corner = readonly [x: number, y: number]

/** All four, counterclockwise or clockwise; a ramp as if it lay level back from its hinge. */
function corners(section: Section, { ramp }: Dock): Corner[] {
  const { x, y, heading, length, width, role, turn: bent } = section
  if (bent !== undefined)
    return ['start.left', 'end.left', 'end.right', 'start.right'].map((corner) => cornerAt(section, corner))
  const turn = (heading * Math.PI) / 180
  const [c, s] = [Math.cos(turn), Math.sin(turn)]
  const shift = role === 'ramp' && ramp ? length / Math.hypot(1, ramp.slope) - length : 0
  return [
    [0, 1],
    [1, 1],
    [1, -1],
    [0, -1],
  ].map(([along, aside]): Corner => {
    const [a, b] = [shift + along! * length, (aside! * width) / 2]
    return [x + c * a - s * b, y + s * a + c * b]
  })
}

/** Rounded outputs: nearer to a limit than this either is right. */
const UNSURE = 1e-4

const told = (dock: Dock, code: string, over: readonly number[]): string[] => {
  const count = dock.findings.filter((finding) => finding.code === code).length
  const sure = over.filter((by) => by > UNSURE).length
  const most = over.filter((by) => by > -UNSURE).length
  return count < sure || count > most ? [`${code}: told ${count} times, expected ${sure} to ${most}`] : []
}

/** By the shoelace rule what is left of a polygon lakeward of the water's edge, m2. */
function wetArea(points: readonly Corner[]): number {
  const cut: Corner[] = points.flatMap((p, i): Corner[] => {
    const q = points[(i + 1) % points.length]!
    const kept: Corner[] = p[0] >= 0 ? [p] : []
    if (p[0] * q[0] >= 0) return kept
    return [...kept, [0, p[1] + ((q[1] - p[1]) * p[0]) / (p[0] - q[0])]]
  })
  return Math.abs(
    cut.reduce((sum, [x, y], i) => {
      const [u, w] = cut[(i + 1) % cut.length]!
      return sum + (x * w - u * y) / 2
    }, 0),
  )
}

/** Each limit that the dock is over is told of once, and no other. */
export const limitsAreTold: Law = (dock, design, catalog) => {
  const { sides, ...own } = design.site.limits ?? {}
  const most = { ...catalog.limits, ...own }
  const each = dock.sections.map((section) => corners(section, dock))
  const all = each.flat()
  const over = (figure: number, limit: number | undefined): number[] =>
    limit === undefined || all.length === 0 ? [] : [figure - limit]
  const xs = all.map(([x]) => x)
  const ys = all.map(([, y]) => y)
  const { waterWidth } = design.site
  const reach = Math.max(0, ...xs)
  const area = each.reduce((sum, points) => sum + wetArea(points), 0)
  const depths = (): number => {
    const bed = makeBed(design.site)
    return Math.max(...all.map(([x, y]) => Math.min(0, design.site.levels.low) - bed.bedAt(x, y)))
  }
  const bySide = (sides ?? []).map(({ from: [a, b], to: [c, d], distance }) => {
    const [dx, dy] = [c - a, d - b]
    // The line's distance by its normal form; of its two sides the origin's.
    const [nx, ny] = [dy / Math.hypot(dx, dy), -dx / Math.hypot(dx, dy)]
    const value = (x: number, y: number): number => nx * (x - a) + ny * (y - b)
    if (Math.abs(value(0, 0)) < 1e-6)
      return distance + Math.max(...all.map(([x, y]) => Math.abs(value(x, y))))
    const sign = value(0, 0) > 0 ? 1 : -1
    return distance - Math.min(...all.map(([x, y]) => sign * value(x, y)))
  })
  return [
    ...told(dock, 'limit-reach', over(reach, most.reach)),
    ...told(
      dock,
      'limit-share',
      over(reach, waterWidth === undefined || most.share === undefined ? undefined : most.share * waterWidth),
    ),
    ...told(dock, 'limit-width', over(Math.max(...ys) - Math.min(...ys), most.width)),
    ...told(dock, 'limit-area', over(area, most.area)),
    ...told(dock, 'limit-depth', most.depth === undefined ? [] : over(depths(), most.depth)),
    ...told(dock, 'limit-side', bySide),
  ]
}
