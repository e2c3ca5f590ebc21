/** What can be dragged in the strip: soundings, levels, deck. */
import type { Design, Dock } from '../../rules/index.ts'
import { setLevel } from '../parameters/design-edits.ts'
import { useLeadline, usePlaced } from '../state/store.ts'
import { useWords } from '../ui/use-words.ts'
import { meters } from '../words/index.ts'
import { Handle, REACH } from './handle.tsx'
import { halfOf, type Scale, WIDE } from './scale.ts'
import { byDistance, changeSounding, removeSounding } from './soundings.ts'

const HOW = 'strip-how'
/** Most handles: with more they would overlap, and the table has all of them. */
const MOST_HANDLES = 60
/** Each sounding is a lead line: it hangs from the water with its lead on the bed. On the bank it is a stake. */
export function SoundingHandles({ scale }: { readonly scale: Scale }) {
  const design = useLeadline((s) => s.design)
  const range = useLeadline((s) => s.range)
  const edit = useLeadline((s) => s.edit)
  const { t, length } = useWords()
  const shown = byDistance(design).filter((i) => {
    const { distance } = design.site.soundings[i]!
    return distance >= range.x0 && distance <= range.x1
  })
  let free = Number.NEGATIVE_INFINITY
  return (
    <g className="soundings">
      {shown.slice(0, MOST_HANDLES).map((i) => {
        const { distance, depth } = design.site.soundings[i]!
        const x = scale.x(distance)
        const y = scale.z(-depth)
        const text = length(Math.abs(depth))
        const half = text.length * 3.3
        const room = x - half > free
        if (room) free = x + half + 6
        const values = { distance: meters(Math.abs(distance)), depth: meters(Math.abs(depth)) }
        const place = distance < 0 ? 'back' : 'out'
        return (
          <g key={i}>
            {depth > 0 && <line className="lead-line" x1={x} x2={x} y1={scale.z(0)} y2={y - 12} />}
            <Handle
              className="sounding"
              x={x}
              y={y}
              z={-depth}
              along={distance}
              range={[-300, 100]}
              perX={scale.perX}
              perZ={scale.perZ}
              label={t(`sounding.${place}`, values)}
              valueText={t(depth > 0 ? 'sounding.deep' : 'sounding.high', values)}
              describedBy={HOW}
              gesture={`sounding ${i}`}
              move={({ z, along }) =>
                edit(
                  (d) =>
                    changeSounding(d, i, {
                      ...(z === undefined ? {} : { depth: -z }),
                      ...(along === undefined ? {} : { distance: along }),
                    }),
                  { gesture: `sounding ${i}` },
                )
              }
              remove={() => edit((d) => removeSounding(d, i))}
            >
              <path
                className="lead"
                d="M0-13C1.6-13 2-12 2.4-9.6L5.4-1.4A5.6 5.6 0 1 1-5.4-1.4L-2.4-9.6C-2-12-1.6-13 0-13Z"
              />
              {room && (
                <text
                  className="depth"
                  x={Math.max(0, half + 3 - x) + Math.min(0, scale.width - half - 3 - x)}
                  y={UNDER}
                >
                  {text}
                </text>
              )}
            </Handle>
          </g>
        )
      })}
    </g>
  )
}

export function LevelHandles({ scale }: { readonly scale: Scale }) {
  const { low, high } = useLeadline((s) => s.design.site.levels)
  const edit = useLeadline((s) => s.edit)
  const { t, length } = useWords()
  // Where they are close the lower one stands aside, so that a finger takes the one it means.
  const aside = scale.z(low) - scale.z(high) < 2 * REACH ? 2 * REACH : 0
  const level = (which: 'low' | 'high', z: number, range: readonly [number, number]) => (
    <Handle
      className={`water-level ${which}`}
      x={scale.width - 22 - (which === 'low' ? aside : 0)}
      y={scale.z(z)}
      z={z}
      range={range}
      perX={scale.perX}
      perZ={scale.perZ}
      label={t(`level.${which}`)}
      valueText={t(z < 0 ? 'level.under' : 'level.over', { height: meters(Math.abs(z)) })}
      describedBy={HOW}
      gesture={`level ${which}`}
      move={({ z: to }) =>
        to === undefined || edit((d) => setLevel(d, which, to), { gesture: `level ${which}` })
      }
    >
      <Grip />
      {/* Ends at the picture's edge, wherever its grip stands: words and legs are left of it. */}
      <text className="level-name" x={16 + (which === 'low' ? aside : 0)} y={which === 'high' ? -14 : 23}>
        {t(`level.${which}.short`)}
        {scale.width >= WIDE && ` ${z < 0 ? '−' : '+'}${length(Math.abs(z))}`}
      </text>
    </Handle>
  )
  return (
    <g className="levels">
      {level('high', high, [low, 30])}
      {level('low', low, [-30, high])}
    </g>
  )
}

