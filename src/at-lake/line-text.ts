/** A line of work in words: legs by their numbers, parts by their names. */
import type { StepLine } from '../../rules/papers/steps/step.ts'
import { count, meters, text } from '../words/index.ts'
import type { WatersideWord } from '../words/waterside.ts'
import { type Begun, legOf, type useSay } from './lake.ts'
import { legNumberOf, partName, sectionName } from './names.ts'

type Say = ReturnType<typeof useSay>

/** Those that have a form of their own in autumn; the rest is said as it is. */
export function lineText(line: StepLine, season: 'up' | 'down', begun: Begun, say: Say): string {
  const { record, project, day } = begun
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
  const bracing = work === 'brace-low' || work === 'brace-high'
  // By what was measured another brace may go there, or the same one the other way round.
  const brace = pair && day ? legOf(day, pair.legs[0])?.brace : null
  const end = brace?.marks.find((mark) => mark.end === (work === 'brace-low' ? 'low' : 'high'))?.leg
  const planned = work === 'brace-low' ? pair?.brace?.low : pair?.legs.find((leg) => leg !== pair.brace?.low)
  const code = brace?.code ?? pair?.brace?.code
  const values = {
    count: count(parts.reduce((sum, part) => sum + part.count, 0)),
    legs: text(bracing ? String(legNumberOf(end ?? planned ?? '', record)) : numbers(about)),
    pieces: text(legsListed(about, lengthsOf(begun), record, say)),
    section: text(section === undefined ? '' : sectionName(section, record, say)),
    name: text(bracing && catalog && code ? partName(code, catalog) : (main?.name ?? '')),
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

/** As it is set; else as it goes there by what is known now. */
function lengthsOf({ state, day }: Begun): ReadonlyMap<string, number> {
  const now = day?.stations.flatMap(({ legs }) => legs) ?? []
  return new Map([
    ...now.flatMap(({ leg, stock }) => (stock ? [[leg, stock.length] as const] : [])),
    ...state.legs.flatMap(({ leg, set }) => (set?.length ? [[leg.id, set.length] as const] : [])),
  ])
}

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
