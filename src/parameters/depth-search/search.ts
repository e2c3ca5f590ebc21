/**
 * The dock of least cost that gives a boat its water: every frame, head and length of a small space, cheapest first, until one has the depth,
 * stands high enough and has nothing to be fixed. So none that is cheaper would do. Then the same among those of the shape in hand alone:
 * who has an L asked for no other. Pure; goes on a step at a time, for whoever shows how far it is and may stop it.
 */
import { straightFrames } from '../../../rules/catalog/straight.ts'
import { leastUnderKeel } from '../../../rules/clearance/keel.ts'
import {
  assess,
  assessKit,
  type Catalog,
  type Design,
  type Dock,
  deriveKit,
  LIMITS,
} from '../../../rules/index.ts'
import { makeBed } from '../../../rules/site/index.ts'
import { amountOf } from '../../panel/price.ts'
import { fixesOf } from '../whole-docks/fixes.ts'

export interface DepthWish {
  /** Of the boat, and what is to be left under its keel at the low level, m. */
  readonly draught: number
  readonly under: number
  readonly length: number
  readonly side: 'left' | 'right'
}

export interface Tried {
  readonly design: Design
  readonly sections: number
  readonly frame: string
  readonly head: NonNullable<Design['dock']['head']>
  readonly deckHeight: number
  /** As the page shows it, minor units. */
  readonly price: number
  /** Water beside its lake end at the low level, along the boat, m. */
  readonly depth: number
  /** `shallow` and `low` (the deck) are seen at once, `fix` and `stands` when it is worked out; null: dearer than what was found. */
  readonly found: 'shallow' | 'low' | 'fix' | 'stands' | null
  /** What is to be fixed. */
  readonly fixes: number
}

export interface Searched {
  readonly all: readonly Tried[]
  readonly best: Tried | null
  /**
   * Of the shape in hand: the cheapest that does it all, which may be `best`; where none does, of those deep and high enough the one with
   * least to fix. Null where there is none.
   */
  readonly own: Tried | null
}

export interface Progress {
  readonly done: number
  readonly of: number
}

/** Sections beyond the first number that is deep enough. */
const MORE = 2
/** Sections that are tried at all: a dock past that is not built of these. */
const MOST = 30

type Head = Tried['head']

const HEADS: readonly Head[] = [
  { shape: 'straight', sections: 0 },
  { shape: 'left', sections: 1 },
  { shape: 'tee', sections: 2 },
]

const sameHead = (a: Head, b: Head): boolean => a.shape === b.shape && a.sections === b.sections

const headInHand = ({ dock }: Design): Head => dock.head ?? HEADS[0]!

/** The shape in hand among them; an L goes to the side to which the one in hand goes. */
const headsFor = (own: Head): readonly Head[] => {
  const others = own.shape === 'right' ? HEADS.filter(({ shape }) => shape !== 'left') : HEADS
  return others.some((head) => sameHead(head, own)) ? others : [...others, own]
}

/** What is tried, as it is placed; null for a plan of its own. @param decks heights of the deck, m */
function* spaceOf(
  design: Design,
  catalog: Catalog,
  wish: DepthWish,
  decks: readonly number[],
): Generator<Progress, Tried[] | null> {
  if (design.dock.plan) return null
  const bed = makeBed(design.site)
  const low = Math.min(0, design.site.levels.low)
  const { placed: _, overrides: __, bracing, ...dock } = design.dock
  const { none: ___, ...braces } = bracing ?? {}
  const own = Object.keys(braces).length === 0 ? dock : { ...dock, bracing: braces }
  const least = design.dock.ramp ? 2 : 1
  // Asked with nothing under water, it tells how deep the water is where that boat lies.
  const boat = { length: wish.length, side: wish.side, draught: 0, height: 0, mass: 0 }
  const tried: Tried[] = []
  for (const { code: frame } of straightFrames(catalog))
    for (const head of headsFor(headInHand(design)))
      for (const deckHeight of decks) {
        let deep = 0
        for (let sections = least; sections <= Math.min(MOST, LIMITS.sections) && deep <= MORE; sections++) {
          const one: Design = { ...design, dock: { ...own, frame, head, deckHeight, sections } }
          const kit = deriveKit(one, catalog, bed)
          const placed = assessKit(kit)
          const depth = leastUnderKeel({ boat }, placed.sections, bed, low) ?? 0
          const shallow = depth < wish.draught + wish.under - 1e-6
          if (!shallow) deep++
          const fixes = fixesAtOnce(placed)
          const atOnce = shallow ? 'shallow' : isLow(one, catalog) ? 'low' : fixes > 0 ? 'fix' : null
          tried.push({
            design: one,
            sections,
            frame,
            head,
            deckHeight,
            price: amountOf(placed, catalog),
            depth,
            found: atOnce,
            fixes,
          })
          yield { done: 0, of: tried.length }
        }
      }
  return tried.sort((a, b) => a.price - b.price || a.sections - b.sections)
}

const isLow = ({ site, dock }: Design, { rules }: Catalog): boolean =>
  dock.deckHeight < Math.max(0, site.levels.high) + rules.deckOverHigh.value - 1e-6

const fixesAtOnce = ({ findings }: Dock): number => {
  const { stops, warnings } = fixesOf(findings)
  return stops + warnings
}

/** Works out to the end, the cheapest first, what is left of the space. */
export function* searchDepth(
  design: Design,
  catalog: Catalog,
  wish: DepthWish,
  decks: readonly number[],
): Generator<Progress, Searched | null> {
  const space = yield* spaceOf(design, catalog, wish, decks)
  if (!space) return null
  const all = [...space]
  const open = all.flatMap(({ found }, i) => (found === null ? [i] : []))
  const isOwn = ({ head }: Tried): boolean => sameHead(head, headInHand(design))
  let best: Tried | null = null
  for (const [done, i] of open.entries()) {
    const one = all[i]!
    if (best && !isOwn(one)) continue
    yield { done, of: open.length }
    const dock = assess(deriveKit(one.design, catalog), { remedies: false })
    const fixes = fixesAtOnce(dock)
    // What could not be judged is not said to stand.
    const stands = fixes === 0 && dock.structure !== null
    const tried: Tried = { ...one, found: stands ? 'stands' : 'fix', fixes }
    all[i] = tried
    if (!stands) continue
    best ??= tried
    if (isOwn(tried)) return { all, best, own: tried }
  }
  const nearly = all.filter((one) => one.found === 'fix' && isOwn(one))
  return { all, best, own: nearly.sort((a, b) => a.fixes - b.fixes || a.price - b.price)[0] ?? null }
}
