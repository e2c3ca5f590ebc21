/** The ground of a lake is prepared once for a change, whatever shows it; and not at all where the change left the site alone. */
import { afterAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { type Design, demoCatalog, demoDesign } from '../../rules/index.ts'
import type { LeadlineStore } from '../../src/state/store.ts'

// The modules loaded afresh, with one that counts: other test files of the same run have loaded them already.
vi.resetModules()
vi.doMock('../../rules/site/bed.ts', { spy: true })
const { makeBed } = await import('../../rules/site/bed.ts')
const { gapsOf } = await import('../../geometry/index.ts')
const { sideView } = await import('../../src/section-strip/section-view.ts')
const { createLeadlineStore } = await import('../../src/state/store.ts')
const { drawLake } = await import('../../src/viewport/drawn-lake.ts')
const made = vi.mocked(makeBed)
afterAll(() => {
  vi.doUnmock('../../rules/site/bed.ts')
  vi.resetModules()
})

/** All that the page draws and reads of a dock in the frame of an edit. */
function look(store: LeadlineStore): void {
  const { project, range } = store.getState()
  sideView(project, range.x0, range.x1)
  drawLake(project, range, 0)
  gapsOf('s3', project)
}

const deeper = (design: Design): Design => ({
  ...design,
  site: {
    ...design.site,
    soundings: design.site.soundings.map((s, i) => (i === 1 ? { ...s, depth: s.depth + 0.05 } : s)),
  },
})
const higher = (design: Design): Design => ({
  ...design,
  dock: { ...design.dock, deckHeight: design.dock.deckHeight + 0.05 },
})

describe('the project of a page', () => {
  beforeEach(() => void made.mockClear())

  it('has one bed for each step of a drag of a sounding', () => {
    const store = createLeadlineStore()
    look(store)
    expect(made).toHaveBeenCalledTimes(1)
    for (let step = 2; step <= 4; step++) {
      expect(store.getState().edit(deeper, { gesture: 'sounding' })).toEqual([])
      look(store)
      expect(made).toHaveBeenCalledTimes(step)
    }
    store.getState().endGesture()
    look(store)
    expect(made).toHaveBeenCalledTimes(4)
    store.getState().undo()
    look(store)
    expect(made).toHaveBeenCalledTimes(5)
  })

  it('keeps its bed while the deck is dragged, and where only the catalog is another', () => {
    const store = createLeadlineStore()
    const { bed } = store.getState().project
    store.getState().edit(higher, { gesture: 'deck' })
    store.getState().edit(higher, { gesture: 'deck' })
    store.getState().setCatalog(structuredClone(demoCatalog))
    look(store)
    expect(store.getState().project.bed).toBe(bed)
    expect(made).toHaveBeenCalledTimes(1)
  })

  it('is of the design, the catalog and the dock in hand, with the ground of that site', () => {
    const store = createLeadlineStore()
    const [, { distance }] = demoDesign.site.soundings as [unknown, { distance: number }]
    const before = store.getState().project.bed.bedAt(distance, 0)
    store.getState().edit(deeper)
    const { design, catalog, dock, project } = store.getState()
    expect(project.design).toBe(design)
    expect(project.catalog).toBe(catalog)
    expect(project.dock).toBe(dock)
    expect(project.shop.catalog).toBe(catalog)
    expect(project.bed.bedAt(distance, 0)).toBeCloseTo(before - 0.05, 6)
  })

  it('is one object whatever is found later', () => {
    const store = createLeadlineStore()
    const { design, catalog, project } = store.getState()
    store.getState().judged({ design, catalog }, { ...project.dock }, true)
    expect(store.getState().project).toBe(project)
  })
})
