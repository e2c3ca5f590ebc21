/** What things are called at the lake: legs by number and place, sections by number, parts by the shop's own names. No ids, no codes. */
import type { Catalog } from '../../rules/index.ts'
import type { LegNamed, SeasonRecord } from '../../rules/record/index.ts'
import type { Words } from '../ui/use-words.ts'
import { count, meters, text } from '../words/index.ts'
import type { WatersideWord } from '../words/waterside.ts'

type Say = Words<WatersideWord>

/** `Section 3`; one of the head as it is labelled. */
export function sectionName(id: string, record: Pick<SeasonRecord, 'sections'>, { t }: Say): string {
  const [, letter, n] = /^([sh])(\d+)$/.exec(id) ?? []
  if (record.sections.some((one) => one.id === id && one.ramp))
    return n === undefined ? t('section.ramp') : t('section.ramp-numbered', { n: count(Number(n)) })
  if (n === undefined) return t('section.named', { name: text(id) })
  return t(letter === 'h' ? 'section.head' : 'section.run', { n: count(Number(n)) })
}

export const legNumberOf = (leg: string, { legs }: Pick<SeasonRecord, 'legs'>): number =>
  legs.find(({ id }) => id === leg)?.number ?? 0

/** `27 ft 4 in out, left`; with the stake's name where distances start from one. Empty where it is not known. */
export function placeOf(leg: LegNamed, { stake }: Pick<SeasonRecord, 'stake'>, { t }: Say): string {
  if (leg.x === null) return t('old.place', { side: text(t(`leg.${leg.side}`)) })
  const values = { out: meters(Math.abs(leg.x - (stake?.x ?? 0))), from: text(stake?.name ?? '') }
  const where = stake ? t('leg.out-from', values) : t(leg.x < 0 ? 'leg.up-bank' : 'leg.out', values)
  const side =
    leg.aside === null ? t(`leg.${leg.side}`) : t(`leg.aside-${leg.side}`, { aside: meters(leg.aside) })
  return t('leg.place', { where: text(where), side: text(side) })
}

export const legsNamed = (ids: readonly string[], record: Pick<SeasonRecord, 'legs'>): string =>
  ids.map((id) => legNumberOf(id, record)).join(', ')

/** The code where the shop has no such brace any more. */
export const braceName = (code: string, { braces }: Pick<Catalog, 'braces'>): string =>
  braces.find((brace) => brace.code === code)?.name ?? code
