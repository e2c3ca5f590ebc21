/** `derive` is whole and pure: what a back end gets of the library alone is what the page forbids, and nothing is left behind. */
import { beforeEach, describe, expect, it, vi } from 'vitest'
import { type Design, demoCatalog, demoDesign, derive } from '../../rules/index.ts'
import { type Assessment, assess } from '../../src/assessment/assess.ts'
import { parsedDesign } from '../support/arbitraries.ts'

/** More wind than the demo's feet hold: something is found of its structure. The demo itself has no finding. */
const windy: Design = parsedDesign({
  ...demoDesign,
  site: { ...demoDesign.site, wind: { speed: 20, fetch: 400 } },
  dock: { ...demoDesign.dock, extras: {} },
})

/** And a post put by hand where a wide pad reaches. */
const clashing: Design = parsedDesign({
  ...windy,
  dock: {
    ...demoDesign.dock,
    pad: 'mud-pad-14',
    placed: [{ code: 'anchor-post', section: 's5', edge: 'left', along: 2.2 }],
  },
})

function frozen<T>(value: T): T {
  if (value !== null && typeof value === 'object' && !Object.isFrozen(value)) {
    Object.freeze(value)
    for (const item of Object.values(value)) frozen(item)
  }
  return value
}

describe('derive', () => {
  it("tells of parts in each other's way, as stops among the stops, with the remedy that helps", () => {
    const { findings } = derive(clashing, demoCatalog)
    const clash = findings.find(({ code }) => code === 'parts-clash')!
    expect(clash).toMatchObject({
      severity: 'stop',
      parts: ['s5.end.left', 'anchor-post.1'],
      remedy: { key: 'leave-out-extra', patch: [{ op: 'remove', path: '/dock/placed/0' }] },
    })
    const severities = findings.map(({ severity }) => severity)
    expect(severities.lastIndexOf('stop')).toBeLessThan(severities.findIndex((one) => one !== 'stop'))
    expect(derive(demoDesign, demoCatalog).findings.filter(({ severity }) => severity === 'stop')).toEqual([])
  })

  it('is what the worker of the page finds in the end, to the last finding', () => {
    const told: Assessment[] = []
    assess(clashing, demoCatalog, 'deep', (judgement) => told.push(judgement))
    const { structure, findings, fit } = derive(clashing, demoCatalog)
    expect(told.map(({ whole }) => whole)).toEqual([false, true])
    expect(told[1]).toEqual({ structure, findings, fit, whole: true })
    expect(told[0]!.findings.map(({ code }) => code)).toEqual(findings.map(({ code }) => code))
    expect(told[0]!.findings.every(({ remedy }) => remedy === null)).toBe(true)
  })

  it('gives the same twice, of frozen input as of any', () => {
    const [design, catalog] = [frozen(structuredClone(clashing)), frozen(structuredClone(demoCatalog))]
    const first = derive(design, catalog)
    expect(derive(design, catalog)).toEqual(first)
    expect(derive(clashing, demoCatalog)).toEqual(first)
  })
})

describe('in an engine that is loaded afresh', () => {
  beforeEach(() => void vi.resetModules())

  it('derive registers nothing: the same words before and after, and texts in words all the same', async () => {
    const engine = await import('../../rules/index.ts')
    const words = await import('../../rules/words/finding-words.ts')
    const structural = {
      code: 'dock-slides',
      values: { push: { value: 1.5, unit: 'share' }, case: { value: '0.6D+W today left', unit: 'case' } },
    }
    const state = () => [
      words.findingIn(structural, 'plain', engine.english('metric')),
      engine.findingText(structural, 'plain'),
      JSON.stringify([words, engine.ENGLISH, engine.CHECKS, engine.demoCatalog, engine.demoDesign]),
    ]
    const before = state()
    const dock = engine.derive(windy, engine.demoCatalog)
    expect(state()).toEqual(before)
    // Without the words that come later there are none for it; the library has them from the start.
    expect(before[0]).toBe('dock-slides')
    expect(before[1]).toContain('whole dock along the bottom')
    const told = dock.findings.find(({ code }) => code === 'goes-over' || code === 'dock-slides')!
    expect(told.text).not.toBe(told.code)
    expect(told.text).toContain('0.6D+W')
  })
})
