/** The boats that a dock is laid out for, with the water under each. */
import { boatName, boatWater } from '../../rules/words/boats.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import { PAPERS } from '../../rules/words/papers.ts'
import { boatsIn } from '../boats.ts'
import { keyValues, subheading } from '../paper/blocks.ts'
import type { Block } from '../paper/flow.ts'
import type { PaperOf } from '../paper/paper-of.ts'

/** None where none lies at it. */
export function boatBlocks(of: PaperOf, width: number): readonly Block[] {
  const { bed, design, options } = of
  const facts = boatsIn(of).map((berth) => ({
    label: boatName(berth.boat, options),
    value: boatWater(berth, bed, design.site.levels, options),
  }))
  if (facts.length === 0) return []
  return [subheading(wordsOf(PAPERS, options)('boats'), width), ...keyValues(facts, width)]
}
