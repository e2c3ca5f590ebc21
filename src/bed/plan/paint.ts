/** Paints the bed from above. All but what is dragged is painted once and kept: a move paints that and one mark. */
import type { Design, Dock } from '../../../rules/index.ts'
import { cornersOf } from '../../../rules/layout/footprint.ts'
import { obstacleOutline } from '../../../rules/site/obstacles.ts'
import type { Picked, PlanView } from './plan-view.ts'

/** What is painted with, taken from the canvas's own style: the theme is CSS's. */
interface Inks {
  readonly ink: string
  readonly accent: string
  readonly line: string
  readonly mark: string
  readonly card: string
}

const inksOf = (canvas: HTMLCanvasElement): Inks => {
  const style = getComputedStyle(canvas)
  return {
    ink: style.caretColor,
    accent: style.color,
    line: style.borderTopColor,
    mark: style.outlineColor,
    card: style.backgroundColor,
  }
}

/** Radius of a sounding's mark, px; with thousands they would cover each other. */
const radiusFor = (soundings: number): number => (soundings > 1000 ? 2 : soundings > 150 ? 3.5 : 5)

export interface Painter {
  /** All but the picked thing, anew. */
  base(design: Design, sections: Dock['sections'], view: PlanView, without: Picked | null): void
  /** The base, and the picked thing at a place. */
  draw(
    design: Design,
    view: PlanView,
    picked: Picked | null,
    at: readonly [x: number, y: number] | null,
  ): void
}

export function makePainter(canvas: HTMLCanvasElement): Painter {
  const kept = document.createElement('canvas')
  const sized = (one: HTMLCanvasElement, { width, height }: PlanView): CanvasRenderingContext2D | null => {
    const ratio = devicePixelRatio || 1
    const [w, h] = [Math.round(width * ratio), Math.round(height * ratio)]
    if (one.width !== w || one.height !== h) {
      one.width = w
      one.height = h
    }
    // None where a browser has no room for more of them: then it is typed and read, and not seen.
    const context = one.getContext('2d')
    if (!context) return null
    context.setTransform(ratio, 0, 0, ratio, 0, 0)
    context.clearRect(0, 0, width, height)
    return context
  }
  return {
    base(design, sections, view, without) {
      const context = sized(kept, view)
      if (!context) return
      const inks = inksOf(canvas)
      shore(context, view, inks)
      for (const section of sections) {
        outline(context, view, cornersOf(section))
        context.globalAlpha = 0.22
        context.fillStyle = inks.accent
        context.fill()
        context.globalAlpha = 1
        context.strokeStyle = inks.accent
        context.lineWidth = 1
        context.stroke()
      }
      design.site.obstacles?.forEach((_, index) => {
        if (without?.what !== 'obstacle' || without.index !== index)
          obstacle(context, view, inks, design, index, null)
      })
      const radius = radiusFor(design.site.soundings.length)
      context.fillStyle = inks.ink
      context.beginPath()
      design.site.soundings.forEach(({ distance, offset }, index) => {
        if (without?.what === 'sounding' && without.index === index) return
        const [px, py] = view.toScreen(distance, offset)
        context.moveTo(px + radius, py)
        context.arc(px, py, radius, 0, 2 * Math.PI)
      })
      context.fill()
    },
    draw(design, view, picked, at) {
      const context = sized(canvas, view)
      if (!context) return
      context.drawImage(kept, 0, 0, view.width, view.height)
      if (!picked || !at) return
      const inks = inksOf(canvas)
      if (picked.what === 'obstacle') obstacle(context, view, inks, design, picked.index, at)
      const [px, py] = view.toScreen(...at)
      context.beginPath()
      context.arc(px, py, picked.what === 'sounding' ? 8 : 4, 0, 2 * Math.PI)
      context.fillStyle = inks.mark
      context.fill()
      context.lineWidth = 2
      context.strokeStyle = inks.card
      context.stroke()
    },
  }
}

/** The water's edge, and the dock's own line. */
function shore(context: CanvasRenderingContext2D, view: PlanView, { line }: Inks): void {
  const [ex, ey] = view.toScreen(0, 0)
  context.strokeStyle = line
  context.lineWidth = 1.5
  context.beginPath()
  context.moveTo(ex, 0)
  context.lineTo(ex, view.height)
  context.stroke()
  context.setLineDash([6, 5])
  context.beginPath()
  context.moveTo(0, ey)
  context.lineTo(view.width, ey)
  context.stroke()
  context.setLineDash([])
}

function outline(
  context: CanvasRenderingContext2D,
  view: PlanView,
  points: readonly (readonly [number, number])[],
): void {
  context.beginPath()
  for (const [x, y] of points) context.lineTo(...(view.toScreen(x, y) as [number, number]))
  context.closePath()
}

function obstacle(
  context: CanvasRenderingContext2D,
  view: PlanView,
  { mark, ink }: Inks,
  design: Design,
  index: number,
  at: readonly [x: number, y: number] | null,
): void {
  const one = design.site.obstacles![index]
  if (!one) return
  const [x, y] = at ?? [one.x, one.y]
  outline(context, view, obstacleOutline({ ...one, x, y }))
  context.globalAlpha = 0.35
  context.fillStyle = at ? mark : ink
  context.fill()
  context.globalAlpha = 1
  context.strokeStyle = at ? mark : ink
  context.lineWidth = 1.5
  context.stroke()
}
