import { describe, expect, it } from 'vitest'
import { assessKit, type Design, demoCatalog, demoDesign, parseDesign } from '../../rules/index.ts'
import { MOST_STEPS } from '../../src/state/history.ts'
import { createLeadlineStore, dockOf } from '../../src/state/store.ts'
import { deriveAtOnce } from '../support/at-once.ts'

const raise = (by: number) => (d: typeof demoDesign) => ({
  ...d,
  dock: { ...d.dock, deckHeight: d.dock.deckHeight + by },
})

describe('the store', () => {
  it('begins with a valid design and derives the same Dock as the engine', () => {
    const state = createLeadlineStore().getState()
    expect(parseDesign(state.design).ok).toBe(true)
    expect(dockOf(state).fingerprint).toEqual(deriveAtOnce(demoDesign, demoCatalog).fingerprint)
  })

  it('knows the dock without its findings until what checks it has come: then the one in hand, and each edit in its frame', () => {
    const design = { ...demoDesign, dock: { ...demoDesign.dock, start: -3 } }
    const store = createLeadlineStore({ design })
    const { project: placed } = store.getState()
    const checked = deriveAtOnce(design, demoCatalog)
    expect(checked.findings.length).toBeGreaterThan(0)
    expect(placed.dock).toEqual({ ...checked, findings: [], reasons: placed.dock.reasons })
    expect(placed.dock.pending).toBe(true)
    store.getState().checkWith(assessKit)
    expect(store.getState().dock).toEqual(checked)
    expect(store.getState().project).toEqual({ ...placed, dock: checked })
    // For whoever draws it nothing is new but what was found.
    expect(store.getState().dock.placements).toBe(placed.dock.placements)
    store.getState().edit(raise(0.1))
    expect(dockOf(store.getState())).toEqual(deriveAtOnce(store.getState().design, demoCatalog))
    const { dock } = store.getState()
    store.getState().checkWith(assessKit)
    expect(store.getState().dock).toBe(dock)
  })

  it('checks nothing of a dock that another has taken the place of', () => {
    const store = createLeadlineStore()
    const large = parseDesign({ ...demoDesign, dock: { ...demoDesign.dock, sections: 800 } })
    if (!large.ok) throw new Error(JSON.stringify(large.issues))
    store.getState().replace(large.value)
    const { dock } = store.getState()
    store.getState().checkWith(assessKit)
    expect(store.getState()).toMatchObject({ stale: true, status: 'placing' })
    expect(store.getState().dock).toBe(dock)
  })

  it('derives a design once, however often it is asked', () => {
    const store = createLeadlineStore()
    expect(dockOf(store.getState())).toBe(dockOf(store.getState()))
    store.getState().set({ hover: 's1', units: 'metric' })
    const before = dockOf(store.getState())
    store.getState().edit(raise(0.1))
    expect(dockOf(store.getState())).not.toBe(before)
  })

  it('keeps the design as it is where an edit is not valid, and says why', () => {
    const store = createLeadlineStore()
    const { design } = store.getState()
    const issues = store.getState().edit((d) => ({ ...d, dock: { ...d.dock, deckHeight: 99 } }))
    expect(issues[0]?.path).toBe('dock.deckHeight')
    expect(store.getState().design).toBe(design)
    expect(store.getState().canUndo).toBe(false)
  })

  it('quantizes what is edited, as the border does', () => {
    const store = createLeadlineStore()
    store.getState().edit(raise(0.000_000_04))
    expect(store.getState().design).toBe(store.getState().design)
    expect(store.getState().design.dock.deckHeight).toBe(0.45)
    expect(store.getState().canUndo).toBe(false)
  })

  it('leaves what an edit did not touch the very object that it was, and checks it all the same', () => {
    const store = createLeadlineStore()
    const { site, dock } = store.getState().design
    const deepen = (by: number) => (d: Design) => ({
      ...d,
      site: { ...d.site, soundings: d.site.soundings.map((s) => ({ ...s, depth: s.depth + by })) },
    })
    expect(store.getState().edit(deepen(0.25))).toEqual([])
    const now = store.getState().design
    expect(now.site.soundings).toEqual(deepen(0.25)(demoDesign).site.soundings)
    expect(now.dock).toBe(dock)
    expect(now.site.levels).toBe(site.levels)
    expect(now.site).not.toBe(site)
    // Together with what was left alone it may be wrong.
    const crowded = (d: Design) => ({ ...d, site: { ...d.site, soundings: [] } })
    expect(store.getState().edit(crowded)).not.toEqual([])
    expect(store.getState().design).toBe(now)
  })

  it('makes one step of a gesture and holds the scale still while it goes on', () => {
    const store = createLeadlineStore()
    const { range } = store.getState()
    for (let i = 1; i <= 20; i++) {
      store.getState().edit(
        (d) => ({
          ...d,
          site: {
            ...d.site,
            soundings: d.site.soundings.map((s, k) => (k === 4 ? { ...s, depth: s.depth + 0.1 } : s)),
          },
        }),
        { gesture: 'sounding 4' },
      )
      expect(store.getState().dragging).toBe(true)
      expect(store.getState().range).toBe(range)
    }
    store.getState().endGesture()
    expect(store.getState().dragging).toBe(false)
    expect(store.getState().range.z0).toBeLessThan(range.z0)
    store.getState().undo()
    expect(store.getState().design).toEqual(demoDesign)
    expect(store.getState().canUndo).toBe(false)
    store.getState().redo()
    expect(store.getState().design.site.soundings[4]!.depth).toBeCloseTo(3.4, 9)
  })

  it('makes no step of a gesture that came back to where it began', () => {
    const store = createLeadlineStore()
    store.getState().edit(raise(0.1), { gesture: 'deck' })
    store.getState().edit(raise(-0.1), { gesture: 'deck' })
    store.getState().endGesture()
    expect(store.getState().canUndo).toBe(false)
  })

  it(`takes back ${MOST_STEPS} steps and no more`, () => {
    const store = createLeadlineStore()
    for (let i = 0; i < MOST_STEPS + 30; i++) store.getState().edit(raise(0.001))
    let steps = 0
    while (store.getState().canUndo) {
      store.getState().undo()
      steps++
    }
    expect(steps).toBe(MOST_STEPS)
    expect(store.getState().design.dock.deckHeight).toBeCloseTo(0.45 + 0.03, 9)
    while (store.getState().canRedo) store.getState().redo()
    expect(store.getState().design.dock.deckHeight).toBeCloseTo(0.45 + 0.001 * (MOST_STEPS + 30), 9)
  })

  it('forgets what could be done again once something else is done', () => {
    const store = createLeadlineStore()
    store.getState().edit(raise(0.1))
    store.getState().undo()
    expect(store.getState().canRedo).toBe(true)
    store.getState().edit(raise(0.2))
    expect(store.getState().canRedo).toBe(false)
  })

  it('takes back a design that was opened over another', () => {
    const store = createLeadlineStore()
    store.getState().replace({ ...demoDesign, name: 'Other' })
    expect(store.getState().design.name).toBe('Other')
    store.getState().undo()
    expect(store.getState().design).toEqual(demoDesign)
  })

  it('never changes the design when the units change', () => {
    const store = createLeadlineStore()
    const { design } = store.getState()
    for (const units of ['metric', 'imperial', 'metric'] as const) {
      store.getState().set({ units })
      expect(store.getState().design).toBe(design)
    }
  })

  it('keeps two elements apart', () => {
    const [a, b] = [createLeadlineStore(), createLeadlineStore()]
    a.getState().edit(raise(0.1))
    a.getState().set({ selection: 's2' })
    expect(b.getState().design).toEqual(demoDesign)
    expect(b.getState().selection).toBeNull()
  })
})

describe('the range that strip and side view share', () => {
  it('spans the whole dock and its soundings', () => {
    const { range, design, dock } = createLeadlineStore().getState()
    for (const s of dock.sections) {
      expect(s.x).toBeGreaterThan(range.x0)
      expect(s.x + s.length).toBeLessThan(range.x1)
    }
    for (const s of design.site.soundings) {
      expect(s.distance).toBeGreaterThan(range.x0)
      expect(s.distance).toBeLessThan(range.x1)
    }
    for (const leg of dock.legs) expect(leg.bed).toBeGreaterThan(range.z0)
  })

  it('leaves out a sounding far away, so that the dock stays in sight', () => {
    const soundings = [...demoDesign.site.soundings, { distance: 9000, offset: 0, depth: 20 }]
    const { range } = createLeadlineStore({
      design: { ...demoDesign, site: { ...demoDesign.site, soundings } },
    }).getState()
    expect(range.x1).toBeLessThan(60)
  })
})
