/** The section through the lake: bed, water, the dock on its legs, and all that can be dragged. Drawn from the Dock alone. */
import { useMemo } from 'react'
import { EXACT, formatDistance } from '../../rules/index.ts'
import { litIds } from '../state/highlight.ts'
import { isNumbered, pointedOf, useLeadline, usePlaced } from '../state/store.ts'
import { chunk, Lazy } from '../ui/lazy.tsx'
import { useWords } from '../ui/use-words.ts'
import { CrestClearance, CrestLines, useCrestWords } from './crests.tsx'
import { DeckHandle, deckPlace, deckText, LevelHandles, SoundingHandles } from './handles.tsx'
import { HiddenGroup } from './hidden-group.tsx'
import { halfOf, makeScale, type Scale, ticks } from './scale.ts'
import { type Point, type SideLeg, type SideShape, type SideView, sideView } from './section-view.ts'
import { useWidth } from './use-width.ts'

const measures = chunk(() => import('./measures.tsx').then((m) => m.Measures))
const besides = chunk(() => import('./besides.tsx').then((m) => m.Besides))

export function SectionStrip() {
  const [ref, width] = useWidth<HTMLElement>()
  const { t } = useWords()
  return (
    <section className="strip" ref={ref} part="strip" aria-label={t('strip.label')}>
      {width > 0 && <Section width={width} />}
    </section>
  )
}

function Section({ width }: { readonly width: number }) {
  const project = useLeadline((s) => s.project)
  const range = useLeadline((s) => s.range)
  const selection = useLeadline((s) => s.selection)
  const { t } = useWords()
  const scale = makeScale(range, width)
  const { legs, pairs } = project.dock
  const measured = [...legs, ...pairs].some(({ id }) => id === selection)
  const y = useLeadline((s) => (s.cut && s.view !== 'end' ? s.cutAt : null))
  const view = useMemo(() => sideView(project, range.x0, range.x1, y), [project, range.x0, range.x1, y])
  const crests = useCrestWords(view, scale)
  return (
    <>
      {/* biome-ignore lint/a11y/noSvgWithoutTitle: the section around it names it; a title would follow the pointer as a tooltip. */}
      <svg
        width={width}
        height={scale.height}
        viewBox={`0 0 ${width} ${scale.height}`}
        data-bottom={project.design.site.bottom}
        data-measured={measured || undefined}
      >
        <Lake view={view} scale={scale} />
        <Lazy chunk={besides} props={{ scale }} quiet />
        <Parts view={view} scale={scale} />
        <Distances scale={scale} />
        <CrestClearance of={crests} scale={scale} />
        {measured && <Lazy chunk={measures} props={{ scale }} />}
        <LevelHandles scale={scale} />
        <SoundingHandles scale={scale} />
        <DeckHandle scale={scale} />
      </svg>
      {crests?.at === null && (
        <p className="hint crest-told">{crests.words.map((words) => words.join(': ')).join(' · ')}</p>
      )}
      {crests?.raise && <p className="hint crest-raise">{crests.raise}</p>}
      <p className="unseen" id="strip-how">
        {t('strip.how')}
      </p>
    </>
  )
}

const path = (points: readonly Point[], { x, z }: Scale): string =>
  points.map(([px, pz]) => `${x(px).toFixed(1)},${z(pz).toFixed(1)}`).join(' ')

/** Water, levels and bed. The bed is opaque and drawn last, so that water and levels end where it rises out of them. */
function Lake({ view, scale }: { readonly view: SideView; readonly scale: Scale }) {
  const level = useLeadline((s) => s.waterLevel)
  const { low, high } = useLeadline((s) => s.design.site.levels)
  const { width, height, z } = scale
  const line = (at: number, name: string) => (
    <line className={`level ${name}`} x1={0} x2={width} y1={z(at)} y2={z(at)} />
  )
  const bed = path(view.ground, scale)
  return (
    <HiddenGroup>
      <defs>
        <linearGradient id="water" x1="0" x2="0" y1={z(level)} y2={height} gradientUnits="userSpaceOnUse">
          <stop offset="0" className="water-top" />
          <stop offset="1" className="water-deep" />
        </linearGradient>
        <linearGradient id="bed" x1="0" x2="0" y1="0" y2="1">
          <stop offset="0" className="bed-top" />
          <stop offset="1" className="bed-deep" />
        </linearGradient>
      </defs>
      <rect className="water" x={0} y={z(level)} width={width} height={Math.max(0, height - z(level))} />
      {line(high, 'high')}
      {line(low, 'low')}
      <line className="level now" x1={0} x2={width} y1={z(level)} y2={z(level)} />
      <CrestLines scale={scale} />
      <polygon className="bed" points={`0,${height + 1} ${bed} ${width},${height + 1}`} />
      <polyline className="bed-line" points={bed} />
    </HiddenGroup>
  )
}

