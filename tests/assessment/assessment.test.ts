/** What is found after the frame of an edit: never for an older dock, whole when the hand rests, and the same as in the terminal. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { demoCatalog, demoDesign, derive, parseDesign } from '../../rules/index.ts'
import { keepAssessing } from '../../src/assessment/assessment.ts'
import type { Wish } from '../../src/assessment/question.ts'
import { judge } from '../../src/assessment/start-assessment.ts'
import { makeStructureClient, type StructureClient } from '../../src/assessment/structure-client.ts'
import { makeWorkerPool } from '../../src/assessment/worker-pool.ts'
import { createLeadlineStore, dockOf, isJudged, placedOf } from '../../src/state/store.ts'
import { puppet } from './puppet.ts'

const designOf = (dock: Record<string, unknown>) => {
  const parsed = parseDesign({ ...demoDesign, dock: { ...demoDesign.dock, ...dock } })
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
  return parsed.value
}
/** Docks are known by the identity of their design: each test has one of its own. */
/** A post put by hand where a wide pad reaches. */
const clashing = () =>
  designOf({
    pad: 'mud-pad-14',
    placed: [{ code: 'anchor-post', section: 's5', edge: 'left', along: 2.2 }],
  })
const plain = () => designOf({})
type Store = ReturnType<typeof createLeadlineStore>
const now = (store: Store) => dockOf(store.getState())
const clashesIn = (store: Store): number => now(store).findings.filter((f) => f.code === 'parts-clash').length
const load = (store: Store, to: number): void => {
  store.getState().edit((design) => ({ ...design, dock: { ...design.dock, load: to } }), { gesture: 'test' })
}

let stop: () => void = () => {}
beforeEach(async () => {
  // The chunks are there: what is tested is when they are asked.
  await import('../../src/assessment/assess.ts')
  vi.useFakeTimers()
})
afterEach(() => {
  stop()
  vi.useRealTimers()
})
const atRest = () => vi.advanceTimersByTimeAsync(3000)

