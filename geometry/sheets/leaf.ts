/**
 * The one leaf of the set-up sheet: front and back as large as they go, for what is on it is read at arm's length, in rain, off a photocopy.
 */
import { formatLength } from '../../rules/index.ts'
import { footprintOfAll } from '../../rules/layout/footprint.ts'
import { legNumber } from '../../rules/leg-places.ts'
import type { Steps } from '../../rules/papers/steps/step.ts'
import { fitOnPaper } from '../../rules/words/fit-text.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import { PAPERS, type PaperWords } from '../../rules/words/papers.ts'
import { planPicture } from '../drawing/picture.ts'
import { figure, paragraph } from '../paper/blocks.ts'
import { roomIn } from '../paper/document.ts'
import { type Block, block, heightOf, paginate, together } from '../paper/flow.ts'
import type { PaperOf } from '../paper/paper-of.ts'
import { HEAD_AGAIN, SIZE } from '../paper/style.ts'
import { extrasBlocks } from './extras.ts'
import { legTableBlocks, legTableLead, ROWS, settingRule } from './leg-setting.ts'
import { straightBlocks } from './straight.ts'
import { dayLine, hangingBlocks, orderBlocks, stopBlocks, tightBlocks, whoBlocks } from './work-order.ts'

/** Heights of the plan over the leg table, mm; the width of one beside the rules, and what is between them. */
const PLAN = { least: 25, most: [46, 38, 32, 26], beside: 66, gap: 5 } as const
/** Letters of what is read in lines, mm. */
const LETTERS = [SIZE.body, SIZE.small] as const
/** No farther from a place it is at it, m. */
const AT = 0.01

interface Face {
  readonly plan: readonly Block[]
  /** Under the leg table. */
  readonly under: readonly Block[]
  /** Moved to the manual. */
  readonly over: readonly Block[]
}

export interface Leaf {
  readonly front: readonly Block[]
  readonly rear: readonly Block[]
  readonly over: readonly Block[]
  /** Each of its sides is one. */
  readonly whole: boolean
}

/** @param title what stands over it, with the head of the paper */
export function leafOf(of: PaperOf, sheet: Steps, title: readonly Block[], width: number): Leaf {
  const t = wordsOf(PAPERS, of.options)
  const [checks, extras] = [straightBlocks(of, width), extrasBlocks(of, width)]
  const orders = LETTERS.map((size) => orderBlocks(of, sheet, width, size))
  const back = [
    ...hangingBlocks(of, 'set-up', width),
    ...whoBlocks(of, sheet, width),
    ...tightBlocks(of, width),
    ...stopBlocks(t, sheet, width, of.catalog.shop?.cautions),
  ]
  const day = dayLine(of, 'set-up', width)
  const tables = ROWS.map((row) => [
    ...legTableLead(of, width, 'set-up'),
    ...legTableBlocks(of, width, 'set-up', row),
  ])
  const leaf = (face: Face, table: readonly Block[], order: readonly Block[], ahead: number) => ({
    front: [
      ...[...title, day, ...face.plan, ...table, ...face.under],
      ...(ahead > 1 ? checks : []),
      ...(ahead > 0 ? extras : []),
    ],
    rear: [...order, ...(ahead > 1 ? [] : checks), ...(ahead > 0 ? [] : extras), ...back],
    over: face.over,
  })
  const faces = facesOf(of, width, t)
  // What is given up last comes first.
  const leaves = faces.flatMap((face) =>
    tables.flatMap((table) => orders.flatMap((order) => [0, 1, 2].map((n) => leaf(face, table, order, n)))),
  )
  const fits = (blocks: readonly Block[], top: number): boolean =>
    paginate(blocks, () => ({ at: [0, 0], height: roomIn(of.options) - top })).length === 1
  const whole = leaves.find(({ front, rear }) => fits(front, 0) && fits(rear, HEAD_AGAIN))
  const near = whole ?? leaves.find(({ front }) => fits(front, 0))
  return {
    ...(near ??
      leaf(faces.find(({ over }) => over.length === 0) ?? faces[0]!, tables.at(-1)!, orders[0]!, 0)),
    whole: whole !== undefined,
  }
}

/** Best first: the plan over the table, beside the rules, overleaf; where every leg has its number, if it has them anywhere. */
function facesOf(of: PaperOf, width: number, t: PaperWords): Face[] {
  const rule = (size: number, wide = width): Block[] => [
    ...rampBlock(of, wide, t, size),
    ...settingRule(of, wide, size),
    ...fitOnPaper(of.dock, of.options).flatMap((line) => paragraph(line, wide, { size })),
  ]
  const rules = LETTERS.map((size) => rule(size))
  const { x0, x1, y0, y1 } = footprintOfAll(of.dock.sections) ?? { x0: 0, x1: 1, y0: 0, y1: 1 }
  const own = (width * (y1 - y0 + 2)) / (x1 - x0 + 2)
  const over = PLAN.most.map((most) => planBlock(of, width, Math.min(most, Math.max(PLAN.least, own))))
  const aside = width - PLAN.beside - PLAN.gap
  const beside = LETTERS.map((size) => {
    const text = rule(size, aside)
    const plan = planBlock(of, PLAN.beside, heightOf(text))
    return { text, plan }
  })
  const whole = over.filter(({ complete }) => complete)
  const shown = whole.length > 0 || beside.some(({ plan }) => plan.complete) ? whole : over.slice(-1)
  return [
    ...shown.flatMap(({ blocks }) => rules.map((under): Face => ({ plan: blocks, under, over: [] }))),
    ...beside
      .filter(({ plan }) => plan.complete)
      .map(({ text, plan }): Face => {
        const left = together(text)
        const both = block(Math.max(left.height, heightOf(plan.blocks)), (x, y) => [
          ...left.marks(x, y),
          ...together(plan.blocks).marks(x + aside + PLAN.gap, y),
        ])
        return { plan: [], under: [{ ...both, before: 2 }], over: [] }
      }),
    ...rules.map((under): Face => ({ plan: [], under, over: over[0]!.blocks })),
  ]
}

/** The dock from above in a box, mm; `complete`: each of its legs has its number in it. */
function planBlock(
  of: PaperOf,
  width: number,
  height: number,
): { readonly blocks: Block[]; readonly complete: boolean } {
  const { dock } = of
  if (dock.sections.length === 0) return { blocks: [], complete: true }
  const marks = planPicture(of, [], { x0: 0, y0: 0, x1: width, y1: height })
  const told = new Set(marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])))
  return {
    blocks: [{ ...figure({ marks, width, height }, width), before: 1 }],
    complete: dock.legs.every(({ id }) => told.has(String(legNumber(dock, id)))),
  }
}

function rampBlock(of: PaperOf, width: number, t: PaperWords, size: number): Block[] {
  const { ramp } = of.dock
  if (!ramp) return []
  const { options, design } = of
  const at = ramp.shoreX - (design.site.stake?.x ?? 0)
  const keys = design.site.stake
    ? (['ramp-lands-stake', 'ramp-lands-stake-out', 'ramp-lands-at-stake'] as const)
    : (['ramp-lands', 'ramp-lands-out', 'ramp-lands-at'] as const)
  return [
    ...paragraph(
      t(keys[Math.abs(at) < AT ? 2 : at < 0 ? 0 : 1], {
        at: formatLength(Math.abs(at), options),
        height: formatLength(ramp.shoreZ, options),
        step: formatLength(ramp.step, options),
      }),
      width,
      { size, before: 1.6 },
    ),
  ]
}
