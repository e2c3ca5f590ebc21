/** A catalog in hand: edits, undo, what is wrong and kept all the same, what is kept on the device, and a second shop made of the demo by edits alone. */
import { describe, expect, it } from 'vitest'
import { demoCatalog, parseCatalog } from '../../rules/index.ts'
import { changesBetween } from '../../src/catalog-editor/changes.ts'
import { type JsonObject, keysOf, type Path, valueAt } from '../../src/catalog-editor/draft.ts'
import { nextEdition } from '../../src/catalog-editor/edition.ts'
import { insertEntry, moveEntry, removeEntry } from '../../src/catalog-editor/entries.ts'
import { readCatalogFile, writtenFile } from '../../src/catalog-editor/file.ts'
import { CATALOG_FORM, sectionOf } from '../../src/catalog-editor/form/catalog-form.ts'
import { nodeAt } from '../../src/catalog-editor/form/node.ts'
import { openKeep } from '../../src/catalog-editor/keep.ts'
import { remarksOn } from '../../src/catalog-editor/remarks.ts'
import { putBack } from '../../src/catalog-editor/screen/changes.tsx'
import { createEditor } from '../../src/catalog-editor/store.ts'
import { deriveAtOnce } from '../support/at-once.ts'
import { parsed } from '../support/by-hand.ts'
import { metricCatalog } from '../support/catalogs.ts'
import metricFile from '../support/metric-shop.json' with { type: 'json' }

const demo = demoCatalog as unknown as JsonObject
const metric = metricFile as unknown as JsonObject
const clone = (value: unknown): JsonObject => JSON.parse(JSON.stringify(value)) as JsonObject

/** Ramp and three sections over sand, 0.9 m deep where it ends. */
const DESIGN = parsed({
  format: 'leadline/design',
  version: 1,
  site: {
    soundings: [
      { distance: -3, depth: -0.9 },
      { distance: 0, depth: 0 },
      { distance: 5, depth: 0.5 },
      { distance: 12, depth: 0.9 },
    ],
    soundingError: 0.01,
    levels: { low: -0.3, high: 0.2 },
    bottom: 'sand',
  },
  dock: { deckHeight: 0.5, frame: 'R100', sections: 4, ramp: true, start: null, extras: {} },
})

describe('a second shop', () => {
  it('made of the demo by edits of places that the form has comes to the same file, and the same dock', () => {
    const store = createEditor(demoCatalog)
    let edits = 0
    // As a shop would: whatever differs is put to what it is there, until nothing does.
    for (
      let left = changesBetween(demo, metric);
      left.length > 0;
      left = changesBetween(store.getState().draft, metric)
    ) {
      // Places in lists shift with each entry put in or taken out: those one at a time.
      const plain = left.filter(({ path }) => path.every((key) => typeof key === 'string'))
      for (const { path, after, kind } of plain.length > 0 ? plain : left.slice(0, 1)) {
        expect(sectionOf(path), path.join('.')).not.toBeNull()
        if (kind !== 'removed') expect(nodeAt(CATALOG_FORM, path, metric), path.join('.')).not.toBeNull()
        const last = path.at(-1)
        if (kind === 'moved') store.getState().set(path, valueAt(metric, path))
        else if (kind === 'added' && typeof last === 'number')
          insertEntry(store, path.slice(0, -1), last, after!)
        else if (kind === 'removed' && typeof last === 'number') removeEntry(store, path.slice(0, -1), last)
        else store.getState().set(path, after)
        expect(++edits).toBeLessThan(1500)
      }
    }
    const { draft, issues, good } = store.getState()
    expect(issues).toEqual([])
    expect(draft).toEqual(metric)
    const [made, given] = [deriveAtOnce(DESIGN, good), deriveAtOnce(DESIGN, metricCatalog)]
    expect(made.parts).toEqual(given.parts)
    expect(made.fingerprint).toEqual(given.fingerprint)
    // Worked by hand: ramp and three sections have legs 0, 4, 2, 2; a joint of the ramp by its hinge, two by a pair of hooks each.
    const quantity = (kind: string) =>
      made.parts.filter((row) => row.kind === kind).reduce((sum, row) => sum + row.quantity, 0)
    expect(made.sections).toHaveLength(4)
    expect(quantity('leg')).toBe(8)
    expect(quantity('foot-pad')).toBe(8)
    expect(quantity('hook-bracket')).toBe(
      2 * 2 * Number(valueAt(metric, ['rules', 'bracketsPerHook', 'value'])),
    )
    expect(quantity('deck-panel')).toBe(4 * 5)
    expect(made.parts.find((row) => row.code === 'R100')).toMatchObject({
      quantity: 4,
      unitPrice: 51900,
      price: 207600,
    })
    for (let n = 0; n < edits; n++) store.getState().undo()
    // Steps are bounded: the last two hundred come back.
    expect(store.getState().canUndo).toBe(false)
  })
})

