/** The dock in its lake as a drawing (SVG): until the 3D scene is there, and where it cannot be. */
import { useMemo } from 'react'
import { useSummary } from '../panel/summary.tsx'
import { litIds } from '../state/highlight.ts'
import { pointedOf, useLeadline } from '../state/store.ts'
import { useWords } from '../ui/use-words.ts'
import { text } from '../words/index.ts'
import { drawLake, type Face } from './drawn-lake.ts'

/** Water deeper than this is drawn as dark as it gets, m. */
const DARK = 2.4

export function Drawing() {
  const dock = useLeadline(pointedOf)
  const project = useLeadline((s) => s.project)
  const range = useLeadline((s) => s.range)
  const level = useLeadline((s) => s.waterLevel)
  const person = useLeadline((s) => s.person)
  const hover = useLeadline((s) => s.hover)
  const selection = useLeadline((s) => s.selection)
  const what = useSummary()
  const { t } = useWords()
  const lake = useMemo(() => drawLake(project, range, level), [project, range, level])
  const lit = useMemo(
    () => new Set([...litIds(selection, dock), ...litIds(hover, dock)]),
    [selection, hover, dock],
  )
  const draw = (faces: readonly Face[]) =>
    faces.map(({ name, path, id, depth }, i) => (
      <path
        // biome-ignore lint/suspicious/noArrayIndexKey: faces are known by their order alone; the drawing is remade each time.
        key={i}
        className={id !== undefined && lit.has(id) ? `${name} lit` : name}
        d={path}
        {...(depth === undefined
          ? {}
          : { style: { '--depth': Math.min(1, depth / DARK).toFixed(3) } as object })}
      />
    ))
  return (
    <svg
      className="lake"
      data-bottom={project.design.site.bottom}
      viewBox={lake.viewBox}
      preserveAspectRatio="xMidYMid meet"
      role="img"
      aria-label={t('stage.drawing', { what: text(what) })}
    >
      <g className="bed-faces">{draw(lake.bed)}</g>
      {draw(lake.under)}
      <g className="water-faces">{draw(lake.water)}</g>
      {draw(lake.over)}
      {person && lake.person && (
        <g className="person" transform={lake.person}>
          <path d="M-9 0-7-48h14L9 0H3L0-40-3 0ZM-11-50q0-28 11-28t11 28l-3 1-2-16v17h-12v-17l-2 16Z" />
          <circle cy={-91} r={9} />
        </g>
      )}
    </svg>
  )
}
