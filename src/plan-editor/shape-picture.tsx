/** A dock's plan as a small picture: shore below, lake above. */
import type { Shop } from '../../rules/catalog-index.ts'
import { footprint } from '../../rules/layout/index.ts'
import { outline } from '../../rules/layout/place.ts'
import type { PlanItem } from '../../rules/plan/schema.ts'
import { lie } from '../../rules/plan/troubles.ts'

const SIZE = 44
/** Under the dock, for the shore. */
const SHORE = 6

interface ShapePictureProps {
  readonly plan: readonly PlanItem[]
  readonly frame: string
  readonly shop: Shop
}

export function ShapePicture({ plan, frame, shop }: ShapePictureProps) {
  const { placed } = lie(plan, frame, shop).layout
  const boxes = placed.map(footprint)
  const [x0, x1] = [Math.min(...boxes.map((b) => b.x0)), Math.max(...boxes.map((b) => b.x1))]
  const [y0, y1] = [Math.min(...boxes.map((b) => b.y0)), Math.max(...boxes.map((b) => b.y1))]
  const scale = Math.min((SIZE - 4) / (y1 - y0), (SIZE - SHORE - 2) / (x1 - x0), 4)
  const middle = (y0 + y1) / 2
  return (
    <svg className="shape-picture" viewBox={`0 0 ${SIZE} ${SIZE}`} aria-hidden="true">
      <path className="shore" d="M2 40q10-4 20-1t20-2" />
      {placed.map((p) => (
        <polygon
          key={p.id}
          points={outline(p)
            .map(([x, y]) => `${SIZE / 2 - (y - middle) * scale},${SIZE - SHORE - (x - x0) * scale}`)
            .join(' ')}
        />
      ))}
    </svg>
  )
}
