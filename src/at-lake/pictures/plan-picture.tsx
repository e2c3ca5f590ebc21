/** The dock from above, the lake to the right: where each leg stands by its number, which are set, and which one is meant. */
import type { Dock } from '../../../rules/index.ts'
import { cornersOf } from '../../../rules/layout/footprint.ts'
import { legNumber } from '../../../rules/leg-places.ts'

interface PlanPictureProps {
  readonly dock: Dock
  readonly label: string
  readonly lake: string
  readonly legs: readonly string[]
  readonly set: (leg: string) => boolean
  readonly section?: string | undefined
}

const WIDE = 360
const ROOM = { x: 16, y: 20 } as const
/** A section is drawn no larger than this, px a m. */
const LARGEST = 60
/** Where more legs than that are in it, only those that are meant have their number. */
const NUMBERED = 24
/** More sections than that have no room for their numbers. */
const NAMED = 12

export function PlanPicture({ dock, label, lake, legs, set, section }: PlanPictureProps) {
  const corners = dock.sections.flatMap((one) => cornersOf(one))
  if (corners.length === 0) return null
  const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)]
  const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
  const scale = Math.min(LARGEST, (WIDE - 2 * ROOM.x) / (x1 - x0), 220 / (y1 - y0))
  const height = (y1 - y0) * scale + 2 * ROOM.y + 16
  const left = (WIDE - (x1 - x0) * scale) / 2
  const at = (x: number, y: number): [number, number] => [left + (x - x0) * scale, ROOM.y + (y1 - y) * scale]
  const path = (points: readonly (readonly [number, number])[]): string =>
    `M${points
      .map(([x, y]) =>
        at(x, y)
          .map((n) => n.toFixed(1))
          .join(' '),
      )
      .join('L')}Z`
  const numbered = dock.legs.length <= NUMBERED
  return (
    <svg className="lake-picture" viewBox={`0 0 ${WIDE} ${height.toFixed(1)}`} role="img" aria-label={label}>
      {dock.sections.map((one) => (
        <path key={one.id} className={`frame ${one.id === section ? 'lit' : ''}`} d={path(cornersOf(one))} />
      ))}
      {dock.sections.length <= NAMED &&
        dock.sections.map((one) => {
          const all = cornersOf(one)
          const middle = (of: 0 | 1): number => all.reduce((sum, point) => sum + point[of], 0) / all.length
          const [px, py] = at(middle(0), middle(1))
          return (
            <text key={one.id} className="section" x={px} y={py + 0.5}>
              {one.id.replace(/^s(?=\d)/, '')}
            </text>
          )
        })}
      {dock.legs.map(({ id, x, y }) => {
        const [px, py] = at(x, y)
        const meant = legs.includes(id)
        const shown = meant || numbered
        const r = meant ? 13 : shown ? 10 : 4
        return (
          <g key={id}>
            <circle className={`dot ${set(id) ? 'set' : ''} ${meant ? 'lit' : ''}`} cx={px} cy={py} r={r} />
            {shown && (
              <text className={`number ${meant || set(id) ? 'on-dark' : ''}`} x={px} y={py + 0.5}>
                {legNumber(dock, id)}
              </text>
            )}
          </g>
        )
      })}
      <text x={WIDE - 8} y={height - 9} style={{ textAnchor: 'end' }}>
        {lake}
      </text>
    </svg>
  )
}