describe('a dock is judged', () => {
  it('and then is what the terminal tells of it, to the last finding; before it says that it is pending', async () => {
    const store = createLeadlineStore({ design: clashing() })
    expect(now(store)).toMatchObject({ structure: null, pending: true })
    stop = judge(store)
    expect(isJudged(store.getState())).toBe(false)
    await atRest()
    expect(isJudged(store.getState())).toBe(true)
    const { design } = store.getState()
    expect(now(store)).toEqual(derive(design, demoCatalog))
    expect(clashesIn(store)).toBeGreaterThan(0)
    expect(now(store).structure?.deep).toBe(true)
    expect('pending' in now(store)).toBe(false)
  })

  it('as it was placed all along: the same legs, the same pieces, one object', async () => {
    const store = createLeadlineStore({ design: plain() })
    const placed = placedOf(store.getState())
    stop = keepAssessing(store)
    const checked = placedOf(store.getState())
    await atRest()
    expect(placedOf(store.getState())).toBe(checked)
    expect(now(store).placements).toBe(placed.placements)
    // But for what the bed's errors say of them.
    const same = placed.legs.map(({ fitChance: _, ...leg }) => leg)
    expect(now(store).legs).toMatchObject(same)
    expect(now(store).legs.every(({ fitChance }) => fitChance !== null)).toBe(true)
  })

  it('quickly at first, deeply and for clashes when the hand rests', async () => {
    const store = createLeadlineStore({ design: clashing() })
    stop = keepAssessing(store)
    await vi.advanceTimersByTimeAsync(100)
    expect(now(store).structure?.deep).toBe(false)
    expect(now(store).pending).toBeUndefined()
    expect(isJudged(store.getState())).toBe(false)
    expect(clashesIn(store)).toBe(0)
    await atRest()
    expect(now(store).structure?.deep).toBe(true)
  })

  it('anew after an edit, at once without what was found of the one before, and so after undo', async () => {
    const store = createLeadlineStore({ design: clashing() })
    stop = keepAssessing(store)
    await atRest()
    const before = now(store)
    store.getState().edit(({ dock: { pad: _, ...dock }, ...design }) => ({ ...design, dock }))
    expect(isJudged(store.getState())).toBe(false)
    expect(now(store)).toMatchObject({ structure: null, pending: true })
    expect(clashesIn(store)).toBe(0)
    await atRest()
    expect(isJudged(store.getState())).toBe(true)
    expect(clashesIn(store)).toBe(0)
    store.getState().undo()
    expect(now(store)).toMatchObject({ structure: null, pending: true })
    await atRest()
    expect(now(store)).toEqual(before)
  })

  it('overloaded it must not be built so; with the load taken off again it stands as before', async () => {
    const store = createLeadlineStore({ design: plain() })
    stop = keepAssessing(store)
    await atRest()
    const codes = () =>
      now(store)
        .findings.filter(({ severity }) => severity === 'stop')
        .map(({ code }) => code)
    expect(codes()).toEqual([])
    load(store, 15_000)
    await atRest()
    expect(codes().length).toBeGreaterThan(0)
    expect(now(store).structure?.live).toBe(15_000)
    store.getState().undo()
    await atRest()
    expect(isJudged(store.getState())).toBe(true)
    expect(codes()).toEqual([])
  })

  it('never by what was found of another: at every moment of fast edits the structure is that of the design shown', async () => {
    const store = createLeadlineStore({ design: plain() })
    stop = keepAssessing(store)
    const wrong: unknown[] = []
    let stood = 0
    const look = () => {
      const { structure, pending } = now(store)
      if (structure) {
        stood++
        if (structure.live !== store.getState().design.dock.load) wrong.push(structure.live)
      } else if (!pending) wrong.push('neither')
    }
    load(store, 1999)
    store.subscribe(look)
    for (let i = 0; i < 40; i++) {
      load(store, 2000 + i)
      look()
      await vi.advanceTimersByTimeAsync(i % 3 === 0 ? 8 : 40)
      look()
    }
    expect(wrong).toEqual([])
    expect(stood).toBeGreaterThan(10)
  })

  it('no more when it is told to stop', async () => {
    const store = createLeadlineStore({ design: clashing() })
    judge(store)()
    await atRest()
    expect(isJudged(store.getState())).toBe(false)
  })

  it('without a structure where it cannot be worked out here: then it stays pending, and nothing is waited for', async () => {
    const store = createLeadlineStore({ design: plain() })
    const none: StructureClient = { ask: ({ failed }) => failed(), drop() {}, close() {} }
    stop = keepAssessing(store, none)
    await atRest()
    expect(isJudged(store.getState())).toBe(true)
    expect(now(store)).toMatchObject({ structure: null, pending: true })
  })

  it('for a second element of the page that shows the same one, too', async () => {
    const design = plain()
    const [one, two] = [createLeadlineStore({ design }), createLeadlineStore({ design })]
    const stops = [keepAssessing(one)]
    await atRest()
    let told = 0
    two.subscribe(() => told++)
    stops.push(keepAssessing(two))
    await atRest()
    expect(told).toBeGreaterThan(0)
    expect(now(two)).toEqual(now(one))
    for (const end of stops) end()
  })
})

