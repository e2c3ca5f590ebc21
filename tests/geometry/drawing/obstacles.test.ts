/** What lies on the bed is drawn where it lies and as large as it is: on the drawings, in the section, in the scene. */
import { describe, expect, it } from 'vitest'
import { elevationView } from '../../../geometry/drawing/elevation.ts'
import { planView } from '../../../geometry/drawing/plan.ts'
import { boundsOf } from '../../../geometry/drawing/view.ts'
import { drawnOf } from '../../../geometry/drawn.ts'
import { support } from '../../../rules/clearance/convex.ts'
import { demoCatalog, demoDesign, english, parseDesign, projectOf } from '../../../rules/index.ts'
import { obstacleSolid } from '../../../rules/site/obstacles.ts'
import { obstacleMesh } from '../../../src/scene/obstacles/mesh.ts'
import { deriveAtOnce } from '../../support/at-once.ts'

const obstacles = [
  { id: 'b1', kind: 'boulder', x: 5, y: 0.6, length: 0.8, width: 0.6, height: 0.5, heading: 90 },
  { id: 't1', kind: 'stump', x: 8, y: -0.4, length: 0.4, width: 0.4, height: 0.7, heading: 0 },
  { id: 'o1', kind: 'other', x: 3, y: 0.2, length: 0.5, width: 0.3, height: 0.2, heading: 0 },
] as const
const parsed = parseDesign({ ...demoDesign, site: { ...demoDesign.site, obstacles } })
if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
const design = parsed.value
const project = projectOf(design, demoCatalog, deriveAtOnce(design, demoCatalog))
const { bed } = project

describe('obstacles', () => {
  it.each(['metric', 'imperial'] as const)(
    'are on plan and side view with what they are and how high (%s)',
    (units) => {
      const drawn = drawnOf(project, english(units))
      const high = units === 'metric' ? 'boulder b1, 0.50 m high' : 'boulder b1, 1 ft 7 3/4 in high'
      const plan = planView(drawn)
      expect(plan.notes.map(({ text }) => text)).toContain(high)
      const outline = plan.paths
        .filter(({ layer, closed, hidden }) => layer === 'BED' && closed && !hidden)
        .map(({ points }) => boundsOf(points))
      expect(outline[0]!.x0).toBeCloseTo(4.7, 2)
      expect(outline[0]!.y1).toBeCloseTo(1, 2)
      expect(outline[2]!.x1).toBeCloseTo(3.25, 9)
      expect(outline[2]!.y0).toBeCloseTo(0.05, 9)
      // Under the deck they are seen in dashes.
      expect(plan.paths.filter(({ layer, hidden }) => layer === 'BED' && hidden).length).toBe(3)
      const side = elevationView(drawn)
      expect(side.notes.map(({ text }) => text)).toContain(high)
      const tops = side.paths
        .filter(({ layer, closed, bare }) => layer === 'BED' && closed && !bare)
        .map(({ points }) => boundsOf(points).y1)
      expect(tops[0]).toBeCloseTo(bed.bedAt(5, 0.6) + 0.5, 6)
      expect(tops[1]).toBeCloseTo(bed.bedAt(8, -0.4) + 0.7, 6)
    },
  )

  it('are seen as large as they are measured', () => {
    for (const one of design.site.obstacles!) {
      const { positions, normals, indices } = obstacleMesh([one], bed)
      const solid = obstacleSolid(one, bed)
      for (const k of [0, 1, 2] as const) {
        const own = [...positions].filter((_, i) => i % 3 === k)
        const axis = [0, 1, 2].map((i) => (i === k ? 1 : 0)) as unknown as readonly [number, number, number]
        expect(Math.max(...own), one.id).toBeCloseTo(support(solid, axis)[k], 5)
        expect(Math.min(...own), one.id).toBeCloseTo(2 * solid.middle[k] - support(solid, axis)[k], 5)
      }
      expect(Math.max(...indices)).toBeLessThan(positions.length / 3)
      for (let i = 0; i < normals.length; i += 3)
        expect(Math.hypot(normals[i]!, normals[i + 1]!, normals[i + 2]!)).toBeCloseTo(1, 5)
    }
  })
})
