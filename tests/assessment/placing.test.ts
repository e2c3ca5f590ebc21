/** A dock too large to follow the hand: the edit answers at once, the dock is placed beside the page, and nothing old passes for it. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { demoCatalog, demoDesign, parseCatalog, parseDesign } from '../../rules/index.ts'
import { keepAssessing } from '../../src/assessment/assessment.ts'
import { gather, slicesOf } from '../../src/assessment/slices.ts'
import { makeStructureClient } from '../../src/assessment/structure-client.ts'
import { patienceFor } from '../../src/assessment/worker-line.ts'
import { makeWorkerPool } from '../../src/assessment/worker-pool.ts'
import { standingOf } from '../../src/panel/verdict.ts'
import { placingTime, tooLarge } from '../../src/state/placing-time.ts'
import { createLeadlineStore, isJudged, toldOf } from '../../src/state/store.ts'
import { deriveAtOnce } from '../support/at-once.ts'
import { puppet } from './puppet.ts'

const designOf = (dock: Record<string, unknown>) => {
  const parsed = parseDesign({ ...demoDesign, dock: { ...demoDesign.dock, ...dock } })
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
  return parsed.value
}
const LARGE = 800
const large = () => designOf({ sections: LARGE })
const raise = (store: ReturnType<typeof createLeadlineStore>, to: number) =>
  store.getState().edit((d) => ({ ...d, dock: { ...d.dock, deckHeight: to } }), { gesture: 'deck' })

let stop: () => void = () => {}
beforeEach(async () => {
  await import('../../src/assessment/assess.ts')
  vi.useFakeTimers()
  vi.stubGlobal('Worker', class {})
})
afterEach(() => {
  stop()
  vi.useRealTimers()
  vi.unstubAllGlobals()
})

describe('a dock too large to follow the hand', () => {
  it('is told by its size, or by how long the last two placings took: never by one that was held up', () => {
    expect(tooLarge(demoDesign, [])).toBe(false)
    expect(tooLarge(large(), [])).toBe(true)
    expect(tooLarge(demoDesign, [300])).toBe(false)
    expect(tooLarge(demoDesign, [300, 3])).toBe(false)
    // A small one is held up by something else, however often.
    expect(tooLarge(demoDesign, [300, 310])).toBe(false)
    const long = { ...demoDesign, dock: { ...demoDesign.dock, sections: 100 } }
    expect(tooLarge(long, [3, 4])).toBe(false)
    expect(tooLarge(long, [300, 3])).toBe(false)
    expect(tooLarge(long, [300, 310])).toBe(true)
    const many = Array.from({ length: 9000 }, (_, i) => ({ distance: i, offset: 0, depth: 1 }))
    expect(tooLarge({ ...demoDesign, site: { ...demoDesign.site, soundings: many } }, [])).toBe(true)
  })

  it('leaves the last one in view, marked: an edit places nothing, of several the last is placed, and slices make it whole', () => {
    const { made, pool } = puppet()
    const store = createLeadlineStore()
    stop = keepAssessing(store, makeStructureClient(pool))
    const { dock: placed } = store.getState().project
    store.getState().replace(large())
    expect(store.getState()).toMatchObject({ status: 'placing', stale: true })
    expect(store.getState().project.dock).toBe(placed)
    for (const height of [0.5, 0.55, 0.6]) raise(store, height)
    expect(store.getState().project.dock).toBe(placed)
    expect(standingOf(store.getState()).standing).toBe('placing')
    expect(toldOf(store.getState())).toMatchObject({ pending: true, structure: null, findings: [] })
    const [worker] = made
    const places = () => worker!.questions.filter(({ step }) => step === 'place')
    // The first of all goes on for the demo dock's quick answer; then the last alone.
    worker!.answer(worker!.questions[0]!)
    expect(places().map(({ design }) => design.dock.deckHeight)).toEqual([0.6])
    const { number, design } = places()[0]!
    const dock = deriveAtOnce(design, demoCatalog)
    for (const slice of slicesOf(dock)) worker!.say({ number, slice: structuredClone(slice) })
    expect(store.getState().stale).toBe(true)
    worker!.say({ number, took: 120 })
    expect(store.getState()).toMatchObject({ status: 'placed', stale: false })
    expect(store.getState().project.dock).toEqual(dock)
    // What is found of it is asked next.
    expect(worker!.questions.at(-1)!.step).toBe('quick')
  })

  it('is back on the page as soon as it is small again', () => {
    const store = createLeadlineStore({ design: large() })
    expect(store.getState()).toMatchObject({ status: 'placing', stale: true })
    expect(store.getState().project.dock.sections).toEqual([])
    store.getState().edit((d) => ({ ...d, dock: { ...d.dock, sections: 4 } }))
    expect(store.getState()).toMatchObject({ status: 'placed', stale: false })
    expect(store.getState().project.dock.sections.length).toBe(4)
  })

  it('is placed on the page where no worker is possible, once the hand rests and not before', async () => {
    const store = createLeadlineStore()
    stop = keepAssessing(
      store,
      makeStructureClient(
        makeWorkerPool(() => {
          throw new Error('another origin')
        }),
      ),
    )
    store.getState().replace(large())
    await vi.advanceTimersByTimeAsync(20)
    expect(store.getState().stale).toBe(true)
    for (let i = 0; i < 5; i++) {
      raise(store, 0.5 + i / 100)
      await vi.advanceTimersByTimeAsync(100)
      expect(store.getState().stale).toBe(true)
    }
    await vi.advanceTimersByTimeAsync(1000)
    expect(store.getState()).toMatchObject({ stale: false })
    expect(store.getState().project.dock.sections.length).toBe(LARGE)
  })

  it('of 5,000 sections comes in slices of a thousand entries at the most, and they make the same dock', () => {
    const dock = deriveAtOnce(designOf({ sections: 5000 }), demoCatalog)
    const whole = gather()
    for (const slice of slicesOf(dock)) {
      const { value } = slice
      if (value !== null && typeof value === 'object')
        expect(Object.keys(value).length).toBeLessThanOrEqual(1000)
      whole.add(structuredClone(slice))
    }
    expect(JSON.stringify(whole.dock())).toBe(JSON.stringify(dock))
  })
})

describe('a worker that does not answer', () => {
  const placing = { of: { design: large(), catalog: demoCatalog }, step: 'place' } as const

  it('is ended and replaced once; if the second is silent too that is told, with a way to try again', async () => {
    const { made, pool } = puppet()
    const store = createLeadlineStore({ design: large() })
    stop = keepAssessing(store, makeStructureClient(pool))
    const wait = patienceFor(placing)
    await vi.advanceTimersByTimeAsync(wait - 100)
    expect(made.length).toBe(1)
    await vi.advanceTimersByTimeAsync(200)
    expect(made.map(({ ended }) => ended)).toEqual([true, false])
    expect(made[1]!.questions.map(({ step }) => step)).toEqual(['place'])
    expect(store.getState().status).toBe('placing')
    await vi.advanceTimersByTimeAsync(wait + 100)
    expect(made.map(({ ended }) => ended)).toEqual([true, true])
    expect(store.getState()).toMatchObject({ status: 'unavailable', stale: true })
    expect(isJudged(store.getState())).toBe(false)
    expect(standingOf(store.getState()).standing).toBe('unknown')
    store.getState().tryAgain()
    expect(store.getState().status).toBe('placing')
    const { number, design } = made[2]!.questions[0]!
    for (const slice of slicesOf(deriveAtOnce(design, demoCatalog))) made[2]!.say({ number, slice })
    made[2]!.say({ number, took: 90 })
    expect(store.getState()).toMatchObject({ status: 'placed', stale: false })
  })

  it('leaves what was found before: findings of the placed dock stay, and it is not called good', async () => {
    const { pool } = puppet()
    const store = createLeadlineStore({ design: designOf({ start: -3 }) })
    stop = keepAssessing(store, makeStructureClient(pool))
    const { findings } = store.getState().dock
    expect(findings.length).toBeGreaterThan(0)
    const { design, catalog } = store.getState()
    await vi.advanceTimersByTimeAsync(2 * patienceFor({ of: { design, catalog }, step: 'quick' }) + 500)
    expect(store.getState().status).toBe('unavailable')
    expect(store.getState().dock.findings).toEqual(findings)
    expect(['fix', 'unknown']).toContain(standingOf(store.getState()).standing)
  })

  it('that was slow and goes on telling is left to go on', async () => {
    const { made, pool } = puppet()
    const store = createLeadlineStore({ design: large() })
    stop = keepAssessing(store, makeStructureClient(pool))
    const wait = patienceFor(placing)
    const { number, design } = made[0]!.questions[0]!
    const slices = slicesOf(deriveAtOnce(design, demoCatalog))
    for (let i = 0; i < 4; i++) {
      await vi.advanceTimersByTimeAsync(wait - 100)
      made[0]!.say({ number, slice: slices.next().value! })
    }
    expect(made.length).toBe(1)
  })

  it('may take longer the larger the dock', () => {
    expect(placingTime(large())).toBeGreaterThan(placingTime(demoDesign))
    expect(patienceFor(placing)).toBeGreaterThan(
      patienceFor({ of: { design: demoDesign, catalog: demoCatalog }, step: 'place' }),
    )
  })
})

it('two elements with one design and two catalogs do not disturb each other', () => {
  const dearer = parseCatalog({
    ...demoCatalog,
    frames: demoCatalog.frames.map((frame) => ({ ...frame, price: frame.price + 1000 })),
  })
  if (!dearer.ok) throw new Error('no catalog')
  const design = designOf({})
  const [one, two] = [createLeadlineStore({ design }), createLeadlineStore({ design, catalog: dearer.value })]
  const docks = () => [one, two].map((store) => store.getState().dock)
  const before = docks()
  const [a, b] = before
  expect(a!.totals.price).toBeLessThan(b!.totals.price)
  const state = one.getState()
  state.judged(state, { ...a!, structure: null }, true)
  expect(two.getState().dock).toBe(b)
  expect(two.getState().status).toBe('placed')
  expect(docks()[0]).not.toBe(a)
})
