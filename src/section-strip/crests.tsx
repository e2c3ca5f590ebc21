/** Crests of the waves over today's water and over the high level, and what is left between them and the frame. */
import type { Waves } from '../../rules/index.ts'
import { useLeadline, usePlaced } from '../state/store.ts'
import { useWords } from '../ui/use-words.ts'
import { meters } from '../words/index.ts'
import { heightAt, wordPlaces } from './crest-places.ts'
import { deckPlace } from './handles.tsx'
import { HiddenGroup } from './hidden-group.tsx'
import { type Scale, WIDE } from './scale.ts'
import type { SideView } from './section-view.ts'

/** Length of a drawn wave, px: it says what the line is, not how long the waves are. */
const RIPPLE = 8
/** Height of a line of words, and its width by letter, px. */
const LINE = 14
const LETTER = 6.3
/** The deck's handle with some air, px. */
const GRIP = 18

/** Over which level, where its crests are, and what is left under the frame. */
const linesOf = (waves: Waves, high: number) => [
  { name: 'today', crest: waves.crest, clear: waves.clear },
  ...(high > 0 ? [{ name: 'high', crest: high + waves.crestHigh, clear: waves.clearHigh }] : []),
]

/** Lines of crests; the bed is drawn over them. */
export function CrestLines({ scale }: { readonly scale: Scale }) {
  const { waves } = usePlaced()
  const { high } = useLeadline((s) => s.design.site.levels)
  if (!waves) return null
  const ripples = `q${RIPPLE / 2} -4 ${RIPPLE} 0`.repeat(Math.ceil(scale.width / RIPPLE))
  return linesOf(waves, high).map(({ name, crest }) => (
    <path key={name} className={`crest ${name}`} d={`M0 ${scale.z(crest) + 2}${ripples}`} />
  ))
}

/** What is left, measured where it is and told in the water below. Left out where a picked part has its own measures. */
export function CrestClearance({ view, scale }: { readonly view: SideView; readonly scale: Scale }) {
  const dock = usePlaced()
  const { waves, legs } = dock
  const { levels, soundings } = useLeadline((s) => s.design.site)
  const picked = useLeadline((s) => s.selection)
  const { t, length } = useWords()
  if (!waves || picked !== null) return null
  const { x, z, width } = scale
  const lines = linesOf(waves, levels.high).map((line) => ({
    ...line,
    words: [
      t(line.name === 'today' ? 'crest.today' : 'crest.high'),
      t(line.clear < 0 ? 'crest.reaches' : 'crest.clear', { height: meters(Math.abs(line.clear)) }),
    ],
  }))
  const ends = legs.map((leg) => leg.x)
  const first = ends.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY)
  const last = ends.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY)
  const leads = soundings.map((s) => s.distance).filter((at) => at > first && at < last)
  // The names of the levels, `High +1 ft`, in letters.
  const letters =
    width < WIDE ? 5 : 6 + Math.max(...[levels.low, levels.high].map((at) => length(Math.abs(at)).length))
  const places = (words: readonly string[][], rows: number): number[] =>
    wordPlaces(
      {
        uprights: [...ends, ...leads].map(x),
        from: 0,
        to: width - letters * LETTER - 10,
        width: LETTER * Math.max(...words.flat().map((word) => word.length)),
        floor: z(0) + rows * LINE + 8,
        bedAt: (px) => z(heightAt(view.ground, px / scale.perX + view.ground[0]![0])),
      },
      words.length,
    )
  // Both, today's nearer to the shore; else today's alone; else without its name.
  const all = lines.map((line) => line.words)
  const told = [all, all.slice(0, 1), [all[0]!.slice(1)]]
    .map((words) => ({ words, at: places(words, words[0]!.length).sort((a, b) => a - b) }))
    .find(({ words, at }) => at.length === words.length)
  if (!told) return null
  return (
    <HiddenGroup className="crests">
      {told.at.map((place, i) => {
        const { name, crest, clear } = lines[i]!
        const [top, low] = [z(waves.underside), z(crest)]
        // Not under the deck's handle.
        const at = Math.abs(place - x(deckPlace(dock))) < GRIP ? place - GRIP : place
        return (
          <g key={name} className={clear < 0 ? 'reached' : ''}>
            <path d={`M${at - 4} ${top}h8M${at - 4} ${low}h8M${at} ${top}V${low}`} />
            {told.words[i]!.map((word, line) => (
              <text key={word} x={place} y={z(0) + (line + 1) * LINE + 2}>
                {word}
              </text>
            ))}
          </g>
        )
      })}
    </HiddenGroup>
  )
}
