/** What is other between two docks, in a line: what one sees first, then the money. */

import {
  assessKit,
  type Catalog,
  type Design,
  deriveKit,
  moneyIn,
  type Reader,
  wordsOf,
} from '../../../rules/index.ts'
import { listOf } from '../../../rules/words/language.ts'
import { DOCUMENTS } from '../../words/documents.ts'
import { count, meters, text } from '../../words/index.ts'

/** A deck that is less than this higher or lower is not told, m. */
const TOLD_HEIGHT = 0.005

type Shape = NonNullable<Design['dock']['head']>['shape'] | 'plan'

const shapeOf = ({ dock }: Design): Shape =>
  dock.plan ? 'plan' : dock.head && dock.head.sections > 0 ? dock.head.shape : 'straight'

/** What two docks are told apart by. */
function looksOf(design: Design, catalog: Catalog) {
  const { sections, ramp } = assessKit(deriveKit(design, catalog))
  return {
    shape: shapeOf(design),
    width: catalog.frames.find(({ code }) => code === design.dock.frame)?.width ?? null,
    sections: sections.length,
    ramp: ramp !== null,
    deck: design.dock.deckHeight,
  }
}

export interface Totaled {
  readonly design: Design
  /** Minor units; null where the two are in different currencies. */
  readonly total: number | null
}

/** 5 ft → 4 ft wide, one section less, −$1,240. */
export function headlineOf(before: Totaled, after: Totaled, catalog: Catalog, reader: Reader): string {
  const t = wordsOf(DOCUMENTS, reader)
  const [was, is] = [looksOf(before.design, catalog), looksOf(after.design, catalog)]
  const said: string[] = []
  if (was.shape !== is.shape)
    said.push(t('head-shape', { before: text(t(`shape-${was.shape}`)), after: text(t(`shape-${is.shape}`)) }))
  if (was.width !== null && is.width !== null && was.width !== is.width)
    said.push(t('head-width', { before: meters(was.width), after: meters(is.width) }))
  const more = is.sections - was.sections
  if (more !== 0) said.push(t(more > 0 ? 'head-more' : 'head-fewer', { sections: count(Math.abs(more)) }))
  if (was.ramp !== is.ramp) said.push(t(is.ramp ? 'head-ramp' : 'head-no-ramp'))
  const up = is.deck - was.deck
  if (Math.abs(up) > TOLD_HEIGHT)
    said.push(t(up > 0 ? 'head-higher' : 'head-lower', { height: meters(Math.abs(up)) }))
  if (said.length === 0) said.push(t('head-same'))
  if (before.total !== null && after.total !== null) {
    const change = after.total - before.total
    const money = moneyIn(catalog.currency, reader.language)
    said.push(change === 0 ? t('head-same-price') : `${change > 0 ? '+' : ''}${money(change)}`)
  }
  return listOf(said, reader.language)
}
