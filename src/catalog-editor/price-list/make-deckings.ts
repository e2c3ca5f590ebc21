/**
 * Deck panels of a price list, as the shop sells them: by material and by size. Each material is a decking to choose; the first is what frames
 * carry anyway. Frames get as many panels as go into their length, and what a frame's length asks for and no row has is cut from the nearest.
 */
import type { Catalog } from '../../../rules/index.ts'
import { freeCode } from '../form/blank.ts'
import { type PanelName, sized, tidyPanels } from './make-frame.ts'
import { stated } from './make-long.ts'
import { codeFrom, type PriceRow } from './read-row.ts'
import type { Guess } from './take.ts'

type Frame = Catalog['frames'][number]
type Panel = Catalog['decking']['panels'][number]
type Decking = NonNullable<Catalog['deckings']>[number]

/** m; a panel's share of a frame may differ by so much from the panel's own measure: a joint's width. */
const ALIKE = 0.02

export interface Laid {
  readonly catalog: Catalog
  readonly guesses: readonly Guess[]
  /** Rows that lie on no frame: none is as wide. */
  readonly left: readonly PriceRow[]
}

interface Material {
  readonly name: string
  readonly rows: readonly PriceRow[]
}

/** @param rows of deck panels alone, each with two measures at least */
export function makeDeckings(catalog: Catalog, rows: readonly PriceRow[], panelName: PanelName): Laid {
  const materials = materialsOf(rows)
  const used = new Set<PriceRow>()
  const panels = catalog.decking.panels.filter(({ turn }) => turn !== undefined)
  const guesses: Guess[] = []
  const deckings = materials.map(
    ({ name }, i): Decking => ({
      code: freeCode(
        codeFrom(name) || 'decking',
        materials.slice(0, i).map((one) => codeFrom(one.name) || 'decking'),
      ),
      name,
      color: colorOf(name, catalog),
      panels: {},
    }),
  )
  /** The panel of this material on a frame: one that is made already, or one more. */
  const panelOn = (frame: Frame, material: Material): string | null => {
    const row = rowFor(frame, material.rows)
    if (!row) return null
    used.add(row.row)
    const from = panelLike(frame, material.name, catalog)
    if (!from) return null
    const share = frame.length / row.count
    const width = frame.width
    const length = share - (frame.length / frame.panels - from.length)
    const whole = Math.abs(share - row.length) <= ALIKE
    const known = panels.find(
      (one) =>
        (one.code === row.row.code || one.code.startsWith(`${row.row.code}-`)) &&
        Math.abs(one.length - length) < 1e-3 &&
        Math.abs(one.width - width) < 1e-3,
    )
    if (known) return known.code
    const code = freeCode(
      whole ? row.row.code : `${row.row.code}-${Math.round(share * 100)}`.slice(0, 56),
      panels.map((one) => one.code),
    )
    const price = row.row.price ?? 0
    const name = whole ? row.row.name : panelName(width, share, material.name)
    const made = sized(from, code, name, length, width)
    panels.push({
      ...made,
      ...(whole && stated(row.row)),
      price: whole ? price : Math.round((price * share) / row.length),
    })
    if (!whole) guesses.push({ list: ['decking', 'panels'], code, rest: ['price'] })
    return code
  }
  const [first, ...others] = materials
  const frames = catalog.frames.map((frame): Frame => {
    if (frame.turn !== undefined || !first) return frame
    const own = panelOn(frame, first)
    if (own === null) return kept(frame, catalog, panels)
    for (const [k, material] of others.entries()) {
      const laid = panelOn(frame, material)
      if (laid !== null) Object.assign(deckings[k + 1]!.panels, { [own]: laid })
    }
    return { ...frame, panel: own, panels: rowFor(frame, first.rows)!.count }
  })
  const offered = deckings.filter((one, i) => i === 0 || Object.keys(one.panels).length > 0)
  return {
    catalog: tidyPanels({
      ...catalog,
      frames,
      decking: { ...catalog.decking, panels },
      deckings: offered,
    }),
    guesses: [...guesses, ...offered.map(({ code }) => ({ list: ['deckings'], code, rest: ['color'] }))],
    left: rows.filter((row) => !used.has(row)),
  }
}

