/** How a dock sways is worked out beside the page: asked for while it is shown and the hand rests, and never told of another design. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { demoDesign, deriveKit } from '../../rules/index.ts'
import { swayShape } from '../../rules/structure/dock/sway-shape.ts'
import { keepAssessing } from '../../src/assessment/assessment.ts'
import { makeStructureClient } from '../../src/assessment/structure-client.ts'
import { createLeadlineStore } from '../../src/state/store.ts'
import { puppet } from './puppet.ts'

let stop: () => void = () => {}
beforeEach(() => void vi.useFakeTimers())
afterEach(() => {
  stop()
  vi.useRealTimers()
  vi.unstubAllGlobals()
})
const aMoment = () => vi.advanceTimersByTimeAsync(1)

describe('in a worker', () => {
  const begin = () => {
    vi.stubGlobal('Worker', class {})
    const { made, pool } = puppet()
    const store = createLeadlineStore({ design: structuredClone(demoDesign) })
    stop = keepAssessing(store, makeStructureClient(pool))
    const worker = made[0]!
    const asked = () => worker.questions.map(({ step, way }) => (step === 'sway' ? `${step} ${way}` : step))
    const shapes = () => store.getState().swayed?.shapes.length
    return { store, worker, asked, shapes, last: () => worker.questions.at(-1)! }
  }
  const set = (store: ReturnType<typeof begin>['store'], sway: 'none' | 'across' | 'along') =>
    store.getState().set({ sway })

  it('it is asked for after the quick answer, and once for each way', async () => {
    const { store, worker, asked, last } = begin()
    set(store, 'across')
    await aMoment()
    expect(asked()).toEqual(['quick'])
    worker.answer(last())
    await aMoment()
    expect(asked()).toEqual(['quick', 'sway across'])
    worker.say({ number: last().number, sway: [] })
    expect(store.getState().swayed).toMatchObject({ way: 'across', shapes: [] })
    set(store, 'none')
    set(store, 'across')
    await aMoment()
    expect(asked()).toHaveLength(2)
    set(store, 'along')
    await aMoment()
    expect(asked().at(-1)).toBe('sway along')
    worker.say({ number: last().number, failed: 'no' })
    expect(store.getState().swayed?.way).toBe('across')
    set(store, 'none')
    set(store, 'along')
    await aMoment()
    expect(asked()).toHaveLength(4)
    worker.say({ number: last().number, sway: [] })
    expect(store.getState().swayed).toMatchObject({ way: 'along', shapes: [] })
  })

  it('not while the hand drags, and what was asked of the dock before is not told', async () => {
    const { store, worker, asked, shapes, last } = begin()
    worker.answer(last())
    set(store, 'across')
    await aMoment()
    const before = last()
    expect(before.step).toBe('sway')
    store
      .getState()
      .edit((design) => ({ ...design, dock: { ...design.dock, sections: 3 } }), { gesture: 'g' })
    worker.say({ number: before.number, sway: [] })
    expect(shapes()).toBeUndefined()
    worker.answer(last())
    await aMoment()
    expect(asked()).toEqual(['quick', 'sway across', 'quick'])
    store.getState().endGesture()
    await aMoment()
    expect(asked().at(-1)).toBe('sway across')
    expect(last().design.dock.sections).toBe(3)
    worker.say({ number: last().number, sway: [] })
    expect(store.getState().swayed?.of.design).toBe(store.getState().design)
  })
})

it('where no worker is possible it is solved on the page, with its braces and without', async () => {
  vi.stubGlobal('Worker', undefined)
  await import('../../src/assessment/assess.ts')
  const store = createLeadlineStore({ design: structuredClone(demoDesign) })
  stop = keepAssessing(store)
  store.getState().set({ sway: 'across' })
  await vi.advanceTimersByTimeAsync(3000)
  const { design, catalog, swayed } = store.getState()
  const kit = deriveKit(design, catalog)
  expect(swayed?.shapes).toEqual([swayShape(kit, { braces: true }), swayShape(kit, { braces: false })])
  store.getState().set({ sway: 'along' })
  await vi.advanceTimersByTimeAsync(100)
  expect(store.getState().swayed?.shapes).toEqual([swayShape(kit, { braces: true, way: 'along' })])
})
