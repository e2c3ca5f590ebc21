/** The record on this screen, in square codes that come one after the other: the other phone holds its camera to them. */
import { useEffect, useState } from 'react'
import { encode } from 'uqr'
import { EACH, type Frames } from '../../record-sharing/index.ts'
import { count } from '../../words/index.ts'
import { useSay } from '../lake.ts'

/** White around a code, in its squares (ISO/IEC 18004). */
const QUIET = 4

export function Squares({ frames }: { readonly frames: Frames }) {
  const { t } = useSay()
  const [at, setAt] = useState(0)
  useEffect(() => {
    if (frames.count === 1) return
    const timer = setInterval(() => setAt((now) => now + 1), EACH)
    return () => clearInterval(timer)
  }, [frames])
  const { data, size } = encode(frames.text(at), { ecc: 'L', border: 0 })
  const squares = data.flatMap((row, y) =>
    row.flatMap((dark, x) => (dark ? [`M${x + QUIET} ${y + QUIET}h1v1h-1z`] : [])),
  )
  const whole = size + 2 * QUIET
  return (
    <>
      <svg className="square" viewBox={`0 0 ${whole} ${whole}`} role="img" aria-label={t('share.square')}>
        <rect width={whole} height={whole} fill="#fff" />
        <path d={squares.join('')} fill="#000" shapeRendering="crispEdges" />
      </svg>
      {frames.count > 1 && (
        <p>{t('progress', { n: count((at % frames.count) + 1), all: count(frames.count) })}</p>
      )}
      <p className="hint">{t('share.square-how', { count: count(frames.count) })}</p>
    </>
  )
}
