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

interface CrestWords {
  /** Said under the drawing, where the dock stands clear of today's waves and not of those over the high level. */
  readonly raise: string | null
  readonly lines: readonly { readonly name: string; readonly crest: number; readonly clear: number }[]
  readonly words: readonly string[][]
  /** Where they stand, px; null: there is no room for them between the legs, and they are told under the drawing. */
  readonly at: readonly number[] | null
}

/** What is left under the frame, in words, and where in the water there is room for them. Null where a picked part has its own measures. */
export function useCrestWords(view: SideView, scale: Scale): CrestWords | null {
  const { waves, legs } = usePlaced()
  const { levels, soundings } = useLeadline((s) => s.design.site)
  const picked = useLeadline((s) => s.selection)
  const { t, length } = useWords()
  if (!waves || picked !== null) return null
  const { x, z, width } = scale
  const lines = linesOf(waves, levels.high)
  const all = lines.map(({ name, clear }) => [
    t(name === 'today' ? 'crest.today' : 'crest.high'),
    t(clear < 0 ? 'crest.reaches' : 'crest.clear', { height: meters(Math.abs(clear)) }),
  ])
  const high = lines.at(-1)!
  const raise = waves.clear >= 0 && high.clear < 0 ? t('crest.raise', { height: meters(-high.clear) }) : null
  const ends = legs.map((leg) => leg.x)
  const first = ends.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY)
  const last = ends.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY)
  const leads = soundings.map((s) => s.distance).filter((at) => at > first && at < last)
  // The names of the levels, `High +1 ft`, in letters.
  const letters =
    width < WIDE ? 5 : 6 + Math.max(...[levels.low, levels.high].map((at) => length(Math.abs(at)).length))
  const places = (words: readonly string[][], uprights: readonly number[]): number[] =>
    wordPlaces(
      {
        uprights: uprights.map(x),
        from: 0,
        to: width - letters * LETTER - 10,
        width: LETTER * Math.max(...words.flat().map((word) => word.length)),
        floor: z(0) + words[0]!.length * LINE + 8,
        bedAt: (px) => z(heightAt(view.ground, px / scale.perX + view.ground[0]![0])),
      },
      words.length,
    )
  // Both, today's nearer to the shore, else today's alone; clear of the thin lead lines too, if that can be.
  const told = [all, all.slice(0, 1)]
    .flatMap((words) => [
      { words, at: places(words, [...ends, ...leads]) },
      { words, at: places(words, ends) },
    ])
    .find(({ words, at }) => at.length === words.length)
  return told
    ? { raise, lines, words: told.words, at: told.at.sort((a, b) => a - b) }
    : { raise, lines, words: all, at: null }
}

/** Measured where it is and told in the water below. */
export function CrestClearance({ of, scale }: { readonly of: CrestWords | null; readonly scale: Scale }) {
  const dock = usePlaced()
  const { waves } = dock
  const { x, z } = scale
  if (!waves || !of?.at) return null
  return (
    <HiddenGroup className="crests">
      {of.at.map((place, i) => {
        const { name, crest, clear } = of.lines[i]!
        const [top, low] = [z(waves.underside), z(crest)]
        // Not under the deck's handle.
        const at = Math.abs(place - x(deckPlace(dock))) < GRIP ? place - GRIP : place
        return (
          <g key={name} className={clear < 0 ? 'reached' : ''}>
            <path d={`M${at - 4} ${top}h8M${at - 4} ${low}h8M${at} ${top}V${low}`} />
            {of.words[i]!.map((word, line) => (
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
