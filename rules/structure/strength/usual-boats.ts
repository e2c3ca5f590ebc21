/** Ordinary boats, loaded, in figures of our own that part one kind from the next. Typed ones are better. */
import { EXACT } from '../../words/figures.ts'

const { foot, inch, pound } = EXACT
/** m, kg */
const boatOf = (feet: number, side: number, down: number, pounds: number) => ({
  length: feet * foot,
  height: side * inch,
  draught: down * inch,
  mass: pounds * pound,
})

export const USUAL_BOATS = {
  fishing: boatOf(14, 18, 10, 700),
  runabout: boatOf(18, 30, 18, 2600),
  pontoon: boatOf(22, 28, 16, 3300),
} as const
