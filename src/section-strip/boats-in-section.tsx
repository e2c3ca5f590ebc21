/** The boats in the section, afloat at the level that is shown: how much of them is under water, and how much water is under them. */
import { boatSide, boatsIn, type Flat } from '../../geometry/boats.ts'
import { useLeadline } from '../state/store.ts'
import { HiddenGroup } from './hidden-group.tsx'
import type { Scale } from './scale.ts'

export function Boats({ scale: { x, z } }: { readonly scale: Scale }) {
  const project = useLeadline((s) => s.project)
  const level = useLeadline((s) => s.waterLevel)
  const at = (points: readonly Flat[]): string =>
    points.map(([px, pz]) => `${x(px).toFixed(1)} ${z(pz).toFixed(1)}`).join('L')
  return (
    <HiddenGroup className="boats">
      {boatsIn(project).map((berth) => {
        const { outlines, within } = boatSide(berth, level)
        return (
          <g key={berth.id} data-boat={berth.id} style={HULL}>
            <path d={outlines.map((points) => `M${at(points)}Z`).join('')} />
            <path d={within.map((points) => `M${at(points)}`).join('')} />
          </g>
        )
      })}
    </HiddenGroup>
  )
}

const HULL = {
  fill: 'var(--card)',
  fillOpacity: 0.75,
  stroke: 'var(--soft)',
  strokeWidth: 1.25,
  strokeLinejoin: 'round',
  pointerEvents: 'none',
} as const
