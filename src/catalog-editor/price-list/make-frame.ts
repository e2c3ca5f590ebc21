/** A frame of a price list, with the deck panels of its size, in each decking that the shop offers. */
import type { Catalog } from '../../../rules/index.ts'
import { freeCode } from '../form/blank.ts'
import { stated } from './make-long.ts'
import type { PriceRow } from './read-row.ts'
import type { Guess, Made } from './take.ts'

/** What a new panel is called: its `width`, its share of the frame's `length`, m; the decking's name, null: what frames carry anyway. */
export type PanelName = (width: number, length: number, decking: string | null) => string

type Frame = Catalog['frames'][number]
type Panel = Catalog['decking']['panels'][number]

/** m; panels that differ by less are one. */
const ALIKE = 1e-3

/** Its longer measure is its length. Made like the straight frame of the nearest size: rails, spacing of its cross members, planks. */
export function makeFrame(catalog: Catalog, row: PriceRow, panelName: PanelName): Made {
  const [a, b] = row.measures
  if (a === undefined || b === undefined) return { left: 'no-size' }
  const [width, length] = [Math.min(a, b), Math.max(a, b)]
  const apart = (frame: Frame): number => Math.abs(frame.width - width) + Math.abs(frame.length - length)
  const [like] = catalog.frames.filter(({ turn }) => turn === undefined).sort((x, y) => apart(x) - apart(y))
  const panelLike = catalog.decking.panels.find(({ code }) => code === like?.panel)
  if (!like || !panelLike) return { left: 'no-size' }
  const panels = Math.max(1, Math.round(length / (like.length / like.panels)))
  // Panels are shorter than their share of the frame by what lets them lie.
  const panelLength = length / panels - (like.length / like.panels - panelLike.length)
  const name = (decking: string | null): string => panelName(width, length / panels, decking)
  const laid = withPanel(catalog, panelLike, panelLength, width, row.code, name)
  const { mass: _, ...rest } = like
  const frame: Frame = {
    ...rest,
    code: row.code,
    name: row.name,
    price: row.price ?? 0,
    ...stated(row),
    length,
    width,
    cross: { ...like.cross, count: Math.max(1, Math.round((like.cross.count * length) / like.length)) },
    panel: laid.code,
    panels,
  }
  return { catalog: { ...laid.catalog, frames: [...laid.catalog.frames, frame] }, guesses: laid.guesses }
}

interface Laid {
  readonly catalog: Catalog
  readonly code: string
  readonly guesses: readonly Guess[]
}

/** The panel of this size that frames carry anyway; one more where none is, and of each decking one to lie in its place. */
function withPanel(
  catalog: Catalog,
  like: Panel,
  length: number,
  width: number,
  frame: string,
  nameIn: (decking: string | null) => string,
): Laid {
  const own = new Set(catalog.frames.map(({ panel }) => panel))
  const there = catalog.decking.panels.find(
    (one) =>
      own.has(one.code) &&
      one.turn === undefined &&
      Math.abs(one.length - length) < ALIKE &&
      Math.abs(one.width - width) < ALIKE,
  )
  if (there) return { catalog, code: there.code, guesses: [] }
  const panels = [...catalog.decking.panels]
  const guesses: Guess[] = []
  const add = (from: Panel, code: string, decking: string | null): string => {
    const made = freeCode(
      code.slice(0, 56),
      panels.map((one) => one.code),
    )
    panels.push(sized(from, made, nameIn(decking), length, width))
    guesses.push({ list: ['decking', 'panels'], code: made, rest: ['price'] })
    return made
  }
  const [plain] = (catalog.deckings ?? []).filter((one) => Object.keys(one.panels).length === 0)
  const code = add(like, `panel-${frame}`, plain?.name ?? null)
  const deckings = catalog.deckings?.map((one) => {
    const laid = catalog.decking.panels.find((panel) => panel.code === one.panels[like.code])
    return laid
      ? { ...one, panels: { ...one.panels, [code]: add(laid, `${code}-${one.code}`, one.name) } }
      : one
  })
  return {
    catalog: { ...catalog, decking: { ...catalog.decking, panels }, ...(deckings && { deckings }) },
    code,
    guesses,
  }
}

/** Planks and battens as close as in the other; its price goes by its area, and is told as guessed. */
export function sized(from: Panel, code: string, name: string, length: number, width: number): Panel {
  const { mass: _, ...rest } = from
  const round = (value: number): number => Number(value.toPrecision(9))
  return {
    ...rest,
    code,
    name: name.slice(0, 120),
    price: Math.round((from.price * length * width) / (from.length * from.width)),
    length: round(length),
    width: round(width),
    plank: { ...from.plank, count: Math.max(1, Math.round((from.plank.count * length) / from.length)) },
    batten: {
      ...from.batten,
      count: Math.max(2, Math.round((from.batten.count * width) / from.width)),
      length: round(Math.max(0.1, from.batten.length + length - from.length)),
    },
  }
}

/** Without panels that no frame carries any more, and those that were laid in their place. */
export function tidyPanels(catalog: Catalog): Catalog {
  const own = new Set(catalog.frames.map(({ panel }) => panel))
  const deckings = catalog.deckings?.map((one) => ({
    ...one,
    panels: Object.fromEntries(Object.entries(one.panels).filter(([code]) => own.has(code))),
  }))
  const laid = new Set(deckings?.flatMap(({ panels }) => Object.values(panels)))
  // A decking that lies on nothing any more would pass for what frames carry anyway.
  const before = new Map(catalog.deckings?.map(({ code, panels }) => [code, Object.keys(panels).length]))
  const kept = deckings?.filter(
    ({ code, panels }) => before.get(code) === 0 || Object.keys(panels).length > 0,
  )
  const panels = catalog.decking.panels.filter(({ code }) => own.has(code) || laid.has(code))
  return { ...catalog, decking: { ...catalog.decking, panels }, ...(kept && { deckings: kept }) }
}
