/** Bad input: a clear message naming path, value and what was expected; nothing half-applied; nothing thrown. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type Design,
  demoCatalog,
  demoDesign,
  type Issue,
  LIMITS,
  type Parsed,
  parseCatalog,
  parseCatalogText,
  parseDesign,
  parseDesignText,
} from '../../rules/index.ts'
import { deriveAtOnce } from '../support/at-once.ts'

const clone = (): Record<string, never> => JSON.parse(JSON.stringify(demoDesign))

/** The demo's design with one place set to a value; `a.b[2].c`. */
function withValue(path: string, value: unknown, base: unknown = demoDesign): unknown {
  const design = structuredClone(base)
  const keys = path.split(/[.[\]]+/).filter(Boolean)
  const last = keys.pop()!
  let at = design as Record<string, never>
  for (const key of keys) at = at[key]!
  ;(at as Record<string, unknown>)[last] = value
  return design
}

function issuesOf(parsed: Parsed<unknown>): readonly Issue[] {
  expect(parsed.ok).toBe(false)
  return parsed.ok ? [] : parsed.issues
}

/** The only issue is at `path`, and tells what was there and what was expected. */
function expectIssue(
  parsed: Parsed<unknown>,
  path: string,
  received: string | RegExp,
  expected: string | RegExp,
): void {
  const [issue, ...more] = issuesOf(parsed)
  expect(more).toEqual([])
  expect(issue!.path).toBe(path)
  expect(issue!.message).toMatch(received)
  expect(issue!.message).toMatch(expected)
}

