/** How near a picked part is to the ground and to the next part: lines between the nearest points, and the words at them. */
import type { Gap } from '../../../geometry/index.ts'
import type { Vec3 } from '../../../rules/index.ts'
import { type Reader, say } from '../../../rules/index.ts'
import { meters } from '../../words/index.ts'
import { SCENE } from '../../words/scene.ts'
import type { Measured } from './dimensions.ts'

const STROKE = 0.05

export function measureGaps(gaps: readonly Gap[], reader: Reader): Measured {
  const at = ([a, b]: Gap['line'], t: number): Vec3 => [
    a[0] + (b[0] - a[0]) * t,
    a[1] + (b[1] - a[1]) * t,
    a[2] + (b[2] - a[2]) * t,
  ]
  return {
    lines: gaps.map(({ line: [from, to] }) => ({ from, to, tone: 'picked', stroke: across(from, to) })),
    notes: gaps.map(({ to, gap, line }) => ({
      id: `gap ${to?.of ?? ''}`,
      at: [at(line, 0.5), at(line, 1), at(line, 0)],
      text: to
        ? say(SCENE, reader, 'gap.part', { height: meters(gap), what: { value: to.kind, unit: 'kind' } })
        : say(SCENE, reader, 'gap.ground', { height: meters(gap) }),
      tone: 'picked',
      sign: false,
    })),
  }
}

/** Of the strokes at both ends: level, and square to the line. */
function across(from: Vec3, to: Vec3): Vec3 {
  const [x, y] = [to[0] - from[0], to[1] - from[1]]
  const long = Math.hypot(x, y)
  return long < 1e-6 ? [STROKE, 0, 0] : [(-y / long) * STROKE, (x / long) * STROKE, 0]
}
