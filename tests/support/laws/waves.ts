/** What is told of waves, worked out anew from the Design and the Catalog by the published formulas. */
import type { Catalog } from '../../../rules/catalog/schema.ts'
import type { Design } from '../../../rules/design/schema.ts'
import type { Dock } from '../../../rules/dock.ts'
import { elevations, expectNear, frameOf, type Law } from './law.ts'

/** Shore Protection Manual 1984, eqs. 3-28a, 3-39, 3-40: significant height and period of the peak. */
function grown({ wind }: Design['site']): { height: number; period: number } {
  if (!wind || wind.speed <= 0 || wind.fetch <= 0 || wind.depth === 0) return { height: 0, period: 0 }
  const stress = 0.71 * wind.speed ** 1.23
  const scale = (stress * stress) / 9.81
  const fetch = wind.fetch / scale
  const deep = wind.depth === undefined || wind.depth === null ? Number.POSITIVE_INFINITY : wind.depth / scale
  const a = Math.tanh(0.53 * deep ** (3 / 4))
  const b = Math.tanh(0.833 * deep ** (3 / 8))
  return {
    height: scale * 0.283 * a * Math.tanh((0.00565 / a) * fetch ** (1 / 2)),
    period: (stress / 9.81) * 7.54 * b * Math.tanh((0.0379 / b) * fetch ** (1 / 3)),
  }
}

/** A shop that states none: 15 cm. */
const clearanceOf = (catalog: Catalog): number => catalog.rules.waveClearance?.value ?? 0.15

/** Underside of the deepest frame that stands, under the deck surface, m. */
const depthOf = (dock: Dock, catalog: Catalog): number =>
  Math.max(
    ...dock.sections
      .filter((s) => s.role !== 'ramp')
      .map((s) => {
        const { top, railHeight } = elevations(0, frameOf(catalog, s.frame)!.rail, catalog)
        return railHeight - top
      }),
  )

/** Waves are told where there is wind or a wake, and legs; by the published law, held down by the depth, at most 0.78 of it. */
export const wavesByTheBook: Law = (dock, design, catalog) => {
  const out: string[] = []
  const { waves } = dock
  const wake = design.site.wake ?? 0
  const { height, period } = grown(design.site)
  const told = (height > 0 || wake > 0) && dock.legs.length > 0 && dock.start !== null
  if ((waves !== null) !== told) return [`waves ${waves === null ? 'not told of' : 'told of'}`]
  if (!waves) return []
  const bed = Math.min(...dock.legs.map((leg) => leg.bed))
  const most = (level: number): number => 0.78 * Math.max(0, level - bed)
  expectNear(out, 'out on the lake', waves.open, height)
  expectNear(out, 'period', waves.period, period)
  expectNear(out, 'height', waves.height, Math.min(height, most(0)))
  expectNear(out, 'tenth', waves.tenth, Math.min(1.27 * height, most(0)))
  expectNear(out, 'highest', waves.highest, Math.min(1.8 * height, most(0)))
  const high = Math.max(0, design.site.levels.high)
  const crest = (level: number): number => 0.7 * Math.min(Math.max(1.27 * height, wake), most(level))
  expectNear(out, 'crest', waves.crest, crest(0))
  expectNear(out, 'crest at the high level', waves.crestHigh, crest(high))
  const over = depthOf(dock, catalog) + clearanceOf(catalog)
  expectNear(out, 'deck re-set', waves.recommendedDeckHeight, crest(0) + over)
  expectNear(out, 'deck left all season', waves.recommendedAllSeason, high + crest(high) + over)
  const underside = design.dock.deckHeight - depthOf(dock, catalog)
  expectNear(out, 'clear', waves.clear, underside - crest(0))
  expectNear(out, 'clear at the high level', waves.clearHigh, underside - high - crest(high))
  if (waves.period > 0.2 && waves.depth > 0.01) {
    // (2 pi / T)^2 = g k tanh(k d)
    const k = (2 * Math.PI) / waves.length
    const ratio = (9.80665 * k * Math.tanh(k * waves.depth)) / ((2 * Math.PI) / waves.period) ** 2
    if (Math.abs(ratio - 1) > 1e-3) out.push(`length ${waves.length} does not go with period and depth`)
    if (Math.abs(waves.speed - waves.length / waves.period) > 1e-4) out.push(`speed ${waves.speed}`)
  }
  return out
}

/** A deck at the recommended height has no wave finding; one under it has. */
export const wavesFound: Law = (dock, design, catalog) => {
  const found = (code: string): boolean => dock.findings.some((f) => f.code === code)
  const { waves } = dock
  if (!waves)
    return found('crest-reaches-frame') || found('crest-near-frame') || found('deck-awash')
      ? ['a finding of waves without waves']
      : []
  const out: string[] = []
  const agrees = (code: string, by: number): void => {
    if (Math.abs(by) > 1e-5 && found(code) !== by > 0) out.push(`${code}: ${by} m past its limit`)
  }
  const { deckHeight } = design.dock
  const low = waves.recommendedDeckHeight - deckHeight
  const reached = low - clearanceOf(catalog)
  agrees('crest-reaches-frame', reached)
  if (reached < -1e-5) agrees('crest-near-frame', low)
  const over = depthOf(dock, catalog) + clearanceOf(catalog)
  agrees('deck-awash', waves.recommendedAllSeason - over - deckHeight)
  return out
}
