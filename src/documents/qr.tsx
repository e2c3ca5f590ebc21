/** A QR code (ISO/IEC 18004) as one path: dark squares on white, whatever the theme, with its quiet zone. */
import { encode } from 'uqr'

/** Modules of white around it, as the standard asks. */
const QUIET = 4
export function Qr({ text, label }: { readonly text: string; readonly label: string }) {
  const { data, size } = encode(text, { ecc: 'L', border: 0 })
  const squares = data.flatMap((row, y) =>
    row.flatMap((dark, x) => (dark ? [`M${x + QUIET} ${y + QUIET}h1v1h-1z`] : [])),
  )
  const whole = size + 2 * QUIET
  return (
    <svg className="qr" viewBox={`0 0 ${whole} ${whole}`} role="img" aria-label={label}>
      <rect width={whole} height={whole} fill="#fff" />
      <path d={squares.join('')} fill="#000" shapeRendering="crispEdges" />
    </svg>
  )
}
