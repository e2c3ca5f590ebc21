/**
 * What is found about a dock after the frame of its edit: whether it stands, and which parts are in each other's way. A chunk of its own:
 * nothing of it is there before the first picture.
 *
 * At every change the structure is asked for, beside the page (`ask-structure.ts`): it comes a frame or two later. When the hand rests
 * follow what takes longer: buckling and the sleeves, in a worker too, and clashes, a little at a time between the browser's own work.
 * All of it is dropped at the next change, and each finding is told of the very design that it was found of: nothing of an earlier
 * dock is ever shown.
 */
import { clashSteps, withClashes } from '../../geometry/index.ts'
import { addWords, type Dock, type Finding, withStructure } from '../../rules/index.ts'
import type { Standing } from '../../rules/structure/stand.ts'
import english from '../../rules/words/structure.en.json' with { type: 'json' }
import { type Asker, makeAsker } from './ask-structure.ts'
import { whenIdle } from './idle.ts'
import { dockOf, isJudged, type LeadlineStore, placedOf } from './store.ts'

/** An edit is followed by others; after this long it is the last one, ms. */
const REST = 160
/** The longest that clashes are looked for at a time, ms: a third of a frame. */
const SLICE = 5

/** Goes on until the function that it gives back is called. */
export function keepJudging(store: LeadlineStore, asker: Asker = makeAsker()): () => void {
  addWords('en', english)
  let timer: ReturnType<typeof setTimeout> | undefined
  /** Another number: what was begun is dropped. */
  let turn = 0

  const begin = (): void => {
    const mine = ++turn
    const gone = (): boolean => mine !== turn
    clearTimeout(timer)
    asker.drop()
    const { design, catalog } = store.getState()
    const of = { design, catalog }
    if (isJudged(of)) {
      // By another element of the page, perhaps: this one's views have not heard of it.
      store.getState().judged(of, dockOf(of), true)
      return
    }
    const placed = placedOf(of)
    let standing: Standing | null = null
    let clashes: readonly Finding[] | null = null
    /** No more of the structure is to come. */
    let whole = false
    const tell = (): void => {
      if (gone()) return
      const dock: Dock = standing ? withStructure(placed, standing) : placed
      store.getState().judged(of, withClashes(dock, clashes ?? []), whole && clashes !== null)
    }
    const ask = (deep: boolean): Promise<void> =>
      new Promise((done) => {
        asker.ask({
          of,
          deep,
          got(found) {
            standing = found
            // Where it cannot be judged there is nothing to look into deeper.
            whole = found.structure === null || found.structure.deep
            tell()
            done()
          },
          failed() {
            whole = true
            tell()
            done()
          },
        })
      })
    const rest = new Promise<void>((done) => {
      timer = setTimeout(done, REST)
    })
    // What takes longer waits for the quick answer too: it would only be slower with more beside it.
    void Promise.all([ask(false), rest]).then(() => {
      if (gone()) return
      if (!whole) void ask(true)
      lookForClashes(clashSteps(placed, design, catalog), gone, (found) => {
        clashes = found
        tell()
      })
    })
  }
  begin()
  const stop = store.subscribe((now, before) => {
    if (now.design !== before.design || now.catalog !== before.catalog) begin()
  })
  return () => {
    turn++
    clearTimeout(timer)
    asker.close()
    stop()
  }
}

/** A little at a time between the browser's own work. */
function lookForClashes(
  steps: ReturnType<typeof clashSteps>,
  gone: () => boolean,
  found: (clashes: readonly Finding[]) => void,
): void {
  const go = (): void => {
    if (gone()) return
    const until = performance.now() + SLICE
    for (let step = steps.next(); ; step = steps.next()) {
      if (step.done) {
        found(step.value)
        return
      }
      if (performance.now() > until) break
    }
    whenIdle(go)
  }
  whenIdle(go)
}
