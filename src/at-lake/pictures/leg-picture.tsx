/** One leg as it is to be set, true to scale: its pad on the bottom, the deck, the water, and how far it is from the one to the other. */

interface LegPictureProps {
  readonly label: string
  /** Sole of the foot pad to the top of the frame, and to the leg's top, m; the top null where no leg is chosen. */
  readonly height: number
  readonly top: number | null
  /** Water over the bottom, m; negative on dry ground; null where it is not known. */
  readonly depth: number | null
  /** Brace clamps, up from the sole, m. */
  readonly clamps: readonly number[]
  readonly words: {
    readonly height: string
    readonly deck: string
    readonly water: string
    readonly over: string | null
    readonly clamp: readonly string[]
  }
}

const WIDE = 360
const TALL = 118
const BASE = 138
const X = 150
const FRAME = 0.16
/** Lines of text nearer than that are one on the other. */
const APART = 16

export function LegPicture({ label, height, top, depth, clamps, words }: LegPictureProps) {
  const highest = Math.max(top ?? height, height + 0.15, depth ?? 0)
  const scale = TALL / highest
  const z = (up: number): number => BASE - up * scale
  const deck = z(height)
  const over = Math.max(9, z(top ?? height) - 9)
  // Of a leg that just reaches they would stand on each other.
  const aside = Math.abs(over - (deck - 10)) < APART
  const crossed = depth !== null && clamps.some((up) => Math.abs(z(up) - z(depth) - 11) < APART)
  return (
    <svg className="lake-picture" viewBox={`0 0 ${WIDE} 152`} role="img" aria-label={label}>
      {depth !== null && depth > 0 && (
        <rect className="water" x={0} y={z(depth)} width={WIDE} height={BASE - z(depth)} />
      )}
      <rect className="earth" x={-4} y={BASE} width={WIDE + 8} height={24} />
      <rect className="frame lit" x={X - 16} y={deck} width={WIDE} height={Math.max(8, FRAME * scale)} />
      <path className="leg" d={`M${X} ${BASE}V${z(top ?? height)}`} />
      <path className="leg" d={`M${X - 16} ${BASE - 1}h32`} />
      {clamps.map((up, i) => (
        <g key={up}>
          <path className="leg" d={`M${X - 9} ${z(up)}h18`} />
          <text className="start" x={X + 16} y={z(up)}>
            {words.clamp[i]}
          </text>
        </g>
      ))}
      <path className="measure-line" d={`M${X - 34} ${BASE}V${deck}m-9 0h18M${X - 43} ${BASE}h18`} />
      <text className="red" x={(X - 44) / 2} y={(BASE + deck) / 2}>
        {words.height}
      </text>
      <text className="start" x={X + 24} y={deck - 10}>
        {words.deck}
      </text>
      {words.over !== null && top !== null && (
        <text className={aside ? 'end' : ''} x={aside ? X - 12 : X} y={over}>
          {words.over}
        </text>
      )}
      {depth !== null && depth > 0 && z(depth) - deck > 40 && !crossed && (
        <text className="start" x={X + 24} y={z(depth) + 11}>
          {words.water}
        </text>
      )}
    </svg>
  )
}
