/** Lines that are no thing in the lake: what the dock is held against, and what a gauge's record says of the season. */
import { lowLevel } from '../../rules/clearance/keel.ts'
import { limitsOf, reachLimit } from '../../rules/limits/limits.ts'
import { useLeadline } from '../state/store.ts'
import { useWords } from '../ui/use-words.ts'
import { meters } from '../words/index.ts'
import { LIMIT_WORDS } from '../words/limits.ts'
import { HiddenGroup } from './hidden-group.tsx'
import { linePlaces } from './line-places.ts'
import { FOOT, type Scale } from './scale.ts'

export function Limits({ scale }: { readonly scale: Scale }) {
  const { site } = useLeadline((s) => s.project.design)
  const catalog = useLeadline((s) => s.project.catalog)
  const marks = useLeadline((s) => s.marks)
  const legs = useLeadline((s) => s.project.dock.legs)
  const { t } = useWords(LIMIT_WORDS)
  const { depth } = limitsOf({ site }, catalog)
  const reach = reachLimit({ site }, catalog)
  const out = reach === null ? null : scale.x(reach)
  const level = [
    ...(depth === undefined
      ? []
      : [
          {
            at: lowLevel(site.levels) - depth,
            name: 'limit',
            text: t('drawn.depth', { most: meters(depth) }),
          },
        ]),
    ...(marks ?? []).map((mark) => ({ ...mark, name: 'gauge' })),
  ].filter(({ at }) => scale.z(at) > 0 && scale.z(at) < scale.height)
  if (level.length === 0 && out === null) return null
  const levels = [site.levels.low, site.levels.high].map(scale.z)
  const places = linePlaces(
    level.map(({ at, text }) => ({
      y: scale.z(at),
      width: text.length * LETTER,
      // What stands up through the line; at the right edge are the names and grips of the levels.
      uprights: legs.filter(({ bed }) => scale.z(bed) > scale.z(at) - LINE).map((leg) => scale.x(leg.x)),
      to: scale.width - (levels.some((y) => Math.abs(y - scale.z(at)) < NAMED) ? 64 : 4),
    })),
    { from: 4, foot: scale.height - FOOT - LINE },
  )
  const inside = out !== null && out >= 0 && out <= scale.width
  return (
    <HiddenGroup className="set-lines" style={GROUP}>
      {level.map(({ at, name, text }, i) => (
        <g key={text} data-line={name}>
          <line x1={0} x2={scale.width} y1={scale.z(at)} y2={scale.z(at)} style={LINES[name as 'limit']} />
          {(places[i] || name === 'limit') && (
            <text x={places[i]?.x ?? 4} y={places[i]?.y ?? scale.z(at) - 4} style={WORDS}>
              {text}
            </text>
          )}
        </g>
      ))}
      {inside && (
        <g data-line="reach">
          <line x1={out} x2={out} y1={0} y2={scale.height} style={LINES.limit} />
          <text
            x={out + (out > scale.width / 2 ? -8 : 8)}
            y={scale.height - FOOT - 3}
            style={{ ...WORDS, textAnchor: out > scale.width / 2 ? 'end' : 'start' }}
          >
            {t('drawn.reach', { most: meters(reach!) })}
          </text>
        </g>
      )}
    </HiddenGroup>
  )
}

/** A letter of these words in the mean, px. */
const LETTER = 6.2
/** So near a level its name stands, px. */
const NAMED = 40
/** From one line of words to the next, px. */
const LINE = 14
const GROUP = { pointerEvents: 'none' } as const
const LINES = {
  limit: { stroke: 'var(--stop)', strokeWidth: 1.25, strokeDasharray: '8 4' },
  gauge: { stroke: 'var(--ink)', strokeWidth: 1, strokeDasharray: '1 4' },
} as const
const WORDS = {
  fontSize: 11,
  fontWeight: 600,
  paintOrder: 'stroke',
  stroke: 'color-mix(in oklab, var(--sky) 80%, transparent)',
  strokeWidth: 3,
} as const
