/** What is in the section besides lake and dock, where there is any: each comes when it is first drawn. */
import { useLeadline } from '../state/store.ts'
import { chunk, Lazy } from '../ui/lazy.tsx'
import type { Scale } from './scale.ts'

const boats = chunk(() => import('./boats-in-section.tsx').then((m) => m.Boats))
const lines = chunk(() => import('./limits-drawn.tsx').then((m) => m.Limits))
const obstacles = chunk(() => import('./obstacles.tsx').then((m) => m.Obstacles))

export function Besides({ scale }: { readonly scale: Scale }) {
  const { site, dock } = useLeadline((s) => s.project.design)
  const ruled = useLeadline((s) => s.project.catalog.limits ?? s.marks)
  return (
    <>
      {site.obstacles && <Lazy chunk={obstacles} props={{ scale }} quiet />}
      {(dock.boat ?? dock.boats) && <Lazy chunk={boats} props={{ scale }} quiet />}
      {(site.limits ?? ruled) && <Lazy chunk={lines} props={{ scale }} quiet />}
    </>
  )
}
