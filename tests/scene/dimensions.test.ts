import { describe, expect, it } from 'vitest'
import { bedMesh } from '../../geometry/index.ts'
import { demoCatalog, demoDesign, english, formatLength, makeBed, parseDesign } from '../../rules/index.ts'
import { contourStep, type MeasuredFrom, measure } from '../../src/scene/measures/dimensions.ts'
import { findingId } from '../../src/state/highlight.ts'
import { deriveAtOnce } from '../support/at-once.ts'

function measured(change: Partial<MeasuredFrom> = {}, dockChange: Record<string, unknown> = {}) {
  const parsed = parseDesign({ ...demoDesign, dock: { ...demoDesign.dock, ...dockChange } })
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
  const design = parsed.value
  const dock = deriveAtOnce(design, demoCatalog)
  const bed = makeBed(design.site)
  const from: MeasuredFrom = {
    dock,
    design,
    selection: null,
    labels: true,
    level: 0,
    reader: english('metric'),
    ground: bed.bedAt,
    mesh: bedMesh(bed, { x0: -10, x1: 30, y0: -8, y1: 8 }, 1),
    contour: 0.25,
    range: { x0: -4, x1: 13 },
    plane: null,
    left: false,
    ...change,
  }
  const result = measure(from)
  return { ...result, dock, text: (id: string) => result.notes.find((note) => note.id === id)?.text }
}

const long = ({ from, to }: { from: readonly number[]; to: readonly number[] }): number =>
  Math.hypot(to[0]! - from[0]!, to[1]! - from[1]!, to[2]! - from[2]!)

describe('the measures in the picture', () => {
  it('tell the deck over the water and the depth at the end, and follow the level', () => {
    const { text, lines, dock } = measured()
    expect(text('over')).toBe('0.45 m above water')
    // The deeper of the two outermost legs of the demo, s5.end.
    const depth = -Math.min(...dock.legs.filter((leg) => leg.id.startsWith('s5.end')).map((leg) => leg.bed))
    expect(depth).toBeCloseTo(-makeBed(demoDesign.site).firmAt(dock.legs.at(-1)!.x, 0), 6)
    expect(text('deep')).toBe(`${depth.toFixed(2)} m deep`)
    expect(lines.map(long).map((n) => n.toFixed(4))).toEqual([(0.45).toFixed(4), depth.toFixed(4)])
    const high = measured({ level: 0.25 })
    expect(high.text('over')).toBe('0.20 m above water')
    expect(high.text('deep')).toBe(`${(depth + 0.25).toFixed(2)} m deep`)
    expect(measured({ level: 0.6 }).text('over')).toBe('0.15 m below water')
  })

  it('of a picked leg are the set height, what stands over the deck, and the water there, as the dock has them', () => {
    const { dock } = measured()
    for (const leg of dock.legs) {
      const { text, lines } = measured({ selection: leg.id, level: 0.1 })
      expect(text(`${leg.id} set`)).toContain(formatLength(leg.setHeight, english('metric')))
      expect(text(`${leg.id} above`)).toContain(formatLength(leg.aboveDeck!, english('metric')))
      expect(text(`${leg.id} deep`)).toContain(formatLength(0.1 - leg.bed, english('metric')))
      expect(lines.map(long).map((n) => n.toFixed(6))).toEqual(
        [leg.setHeight, leg.aboveDeck!, 0.1 - leg.bed].map((n) => n.toFixed(6)),
      )
      expect(lines[0]!.from[2]).toBeCloseTo(leg.bed, 6)
    }
  })

  it('of a picked pair are the clearances of its brace, as the dock has them', () => {
    const { dock } = measured()
    const braced = dock.pairs.filter((pair) => pair.brace)
    expect(braced.length).toBeGreaterThan(1)
    for (const { id, brace } of braced) {
      const { text, lines } = measured({ selection: id })
      expect(text(`${id} low`)).toContain(formatLength(brace!.lowClearance, english('metric')))
      expect(text(`${id} high`)).toContain(formatLength(brace!.highClearance, english('metric')))
      expect(lines.map(long).map((n) => n.toFixed(6))).toEqual(
        [brace!.lowClearance, brace!.highClearance].map((n) => n.toFixed(6)),
      )
    }
  })

  it('are in the reader’s units', () => {
    expect(measured({ reader: english('imperial') }).text('over')).toBe('1 ft 5 3/4 in above water')
  })

  it('have a depth at each contour line, on the line', () => {
    const { notes } = measured()
    const bed = makeBed(demoDesign.site)
    const depths = notes.filter(({ id }) => id.startsWith('contour'))
    expect(depths.length).toBeGreaterThan(4)
    for (const { id, at, text } of depths) {
      const depth = Number(id.slice(8)) * 0.25
      expect(text).toBe(formatLength(depth, english('metric')))
      for (const [x, y] of at) expect(-bed.bedAt(x, y)).toBeCloseTo(depth, 6)
    }
  })

  it('have the depths on the side that the eye is on, and on the face of a cut', () => {
    const y = (change: Partial<MeasuredFrom>) =>
      measured(change)
        .notes.filter(({ id }) => id.startsWith('contour'))
        .map(({ at }) => at[0]![1])
    expect(y({}).every((n) => n < -0.6)).toBe(true)
    expect(y({ left: true }).every((n) => n > 0.6)).toBe(true)
    expect(new Set(y({ plane: -1.06 }))).toEqual(new Set([-1.06]))
  })

  it('put a sign at everything that is warned of, and the words at the one that is picked', () => {
    const { dock, notes } = measured({}, { sections: 9 })
    const grave = dock.findings.filter((f) => f.severity !== 'note' && f.parts.length > 0)
    expect(grave.length).toBeGreaterThan(0)
    const signs = notes.filter((note) => note.sign && note.text === '!').map((note) => note.id.slice(5))
    expect(new Set(signs)).toEqual(new Set(grave.flatMap((f) => f.parts)))
    const picked = measured({ selection: findingId(grave[0]!) }, { sections: 9 })
    expect(picked.text('finding')!.length).toBeGreaterThan(10)
    for (const { at } of picked.notes) for (const place of at) expect(place).toHaveLength(3)
  })

  it('stay few for a dock of very many sections, most of it warned of', () => {
    const start = performance.now()
    const { notes, dock } = measured({}, { sections: 3000 })
    expect(dock.findings.filter((f) => f.severity !== 'note').flatMap((f) => f.parts).length).toBeGreaterThan(
      1000,
    )
    expect(notes.length).toBeLessThan(90)
    // Deriving it takes most of this; with a search for each sign it would be minutes.
    expect(performance.now() - start).toBeLessThan(20_000)
  })

  it('are none without labels, besides those of what is picked and warned of', () => {
    expect(measured({ labels: false }).notes).toEqual([])
    expect(measured({ labels: false, selection: 's5.end.left' }).lines).toHaveLength(3)
  })

  it('choose contour steps that give a handful of lines', () => {
    for (const deepest of [0.3, 0.9, 1.5, 4, 9, 25])
      for (const units of ['metric', 'imperial'] as const) {
        const lines = deepest / contourStep(deepest, units)
        expect(lines).toBeLessThanOrEqual(8)
      }
    expect(contourStep(1.4, 'imperial')).toBeCloseTo(0.3048, 9)
    expect(contourStep(1.4, 'metric')).toBe(0.25)
  })
})
