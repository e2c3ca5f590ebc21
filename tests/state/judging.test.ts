/** What is found after the frame of an edit: when the hand rests, never for an older dock, and the same as in the terminal. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { judged } from '../../geometry/index.ts'
import { type Design, demoCatalog, demoDesign, derive, parseDesign } from '../../rules/index.ts'
import { judgeAtRest } from '../../src/state/judging.ts'
import { createLeadlineStore, dockOf, isJudged } from '../../src/state/store.ts'

/** Another object each time: docks are remembered by it. */
function clashing(): Design {
  const parsed = parseDesign({ ...demoDesign, dock: { ...demoDesign.dock, pad: 'mud-pad-14' } })
  if (!parsed.ok) throw new Error('clashing')
  return parsed.value
}
const clashesIn = (store: ReturnType<typeof createLeadlineStore>): number =>
  dockOf(store.getState()).findings.filter((f) => f.code === 'parts-clash').length

let stop: () => void = () => {}
beforeEach(async () => {
  // The chunk is there: what is tested is when it is asked.
  await import('../../src/state/judge.ts')
  vi.useFakeTimers()
})
afterEach(() => {
  stop()
  vi.useRealTimers()
})
const atRest = () => vi.advanceTimersByTimeAsync(2000)

describe('a dock is judged', () => {
  it('when the hand rests, and not before; then all that read the dock read what was found', async () => {
    const store = createLeadlineStore({ design: clashing() })
    stop = judgeAtRest(store)
    await vi.advanceTimersByTimeAsync(100)
    expect(isJudged(store.getState())).toBe(false)
    expect(clashesIn(store)).toBe(0)
    let told = 0
    store.subscribe(() => told++)
    await atRest()
    expect(isJudged(store.getState())).toBe(true)
    expect(told).toBe(1)
    const { design } = store.getState()
    expect(dockOf(store.getState()).findings).toEqual(
      judged(derive(design, demoCatalog), design, demoCatalog).findings,
    )
    expect(clashesIn(store)).toBeGreaterThan(0)
  })

  it('anew after an edit and after undo, at once without what was found of the one before', async () => {
    const store = createLeadlineStore({ design: clashing() })
    stop = judgeAtRest(store)
    await atRest()
    const before = clashesIn(store)
    expect(before).toBeGreaterThan(0)
    store.getState().edit(({ dock: { pad: _, ...dock }, ...design }) => ({ ...design, dock }))
    expect(isJudged(store.getState())).toBe(false)
    expect(clashesIn(store)).toBe(0)
    await atRest()
    expect(isJudged(store.getState())).toBe(true)
    expect(clashesIn(store)).toBe(0)
    store.getState().undo()
    expect(clashesIn(store)).toBe(0)
    await atRest()
    expect(clashesIn(store)).toBe(before)
  })

  it('not while one edit follows another, and what was begun for an older one is dropped', async () => {
    const store = createLeadlineStore({ design: clashing() })
    stop = judgeAtRest(store)
    const docks = new Set([dockOf(store.getState())])
    for (let i = 0; i < 20; i++) {
      store
        .getState()
        .edit((design) => ({ ...design, dock: { ...design.dock, deckHeight: 0.45 + i / 1000 } }), {
          gesture: 'test',
        })
      // Longer than an edit takes, shorter than a rest.
      await vi.advanceTimersByTimeAsync(120)
      docks.add(dockOf(store.getState()))
      expect(clashesIn(store)).toBe(0)
    }
    expect(docks.size).toBe(20)
    await atRest()
    expect(clashesIn(store)).toBeGreaterThan(0)
  })

  it('where nothing is in the way it stays the same object: no view is drawn again for it', async () => {
    const store = createLeadlineStore({ design: { ...demoDesign } })
    stop = judgeAtRest(store)
    const dock = dockOf(store.getState())
    await atRest()
    expect(isJudged(store.getState())).toBe(true)
    expect(dockOf(store.getState())).toBe(dock)
  })

  it('no more when it is told to stop', async () => {
    const store = createLeadlineStore({ design: clashing() })
    judgeAtRest(store)()
    await atRest()
    expect(isJudged(store.getState())).toBe(false)
  })
})
