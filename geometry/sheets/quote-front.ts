/**
 * The first page of a quote: all that a customer decides by. What it is in plain words, the dock in its water, the total with what is due when,
 * how long it holds, what is in it and what is not, and what is another since the last one.
 */

import { formatLength, formatMass } from '../../rules/index.ts'
import { footprintOfAll } from '../../rules/layout/footprint.ts'
import { extrasPlaced } from '../../rules/papers/extras-placed.ts'
import { broughtTwice, depositOf, includedIn } from '../../rules/papers/quote-included.ts'
import { PERSON_HEIGHT } from '../../rules/person.ts'
import { dayIn } from '../../rules/words/days.ts'
import { listOf } from '../../rules/words/language.ts'
import { dockInLake } from '../drawing/dock-in-lake.ts'
import { planPicture, wholePicture } from '../drawing/picture.ts'
import { figure, label, lineHeight, list, paragraph, rect, subheading, textLine } from '../paper/blocks.ts'
import { type Block, block, together } from '../paper/flow.ts'
import type { PaperOf } from '../paper/paper-of.ts'
import { GRAY, SIZE, TINT } from '../paper/style.ts'
import { fitText } from '../paper/text.ts'
import { planHeight } from './plan-height.ts'
import { isBinding, type Priced } from './priced.ts'

/** The dock in a few plain sentences. */
export function whatItIs({ dock, design, catalog, shop, options }: PaperOf, { t, width }: Priced): Block[] {
  const covered = footprintOfAll(dock.sections)
  if (!covered) return []
  const length = (value: number): string => formatLength(value, options)
  const widths = dock.sections.map(({ width }) => width)
  const extras = new Map<string, number>()
  for (const { id, name: part } of extrasPlaced({ dock, shop })) {
    // A post is told as what was asked for, not as its first part.
    const name = shop.extras.get(id.slice(0, id.lastIndexOf('.')))?.name ?? part
    extras.set(name, (extras.get(name) ?? 0) + 1)
  }
  const decking = catalog.deckings?.find(({ code }) => code === design.dock.finish)?.name
  const said = [
    t('quote-is', {
      sections: { value: dock.sections.length, unit: 'count' },
      width: [...new Set([Math.min(...widths), Math.max(...widths)].map(length))].join(' – '),
      out: length(covered.x1),
      deck: length(design.dock.deckHeight),
    }),
    ...(dock.ramp ? [t('quote-is-ramp')] : []),
    ...(decking ? [t('quote-is-deck', { decking })] : []),
    ...(extras.size > 0
      ? [
          t('quote-is-extras', {
            extras: listOf(
              [...extras].map(([name, count]) => t('quote-extra', { name, count })),
              options.language,
            ),
          }),
        ]
      : []),
  ].join(' ')
  return [...paragraph(said, width, { size: SIZE.sub, before: 2.4 })]
}

/** In its water; where that cannot be drawn, from its side and from above. */
export function dockPicture(of: PaperOf, { t, width }: Priced): Block[] {
  const inLake = dockInLake(of, width)
  return inLake
    ? [figure(inLake, width, t('quote-picture', { tall: formatLength(PERSON_HEIGHT, of.options) }))]
    : drawnPictures(of, width)
}

/** The dock from its side and from above. */
export function drawnPictures(of: PaperOf, width: number): Block[] {
  const whole = wholePicture(of, width)
  if (!whole) return []
  const height = planHeight(of)
  const plan = planPicture(of, [], { x0: 0, y0: 0, x1: width, y1: height })
  return [figure(whole, width), { ...figure({ marks: plan, width, height }, width), before: 1 }]
}

/** At the left what it costs, on a tint; at the right what that is for. */
export function inShort(of: PaperOf, priced: Priced): Block[] {
  const { t, width } = priced
  const gap = 7
  const left = width * 0.4
  const price = priceBlock(of, priced, left - 8)
  const lists = together(included(of, priced, width - left - gap))
  const height = Math.max(price.height + 7, lists.height)
  const twice = broughtTwice(priced.made, of.catalog)
  return [
    block(
      height,
      (x, y) => [
        rect([x, y], left, height, null, TINT),
        ...price.marks(x + 4, y + 3.5),
        ...lists.marks(x + left + gap, y),
      ],
      { before: 4 },
    ),
    ...(twice.length > 0
      ? paragraph(t('quote-both', { service: listOf(twice, of.options.language) }), width, {
          weight: 'bold',
          before: 2.4,
        })
      : []),
  ]
}

