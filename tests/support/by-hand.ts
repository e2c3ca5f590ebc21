/** How a test writes down a dock that was worked by hand, and holds the engine's against it. */
import { expect } from 'vitest'
import type { Design } from '../../rules/design/schema.ts'
import type { Dock, PartKind } from '../../rules/dock.ts'
import { parseDesign } from '../../rules/index.ts'

/** id, x, y, bed, set height, reserve, required, stock length, above deck: m. */
export type LegRow = readonly [
  id: string,
  x: number,
  y: number,
  bed: number,
  setHeight: number,
  reserve: number,
  required: number,
  stock: number,
  aboveDeck: number,
]

/** pair, code, rise, low leg, low hole, high hole, low clearance, high clearance; a null code is a pair without a brace. */
export type BraceRow = readonly [
  pair: string,
  code: string | null,
  ...figures:
    | [rise: number, low: string, lowZ: number, highZ: number, lowClearance: number, highClearance: number]
    | [],
]

/** kind, code, quantity, spares, unit mass in g, unit price in cents. */
export type PartLine = readonly [
  kind: PartKind,
  code: string,
  quantity: number,
  spares: number,
  grams: number,
  cents: number,
]

export function parsed(input: unknown): Design {
  const result = parseDesign(input)
  if (!result.ok) throw new Error(JSON.stringify(result.issues))
  return result.value
}

/** One rounding of the engine and one of ours. */
const close = (actual: number | null, expected: number, what: string) => {
  expect(actual, what).not.toBeNull()
  expect(Math.abs(actual! - expected), `${what}: ${actual}, by hand ${expected}`).toBeLessThan(2.1e-6)
}

export function expectLegs(dock: Dock, rows: readonly LegRow[]): void {
  expect(dock.legs.map((l) => l.id).sort()).toEqual(rows.map(([id]) => id).sort())
  for (const [id, x, y, bed, setHeight, reserve, required, stock, aboveDeck] of rows) {
    const leg = dock.legs.find((l) => l.id === id)!
    close(leg.x, x, `${id} x`)
    close(leg.y, y, `${id} y`)
    close(leg.bed, bed, `${id} bed`)
    close(leg.setHeight, setHeight, `${id} set height`)
    close(leg.setHeightFrame, setHeight - 0.0254, `${id} set height to frame top`)
    close(leg.reserve, reserve, `${id} reserve`)
    close(leg.required, required, `${id} required`)
    expect(leg.stock, `${id} stock`).toBe(stock)
    close(leg.aboveDeck, aboveDeck, `${id} above deck`)
  }
}

export function expectBraces(dock: Dock, rows: readonly BraceRow[]): void {
  expect(dock.pairs.map((p) => p.id).sort()).toEqual(rows.map(([id]) => id).sort())
  for (const [id, code, rise, low, lowZ, highZ, lowClearance, highClearance] of rows) {
    const { brace } = dock.pairs.find((p) => p.id === id)!
    expect(brace?.code ?? null, `${id} brace`).toBe(code)
    if (brace === null) continue
    expect(brace.low, `${id} low end`).toBe(low)
    close(brace.rise, rise!, `${id} rise`)
    close(brace.lowZ, lowZ!, `${id} low hole`)
    close(brace.highZ, highZ!, `${id} high hole`)
    close(brace.lowClearance, lowClearance!, `${id} low clearance`)
    close(brace.highClearance, highClearance!, `${id} high clearance`)
  }
}

/** The whole list, row by row; rows of the codes in `but` are left for the test to look at. */
export function expectParts(dock: Dock, lines: readonly PartLine[], but: readonly PartKind[] = []): void {
  const short = dock.parts
    .filter((row) => !but.includes(row.kind))
    .map((row) =>
      [row.kind, row.code, row.quantity, row.spares, Math.round(row.unitMass * 1000), row.unitPrice].join(
        ' ',
      ),
    )
  expect(short.sort()).toEqual(lines.map((line) => line.join(' ')).sort())
}
