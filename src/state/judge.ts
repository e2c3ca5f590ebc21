/**
 * What is found about a dock after the frame of its edit: whether it stands, which parts are in each other's way, which remedies help. A
 * chunk of its own: nothing of it is there before the first picture.
 *
 * At every change the structure is asked for, beside the page (`ask-structure.ts`): it comes a frame or two later. When the hand rests
 * follows what takes longer: buckling, the sleeves and clashes, and then the remedies. All of it is dropped at the next change, and each
 * finding is told of the very design that it was found of: nothing of an earlier dock is ever shown, and no remedy before it is known to
 * help.
 */
import type { Dock } from '../../rules/index.ts'
import { FOUND_WORDS } from '../../rules/words/found.ts'
import { type Asker, makeAsker } from './ask-structure.ts'
import type { Judgement } from './judgement.ts'
import { dockOf, isJudged, type LeadlineStore, placedOf } from './store.ts'

/** An edit is followed by others; after this long it is the last one, ms. */
const REST = 160

const withJudgement = ({ pending: _, ...placed }: Dock, { structure, findings }: Judgement): Dock =>
  Object.freeze({ ...placed, structure, findings })

/** Goes on until the function that it gives back is called. */
export function keepJudging(store: LeadlineStore, asker: Asker = makeAsker()): () => void {
  store.getState().set({ moreWords: FOUND_WORDS })
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
    let dock: Dock = placed
    const ask = (deep: boolean): Promise<void> =>
      new Promise((done) => {
        const tell = (whole: boolean): void => {
          if (!gone()) store.getState().judged(of, dock, whole)
          done()
        }
        asker.ask({
          of,
          deep,
          got(judgement) {
            dock = withJudgement(placed, judgement)
            tell(judgement.whole)
          },
          failed: () => tell(true),
        })
      })
    const rest = new Promise<void>((done) => {
      timer = setTimeout(done, REST)
    })
    // What takes longer waits for the quick answer too: it would only be slower with more beside it.
    void Promise.all([ask(false), rest]).then(() => {
      if (!gone() && !isJudged(of)) void ask(true)
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