/** On the deck, in the outermost wide gap between legs, where no leg's length is written: its distance, m. */
export function deckPlace(dock: Dock): number {
  const xs = [...new Set(dock.legs.map((leg) => leg.x))].sort((a, b) => a - b)
  const gaps = xs.slice(1).map((x, i) => ({ middle: (x + xs[i]!) / 2, wide: x - xs[i]! }))
  const widest = Math.max(...gaps.map((gap) => gap.wide), 0)
  return gaps.findLast((gap) => gap.wide >= 0.9 * widest)?.middle ?? xs[0] ?? 1
}

/** Over the deck by so much its height is written, and by so much under a lead its depth, px; a line of them is so high. */
const OVER = 15
const UNDER = 20
const LINE = 14
/** Farther from its grip than this it would be taken for a figure of something else, px. */
const NEAR = 80

/**
 * From the deck's grip to the middle of its height: over it, or a little beside, where no leg stands up through it and no depth is written, px.
 * Where legs stand too close for that it covers them.
 */
export function deckText(
  { width, x, z }: Scale,
  dock: Dock,
  { dock: { deckHeight }, site }: Pick<Design, 'dock' | 'site'>,
  length: (meters: number) => string,
) {
  const text = length(deckHeight)
  const grip = x(deckPlace(dock))
  const wanted = width < WIDE ? -26 : 0
  const half = halfOf(text) + 2
  const beside = (by: number, over: number): boolean =>
    site.soundings.some(
      ({ distance, depth }) =>
        Math.abs(z(-depth) + UNDER - (z(deckHeight) - over)) < LINE &&
        Math.abs(grip + by - x(distance)) < half + halfOf(length(Math.abs(depth))) + 2,
    )
  // The levels' names stand at the right edge.
  const edges = [0, ...dock.legs.map((leg) => x(leg.x)), width - 64].sort((a, b) => a - b)
  const places = edges.slice(1).flatMap((right, i) => {
    const left = edges[i]!
    const by = Math.min(right - half, Math.max(left + half, grip + wanted)) - grip
    // Beside a depth that is written as high it goes up a line.
    const over = [OVER, OVER + LINE].find((one) => !beside(by, one))
    return right - left < 2 * half || over === undefined || Math.abs(by) > NEAR ? [] : [{ x: by, y: -over }]
  })
  return places.sort((a, b) => Math.abs(a.x) - Math.abs(b.x))[0] ?? { x: wanted, y: -OVER }
}

export function DeckHandle({ scale }: { readonly scale: Scale }) {
  const dock = usePlaced()
  const design = useLeadline((s) => s.design)
  const height = design.dock.deckHeight
  const edit = useLeadline((s) => s.edit)
  const { t, length } = useWords()
  const x = scale.x(deckPlace(dock))
  return (
    <Handle
      className="deck-handle"
      x={x}
      y={scale.z(height)}
      z={height}
      range={[-5, 10]}
      perX={scale.perX}
      perZ={scale.perZ}
      label={t('deck.label')}
      valueText={t(height < 0 ? 'level.under' : 'level.over', { height: meters(Math.abs(height)) })}
      describedBy={HOW}
      gesture="deck"
      move={({ z }) =>
        z === undefined || edit((d) => ({ ...d, dock: { ...d.dock, deckHeight: z } }), { gesture: 'deck' })
      }
    >
      <Grip />
      <text className="deck-height" {...deckText(scale, dock, design, length)}>
        {length(height)}
      </text>
    </Handle>
  )
}

/** A small round grip with an upward and a downward arrow. */
const Grip = () => (
  <>
    <circle className="grip" r={9} />
    <path className="grip-arrows" d="M-3-2 0-5 3-2M-3 2 0 5 3 2" />
  </>
)