describe('asked of a worker', () => {
  beforeEach(() => void vi.stubGlobal('Worker', class {}))
  afterEach(() => void vi.unstubAllGlobals())
  const wish = (live: number, deep: boolean, got: number[], failed: () => void = () => {}): Wish => ({
    of: { design: designOf({ load: live }), catalog: demoCatalog },
    step: deep ? 'deep' : 'quick',
    got: ({ structure }) => got.push(structure!.live),
    failed,
  })

  it('of several only the last is asked, the catalog goes once, and no answer to an older one is told', () => {
    const { made, pool } = puppet()
    const asker = makeStructureClient(pool)
    const got: number[] = []
    for (const live of [1000, 2000, 3000]) {
      asker.drop()
      asker.ask(wish(live, false, got))
    }
    const [worker] = made
    expect(worker!.questions.map(({ design }) => design.dock.load)).toEqual([1000])
    worker!.answer(worker!.questions[0]!)
    expect(got).toEqual([])
    expect(worker!.questions.map(({ design }) => design.dock.load)).toEqual([1000, 3000])
    expect(worker!.questions.map(({ catalog }) => catalog !== null)).toEqual([true, false])
    worker!.answer(worker!.questions[1]!)
    expect(got).toEqual([3000])
    // An answer that comes twice, or late, is none.
    worker!.answer(worker!.questions[0]!)
    expect(got).toEqual([3000])
  })

  it('a deep question has a worker of its own, which is ended where nobody waits for it any more and it goes on too long', () => {
    const { made, pool } = puppet()
    const asker = makeStructureClient(pool)
    const got: number[] = []
    asker.ask(wish(1000, false, got))
    asker.ask(wish(1000, true, got))
    expect(made.length).toBe(2)
    asker.drop()
    // The next one waits for it.
    asker.ask(wish(2000, true, got))
    vi.advanceTimersByTime(290)
    expect(made.length).toBe(2)
    vi.advanceTimersByTime(20)
    expect(made.map(({ ended }) => ended)).toEqual([false, true, false])
    // What it answers before it is gone is told to nobody.
    made[1]!.answer(made[1]!.questions[0]!)
    expect(got).toEqual([])
    // A new worker knows no catalog.
    expect(made[2]!.questions[0]!.catalog).not.toBeNull()
    made[2]!.answer(made[2]!.questions[0]!)
    expect(got).toEqual([2000])
    asker.drop()
    vi.advanceTimersByTime(1000)
    expect(made[2]!.ended).toBe(false)
  })

  it('a worker that is through in time goes on with the next question, and tells nobody of the one that was dropped', () => {
    const { made, pool } = puppet()
    const asker = makeStructureClient(pool)
    const got: number[] = []
    asker.ask(wish(1000, true, got))
    asker.drop()
    asker.ask(wish(2000, true, got))
    const [worker] = made
    worker!.answer(worker!.questions[0]!, false)
    worker!.answer(worker!.questions[0]!, true)
    expect(worker!.questions.map(({ design }) => design.dock.load)).toEqual([1000, 2000])
    vi.advanceTimersByTime(1000)
    worker!.answer(worker!.questions[1]!, true)
    expect(got).toEqual([2000])
    expect(made.map(({ ended }) => ended)).toEqual([false])
  })

  it('what an element leaves is taken by the next one, and ended where none comes; what is still at work when it goes is left too, or ended', () => {
    const { made, pool } = puppet()
    const one = makeStructureClient(pool)
    const got: number[] = []
    one.ask(wish(1000, false, got))
    one.ask(wish(1000, true, got))
    made[0]!.answer(made[0]!.questions[0]!)
    one.drop()
    one.close()
    // The second is through a moment later.
    made[1]!.answer(made[1]!.questions[0]!)
    expect(got).toEqual([1000])
    const two = makeStructureClient(pool)
    two.ask(wish(3000, false, got))
    two.ask(wish(3000, true, got))
    expect(made.length).toBe(2)
    // It is another's catalog that they knew.
    for (const { questions } of made) expect(questions[1]).toMatchObject({ number: 1, catalog: demoCatalog })
    for (const worker of made) worker.answer(worker.questions[1]!)
    expect(got).toEqual([1000, 3000, 3000])
    two.ask(wish(4000, true, got))
    two.close()
    vi.advanceTimersByTime(400)
    expect(made.map(({ ended }) => ended)).toEqual([false, true])
    vi.advanceTimersByTime(31_000)
    expect(made.map(({ ended }) => ended)).toEqual([true, true])
    expect(got).toEqual([1000, 3000, 3000])
  })

  it('a deep question is answered twice: what is found, and then which remedies help', () => {
    const { made, pool } = puppet()
    const asker = makeStructureClient(pool)
    const got: number[] = []
    asker.ask(wish(1000, true, got))
    const [worker] = made
    worker!.answer(worker!.questions[0]!, false)
    worker!.answer(worker!.questions[0]!, true)
    expect(got).toEqual([1000, 1000])
    // With the second it is done: a third is told to nobody.
    worker!.answer(worker!.questions[0]!, true)
    expect(got).toEqual([1000, 1000])
  })

  it('a worker that does not start leaves its question to the page', async () => {
    const { made, pool } = puppet()
    const asker = makeStructureClient(pool)
    const got: number[] = []
    asker.ask(wish(2500, false, got))
    made[0]!.fail()
    await atRest()
    expect(got).toEqual([2500])
    const refused: number[] = []
    const none = makeStructureClient(
      makeWorkerPool(() => {
        throw new Error('another origin')
      }),
    )
    none.ask(wish(2600, true, refused))
    await atRest()
    expect(refused).toEqual([2600, 2600])
    expect(made.length).toBe(1)
  })
})