/** A frame as wide as no panel of the list keeps the one that it has. */
function kept(frame: Frame, { decking }: Catalog, panels: Panel[]): Frame {
  const own = decking.panels.find(({ code }) => code === frame.panel)
  if (own && !panels.includes(own)) panels.push(own)
  return frame
}

/** Of these the one as wide as the frame whose length goes into the frame's best, and how often. */
function rowFor(
  { width, length }: Frame,
  rows: readonly PriceRow[],
): { readonly row: PriceRow; readonly length: number; readonly count: number } | null {
  const fits = rows.flatMap((row) => {
    const [a, b] = row.measures
    if (a === undefined || b === undefined) return []
    // 4 x 30 in a frame of 4: the other measure lies along. A square one lies as it likes.
    const along = Math.abs(a - width) <= ALIKE ? b : Math.abs(b - width) <= ALIKE ? a : null
    if (along === null) return []
    const count = Math.max(1, Math.round(length / along))
    return [{ row, length: along, count, off: Math.abs(length / count - along) }]
  })
  return fits.sort((x, y) => x.off - y.off)[0] ?? null
}

/** What the name says beside that it is a panel, and its size. */
function materialsOf(rows: readonly PriceRow[]): readonly Material[] {
  const by = new Map<string, PriceRow[]>()
  for (const row of rows) {
    const name = materialIn(row.name)
    by.set(name, [...(by.get(name) ?? []), row])
  }
  return [...by].map(([name, own]) => ({ name: name || own[0]!.name, rows: own }))
}

const SIZE_WORDS =
  /\b(?:deck(?:ing)?|panels?|boards?|feet|foot|ft|inch(?:es)?|in|mm|cm|m|x|by)\b|[\d'"′’″”×*/.]+|\bx(?=\d)/gi
function materialIn(name: string): string {
  const bare = name
    .replace(SIZE_WORDS, ' ')
    .replace(/\s+,/g, ',')
    .replace(/\s{2,}/g, ' ')
    .replace(/^[\s,;:()-]+|[\s,;:()-]+$/g, '')
  return bare === '' ? '' : bare[0]!.toUpperCase() + bare.slice(1)
}

const words = (text: string): ReadonlySet<string> => new Set(text.toLowerCase().match(/\p{L}{4,}/gu) ?? [])
const common = (a: string, b: string): number => {
  const known = words(a)
  return [...words(b)].filter((word) => known.has(word)).length
}

const alike = ({ deckings }: Catalog, name: string): Decking | undefined =>
  [...(deckings ?? [])]
    .map((one) => ({ one, score: common(one.name, name) }))
    .filter(({ score }) => score > 0)
    .sort((a, b) => b.score - a.score)[0]?.one

/** The frame's own panel in the decking that is most alike: its planks are what this one's are taken from. */
function panelLike(frame: Frame, name: string, catalog: Catalog): Panel | undefined {
  const { panels } = catalog.decking
  const laid = alike(catalog, name)?.panels[frame.panel]
  return panels.find(({ code }) => code === laid) ?? panels.find(({ code }) => code === frame.panel)
}

/** By what it is made of, where nothing alike is in the catalog. Seen on no part: what such things look like, roughly. */
const COLORS: readonly (readonly [RegExp, string])[] = [
  [/cedar|pine|wood|fir|larch/i, '#a97b4f'],
  [/alumin|metal/i, '#b9bdbf'],
  [/brown|walnut/i, '#6a4a36'],
  [/poly|vinyl|pvc|white/i, '#dcdcd6'],
  [/sand|tan|beige/i, '#cdbf9f'],
]
const GRAY = '#8b8c88'
const colorOf = (name: string, catalog: Catalog): string =>
  alike(catalog, name)?.color ?? COLORS.find(([said]) => said.test(name))?.[1] ?? GRAY
