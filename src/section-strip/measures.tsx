/** The measures of what is selected, where they are: bed to deck, stand-up, clearances of a brace. */
import type { Dock, Leg, Pair } from '../../rules/index.ts'
import { useLeadline, usePlaced } from '../state/store.ts'
import { useWords, type Words } from '../ui/use-words.ts'
import { meters, type Word } from '../words/index.ts'
import { HiddenGroup } from './hidden-group.tsx'
import type { Scale } from './scale.ts'

interface Measure {
  readonly x: number
  readonly from: number
  readonly to: number
  readonly text: string
  /** Which side of its line the words stand on. */
  readonly side: 1 | -1
}

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
      {list.map(({ x, from, to, text, side }, i) => {
        const px = scale.x(x) + side * 14
        const [a, b] = [scale.z(from), scale.z(to)]
        // Written toward the middle where the edge of the strip is near.
        const left = side === 1 && px > scale.width - 110
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a measure is the same one where its figure has changed
          <g key={i}>
            <path d={`M${px - 4} ${a}h8M${px - 4} ${b}h8M${px} ${a}V${b}`} />
            <text
              className={side === -1 || left ? 'end' : ''}
              x={px + (side === -1 || left ? -7 : 7)}
              y={(a + b) / 2 + 4}
            >
              {text}
            </text>
          </g>
        )
      })}
    </HiddenGroup>
  )
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
