/**
 * A published lake's depths as the bed of a dock.
 *
 * Sparkling Lake, Wisconsin: area by depth, North Temperate Lakes Long-Term Ecological Research, as distributed with GLEON's
 * rLakeAnalyzer (`inst/extdata/Sparkling.bth`). From it the mean shore profile of a round lake of the same areas,
 * x = sqrt(A0/π) − sqrt(A(z)/π): an average slope of about 1 in 12.5, not a measured transect.
 */
import { describe, expect, it } from 'vitest'
import { demoCatalog } from '../../rules/index.ts'
import { deriveAtOnce } from '../support/at-once.ts'
import { parsed } from '../support/by-hand.ts'
import { validate } from '../support/validate.ts'

/** Depth (m, by index) to area, m2. */
const AREAS = [
  583054, 549139.47, 519084.94, 496773.04, 477533.67, 455936.55, 433585.95, 409947.27, 388695.96,
] as const

/** Distance from shore at each depth of the mean profile, m, as computed and rounded elsewhere. */
const DISTANCES = [0, 12.72, 24.32, 33.15, 40.93, 49.85, 59.3, 69.57, 79.06] as const

const profile = AREAS.map((area, depth) => ({
  distance: Math.sqrt(AREAS[0] / Math.PI) - Math.sqrt(area / Math.PI),
  depth,
}))

/** Bed between two contours: a straight line from one to the next. */
function bedAt(x: number): number {
  const i = profile.findIndex((p) => p.distance >= x)
  if (i <= 0) return -x / profile[1]!.distance
  const [a, b] = [profile[i - 1]!, profile[i]!]
  return -(a.depth + (x - a.distance) / (b.distance - a.distance))
}

const design = parsed({
  format: 'leadline/design',
  version: 1,
  name: 'Sparkling Lake, mean profile',
  site: {
    soundings: profile.map((p) => ({ ...p, offset: 0 })),
    levels: { low: -0.3, high: 0.1 },
    bottom: 'sand',
  },
  dock: { deckHeight: 0.45, frame: '4x10', sections: 10, ramp: true },
})

describe('Sparkling Lake as a bed', () => {
  const dock = deriveAtOnce(design, demoCatalog)

  it('has the mean profile that its areas give', () => {
    profile.forEach((p, i) => {
      expect(Math.abs(p.distance - DISTANCES[i]!)).toBeLessThan(0.006)
    })
  })

  it('carries a dock of ten sections, nine of them on legs, without a stop', () => {
    expect(dock.findings.filter((f) => f.severity === 'stop')).toEqual([])
    expect(dock.legs).toHaveLength(4 + 8 * 2)
    expect(validate(dock, design, demoCatalog)).toEqual([])
  })

  it('has its bed on the lines between the contours at every leg', () => {
    for (const leg of dock.legs) {
      expect(Math.abs(leg.bed - bedAt(leg.x))).toBeLessThan(2e-6)
      expect(leg.setHeight).toBeCloseTo(0.45 - bedAt(leg.x), 5)
    }
  })

  it('reaches 2 m of water over 24 m of bed, and tells that the contours are far apart', () => {
    const outermost = Math.max(...dock.legs.map((l) => l.x))
    // Two contours out; the outermost legs stand on the slope from 2 m to 3 m or just short of it.
    expect(outermost).toBeGreaterThan(24)
    expect(Math.min(...dock.legs.map((l) => l.bed))).toBeCloseTo(bedAt(outermost), 5)
    // 12.72 m from contour to contour, the demo shop wants at most 6.096 m.
    expect(dock.findings.some((f) => f.severity !== 'stop' && /sounding/i.test(f.text))).toBe(true)
  })

  it('starts where the mean slope of 1 in 12.72 comes to 0.2524 m', () => {
    // Hinge axis 0.3865; R² = 3.048² + 0.1143² = 9.30337; ground 0.1 + 0.1524 = 0.2524 lies at x = −0.2524·12.7155; reach
    // sqrt(9.30337 − 0.1341²) = 3.04719.
    const ground = 0.2524 * profile[1]!.distance
    const reach = Math.sqrt(3.048 ** 2 + 0.1143 ** 2 - (0.3865 - 0.2524) ** 2)
    expect(dock.start).toBeCloseTo(Math.floor((reach - ground) / 0.05) * 0.05, 6)
  })
})