describe('a design', () => {
  it.each([
    ['site.soundings[2].depth', Number.NaN, /NaN/, /a number/],
    ['site.soundings[2].depth', 1e308, /1e\+308/, /at most 300/],
    ['site.soundings[2].depth', Number.POSITIVE_INFINITY, /Infinity/, /at most 300/],
    ['site.soundings[1].distance', '4', /"4"/, /a number/],
    ['site.soundings[0].depth', null, /null/, /a number/],
    ['site.soundings', [], /a list of 0/, /at least 1/],
    ['site.soundings', 'deep', /"deep"/, /a list/],
    ['site.levels', undefined, /missing/, /this key|an object/],
    ['site.bottom', 'lava', /"lava"/, /"rock"/],
    ['dock.sections', -3, /-3/, /at least 1/],
    ['dock.sections', 2.5, /2\.5/, /a whole number/],
    ['dock.sections', 5001, /5001/, /at most 5000/],
    ['dock.extras.bumper', -1, /-1/, /at least 0/],
    ['dock.frame', '', /""/, /at least 1 character/],
    ['dock.deckHeight', true, /true/, /a number/],
    ['name', 'x'.repeat(201), /"x+…"/, /at most 200 characters/],
  ])('%s = %j is told', (path, value, received, expected) => {
    expectIssue(parseDesign(withValue(path, value)), path, received, expected)
  })

  it('with two depths at one place is told which', () => {
    const design = withValue('site.soundings[3]', { distance: 4, depth: 0.7 })
    expectIssue(
      parseDesign(design),
      'site.soundings[3].depth',
      /0\.7 at the place of soundings\[2\], which says 0\.5/,
      /one depth/,
    )
  })

  it('with the same depth twice at one place is fine', () => {
    expect(parseDesign(withValue('site.soundings[3]', { distance: 4, depth: 0.5 })).ok).toBe(true)
  })

  it('with firm bottom above the bottom is told', () => {
    expectIssue(
      parseDesign(withValue('site.soundings[3].firm', 0.1)),
      'site.soundings[3].firm',
      /0\.1/,
      /at least the depth/,
    )
  })

  it('with its low level over its high is told', () => {
    expectIssue(
      parseDesign(withValue('site.levels', { low: 0.5, high: 0.2 })),
      'site.levels.low',
      /0\.5/,
      /at most 0\.2/,
    )
  })

  it('takes twenty thousand soundings and derives a dock from them, and no more', () => {
    const many = (n: number): unknown =>
      withValue(
        'site.soundings',
        Array.from({ length: n }, (_, i) => ({
          distance: (i % 200) * 0.1,
          offset: Math.floor(i / 200) * 0.1 - 5,
          depth: (i % 200) * 0.01,
        })),
      )
    const parsed = parseDesign(many(LIMITS.soundings))
    expect(parsed.ok).toBe(true)
    if (parsed.ok) expect(deriveAtOnce(parsed.value, demoCatalog).legs.length).toBe(10)
    expectIssue(parseDesign(many(LIMITS.soundings + 1)), 'site.soundings', /20001/, /at most 20000/)
  })

  it.each([
    ['tee', 3, 'dock.head.sections', /even/],
    ['wide', 5, 'dock.head.sections', /at most 4/],
    ['straight', 2, 'dock.head.sections', /0 with a straight head/],
  ])('with a %s head of %i is told', (shape, sections, path, expected) => {
    expectIssue(parseDesign(withValue('dock.head', { shape, sections })), path, /./, expected)
  })

  it('of a ramp alone is told, and a head on it at the head', () => {
    const design = withValue('dock.head', { shape: 'left', sections: 1 }, withValue('dock.sections', 1))
    expect(issuesOf(parseDesign(design)).map((issue) => issue.path)).toEqual(['dock.sections', 'dock.head'])
  })

  it('without sections or a plan is told', () => {
    expectIssue(parseDesign(withValue('dock.sections', undefined)), 'dock.sections', /missing/, /dock\.plan/)
  })

  const plan = (items: unknown[]): unknown => withValue('dock.plan', items)
  it.each([
    [
      'two ids alike',
      [
        { id: 'a', on: null },
        { id: 'a', on: 'a', edge: 'end', with: 'start' },
      ],
      'dock.plan[1].id',
      /a second time/,
    ],
    [
      'no root',
      [{ id: 'a', on: 'a', edge: 'end', with: 'start' }],
      'dock.plan',
      /0 sections with "on": null/,
    ],
    [
      'two roots',
      [
        { id: 'a', on: null },
        { id: 'b', on: null },
      ],
      'dock.plan',
      /2 sections with "on": null/,
    ],
    [
      'a hung ramp',
      [
        { id: 'a', on: null },
        { id: 'b', on: 'a', edge: 'end', with: 'start', role: 'ramp' },
      ],
      'dock.plan[1].on',
      /a ramp hangs on nothing/,
    ],
    [
      'two on a ramp',
      [
        { id: 'r', on: null, role: 'ramp' },
        { id: 'a', on: 'r', edge: 'end', with: 'start' },
        { id: 'b', on: 'r', edge: 'end', with: 'start' },
      ],
      'dock.plan',
      /2 sections on the ramp/,
    ],
    [
      'a missing edge',
      [
        { id: 'a', on: null },
        { id: 'b', on: 'a', with: 'start' },
      ],
      'dock.plan[1].edge',
      /the edge of the host/,
    ],
  ])('whose plan has %s is told', (_, items, path, message) => {
    const issues = issuesOf(parseDesign(plan(items)))
    expect(issues.map((issue) => issue.path)).toContain(path)
    expect(issues.find((issue) => issue.path === path)!.message).toMatch(message)
  })

  it.each([
    [null, '', /null/, /an object/],
    ['dock', '', /"dock"/, /an object/],
    [[], '', /a list of 0/, /an object/],
    [{ format: 'leadline/catalog', version: 1 }, 'format', /"leadline\/catalog"/, /"leadline\/design"/],
    [{ format: 'leadline/design', version: 2 }, 'version', /2, made by a newer version/, /at most 1/],
    [{ format: 'leadline/design', version: 0.5 }, 'version', /0\.5/, /a whole number/],
    [{ format: 'leadline/design' }, 'version', /missing/, /a whole number/],
  ])('that is %j is told', (input, path, received, expected) => {
    expectIssue(parseDesign(input), path, received, expected)
  })

  it('that is cut off is told where', () => {
    const text = JSON.stringify(demoDesign)
    expectIssue(
      parseDesignText(text.slice(0, text.length / 2)),
      '',
      /not JSON \(.*(position|end)/i,
      /a whole JSON file/,
    )
  })

  it('of 50 MB is refused before it is read', () => {
    const text = `{"a":"${'x'.repeat(50 * 1024 * 1024)}"}`
    const start = performance.now()
    expectIssue(parseDesignText(text), '', /52428808 characters/, /at most 8388608/)
    expect(performance.now() - start).toBeLessThan(1000)
  })

  it.each(['__proto__', 'constructor', 'prototype'])(
    'with a key %s is refused, and no prototype is touched',
    (key) => {
      const text = JSON.stringify(demoDesign).replace('"bottom":', `"${key}":{"polluted":true},"bottom":`)
      expectIssue(parseDesignText(text), `site.${key}`, /key not allowed/, /another name/)
      expect(({} as { polluted?: boolean }).polluted).toBeUndefined()
    },
  )

  it('with keys named like methods of an object finds no part by them', () => {
    const parsed = parseDesign(withValue('dock.extras', { toString: 2, hasOwnProperty: 1 }))
    expect(parsed.ok).toBe(true)
    if (!parsed.ok) return
    const unknown = deriveAtOnce(parsed.value, demoCatalog).findings.filter((f) => f.code === 'unknown-code')
    expect(unknown.map((f) => f.values.code!.value).sort()).toEqual(['hasOwnProperty', 'toString'])
  })

  it('nested too deeply is told', () => {
    let deep: unknown = 1
    for (let i = 0; i < 100; i++) deep = { deep }
    expect(issuesOf(parseDesign({ ...demoDesign, deep }))[0]!.message).toMatch(/nested too deeply/)
  })

  it('keeps keys that it does not know, and says so', () => {
    const parsed = parseDesign({
      ...clone(),
      color: 'red',
      site: {
        ...demoDesign.site,
        soundings: demoDesign.site.soundings.map((s, i) => (i === 1 ? { ...s, who: 'Ann' } : s)),
      },
    })
    expect(parsed.ok).toBe(true)
    if (!parsed.ok) return
    expect(parsed.notices.map((notice) => notice.path).sort()).toEqual(['color', 'site.soundings[1].who'])
    expect((parsed.value as unknown as { color: string }).color).toBe('red')
    expect((parsed.value.site.soundings[1] as unknown as { who: string }).who).toBe('Ann')
  })

  it('lists every fault at once, and no more than fifty', () => {
    const bad = withValue(
      'site.soundings',
      Array.from({ length: 200 }, () => ({ distance: 'x', depth: 'y' })),
    )
    expect(issuesOf(parseDesign(bad))).toHaveLength(50)
  })

  it('is quantized to 1e-7 m, and left as it was given', () => {
    const given = withValue('dock.deckHeight', 0.123456789) as Design
    const parsed = parseDesign(given)
    expect(parsed.ok && parsed.value.dock.deckHeight).toBe(0.1234568)
    expect(given.dock.deckHeight).toBe(0.123456789)
  })

  it('of any JSON at all is parsed or told, never thrown at', () => {
    fc.assert(
      fc.property(
        fc.jsonValue(),
        fc.constantFrom('', 'site', 'dock', 'site.soundings', 'dock.head', 'dock.plan', 'dock.extras'),
        (value, path) => {
          const parsed = parseDesign(path === '' ? value : withValue(path, value))
          if (parsed.ok) deriveAtOnce(parsed.value, demoCatalog)
          else for (const issue of parsed.issues) expect(issue.message).toMatch(/; expected /)
        },
      ),
      { seed: 11, numRuns: 2000 },
    )
  })
})

describe('a catalog', () => {
  it.each([
    ['stock.pipe-2.wall', 0.5, /stock\.?\[?"?pipe-2.*wall/, /at most 0\.1/],
    ['frames[0].rail', 'oak', /frames\[0\]\.rail/, /stock of this catalog/],
    ['frames[1].code', '4x8', /frames\[1\]\.code/, /codes that differ/],
    ['frames[0].panel', 'nope', /frames\[0\]\.panel/, /a deck panel of this catalog/],
    ['hardware', [], /hardware/, /one/],
    ['currency', 'dollars', /currency/, /three capital letters/],
    ['legs', [], /legs/, /at least 1/],
    ['legs[0].price', 1.5, /legs\[0\]\.price/, /a whole number/],
    ['rules.jointGap.unit', 'in', /rules\.jointGap\.unit/, /"m"/],
  ])('with %s = %j is told', (path, value, at, expected) => {
    const catalog = structuredClone(demoCatalog) as unknown as Record<string, never>
    const keys = path.split(/[.[\]]+/).filter(Boolean)
    let place = catalog
    for (const key of keys.slice(0, -1)) place = place[key]!
    ;(place as Record<string, unknown>)[keys.at(-1)!] = value
    const issues = issuesOf(parseCatalog(catalog))
    expect(
      issues.some((issue) => at.test(issue.path) && expected.test(issue.message)),
      JSON.stringify(issues),
    ).toBe(true)
  })

  it('that is cut off, or of a wrong format, is told', () => {
    expectIssue(parseCatalogText('{"format":'), '', /not JSON/, /a whole JSON file/)
    expectIssue(parseCatalog(demoDesign), 'format', /"leadline\/design"/, /"leadline\/catalog"/)
  })

  it('of the demo shop comes out of the check as it went in', () => {
    const parsed = parseCatalog(JSON.parse(JSON.stringify(demoCatalog)))
    expect(parsed.ok && parsed.notices).toEqual([])
    expect(parsed.ok && parsed.value).toEqual(demoCatalog)
  })
})
