/** A line of work in words: legs by their numbers, parts by their names. */
import { edgeToday } from '../../rules/at-lake/index.ts'
import type { StepLine } from '../../rules/papers/steps/step.ts'
import { count, meters, text } from '../words/index.ts'
import type { WatersideWord } from '../words/waterside.ts'
import { type Begun, legOf, marksOn, type useSay } from './lake.ts'
import { braceName, legNumberOf, sectionName } from './names.ts'

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
  const at = pair && day ? legOf(day, pair.legs[0]) : null
  const brace = pair?.along ? at?.along : at?.brace
  const end = brace?.marks.find((mark) => mark.end === (work === 'brace-low' ? 'low' : 'high'))?.leg
  const planned = work === 'brace-low' ? pair?.brace?.low : pair?.legs.find((leg) => leg !== pair.brace?.low)
  const code = brace?.code ?? pair?.brace?.code
  const values = {
    count: count(parts.reduce((sum, part) => sum + part.count, 0)),
    legs: text(bracing ? String(legNumberOf(end ?? planned ?? '', record)) : numbers(about)),
    pieces: text(legsListed(about, lengthsOf(begun), record, say)),
    section: text(section === undefined ? '' : sectionName(section, record, say)),
    name: text(bracing && catalog && code ? braceName(code, catalog) : (main?.name ?? '')),
    at: meters(Math.abs(day?.stations.find((one) => one.section === section)?.out ?? 0)),
    from: text(record.stake?.name ?? ''),
    ...heightsIn(about, begun, say, season),
    ...fromToday(section, begun),
    was: count(legNumberOf(brace?.turnedFrom ?? '', record)),
    off: meters(BLOCKS),
    a: text(sectionName(about[0] ?? '', record, say)),
  }
  return say.t(wordOf(line, season, begun, brace?.turnedFrom != null), values)
}

/** So high its blocks hold a frame that gets legs, m (ours: a foot, so that clamps and pads go on from below). */
const BLOCKS = 0.3048

/** What is known of legs before they are in the water: where the frame's top and the clamps come, one after the other. */
function heightsIn(
  about: readonly string[],
  { day, record, project, state }: Begun,
  { t }: Say,
  season: 'up' | 'down',
) {
  const on = new Set(about)
  const legs = (day?.stations.flatMap((station) => station.legs) ?? []).filter(
    ({ leg }) => on.has(leg) || project?.dock.pairs.some(({ id, legs }) => on.has(id) && legs.includes(leg)),
  )
  const said = (all: readonly (readonly [string, number])[]): ReturnType<typeof text> =>
    text(
      all
        .map(([leg, at]) => t('line.height', { number: count(legNumberOf(leg, record)), at: meters(at) }))
        .join(', '),
    )
  const heights = legs.map(({ leg, heights: { frame } }) => {
    // In autumn as it stands, whatever the figures of the day say.
    const set = season === 'down' ? state.legs.find((one) => one.leg.id === leg)?.set : null
    return [leg, set ? (set.frame ?? set.height - (record.rise ?? 0)) : frame] as const
  })
  const places = legs.flatMap((at) => marksOn(at).map(({ leg, fromSole }) => [leg, fromSole] as const))
  return {
    heights: said(heights),
    places: said(places),
    height: meters(heights[0]?.[1] ?? 0),
    // A leg with two clamps has both told.
    up:
      about.length === 1 && places.length > 1
        ? text(places.map(([, at]) => t('line.at', { at: meters(at) })).join(' / '))
        : meters(places[0]?.[1] ?? 0),
  }
}

/** Where a section begins by today's water's edge, which everybody sees. */
function fromToday(section: string | undefined, { project, day }: Begun) {
  const edge = project && day ? edgeToday(project.bed, day.level) : null
  const x = project?.dock.sections.find(({ id }) => id === section)?.x
  const off = edge === null || x === undefined ? null : x - edge
  return { today: meters(Math.abs(off ?? 0)) }
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
function wordOf(line: StepLine, season: 'up' | 'down', begun: Begun, turned: boolean): WatersideWord {
  const { work, say, about } = line
  const { record, last, project } = begun
  const deck = say.key.endsWith('-deck') ? '-deck' : ''
  // Who set it before has it all lying in the boathouse, and knows how each leg stood.
  if (say.key === 'up-ready-sort' && last) return 'ready.up-ready-sort-again'
  if (work === 'ready') return `ready.${say.key}` as WatersideWord
  if (work === 'carry') {
    if (deck || season === 'down') return `${season}.carry${deck}` as WatersideWord
    if (record.stake) return 'up.carry-stake'
    const edge = project && begun.day ? edgeToday(project.bed, begun.day.level) : null
    const x = project?.dock.sections.find(({ id }) => id === about[0])?.x ?? 0
    return edge === null ? 'up.carry' : x < edge ? 'up.carry-ashore' : 'up.carry-out'
  }
  if (work === 'clamp-place') return `${season}.clamp-place${deck}` as WatersideWord
  if (season === 'up' && (work === 'legs' || work === 'clamps'))
    return `up.${work}-${last ? 'known' : 'about'}`
  if (season === 'up' && work === 'frame' && record.sections.some(({ id, ramp }) => ramp && id === about[0]))
    return 'up.frame-ramp'
  if (turned && work === 'brace-low') return season === 'up' ? 'up.brace-turned' : 'down.brace-turned'
  if (work === 'extra') return say.key.endsWith('-post') ? `${season}.post` : `${season}.extra`
  return `${season}.${work}` as WatersideWord
}
