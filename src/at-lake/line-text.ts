/** A line of work in words: legs by their numbers, parts by their names. */
import type { StepLine } from '../../rules/papers/steps/step.ts'
import { count, meters, text } from '../words/index.ts'
import type { WatersideWord } from '../words/waterside.ts'
import type { Begun, useSay } from './lake.ts'
import { legNumberOf, partName, sectionName } from './names.ts'

type Say = ReturnType<typeof useSay>

/** Those that have a form of their own in autumn; the rest is said as it is. */
export function lineText(
  line: StepLine,
  season: 'up' | 'down',
  { record, project, day }: Begun,
  say: Say,
): string {
  const { work, about, parts } = line
  const catalog = project?.catalog
  const pair = project?.dock.pairs.find(({ id }) => id === about[0])
  const numbers = (ids: readonly string[]): string =>
    ids
      .map((id) => legNumberOf(id, record))
      .filter((n) => n > 0)
      .join(', ')
  const section = about.find((id) => record.sections.some((one) => one.id === id))
  const main = parts[0]
  const high = pair?.legs.find((leg) => leg !== pair.brace?.low)
  const bracing = work === 'brace-low' || work === 'brace-high'
  const end = work === 'brace-low' ? pair?.brace?.low : high
  const values = {
    count: count(parts.reduce((sum, part) => sum + part.count, 0)),
    legs: text(bracing ? String(legNumberOf(end ?? '', record)) : numbers(about)),
    pieces: text(legsListed(about, begunLengths(project?.dock.legs ?? []), record, say)),
    section: text(section === undefined ? '' : sectionName(section, record, say)),
    name: text(catalog && pair?.brace && bracing ? partName(pair.brace.code, catalog) : (main?.name ?? '')),
    at: meters(Math.abs(day?.stations.find((one) => one.section === section)?.out ?? 0)),
    from: text(record.stake?.name ?? ''),
    a: text(sectionName(about[0] ?? '', record, say)),
  }
  return say.t(wordOf(line, season, record.stake !== null), values)
}

/** `5 (5 ft), 6 (5 ft)` */
function legsListed(
  ids: readonly string[],
  lengths: ReadonlyMap<string, number>,
  record: Begun['record'],
  { t }: Say,
): string {
  return ids
    .flatMap((id) => {
      const length = lengths.get(id)
      const number = count(legNumberOf(id, record))
      return length === undefined ? [] : [t('line.piece', { number, length: meters(length) })]
    })
    .join(', ')
}

const begunLengths = (
  legs: readonly { readonly id: string; readonly stock: number | null }[],
): ReadonlyMap<string, number> =>
  new Map(legs.flatMap(({ id, stock }) => (stock === null ? [] : [[id, stock]])))

/** The key that the papers have it under, told in words of the waterside. */
function wordOf({ work, say }: StepLine, season: 'up' | 'down', staked: boolean): WatersideWord {
  if (work === 'ready') return `ready.${say.key}` as WatersideWord
  if (work === 'carry')
    return say.key.endsWith('-deck')
      ? `${season}.carry-deck`
      : season === 'up' && staked
        ? 'up.carry-stake'
        : `${season}.carry`
  if (work === 'extra') return say.key.endsWith('-post') ? `${season}.post` : `${season}.extra`
  return `${season}.${work}` as WatersideWord
}
