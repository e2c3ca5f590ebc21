import { applyPatch as oracle } from 'fast-json-patch'
import { describe, expect, it } from 'vitest'
import { applyPatch } from '../../rules/design/patch.ts'
import {
  type Design,
  demoCatalog,
  demoDesign,
  derive,
  type PatchOperation,
  parseDesign,
} from '../../rules/index.ts'

const patches: readonly PatchOperation[][] = [
  [{ op: 'replace', path: '/dock/deckHeight', value: 0.6 }],
  [{ op: 'add', path: '/dock/pad', value: 'mud-pad-14' }],
  [{ op: 'remove', path: '/dock/extras/anchor-post' }],
  [{ op: 'add', path: '/site/soundings/0', value: { distance: -6, offset: 0, depth: -1.2 } }],
  [{ op: 'add', path: '/site/soundings/-', value: { distance: 20, offset: 0, depth: 2 } }],
  [{ op: 'remove', path: '/site/soundings/2' }],
  [{ op: 'replace', path: '/site/soundings/1/depth', value: 0.1 }],
  [{ op: 'add', path: '/dock/extras/a~1b~0c', value: 1 }],
  [
    { op: 'remove', path: '/site/wind' },
    { op: 'replace', path: '/name', value: '' },
    { op: 'add', path: '/dock/overrides', value: { 's2.end.left': { stock: 1.8288 } } },
  ],
]

const nowhere: readonly PatchOperation[] = [
  { op: 'replace', path: '/dock/nothing', value: 1 },
  { op: 'remove', path: '/dock/nothing' },
  { op: 'remove', path: '/site/soundings/5' },
  { op: 'add', path: '/site/soundings/7', value: {} },
  { op: 'replace', path: '/site/soundings/-', value: {} },
  { op: 'replace', path: '/site/soundings/01', value: {} },
  { op: 'add', path: '/nothing/at/all', value: 1 },
  { op: 'add', path: '/name/0', value: 'x' },
  { op: 'add', path: '/__proto__/polluted', value: true },
  { op: 'add', path: '/dock/__proto__', value: {} },
  { op: 'replace', path: 'dock', value: {} },
  { op: 'replace', path: '', value: {} },
]

describe('a patch', () => {
  it.each(patches.map((p) => [p]))('does as an independent library does (RFC 6902): %j', (patch) => {
    const before = structuredClone(demoDesign)
    const expected = oracle(structuredClone(demoDesign), structuredClone(patch) as never).newDocument
    expect(applyPatch(demoDesign, patch)).toEqual(expected)
    expect(demoDesign).toEqual(before)
  })

  it.each(nowhere.map((p) => [p]))('refuses a place that is not there: %j', (operation) => {
    expect(() => applyPatch(demoDesign, [operation])).toThrow('applyPatch')
    expect(({} as { polluted?: unknown }).polluted).toBeUndefined()
  })

  it('of every remedy of a bad dock makes a valid design', () => {
    const bad: Design[] = [
      { ...demoDesign, dock: { ...demoDesign.dock, deckHeight: 0.1 } },
      { ...demoDesign, dock: { ...demoDesign.dock, sections: 40 } },
      { ...demoDesign, dock: { ...demoDesign.dock, frame: 'none' } },
      { ...demoDesign, dock: { ...demoDesign.dock, extras: { bumper: 400, nonsense: 2 } } },
      { ...demoDesign, site: { ...demoDesign.site, bottom: 'muck' } },
      { ...demoDesign, dock: { ...demoDesign.dock, start: 0 } },
    ]
    let remedies = 0
    for (const design of bad)
      for (const { remedy } of derive(design, demoCatalog).findings)
        if (remedy) {
          remedies++
          expect(parseDesign(applyPatch(design, remedy.patch)).ok).toBe(true)
        }
    expect(remedies).toBeGreaterThan(5)
  })
})
