/**
 * The page's own thread, between what it has to do, where a page allows no workers. A quick answer goes first; the chunk of what finds it
 * comes with the first one. What is to be placed waits until the hand rests: that it is being placed is on the screen by then.
 */
import { whenIdle } from '../platform/idle.ts'
import type { Line, Wish } from './question.ts'

/** The hand rests when it has not moved for so long, ms. */
const REST = 160

export function pageLine(): Line {
  let turn = 0
  let wishes: Wish[] = []
  const go = async (mine: number): Promise<void> => {
    const chunk = await import('./assess.ts').catch(() => null)
    if (wishes[0]?.step === 'place') await new Promise((done) => setTimeout(done, REST))
    const next = (): void => {
      const wish = mine === turn ? wishes.shift() : undefined
      if (!wish) return
      if (chunk) answer(chunk, wish)
      else wish.failed()
      if (chunk && mine === turn && wishes.length > 0) whenIdle(next)
    }
    whenIdle(next)
  }
  const drop = (): void => {
    turn++
    wishes = []
  }
  return {
    ask(wish) {
      wishes = [...wishes.filter(({ step }) => step !== wish.step), wish].sort(
        (a, b) => +(a.step === 'deep') - +(b.step === 'deep'),
      )
      void go(++turn)
    },
    drop,
    close: drop,
  }
}

function answer(chunk: typeof import('./assess.ts'), wish: Wish): void {
  const { design, catalog } = wish.of
  if (wish.step === 'place') {
    const { dock, took } = chunk.placedHere(design, catalog)
    wish.placed?.(dock, took)
  } else if (wish.step === 'sway') wish.swayed?.(chunk.swayShapes(design, catalog, wish.way ?? 'across'))
  else chunk.assess(design, catalog, wish.step, (judgement) => wish.got?.(judgement))
}
