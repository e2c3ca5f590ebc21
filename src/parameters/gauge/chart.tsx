/** The record over time, with the season's band and the deck in it. */
import { dateOf, type Reading } from '../../../rules/gauge/read.ts'
import { inSeason, type Season, type SeasonLevels } from '../../../rules/gauge/season.ts'
import { useLeadline } from '../../state/store.ts'
import { useWords } from '../../ui/use-words.ts'
import { GAUGE } from '../../words/gauge.ts'
import { meters, text } from '../../words/index.ts'

const [WIDE, HIGH, PAD] = [320, 110, 6]
/** So many points show all that a line of this width can. */
const MOST = 640

export function Chart({
  readings,
  season,
  found,
  at,
}: {
  readonly readings: readonly Reading[]
  readonly season: Season
  readonly found: SeasonLevels
  readonly at: number
}) {
  const { t } = useWords(GAUGE)
  const deck = useLeadline((s) => s.design.dock.deckHeight) + at
  const [first, last] = [readings[0]!, readings.at(-1)!]
  const levels = readings.map(({ level }) => level)
  // A record of decades has more readings than a call takes arguments.
  const [low, high] = levels.reduce(([a, b], v) => [Math.min(a, v), Math.max(b, v)], [
    Math.min(deck, found.low),
    Math.max(deck, found.high),
  ] as [number, number])
  const x = (day: number): number =>
    PAD + ((day - first.day) / Math.max(1, last.day - first.day)) * (WIDE - 2 * PAD)
  const y = (level: number): number =>
    HIGH - PAD - ((level - low) / Math.max(1e-6, high - low)) * (HIGH - 2 * PAD)
  const is = inSeason(season)
  const label = t('chart', {
    from: text(dateOf(first)),
    to: text(dateOf(last)),
    low: meters(found.low),
    high: meters(found.high),
    deck: meters(deck),
  })
  return (
    <svg className="gauge-chart" viewBox={`0 0 ${WIDE} ${HIGH}`} role="img" aria-label={label}>
      <rect
        className="band"
        x={0}
        width={WIDE}
        y={y(found.high)}
        height={Math.max(0.5, y(found.low) - y(found.high))}
      />
      <path className="all" d={lineOf(readings, x, y, () => true)} />
      <path className="own" d={lineOf(readings, x, y, is)} />
      <line className="deck" x1={0} x2={WIDE} y1={y(deck)} y2={y(deck)} />
      <text x={WIDE - PAD} y={y(deck) < 16 ? y(deck) + 11 : y(deck) - 3} textAnchor="end">
        {t('chart.deck')}
      </text>
    </svg>
  )
}

/** Of many readings the lowest and the highest of each stretch. */
function lineOf(
  readings: readonly Reading[],
  x: (day: number) => number,
  y: (level: number) => number,
  of: (reading: Reading) => boolean,
): string {
  const step = Math.max(1, Math.ceil((2 * readings.length) / MOST))
  const shown: (Reading | null)[] = []
  for (let i = 0; i < readings.length; i += step) {
    const run = readings.slice(i, i + step).filter(of)
    if (run.length === 0) shown.push(null)
    else if (step === 1) shown.push(run[0]!)
    else {
      const ends = [
        run.reduce((a, b) => (b.level < a.level ? b : a)),
        run.reduce((a, b) => (b.level > a.level ? b : a)),
      ]
      shown.push(...ends.sort((a, b) => a.day - b.day))
    }
  }
  let pen = 'M'
  return shown
    .map((one) => {
      if (!one) {
        pen = 'M'
        return ''
      }
      const to = `${pen}${x(one.day).toFixed(1)} ${y(one.level).toFixed(1)}`
      pen = 'L'
      return to
    })
    .join('')
}
