/**
 * Sections as stiff plates: the one that stands lies anyhow, each other one follows the edge that it hangs on and turns about it. The deck's
 * height at any place is then a sum of a few numbers: height and two slopes of the standing section, and one bend at each joint.
 */
import type { Kit } from '../../kit.ts'
import { edgeOf, type PlacedSection } from '../../layout/index.ts'
import { outline } from '../../layout/place.ts'

export interface Stiff {
  /** Sections in the order of work, those in the water alone. */
  readonly sections: readonly PlacedSection[]
  /** How many numbers the heights are sums of. */
  readonly size: number
  /** What each counts for at a place of a section. */
  readonly at: (section: PlacedSection, x: number, y: number) => number[]
  readonly corners: (section: PlacedSection) => readonly (readonly [x: number, y: number])[]
}

/** @param inWater ids of the sections that stand already; a ramp is hinged and not looked at */
export function stiffSections({ layout }: Pick<Kit, 'layout'>, inWater: ReadonlySet<string>): Stiff {
  const sections = layout.workOrder.filter(({ id, role }) => role !== 'ramp' && inWater.has(id))
  const numbers = new Map(sections.map((section, i) => [section, i]))
  const root = sections[0]
  const size = sections.length + 2
  const at: Stiff['at'] = (section, x, y) => {
    const out = new Array<number>(size).fill(0)
    out[0] = 1
    out[1] = x - (root?.x ?? 0)
    out[2] = y - (root?.y ?? 0)
    for (let one: PlacedSection | null = section; one && one !== root; one = one.host) {
      const number = numbers.get(one)
      if (number === undefined || !one.host) break
      const edge = edgeOf(one.host, one.plan.edge)
      out[number + 2] = (x - edge.x) * edge.nx + (y - edge.y) * edge.ny
    }
    return out
  }
  return { sections, size, at, corners: outline }
}
