/** What one more sounding would settle is told by the numbers that stand on every paper. */
import { expect, it } from 'vitest'
import { demoCatalog, demoDesign, derive, english, type Fit } from '../../rules/index.ts'
import { fitLines } from '../../rules/words/fit-text.ts'

const dock = derive(demoDesign, demoCatalog)
const told = (...settles: string[]): string => {
  const fit = { all: 0.6, spares: null, sounding: { x: 6.7056, y: 1.2, settles } } as unknown as Fit
  return fitLines(fit, dock, english('imperial'))[1]!
}
const begins = 'One more depth 22 ft out from the shore, to the left, tells most'

// Four legs of the standing section, then two of each: s4 has 7 and 8.
it.each([
  [[], '.'],
  [['s4.end.left'], ': it would most likely settle leg 7.'],
  [['s4.end.right', 's4.end.left'], ': it would most likely settle legs 7, 8.'],
  [dock.legs.map(({ id }) => id), ': it would most likely settle legs 1, 2, 3 and 7 more.'],
])('%j', (settles, ends) => {
  expect(told(...settles)).toBe(begins + ends)
})
