/**
 * Codes, ids and extras that the shop or the dock does not have: what each check says of them by itself.
 * That each is raised at all, and by which dock: `findings.test.ts`.
 *
 * Without more words: three sections of 4 x 8 ft from 3 m on, 2.4638 m apart, without a ramp, in 1.2 m of level water over sand, deck
 * 0.45 m up, the lake 0.3 m lower at its lowest and 0.25 m higher at its highest.
 */
import { describe, expect, it } from 'vitest'
import { demoCatalog } from '../../../rules/index.ts'
import { drop, found } from '../../support/found.ts'
import { kitOf } from '../../support/level-dock.ts'

describe('codes and ids that are not there', () => {
  it('are told by what they stand for, and left out where nothing stands in their place', () => {
    const kit = kitOf({
      pad: 'no-pad',
      extras: { 'no/extra': 2 },
      overrides: { 's2.end.left': { stock: 1.5 }, 's9.end.left': { stock: 1.8288 } },
      bracing: { none: ['s2.end', 's8.end'] },
    })
    const lengths = demoCatalog.legs.map(({ length }) => Math.round(length * 1e6) / 1e6)
    expect(found('unknown-code', kit)).toEqual([
      {
        parts: [],
        values: { what: 'extra', code: 'no/extra', known: demoCatalog.extras.map(({ code }) => code) },
        patch: drop('/dock/extras/no~1extra'),
      },
      {
        parts: [],
        values: { what: 'foot-pad', code: 'no-pad', known: demoCatalog.pads.map(({ code }) => code) },
        patch: drop('/dock/pad'),
      },
      {
        parts: ['s2.end.left'],
        values: { what: 'leg-length', code: 1.5, known: lengths },
        patch: drop('/dock/overrides/s2.end.left'),
      },
    ])
    expect(found('unknown-id', kit)).toEqual([
      {
        parts: [],
        values: { id: 's9.end.left', what: 'leg' },
        patch: drop('/dock/overrides/s9.end.left'),
      },
      { parts: [], values: { id: 's8.end', what: 'leg-pair' }, patch: drop('/dock/bracing/none/1') },
    ])
    // A leg's length is known to a millimeter.
    const near = (stock: number) => kitOf({ overrides: { 's2.end.left': { stock } } })
    expect(found('unknown-code', near(1.8288 + 0.0009))).toEqual([])
    expect(found('unknown-code', near(1.8288 + 0.0011))).toHaveLength(1)
    for (const code of ['unknown-code', 'unknown-id']) expect(found(code, kitOf())).toEqual([])
  })

  it('are another frame only where all sections are to have it', () => {
    const kit = kitOf({
      sections: undefined,
      plan: [
        { id: 'a', on: null },
        { id: 'b', on: 'a', edge: 'end', with: 'start', frame: '9x9' },
      ],
    })
    expect(found('unknown-code', kit)).toMatchObject([{ parts: ['b'], values: { code: '9x9' }, patch: null }])
  })
})

describe('an extra', () => {
  it('on rock that stands at a place of its own is left to the hand that put it there', () => {
    const placed = [{ code: 'anchor-post', section: 's2', edge: 'left', along: 1 }]
    const [told] = found('auger-on-rock', kitOf({ placed }, { bottom: 'rock' }))
    expect(told).toMatchObject({ patch: null })
    expect(told!.parts).toHaveLength(1)
    expect(found('auger-on-rock', kitOf({ placed }))).toEqual([])
  })
})
