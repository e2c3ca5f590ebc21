/**
 * What is done about a dock after the frame of its edit: one too large for that is placed, and then it is found whether it stands, which parts are in each other's way, which remedies help. A
 * chunk of its own: nothing of it is there before the first picture.
 *
 * At every change the structure is asked for, beside the page (`structure-client.ts`): it comes a frame or two later. When the hand rests
 * follows what takes longer: buckling, the sleeves and clashes, and then the remedies. All of it is dropped at the next change, and each
 * finding is told of the very design that it was found of: nothing of an earlier dock is ever shown, and no remedy before it is known to
 * help. How the dock sways is asked for while it is shown and the hand rests, after the quick answer.
 */
import { withFit } from '../../rules/fit/with-fit.ts'
import { assessKit, type Dock } from '../../rules/index.ts'
import { FINDINGS } from '../../rules/words/finding-words.ts'
import { FOUND_LATER } from '../../rules/words/structure-words.ts'
import { type Designed, isJudged, type LeadlineStore } from '../state/store.ts'
import type { Assessment } from './assess.ts'
import { makeStructureClient, type StructureClient } from './structure-client.ts'
import { makeSwayAsker } from './sway-asker.ts'

/** An edit is followed by others; after this long it is the last one, ms. */
const REST = 160

const withJudgement = ({ pending: _, ...placed }: Dock, { structure, findings, fit }: Assessment): Dock =>
  Object.freeze({ ...withFit(placed, fit, []), structure, findings })

/** Goes on until the function that it gives back is called. */
export function keepAssessing(
  store: LeadlineStore,
  asker: StructureClient = makeStructureClient(),
): () => void {
  store.getState().set({ foundLater: [FINDINGS, ...FOUND_LATER] })
  store.getState().checkWith(assessKit)
  let timer: ReturnType<typeof setTimeout> | undefined
  /** Another number: what was begun is dropped. */
  let turn = 0
  /** The quick answer about the design in hand has come. */
  let quick: Promise<void> | null = null
  const swayAsker = makeSwayAsker(store, asker)

  const begin = (): void => {
    const mine = ++turn
    const gone = (): boolean => mine !== turn
    clearTimeout(timer)
    asker.drop()
    const state = store.getState()
    swayAsker.forget()
    quick = isJudged(state) ? Promise.resolve() : null
    if (quick) {
      swayAsker.ask(quick, gone)
      return
    }
    const of = { design: state.design, catalog: state.catalog }
    if (state.stale)
      asker.ask({
        of,
        step: 'place',
        placed: (dock, took) => gone() || store.getState().takePlaced(of, dock, took),
        failed: () => gone() || store.getState().giveUp(of),
      })
    else judgePlaced(of, state.project.dock, gone)
  }
  const judgePlaced = (of: Designed, placed: Dock, gone: () => boolean): void => {
    let dock: Dock = placed
    const ask = (step: 'quick' | 'deep'): Promise<void> =>
      new Promise((done) => {
        const tell = (whole: boolean): void => {
          if (!gone()) store.getState().judged(of, dock, whole)
          done()
        }
        asker.ask({
          of,
          step,
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
    quick = ask('quick')
    swayAsker.ask(quick, gone)
    // What takes longer waits for the quick answer too: it would only be slower with more beside it.
    void Promise.all([quick, rest]).then(() => {
      if (!gone() && !isJudged(store.getState())) void ask('deep')
    })
  }
  begin()
  const stop = store.subscribe((now, before) => {
    const other = now.design !== before.design || now.catalog !== before.catalog
    if (other || now.stale !== before.stale || now.tries !== before.tries) begin()
    else if (quick && (now.sway !== before.sway || now.dragging !== before.dragging)) {
      const mine = turn
      swayAsker.ask(quick, () => mine !== turn)
    }
  })
  return () => {
    turn++
    clearTimeout(timer)
    asker.close()
    stop()
  }
}
