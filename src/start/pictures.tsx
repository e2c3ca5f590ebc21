/** Small pictures of what is asked: banks from the side, bottoms from above, lakes from high up. Read out by their labels. */

const BANKS = {
  level: 'M0 40H30C48 40 60 42 96 46V64H0Z',
  low: 'M0 31H26C36 31 42 40 56 43L96 47V64H0Z',
  steps: 'M0 12H24V20H32V28H40V36H48C58 42 76 46 96 48V64H0Z',
} as const

export const BankPicture = ({ of }: { readonly of: keyof typeof BANKS }) => (
  <svg className="ask-picture bank" viewBox="0 0 96 64" aria-hidden="true">
    <rect className="sky" width={96} height={64} />
    <rect className="lake-water" y={42} width={96} height={22} />
    <path className="ground" d={BANKS[of]} />
    <path className="grass" d={(BANKS[of].split('V64')[0] ?? '').split('C')[0]} />
  </svg>
)

const STONES = {
  rock: [
    [18, 40, 22, 16],
    [54, 44, 20, 13],
    [80, 38, 18, 17],
    [38, 22, 18, 11],
    [72, 16, 16, 9],
    [8, 18, 12, 9],
  ],
  gravel: Array.from({ length: 40 }, (_, i) => [
    6 + (i % 8) * 12 + (i % 3) * 2,
    8 + Math.floor(i / 8) * 12 + (i % 2) * 4,
    3.6 + (i % 3),
    2.8 + ((i * 5) % 3),
  ]),
} as const

/** Curves of its surface: ripples in sand, smears in clay, weeds in muck. */
const LINES = {
  sand: 'M-4 14q12-7 24 0t24 0 24 0 24 0 24 0M-4 30q12-7 24 0t24 0 24 0 24 0 24 0M-4 46q12-7 24 0t24 0 24 0 24 0 24 0',
  clay: 'M8 20h34M52 16h28M14 36h22M48 34h40M24 50h44',
  muck: 'M16 64q-6-14 2-26q6-10 0-22M34 64q6-12 0-22t2-18M58 64q-8-14 0-26t-2-20M80 64q6-14-1-24t3-22',
} as const

type Bottom = keyof typeof STONES | keyof typeof LINES

export const BottomPicture = ({ of }: { readonly of: Bottom }) => (
  <svg
    className={`ask-picture bottom ${of}`}
    viewBox="0 0 96 64"
    aria-hidden="true"
    preserveAspectRatio="xMidYMid slice"
  >
    <rect className="floor" width={96} height={64} />
    {of === 'rock' || of === 'gravel' ? (
      STONES[of].map(([x, y, rx, ry], i) => (
        <ellipse key={`${x} ${y}`} className={i % 2 ? 'stone' : 'stone dark'} cx={x} cy={y} rx={rx} ry={ry} />
      ))
    ) : (
      <path className="lines" d={LINES[of]} />
    )}
  </svg>
)

/** The water of a lake as seen from high up, and where the dock is. */
const LAKES = {
  sheltered: [
    'M0 0H96V22C76 20 70 24 66 30C62 36 66 46 56 48C46 50 40 46 42 38C44 30 36 24 24 24C14 24 8 20 0 22Z',
    54,
    46,
  ],
  small: ['M36 18C48 12 62 16 66 28C70 42 58 50 46 48C32 46 26 38 28 30C29 24 31 20 36 18Z', 48, 47],
  wide: ['M8 24C20 10 46 12 62 13C82 14 94 24 92 34C88 48 64 50 46 50C22 50 2 44 8 24Z', 48, 49],
  open: ['M0 0H96V46C76 52 60 44 44 48S14 50 0 46Z', 48, 47],
} as const

export const LakePicture = ({ of }: { readonly of: keyof typeof LAKES }) => {
  const [shore, x, y] = LAKES[of]
  return (
    <svg
      className="ask-picture lake-from-above"
      viewBox="0 0 96 64"
      aria-hidden="true"
      preserveAspectRatio="xMidYMid slice"
    >
      <rect className="land" width={96} height={64} />
      <path className="lake-water" d={shore} />
      <circle className="here" cx={x} cy={y} r={4} />
    </svg>
  )
}