describe('what is in hand', () => {
  it('is undone and done again a step at a time, a file that was opened too', () => {
    const store = createEditor(demoCatalog)
    const price = () => valueAt(store.getState().draft, ['frames', 0, 'price'])
    store.getState().set(['frames', 0, 'price'], 40000)
    store.getState().open(metric)
    expect(price()).toBe(51900)
    store.getState().undo()
    expect(price()).toBe(40000)
    store.getState().undo()
    expect(store.getState().draft).toEqual(demo)
    store.getState().redo()
    store.getState().redo()
    expect(store.getState().draft).toEqual(metric)
    expect(store.getState().good.id).toBe('stegbau-musterwinkel')
  })

  it('that is wrong is told where it is, kept as it was typed, and the last right one goes on being shown', () => {
    const store = createEditor(demoCatalog)
    store.getState().set(['legs', 1, 'length'], 'four feet')
    store.getState().set(['frames', 0, 'rail'], 'rail-9x9')
    const { issues, good, draft } = store.getState()
    expect(issues.map(({ path }) => keysOf(path))).toEqual([['legs', 1, 'length']])
    expect(valueAt(draft, ['legs', 1, 'length'])).toBe('four feet')
    expect(good).toEqual(demoCatalog)
    store.getState().set(['legs', 1, 'length'], 1.2)
    expect(store.getState().issues.map(({ path }) => keysOf(path))).toEqual([['frames', 0, 'rail']])
    store.getState().set(['frames', 0, 'rail'], 'rail-6x2')
    expect(store.getState().issues).toEqual([])
    expect(store.getState().good.legs[1]!.length).toBe(1.2)
  })

  it('with codes renamed keeps what names them', () => {
    const store = createEditor(demoCatalog)
    store.getState().set(['decking', 'panels', 0, 'code'], 'P-44')
    const { good, issues } = store.getState()
    expect(issues).toEqual([])
    expect(good.frames[0]!.panel).toBe('P-44')
    expect(good.deckings![1]!.panels['P-44']).toBe('panel-4x4-gray')
  })

  it('keeps guesses with their entries as those are moved, put in and taken out', () => {
    const store = createEditor(demoCatalog)
    store.getState().change(
      (draft) => draft,
      () => [['extras', 1, 'space']],
    )
    const guessed = () => store.getState().guessed
    moveEntry(store, ['extras'], 1, 0)
    expect(guessed()).toEqual([['extras', 0, 'space']])
    insertEntry(store, ['extras'], 0, clone(demoCatalog.extras[2]))
    expect(guessed()).toEqual([['extras', 1, 'space']])
    store.getState().set(['extras', 1, 'space'], 0.5)
    expect(guessed()).toEqual([])
    store.getState().undo()
    removeEntry(store, ['extras'], 1)
    expect(guessed()).toEqual([])
  })
})

describe('a file', () => {
  it('with things wrong in it opens, tells them and loses nothing', () => {
    const wrong = clone(demo)
    Object.assign(wrong, { ours: { kept: [1, 2] }, currency: 'dollars', legs: 'none' })
    const opened = readCatalogFile(JSON.stringify(wrong))
    expect(opened).toEqual({ ok: true, draft: wrong })
    const store = createEditor(demoCatalog)
    if (opened.ok) store.getState().open(opened.draft)
    expect(
      store
        .getState()
        .issues.map(({ path }) => path)
        .sort(),
    ).toEqual(['currency', 'legs'])
    expect(JSON.parse(writtenFile(store.getState().draft))).toEqual(wrong)
  })

  it.each([
    ['{"format": "leadline/catalog", ', 'not-json'],
    ['[1, 2]', 'not-a-catalog'],
    ['{"format": "leadline/design", "version": 1}', 'not-a-catalog'],
    ['{"format": "leadline/catalog", "version": 99}', 'newer'],
  ])('that is no catalog is told: %s', (text, why) => {
    expect(readCatalogFile(text)).toMatchObject({ ok: false, why })
  })

  it('written and read is the same', () => {
    expect(readCatalogFile(writtenFile(metric))).toEqual({ ok: true, draft: metric })
    expect(parseCatalog(JSON.parse(writtenFile(metric)))).toMatchObject({ ok: true, notices: [] })
  })
})

