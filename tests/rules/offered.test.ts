/** What a shop hides is not offered, and no dock loses it; its own cautions are told after ours, never in their place. */
import { describe, expect, it } from 'vitest'
import { paperFrom } from '../../geometry/paper/paper-of.ts'
import { paperOf } from '../../geometry/sheets/packet.ts'
import { cornerPieces, straightFrames } from '../../rules/catalog/straight.ts'
import {
  cautionsIn,
  demoCatalog,
  demoDesign,
  ENGLISH,
  packingList,
  parseCatalog,
  projectOf,
} from '../../rules/index.ts'
import { listText } from '../../src/cli/list.ts'
import { firstShore } from '../../src/start/first-shore.ts'
import { deriveAtOnce } from '../support/at-once.ts'

const reader = { language: ENGLISH, units: 'imperial' } as const
const hiding = (...codes: string[]) => ({
  ...demoCatalog,
  frames: demoCatalog.frames.map((frame) =>
    codes.includes(frame.code) ? { ...frame, hidden: true } : frame,
  ),
})

describe('what is hidden', () => {
  it('is not offered: frames for the run, corner pieces, the first dock of a shore', () => {
    const catalog = hiding('4x8', 'corner-45')
    expect(parseCatalog(catalog)).toMatchObject({ ok: true, notices: [] })
    expect(straightFrames(catalog).map(({ code }) => code)).toEqual(['5x8', '4x10'])
    expect(cornerPieces(catalog)).toEqual([])
    expect(firstShore('imperial', catalog).dock.frame).toBe('5x8')
    const turned = { ...demoCatalog, frames: demoCatalog.frames.toReversed() }
    expect(turned.frames[0]!.turn).toBe(45)
    expect(firstShore('metric', turned).dock.frame).toBe('4x10')
  })

  it('stays in docks that have it', () => {
    const [shown, hidden] = [deriveAtOnce(demoDesign, demoCatalog), deriveAtOnce(demoDesign, hiding('4x8'))]
    expect(demoDesign.dock.frame).toBe('4x8')
    expect(hidden.parts).toEqual(shown.parts)
    expect(hidden.findings.map(({ code }) => code)).toEqual(shown.findings.map(({ code }) => code))
  })

  it('is never all that there is', () => {
    expect(parseCatalog(hiding('4x8', '5x8', '4x10'))).toEqual({
      ok: false,
      issues: [expect.objectContaining({ path: 'frames', expected: 'a frame for the run that is offered' })],
    })
  })
})

describe('cautions of the shop', () => {
  const own = 'Keep dogs off the ramp while it is hung.'
  const catalog = { ...demoCatalog, shop: { ...demoCatalog.shop, cautions: [own] } }

  it('come after all of ours', () => {
    const ours = cautionsIn(reader)
    expect(ours.length).toBeGreaterThan(3)
    expect(cautionsIn(reader, catalog.shop)).toEqual([...ours, own])
  })

  it('are in the terminal’s list and on the sheets of both seasons, and in no check code', () => {
    const dock = deriveAtOnce(demoDesign, catalog)
    expect(dock.fingerprint).toEqual(deriveAtOnce(demoDesign, demoCatalog).fingerprint)
    const text = listText(packingList(dock, catalog), dock, reader, catalog.shop)
    expect(text.trimEnd().endsWith(own)).toBe(true)
    for (const name of ['set-up', 'autumn'] as const) {
      const told = (shop: typeof catalog | typeof demoCatalog) =>
        paperOf(
          name,
          paperFrom(projectOf(demoDesign, shop, dock), {
            ...reader,
            size: 'letter',
            date: '2026-05-01',
            by: 'B. Sample',
          }),
        )
          .sheets.flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])))
          .join(' ')
      expect(told(catalog)).toContain('Keep dogs off')
      expect(told(demoCatalog)).not.toContain('Keep dogs off')
    }
  })
})
