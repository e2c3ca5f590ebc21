/** The measures of what is selected, where they are: bed to deck, stand-up, clearances of a brace. None over another. */
import type { Dock, Leg, Pair } from '../../rules/index.ts'
import { useLeadline, usePlaced } from '../state/store.ts'
import { useWords, type Words } from '../ui/use-words.ts'
import { meters, type Word } from '../words/index.ts'
import { HiddenGroup } from './hidden-group.tsx'
import { FOOT, type Scale } from './scale.ts'

interface Measure {
  readonly x: number
  readonly from: number
  readonly to: number
  readonly text: string
  /** Which side of its line the words stand on. */
  readonly side: 1 | -1
}

/** Height of a line of words, and the width of a letter, px: no letter of the strip's own size is wider in the mean. */
const LINE = 17
const LETTER = 7.4
/** From the part to the line beside it, and from that to its words, px. */
const BESIDE = 14
const WORDS = 7

export function Measures({ scale }: { readonly scale: Scale }) {
  const dock = usePlaced()
  const deck = useLeadline((s) => s.design.dock.deckHeight)
  const selection = useLeadline((s) => s.selection)
  const words = useWords()
  const leg = dock.legs.find((l) => l.id === selection)
  const pair = dock.pairs.find((p) => p.id === selection)
  const list = leg ? ofLeg(leg, deck, words) : pair ? ofPair(pair, dock, words) : []
  return (
    <HiddenGroup className="measures">
      {placed(list, scale).map(({ px, a, b, x, y, text }, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a measure is the same one where its figure has changed
        <g key={i}>
          <path d={`M${px - 4} ${a}h8M${px - 4} ${b}h8M${px} ${a}V${b}`} />
          <text x={x} y={y}>
            {text}
          </text>
        </g>
      ))}
    </HiddenGroup>
  )
}

interface PlacedMeasure {
  /** Of the line, and its ends, px. */
  readonly px: number
  readonly a: number
  readonly b: number
  /** Where its words begin, and the line that they stand on, px. */
  readonly x: number
  readonly y: number
  readonly text: string
}

/** Words beside the middle of their lines, inside the strip, each a line off the one before it. */
function placed(list: readonly Measure[], scale: Scale): PlacedMeasure[] {
  const taken: number[] = []
  return list.map(({ x, from, to, text, side }) => {
    const px = scale.x(x) + side * BESIDE
    const [a, b] = [scale.z(from), scale.z(to)]
    const wide = text.length * LETTER
    // Written toward the middle where the edge of the strip is near.
    const right = side === 1 ? px + WORDS + wide <= scale.width : px - WORDS - wide < 0
    const start = right ? px + WORDS : px - WORDS - wide
    const [top, foot] = [LINE, scale.height - FOOT - 4]
    let y = Math.min(foot, Math.max(top, (a + b) / 2 + 4))
    for (const way of [0, -1, 1, -2, 2]) {
      const there = y + way * LINE
      if (there < top || there > foot || taken.some((other) => Math.abs(other - there) < LINE)) continue
      y = there
      break
    }
    taken.push(y)
    return { px, a, b, x: Math.max(4, Math.min(scale.width - wide - 4, start)), y, text }
  })
}

function ofLeg({ x, bed, setHeight, aboveDeck }: Leg, deck: number, { t }: Words<Word>): Measure[] {
  const list: Measure[] = [
    { x, from: bed, to: deck, side: 1, text: t('measure.set-height', { height: meters(setHeight) }) },
  ]
  if (aboveDeck !== null)
    list.push({
      x,
      from: deck,
      to: deck + aboveDeck,
      side: -1,
      text: t('measure.above-deck', { height: meters(aboveDeck) }),
    })
  return list
}

function ofPair({ legs, brace }: Pair, dock: Dock, { t }: Words<Word>): Measure[] {
  const low = dock.legs.find((leg) => leg.id === (brace?.low ?? legs[0]))
  if (!brace || !low) return []
  const { x } = low
  const { lowClearance, highClearance, lowZ, highZ } = brace
  return [
    {
      x,
      from: lowZ - lowClearance,
      to: lowZ,
      side: 1,
      text: t('measure.brace-low', { height: meters(lowClearance) }),
    },
    {
      x,
      from: highZ,
      to: highZ + highClearance,
      side: 1,
      text: t('measure.brace-high', { height: meters(highClearance) }),
    },
  ]
}
