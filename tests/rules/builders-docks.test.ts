/** Whole docks against a builder's verdict, written from judgment before the engine was asked (`tests/support/builders-docks`). */
import { beforeAll, describe, expect, it } from 'vitest'
import { CHECKS } from '../../rules/checks/registry.ts'
import { STRUCTURE_CHECKS } from '../../rules/checks/structure/registry.ts'
import type { Dock, Finding } from '../../rules/dock.ts'
import { demoCatalog, derive } from '../../rules/index.ts'
import { BUILDERS_DOCKS, type Verdict } from '../support/builders-docks/index.ts'

const verdictOf = (findings: readonly Finding[]): Verdict =>
  findings.some(({ severity }) => severity === 'stop')
    ? 'no'
    : findings.some(({ severity }) => severity === 'warn')
      ? 'with-care'
      : 'fine'

const codesOf = (findings: readonly Finding[]): string[] => [...new Set(findings.map(({ code }) => code))]

describe('docks as builders judge them', () => {
  it('are two dozen or more, each told apart by its name, and at most four between two verdicts', () => {
    expect(BUILDERS_DOCKS.length).toBeGreaterThanOrEqual(24)
    expect(new Set(BUILDERS_DOCKS.map(({ design }) => design.name)).size).toBe(BUILDERS_DOCKS.length)
    expect(BUILDERS_DOCKS.filter((dock) => typeof dock.expect !== 'string').length).toBeLessThanOrEqual(4)
  })

  it('speak of codes that there are: a code that no check has is never raised', () => {
    const codes = new Set([...CHECKS, ...STRUCTURE_CHECKS].map(({ code }) => code))
    const spoken = BUILDERS_DOCKS.flatMap(({ because, never }) => [...because, ...never])
    expect(spoken.filter((code) => !codes.has(code))).toEqual([])
  })

  describe.each(BUILDERS_DOCKS.map((dock) => [dock.design.name, dock] as const))('%s', (_, dock) => {
    let judged: Dock
    beforeAll(() => {
      judged = derive(dock.design, demoCatalog)
    })

    it(`is ${[dock.expect].flat().join(' or ')}`, () => {
      const { findings, structure } = judged
      const verdict = verdictOf(findings)
      const told = codesOf(findings.filter(({ severity }) => severity !== 'note'))
      expect([dock.expect].flat(), `found ${told.join(', ') || 'nothing'}`).toContain(verdict)
      // A dock that was not judged for strength is not shown to be good.
      if (verdict !== 'no') expect(structure).not.toBeNull()
    })

    it('for the reasons that a builder gives, and none that he would not', () => {
      const raised = codesOf(judged.findings)
      if (dock.because.length > 0)
        expect(
          raised.filter((code) => dock.because.includes(code)),
          `found ${raised.join(', ')}`,
        ).not.toEqual([])
      expect(raised.filter((code) => dock.never.includes(code))).toEqual([])
    })
  })
})
