/** From unknown input to a Design: schema, versions, and what a schema cannot say. */
import { planIssues } from '../plan/schema.ts'
import {
  type Issue,
  issue,
  type Parsed,
  parseText,
  parseWith,
  plainOf,
  show,
  upgrade,
} from '../validation.ts'
import { type Design, DesignSchema, LIMITS } from './schema.ts'

const DESIGN_FORMAT = 'leadline/design'
const DESIGN_VERSION = 1

/** `[n]` turns a design of version n into one of n + 1. Version 1 is the first. */
const migrations: Record<number, (old: Record<string, unknown>) => Record<string, unknown>> = {}

/**
 * Checks a design. Lengths come out quantized to 1e-7 m, absent fields that have a default filled in, unknown keys kept.
 * Never throws.
 */
export function parseDesign(input: unknown): Parsed<Design> {
  const file = upgrade(plainOf(input), DESIGN_FORMAT, DESIGN_VERSION, migrations)
  if (!file.ok) return file
  const parsed = parseWith(DesignSchema, file.plain, (design) => [
    ...siteIssues(design.site),
    ...(design.dock.plan ? planIssues(design.dock.plan, 'dock.plan') : runIssues(design.dock)),
  ])
  if (parsed.ok && parsed.value.dock.plan) {
    const passed = (['sections', 'ramp', 'head'] as const).filter(
      (key) => parsed.value.dock[key] !== undefined,
    )
    const notices = passed.map((key) => ({
      path: `dock.${key}`,
      message: 'not used: dock.plan stands in its place',
    }))
    return { ...parsed, notices: [...parsed.notices, ...notices] }
  }
  return parsed
}

/**
 * The same of an edited design: long lists that are the very objects of the valid design `before` are not looked at again. What is
 * checked of them is checked within them. What the edit left alone stays the very object that it was: who shows it need not look again.
 */
export function parseEdited(edited: Design, before: Design): Parsed<Design> {
  const { site, dock } = edited
  const short = { ...edited, site: { ...site }, dock: { ...dock } }
  if (site.soundings === before.site.soundings) short.site.soundings = site.soundings.slice(0, 1)
  type Lists = { -readonly [K in keyof Design['dock']]: Design['dock'][K] }
  const standIn = <K extends 'plan' | 'placed' | 'overrides'>(key: K, stand: NonNullable<Lists[K]>): void => {
    if (dock[key] !== undefined && dock[key] === before.dock[key]) (short.dock as Lists)[key] = stand
  }
  standIn('plan', [{ id: 'root', on: null, along: 0 }])
  standIn('placed', [])
  standIn('overrides', {})
  const parsed = parseDesign(short)
  if (!parsed.ok) return parsed
  const { value } = parsed
  putBack(value.site, site, before.site)
  putBack(value.dock, dock, before.dock)
  putBack(value, edited, before)
  return parsed
}

/** Parts that are the very objects of `before` go in the place of what was read of them. */
function putBack<T extends object>(read: T, edited: T, before: T): void {
  for (const key of Object.keys(edited) as (keyof T)[]) {
    const part = edited[key]
    if (typeof part === 'object' && part !== null && part === before[key]) read[key] = part
  }
}

/** The same from JSON text. */
export function parseDesignText(text: string): Parsed<Design> {
  const json = parseText(text, LIMITS.textBytes)
  return json.ok ? parseDesign(json.value) : json
}

function siteIssues(site: Design['site']): Issue[] {
  const issues: Issue[] = []
  const seen = new Map<string, number>()
  site.soundings.forEach((s, i) => {
    const place = `${s.distance},${s.offset}`
    const first = seen.get(place)
    if (first === undefined) seen.set(place, i)
    else if (site.soundings[first]!.depth !== s.depth)
      issues.push(
        issue(
          `site.soundings[${i}].depth`,
          `${s.depth} at the place of soundings[${first}], which says ${site.soundings[first]!.depth}`,
          'one depth at one place',
        ),
      )
    if (s.firm !== undefined && s.firm < s.depth)
      issues.push(
        issue(`site.soundings[${i}].firm`, `${s.firm}, above the bottom at ${s.depth}`, 'at least the depth'),
      )
  })
  const ids = new Set<string>()
  site.obstacles?.forEach(({ id }, i) => {
    if (ids.has(id))
      issues.push(issue(`site.obstacles[${i}].id`, `${show(id)} a second time`, 'ids that differ'))
    ids.add(id)
  })
  if (site.levels.low > site.levels.high)
    issues.push(
      issue('site.levels.low', `${site.levels.low}, over the high level`, `at most ${site.levels.high}`),
    )
  return issues
}

function runIssues(dock: Design['dock']): Issue[] {
  const { sections, ramp = false, head } = dock
  if (sections === undefined)
    return [issue('dock.sections', 'missing', 'the number of sections, or dock.plan')]
  const issues: Issue[] = []
  const legged = sections - (ramp ? 1 : 0)
  if (legged < 1) issues.push(issue('dock.sections', `${sections} with a ramp`, 'at least 2 with a ramp'))
  if (!head || (head.sections === 0 && legged >= 1)) return issues
  if (head.shape !== 'straight' && legged < 1)
    issues.push(issue('dock.head', 'a head without a run', 'a run section that has legs'))
  if (head.shape === 'straight' && head.sections !== 0)
    issues.push(issue('dock.head.sections', show(head.sections), '0 with a straight head'))
  if (head.shape === 'tee' && head.sections % 2 !== 0)
    issues.push(issue('dock.head.sections', show(head.sections), 'an even number, half to each side'))
  if (head.shape === 'wide' && head.sections > legged)
    issues.push(
      issue(
        'dock.head.sections',
        show(head.sections),
        `at most ${Math.max(legged, 0)}, the run's legged sections`,
      ),
    )
  if (sections + head.sections > LIMITS.sections)
    issues.push(
      issue('dock.head.sections', show(head.sections), `at most ${LIMITS.sections} sections in all`),
    )
  return issues
}
