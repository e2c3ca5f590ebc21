/** Sections from above, lake at the top as in the editor of shapes, each edge that is offered a button: what is put somewhere is put there by touching it. */
import type { MouseEvent, ReactNode } from 'react'
import type { Edge } from '../../rules/dock.ts'
import type { Moored } from '../../rules/layout/berth.ts'
import { footprintAt, outlineAt, type Rectangle } from '../../rules/layout/footprint.ts'
import { type EdgeLine, inPlan, ownEdge } from '../../rules/layout/place.ts'
import { useSheet } from '../ui/use-sheet.ts'
import { useWords } from '../ui/use-words.ts'
import { EXTRAS_PLACED } from '../words/extras-placed.ts'
import { text } from '../words/index.ts'
import css from './edge-picture.css?inline'

/** More sections than this are no picture to touch any more. */
export const MOST = 60
/** A meter, px; more where sections are so narrow that a finger could not tell one side from the other: an edge takes so many px. */
const METER = 30
const FINGER = 36
/** Water shown around, m. */
const AROUND = 0.8
const EDGES = ['left', 'right', 'end', 'start'] as const

const edgeLine = (section: Moored, edge: Edge): EdgeLine => inPlan(section, ownEdge(section.frame, edge))

interface Props<S extends Moored> {
  readonly placed: readonly S[]
  readonly offers: (section: S, edge: Edge) => boolean
  /** The one that is taken now. */
  readonly isTaken?: (section: S, edge: Edge) => boolean
  /** `along` from the edge's start corner, m; undefined by keyboard: a key has no place of its own. */
  readonly pick: (section: S, edge: Edge, along: number | undefined) => void
  /** What else is in the picture, in m with y down, and how far that reaches. */
  readonly children?: ReactNode
  readonly reach?: readonly Rectangle[]
}

export function EdgePicture<S extends Moored>({
  placed,
  offers,
  isTaken,
  pick,
  children,
  reach = [],
}: Props<S>) {
  const { t } = useWords(EXTRAS_PLACED)
  const name = useSectionName()
  const box = useSheet<HTMLDivElement>(css)
  const boxes = placed.map((p) => footprintAt(p, p.frame))
  const all = [...boxes, ...reach]
  const [x0, x1] = [Math.min(...all.map((b) => b.x0)) - AROUND, Math.max(...all.map((b) => b.x1)) + AROUND]
  const [y0, y1] = [Math.min(...all.map((b) => b.y0)) - AROUND, Math.max(...all.map((b) => b.y1)) + AROUND]
  const meter = Math.max(METER, ...placed.map((p) => FINGER / Math.min(p.frame.width, p.frame.length)))
  const share = (value: number, of: number): string => `${(100 * value) / of}%`
  return (
    <div className="edge-scroll" ref={box}>
      <div
        className="edge-picture"
        style={{ aspectRatio: `${y1 - y0} / ${x1 - x0}`, inlineSize: `${meter * (y1 - y0)}px` }}
      >
        <svg viewBox={`${-y1} ${-x1} ${y1 - y0} ${x1 - x0}`} aria-hidden="true">
          <g transform="rotate(-90)">
            {placed.map((p) => (
              <polygon
                key={p.id}
                points={outlineAt(p, p.frame)
                  .map(([x, y]) => `${x},${-y}`)
                  .join(' ')}
                data-role={p.role}
              />
            ))}
            {children}
          </g>
        </svg>
        {placed.flatMap((section) =>
          EDGES.flatMap((edge) => {
            const taken = isTaken?.(section, edge) ?? false
            if (!taken && !offers(section, edge)) return []
            const line = edgeLine(section, edge)
            const [mx, my] = [line.x + (line.dx * line.length) / 2, line.y + (line.dy * line.length) / 2]
            const level = Math.abs(line.dy) > 0.5
            const length = share(line.length, level ? y1 - y0 : x1 - x0)
            const onClick = (event: MouseEvent<HTMLButtonElement>): void => {
              const at = event.currentTarget.getBoundingClientRect()
              const part = level ? (event.clientX - at.left) / at.width : (event.clientY - at.top) / at.height
              // On the screen both run back to the dock's right and to the shore.
              const along = line.length * ((level ? line.dy : line.dx) < 0 ? part : 1 - part)
              pick(section, edge, event.detail === 0 ? undefined : along)
            }
            return [
              <button
                key={`${section.id}.${edge}`}
                type="button"
                className={level ? 'level' : 'upright'}
                aria-label={t(`edge.${wayOf(line)}`, { section: text(name(section.id)) })}
                {...(isTaken && { 'aria-pressed': taken })}
                style={{
                  left: share(y1 - my, y1 - y0),
                  top: share(x1 - mx, x1 - x0),
                  [level ? 'width' : 'height']: length,
                }}
                onClick={onClick}
              />,
            ]
          }),
        )}
      </div>
    </div>
  )
}

/** Which way an edge looks, for one who looks at the lake. */
const wayOf = ({ nx, ny }: { readonly nx: number; readonly ny: number }) =>
  nx > 0.5 ? 'lake' : nx < -0.5 ? 'shore' : ny > 0 ? 'left' : 'right'

export function useSectionName(): (id: string) => string {
  const { t } = useWords(EXTRAS_PLACED)
  return (id) => {
    const [, row, n] = /^([sh])(\d+)$/.exec(id) ?? []
    return row === undefined ? id : t(row === 's' ? 'section.run' : 'section.head', { n: n! })
  }
}

/** 'left edge of section 5'; the section's own name where it has none of ours. */
export function useEdgeName(): (section: Moored, edge: Edge) => string {
  const { t } = useWords(EXTRAS_PLACED)
  const name = useSectionName()
  return (section, edge) => t(`edge.${wayOf(edgeLine(section, edge))}`, { section: text(name(section.id)) })
}