function Parts({ view, scale }: { readonly view: SideView; readonly scale: Scale }) {
  const dock = useLeadline(pointedOf)
  const hover = useLeadline((s) => s.hover)
  const selection = useLeadline((s) => s.selection)
  const set = useLeadline((s) => s.set)
  const lit = useMemo(
    () => new Set([...litIds(selection, dock), ...litIds(hover, dock)]),
    [selection, hover, dock],
  )
  const { x, z } = scale
  const state = (id: string, name: string): string => (lit.has(id) ? `${name} lit` : name)
  const pointing = (id: string) => ({
    'data-id': id,
    onPointerEnter: () => set({ hover: id }),
    onPointerLeave: () => set({ hover: null }),
    onClick: () => set({ selection: selection === id ? null : id }),
  })
  const bar = (shape: SideShape, name: string, width: number, index = 0) => {
    const [a, b] = shape.points as readonly [Point, Point]
    return (
      <line
        key={`${name} ${shape.id} ${index}`}
        className={state(shape.id, name)}
        {...pointing(shape.id)}
        x1={x(a[0])}
        y1={z(a[1])}
        x2={x(b[0])}
        y2={z(b[1])}
        strokeWidth={width}
      />
    )
  }
  const thick = (meters: number): number => Math.max(2.5, meters * scale.perX)
  return (
    // What a screen reader gets of this is the table of legs and the list of parts.
    <HiddenGroup className="parts">
      {view.extras.map((extra, i) => bar(extra, 'extra', 3, i))}
      {view.pads.map((pad) => (
        <polyline key={`pad ${pad.id}`} className={state(pad.id, 'pad')} points={path(pad.points, scale)} />
      ))}
      {view.legs.map((leg) => (
        <g key={leg.id}>
          {bar(leg, leg.found ? 'leg' : 'leg missing', thick(leg.width))}
          {bar(leg, 'leg-reach', 16)}
        </g>
      ))}
      {view.braces.map((brace, i) => bar(brace, 'brace', Math.max(2, thick(0.03)), i))}
      {view.frames.map((frame) => (
        <g key={frame.id} className={state(frame.id, 'frame')} {...pointing(frame.id)}>
          <polygon points={path(frame.points, scale)} />
          <polyline className="planks" points={path(frame.points.slice(0, 2), scale)} />
        </g>
      ))}
      <LegLengths legs={view.legs} scale={scale} />
    </HiddenGroup>
  )
}

/** From one line of words to the next, px. */
const LINE = 15

/** The stock length over each leg, or its number where legs go by that; legs in one line of sight share the place. */
function LegLengths({ legs, scale }: { readonly legs: readonly SideLeg[]; readonly scale: Scale }) {
  const dock = usePlaced()
  const { length } = useWords()
  const numbered = useLeadline(isNumbered)
  const told = new Map(
    dock.legs.map(({ id, stock }, i) => [
      id,
      numbered ? String(i + 1) : stock === null ? '?' : length(stock),
    ]),
  )
  const columns = new Map<number, { top: number; texts: Set<string> }>()
  for (const leg of legs) {
    const [at, top] = leg.points[1]!
    const column = columns.get(at) ?? { top, texts: new Set<string>() }
    column.texts.add(told.get(leg.id)!)
    columns.set(at, { top: Math.max(top, column.top), texts: column.texts })
  }
  const design = useLeadline((s) => s.design)
  const deck = design.dock.deckHeight
  // The height that is written over the deck's grip has its place.
  const grip = deckText(scale, dock, design, length)
  const [deckX, deckY] = [scale.x(deckPlace(dock)) + grip.x, scale.z(deck) + grip.y]
  const beside = halfOf(length(deck)) + 4
  let free = Number.NEGATIVE_INFINITY
  return [...columns]
    .sort(([a], [b]) => a - b)
    .map(([at, { top, texts }]) => {
      const px = scale.x(at)
      // The far ones come first in the drawing, and the higher numbers may.
      const text = numbered ? [...texts].sort((a, b) => +a - +b).join(' ') : [...texts].join(' / ')
      const half = halfOf(text)
      const y = scale.z(top) - 6
      // Where legs stand too close together for all their lengths, those that have room are written.
      if (px - half < free) return null
      if (Math.abs(px - deckX) < half + beside && Math.abs(y - deckY) < LINE) return null
      free = px + half + 4
      return (
        <text key={at} className="leg-length" x={px} y={y}>
          {text}
        </text>
      )
    })
}

function Distances({ scale }: { readonly scale: Scale }) {
  const range = useLeadline((s) => s.range)
  const { units, reader } = useWords()
  const unit = units === 'imperial' ? EXACT.foot : 1
  return (
    <HiddenGroup className="distances">
      {ticks(range, scale.perX, unit).map((n) => {
        const x = scale.x(n * unit)
        return x < 14 || x > scale.width - 18 ? null : (
          <g key={n} transform={`translate(${x} ${scale.height})`}>
            <line y1={-4} y2={0} />
            <text y={-8}>{n === 0 ? formatDistance(0, reader) : String(Math.abs(n))}</text>
          </g>
        )
      })}
    </HiddenGroup>
  )
}