describe('changes', () => {
  it('are told a place at a time, by code and not by place, and each can be put back', () => {
    const after = clone(demo) as Record<string, unknown> & {
      frames: JsonObject[]
      legs: JsonObject[]
      extras: JsonObject[]
    }
    after.frames = [...after.frames.slice(1)]
    after.legs[0] = { ...after.legs[0]!, price: 7000 }
    after.extras.push({ ...after.extras[0]!, code: 'own' })
    after.extras.reverse()
    const changes = changesBetween(demo, after as unknown as JsonObject)
    expect(changes.map(({ kind, path }) => `${kind} ${path.join('.')}`)).toEqual([
      'removed frames.0',
      'changed legs.0.price',
      'added extras.0',
    ])
    const reversed: JsonObject = { ...demo, legs: [...(demo.legs as JsonObject[])].reverse() }
    const order = changesBetween(demo, reversed)
    expect(order.map(({ kind, path }) => `${kind} ${path.join('.')}`)).toEqual(['moved legs'])
    for (const [draft, all] of [
      [after as unknown as JsonObject, changes.slice(0, 2)],
      [reversed, order],
    ] as const) {
      const back = all.reduce(putBack, draft)
      expect({ frames: back.frames, legs: back.legs }).toEqual({ frames: demo.frames, legs: demo.legs })
    }
  })

  it('name an edition, the last number one up', () => {
    expect(['2026-1', '2026-09', '2026-B', '7', '2026', 'spring', '', 'v1.9 beta'].map(nextEdition)).toEqual([
      '2026-2',
      '2026-10',
      '2026-C',
      '8',
      '2026-2',
      'spring 2',
      '1',
      'v1.10 beta',
    ])
  })
})

describe('worth a look', () => {
  it('are prices of the demo, and frames and legs without a brace', () => {
    const keys = (catalog = demoCatalog): string[] => [
      ...new Set(remarksOn(catalog, demoCatalog).map(({ key }) => key)),
    ]
    expect(keys()).toEqual(['still-demo-name', 'demo-contact', 'demo-terms', 'demo-prices'])
    const spoken = {
      ...demoCatalog,
      shop: { phone: '1', mail: '2' },
      quote: { ...demoCatalog.quote, terms: ['Ours.', demoCatalog.quote!.terms![0]!] },
    }
    expect(keys(spoken)).toEqual(['still-demo-name', 'demo-terms', 'demo-prices'])
    expect(remarksOn(spoken, demoCatalog)[1]).toMatchObject({ path: ['quote', 'terms', 1] })
    expect(keys(metricCatalog)).toEqual([])
    const wide = { ...metricCatalog, frames: [{ ...metricCatalog.frames[0]!, width: 1.8 }] }
    // Leg axes 0.07 m in from the sides.
    expect(remarksOn(wide, demoCatalog)).toMatchObject([{ key: 'no-brace', path: ['frames', 0, 'width'] }])
    const [remark] = remarksOn(wide, demoCatalog)
    expect(remark!.key === 'no-brace' && remark!.spacing).toBeCloseTo(1.66, 9)
    const long = {
      ...metricCatalog,
      legs: [...metricCatalog.legs, { ...metricCatalog.legs[0]!, code: 'x', length: 4 }],
    }
    expect(remarksOn(long, demoCatalog)).toMatchObject([{ key: 'no-brace-for-leg', length: 4 }])
  })
})

describe('kept on the device', () => {
  /** As a browser's, with so much room. */
  function fakeStorage(room = 1e7): Storage {
    const map = new Map<string, string>()
    return {
      get length() {
        return map.size
      },
      clear: () => map.clear(),
      getItem: (key) => map.get(key) ?? null,
      key: (i) => [...map.keys()][i] ?? null,
      removeItem: (key) => void map.delete(key),
      setItem(key, value) {
        if (value.length > room) throw new Error('no room')
        map.set(key, value)
      },
    }
  }
  const kept = (draft: JsonObject, guessed: readonly Path[] = []) => ({ draft, saved: demo, guessed })

  it('it comes back, wrong or not, with what was guessed', () => {
    const storage = fakeStorage()
    const draft = { ...demo, currency: 'x' }
    expect(openKeep('a', () => storage).save(kept(draft, [['extras', 0, 'space']]))).toBe(true)
    expect(openKeep('a', () => storage).load()).toEqual(kept(draft, [['extras', 0, 'space']]))
    expect(openKeep('b', () => storage).load()).toBeNull()
  })

  it('another window’s is put aside, not written over', () => {
    const storage = fakeStorage()
    const [one, two] = [
      openKeep(
        'a',
        () => storage,
        () => 1,
      ),
      openKeep(
        'a',
        () => storage,
        () => 2,
      ),
    ]
    one.load()
    two.load()
    one.save(kept({ ...demo, name: 'One' }))
    two.save(kept({ ...demo, name: 'Two' }))
    expect(two.aside()).toEqual([{ draft: { ...demo, name: 'One' }, at: 2 }])
    two.save(kept({ ...demo, name: 'Two again' }))
    expect(two.aside()).toHaveLength(1)
    expect(openKeep('a', () => storage).load()!.draft.name).toBe('Two again')
  })

  it('no room, no storage and no key are told', () => {
    const refused = (): never => {
      throw new Error('refused')
    }
    expect(openKeep('a', () => fakeStorage(100)).save(kept(demo))).toBe(false)
    expect(openKeep('a', refused).save(kept(demo))).toBe(false)
    expect(openKeep(null, () => fakeStorage()).load()).toBeNull()
  })
})
