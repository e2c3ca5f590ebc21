/** What lies on the bed, from the side. */
import { obstacleProfile } from '../../rules/site/obstacles.ts'
import { useLeadline } from '../state/store.ts'
import { HiddenGroup } from './hidden-group.tsx'
import type { Scale } from './scale.ts'

export function Obstacles({ scale: { x, z } }: { readonly scale: Scale }) {
  const obstacles = useLeadline((s) => s.design.site.obstacles)
  const bed = useLeadline((s) => s.project.bed)
  return (
    <HiddenGroup className="obstacles">
      {obstacles?.map((one) => (
        <polygon
          key={one.id}
          className="bed"
          points={obstacleProfile(one, bed)
            .map(([px, pz]) => `${x(px).toFixed(1)},${z(pz).toFixed(1)}`)
            .join(' ')}
        />
      ))}
      {obstacles?.map((one) => (
        <polyline
          key={one.id}
          className="bed-line"
          points={obstacleProfile(one, bed)
            .map(([px, pz]) => `${x(px).toFixed(1)},${z(pz).toFixed(1)}`)
            .join(' ')}
        />
      ))}
    </HiddenGroup>
  )
}