const LARGE = 8.4

function priceBlock({ catalog }: PaperOf, priced: Priced, width: number): Block {
  const { made, reader, t, money } = priced
  const binds = isBinding(priced)
  const deposit = depositOf(made, catalog)
  const small = { size: SIZE.small, ink: GRAY }
  const pair = (name: string, value: string): Block[] => [
    { ...textLine(name, width, small), before: 2.6 },
    textLine(value, width, { size: SIZE.heading, weight: 'bold' }),
  ]
  return together([
    textLine(t(binds ? 'quote-total' : 'estimate-total'), width, small),
    // Never cut: a total that is, is another.
    block(lineHeight(LARGE), (x, y) => {
      const said = money(made.total)
      const fits = fitText(said, width, LARGE, 'bold') === said
      return [label([x, y + LARGE * 1.05], said, { size: fits ? LARGE : SIZE.heading, weight: 'bold' })]
    }),
    ...(made.tax
      ? [
          textLine(
            t('named-so', {
              what: t('quote-tax', {
                name: made.tax.name,
                share: { value: made.tax.share, unit: 'share-fine' },
              }),
              said: money(made.tax.amount),
            }),
            width,
            small,
          ),
        ]
      : []),
    ...(deposit === null
      ? []
      : pair(
          t('quote-deposit', { share: { value: catalog.shop!.deposit!, unit: 'share' } }),
          money(deposit),
        )),
    ...(made.until ? pair(t('quote-valid'), dayIn(made.until, reader.language)) : []),
  ])
}

function included({ catalog, options }: PaperOf, priced: Priced, width: number): Block[] {
  const { made, t } = priced
  const { parts, spares, owned, services, other } = includedIn(made)
  const counted = (key: 'quote-in-parts' | 'quote-in-spares' | 'quote-in-owned', value: number): string[] =>
    value === 0 ? [] : [t(key, { count: { value, unit: 'count' } })]
  const within = [
    ...counted('quote-in-parts', parts),
    ...counted('quote-in-spares', spares),
    ...counted('quote-in-owned', owned),
    ...services.map(({ name, quantity, per }) =>
      per === 'job' && quantity === 1
        ? name
        : t('quote-in-service', { name, quantity, per: per === 'piece' ? '' : t(`per-${per}`) }),
    ),
    ...other.map(({ name }) => name),
    ...(made.freight.by === 'band' ? [freightLine(priced)] : []),
  ]
  const more = (catalog.services ?? []).filter(({ code }) => !services.some((one) => one.code === code))
  const tax = catalog.quote?.tax
  const without = [
    ...freightOpen(priced),
    ...(made.freight.by === 'fetched' ? [t('quote-out-fetched')] : []),
    ...(made.freight.by === 'absent' && (catalog.quote?.freight || catalog.quote?.zones)
      ? [t('quote-out-freight')]
      : []),
    ...(tax && !made.tax ? [tax.name] : []),
    // An estimate has no services, and sells none.
    ...(more.length > 0 && isBinding(priced)
      ? [
          t('quote-out-services', {
            services: listOf(
              more.map(({ name }) => name),
              options.language,
            ),
          }),
        ]
      : []),
  ]
  return [
    ...titled(t('quote-included'), within, width, 0),
    ...titled(t('quote-excluded'), without, width, 3.4),
  ]
}

const titled = (title: string, items: readonly string[], width: number, before: number): Block[] =>
  items.length === 0
    ? []
    : [{ ...subheading(title, width), before }, ...list(items, width, 'dot', { size: SIZE.small + 0.2 })]

/** What the line of freight is for. */
export const freightLine = (priced: Priced): string => {
  const { zone } = priced.made.freight
  return zone
    ? priced.t('quote-freight-zone', { zone: zone.name, ...freightFigures(priced) })
    : priced.t('quote-freight-line', freightFigures(priced))
}

/** Why freight is yet to be asked for; nothing where it is not. */
export function freightOpen(priced: Priced): string[] {
  const { made, t } = priced
  if (made.freight.by === 'zone') return [t('quote-freight-where')]
  return made.freight.by === 'none' ? [t('quote-freight-ask', freightFigures(priced))] : []
}

const freightFigures = ({ made: { freight }, reader }: Priced) => ({
  mass: formatMass(freight.mass, reader),
  longest: formatLength(freight.longest, reader),
})
