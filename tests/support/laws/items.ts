/** What a catalog's items weigh and cost, by our own geometry: tubes and plates from their areas, whole pieces as the shop states them. */
import type { Catalog, Panel, Stock } from '../../../rules/catalog/schema.ts'
import type { PartKind } from '../../../rules/dock.ts'

export const key = (p: { kind: PartKind; code: string }) => `${p.kind} ${p.code}`

interface Item {
  readonly code: string
  readonly name: string
  readonly price: number
  readonly bag?: string | undefined
  /** kg, as stated or by our own geometry; a post without a length has none. */
  readonly mass: number
}

function areaOf(stock: Stock): number {
  if (stock.shape === 'flat') return stock.width * stock.height
  if (stock.shape === 'round-bar') return (Math.PI / 4) * stock.diameter ** 2
  if (stock.shape === 'round-tube') return Math.PI * stock.wall * (stock.diameter - stock.wall)
  return 2 * stock.wall * (stock.width + stock.height - 2 * stock.wall)
}

/** Mass of that length of a stock, kg. */
function bar(catalog: Catalog, code: string, length: number): number {
  const stock = catalog.stock[code]!
  return areaOf(stock) * length * catalog.materials[stock.material]!.density
}

/** Width of a stock lying in its part, m. */
function across(catalog: Catalog, code: string): number {
  const stock = catalog.stock[code]!
  return stock.shape === 'flat' || stock.shape === 'rect-tube' ? stock.width : stock.diameter
}

/** Between its parallel sides, how long it is so far from the shorter one, and the cosine of half its turn. */
function cornerPiece(length: number, width: number, turn: number) {
  const half = (turn * Math.PI) / 360
  return {
    high: width * Math.cos(half),
    chord: (from: number) => length + 2 * from * Math.tan(half),
    slant: Math.cos(half),
  }
}

function frameMass(catalog: Catalog, f: Catalog['frames'][number]): number {
  const rail = across(catalog, f.rail)
  if (f.turn !== undefined) {
    const { high, chord, slant } = cornerPiece(f.length, f.width, f.turn)
    return (
      bar(catalog, f.rail, chord(rail / 2) + chord(high - rail / 2)) +
      bar(catalog, f.ends, (2 * (high - 2 * rail)) / slant) +
      bar(catalog, f.cross.stock, f.cross.count * (high - 2 * rail)) +
      bar(catalog, catalog.sleeve.stock, 4 * catalog.sleeve.length)
    )
  }
  const between = f.width - 2 * rail
  return (
    bar(catalog, f.rail, 2 * f.length) +
    bar(catalog, f.ends, 2 * between) +
    bar(catalog, f.cross.stock, f.cross.count * between) +
    bar(catalog, catalog.sleeve.stock, 4 * catalog.sleeve.length)
  )
}

/** Planks less their notches, and battens. A plank any part of which is within the notch's reach of the outer end is shortened. */
function panelMass(catalog: Catalog, panel: Panel): number {
  const width = across(catalog, panel.plank.stock)
  const n = panel.plank.count
  let length = 0
  if (panel.turn !== undefined) {
    const { high, chord, slant } = cornerPiece(panel.length, panel.width, panel.turn)
    for (let i = 0; i < n; i++) {
      const from = (i * (high - width)) / (n - 1) + width / 2
      // Beside either side, where legs stand through the deck.
      const reach = Math.min(from, high - from) - width / 2
      const notched = panel.notch !== undefined && reach < panel.notch.across - 1e-9
      length += chord(from) - (notched ? (2 * panel.notch!.along) / slant : 0)
    }
    return (
      bar(catalog, panel.plank.stock, length) +
      bar(catalog, panel.batten.stock, panel.batten.count * panel.batten.length)
    )
  }
  for (let i = 0; i < n; i++) {
    const outer = n === 1 ? width : (i * (panel.length - width)) / (n - 1) + width
    const notched = panel.notch !== undefined && outer > panel.length - panel.notch.along + 1e-9
    length += panel.width - (notched ? 2 * panel.notch!.across : 0)
  }
  return (
    bar(catalog, panel.plank.stock, length) +
    bar(catalog, panel.batten.stock, panel.batten.count * panel.batten.length)
  )
}

function padMass(catalog: Catalog, pad: Catalog['pads'][number]): number {
  const { length, width, material } = pad.plate
  const plate =
    (length * width * pad.sole + width * pad.sole * (pad.lip - pad.sole)) *
    catalog.materials[material]!.density
  return plate + bar(catalog, pad.socket.stock, pad.socket.height)
}

/** Everything that can have a row, by kind and code. */
export function itemsOf(catalog: Catalog): Map<string, Item> {
  const items = new Map<string, Item>()
  type Entry = {
    code: string
    name: string
    price: number
    bag?: string | undefined
    mass?: number | undefined
  }
  const add = (kind: PartKind, entry: Entry, computed?: () => number) =>
    items.set(key({ kind, code: entry.code }), { ...entry, mass: entry.mass ?? computed!() })
  for (const f of catalog.frames) add('frame', f, () => frameMass(catalog, f))
  for (const l of catalog.legs) add('leg', l, () => bar(catalog, l.stock, l.length))
  for (const b of catalog.braces) add('brace', b, () => bar(catalog, b.stock, b.holes + 2 * b.end))
  for (const p of catalog.pads) add('foot-pad', p, () => padMass(catalog, p))
  for (const p of catalog.decking.panels) add('deck-panel', p, () => panelMass(catalog, p))
  add('hinge-bar', catalog.hinge.bar, () => bar(catalog, catalog.hinge.bar.stock, catalog.hinge.bar.length))
  add('hinge-pin', catalog.hinge.pin)
  add('brace-clamp', catalog.clamp)
  add('hook-bracket', catalog.hooks.bracket)
  add('accessory', catalog.tie)
  add('deck-clip', catalog.decking.clip)
  add('leg-cap', catalog.caps.leg)
  add('sleeve-cap', catalog.caps.sleeve)
  for (const bolt of catalog.hardware) add(bolt.kind, bolt)
  for (const extra of catalog.extras) {
    for (const part of extra.parts) add(part.kind, part)
    if (extra.place === 'post')
      for (const post of extra.posts) add('anchor-post', post, () => bar(catalog, post.stock, post.length))
  }
  return items
}
