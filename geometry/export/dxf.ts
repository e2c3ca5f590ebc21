/**
 * The views of a layout drawing as DXF, model space in true units: plan where the Dock has it, x along the dock; the side view under it,
 * pairs of legs in a row under that. Dimensions are lines and text: figures as the Dock has them, whatever a reader measures with.
 */

import {
  Units as DxfUnits,
  DxfWriter,
  LWPolylineFlags,
  point2d,
  point3d,
  TextHorizontalAlignment,
} from '@tarikjabiri/dxf'
import { type Catalog, EXACT, sectionProperties, type Units } from '../../rules/index.ts'
import { DRAWING } from '../../rules/words/drawing.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import { elevationView } from '../drawing/elevation.ts'
import { PAPER, placeLabels } from '../drawing/labels.ts'
import { boxOfView, paintView } from '../drawing/paint.ts'
import { alikePairs, pairView } from '../drawing/pairs.ts'
import { planView } from '../drawing/plan.ts'
import { type Bounds, LAYERS, type Layer, type View } from '../drawing/view.ts'
import type { Drawn } from '../drawn.ts'
import { codeOf } from '../paper/document.ts'
import type { Mark, Point } from '../paper/marks.ts'
import type { PaperOf } from '../paper/paper-of.ts'
import { CAP_HEIGHT, printable } from '../paper/text.ts'

/** Color number of each layer, of the format's own 255: 7 is black or white, whichever shows. */
const COLORS: Readonly<Record<Layer, number>> = {
  FRAME: 7,
  DECK: 8,
  LEG: 5,
  PAD: 5,
  BRACE: 1,
  JOINT: 6,
  EXTRA: 30,
  BED: 34,
  WATER: 4,
  LEVEL: 4,
  WAVE: 4,
  CONTOUR: 9,
  MATCH: 7,
  DIM: 8,
  TEXT: 7,
}
/** Heights of letters, m of the lake. */
const TEXT = 0.11
const SMALL = 0.08
/** Of the title over a view. */
const ABOVE = 0.7
const BETWEEN = 2.6
/** Letters and dimension lines are as on a sheet of this scale; mm around a view for them. */
const SCALE = 48
const AROUND = 40
/** Figures are rounded to six decimals, so that the last bits in which machines' sines differ are not written. */
const DIGITS = 1e6
const figure = (value: number): number => Math.round(value * DIGITS) / DIGITS

/**
 * DXF text (version AC1021), inches for imperial units and millimeters for metric ones. The same text for the same dock, date and
 * options.
 */
export function dxfOf(drawn: PaperOf): string {
  const pen = penOf(drawn.units)
  if (drawn.dock.sections.length > 0) {
    const { x0, y1 } = putViews(pen, drawn)
    putTitle(pen, [x0, y1], drawn)
  }
  return pen.text()
}

/** Writes entities; places and heights in m of the lake. */
interface Pen {
  say(layer: Layer, at: Point, height: number, words: string, turned?: Turned): void
  line(layer: Layer, points: readonly Point[], closed: boolean, lineType?: string): void
  circle(layer: Layer, at: Point, radius: number): void
  text(): string
}

/** Text that is centered on its place and turned, degrees; else it begins there and lies level. */
type Turned = { readonly angle: number }

function penOf(units: Units): Pen {
  const dxf = new DxfWriter()
  const k = units === 'imperial' ? 1 / EXACT.inch : 1000
  dxf.setUnits(units === 'imperial' ? DxfUnits.Inches : DxfUnits.Millimeters)
  dxf.addLType('HIDDEN', '_ _ _ _', [0.04 * k, -0.025 * k])
  dxf.addLType('LEVELS', '__ __ __', [0.15 * k, -0.06 * k])
  for (const layer of LAYERS) dxf.addLayer(layer, COLORS[layer], 'Continuous')
  const scaled = (meters: number): number => figure(meters * k)
  return {
    say(layerName, [x, y], height, words, turned) {
      const at = point3d(scaled(x), scaled(y))
      dxf.addText(at, scaled(height), printable(words), {
        layerName,
        ...(turned && turned.angle !== 0 && { rotation: figure(turned.angle) }),
        ...(turned && { horizontalAlignment: TextHorizontalAlignment.Center, secondAlignmentPoint: at }),
      })
    },
    line(layerName, points, closed, lineType) {
      dxf.addLWPolyline(
        points.map(([x, y]) => ({ point: point2d(scaled(x), scaled(y)) })),
        {
          layerName,
          flags: closed ? LWPolylineFlags.Closed : LWPolylineFlags.None,
          ...(lineType && { lineType }),
        },
      )
    },
    circle(layerName, [x, y], radius) {
      dxf.addCircle(point3d(scaled(x), scaled(y)), scaled(radius), { layerName })
    },
    text: () => dxf.stringify(),
  }
}

/** Plan with its legs as circles, side view, pairs; what bounds the plan. */
function putViews(pen: Pen, drawn: Drawn): Bounds {
  const { dock, catalog } = drawn
  const [plan, side] = [planView(drawn), elevationView(drawn)]
  putView(pen, plan, 0, 0, 'LEG')
  for (const { x, y, code } of dock.legs) pen.circle('LEG', [x, y], legWidth(catalog, code) / 2)
  let top = plan.bounds.y0 - BETWEEN
  putView(pen, side, 0, top - side.bounds.y1)
  top -= side.bounds.y1 - side.bounds.y0 + BETWEEN
  let across = plan.bounds.x0
  for (const alike of alikePairs(dock)) {
    const view = pairView(drawn, alike)
    putView(pen, view, across - view.bounds.x0, top - view.bounds.y1)
    across += view.bounds.x1 - view.bounds.x0 + BETWEEN
  }
  return plan.bounds
}

/** Moved by `dx` and `dy`, m; without the lines of layer `but`. */
function putView(pen: Pen, view: View, dx: number, dy: number, but?: Layer): void {
  const moved = ([x, y]: Point): Point => [x + dx, y + dy]
  for (const { layer, points, closed, hidden, bare } of view.paths)
    if (!bare && layer !== but)
      pen.line(layer, points.map(moved), closed, hidden ? 'HIDDEN' : layer === 'LEVEL' ? 'LEVELS' : undefined)
  const { x0, y0, y1 } = view.bounds
  const head = view.captions?.length ?? 0
  for (const mark of annotations(view)) {
    // From paper back to the lake.
    const back = ([x, y]: Point): Point => moved([x0 + (x * SCALE) / 1000, y0 - (y * SCALE) / 1000])
    if (mark.kind === 'path' && mark.fill !== PAPER) pen.line('DIM', mark.points.map(back), mark.closed)
    else if (mark.kind === 'text')
      pen.say('TEXT', back(mark.at), (mark.size * CAP_HEIGHT * SCALE) / 1000, mark.text, {
        angle: mark.angle,
      })
  }
  pen.say('TEXT', moved([x0, y1 + ABOVE + head * SMALL * 1.8]), TEXT * 1.4, view.title)
  view.captions?.forEach((caption, i) => {
    pen.say('TEXT', moved([x0, y1 + ABOVE - 0.05 + (head - 1 - i) * SMALL * 1.8]), SMALL, caption)
  })
}

/** Above the upper left corner of the plan: the dock's name, shop, check code, date, author, and the caution. */
function putTitle(pen: Pen, [x, y]: Point, drawn: PaperOf): void {
  const { dock, catalog, options } = drawn
  const t = wordsOf(DRAWING, drawn)
  pen.say('TEXT', [x, y + 1.9], TEXT * 1.6, dock.name)
  pen.say(
    'TEXT',
    [x, y + 1.7],
    SMALL,
    [catalog.name, `${t('check-code')} ${codeOf(dock)}`, options.date, options.by]
      .filter(Boolean)
      .join(' · '),
  )
  pen.say('TEXT', [x, y + 1.55], SMALL, t('screening'))
}

/** Dimension lines, figures and names of a view where they would stand on a sheet of that scale, mm from its lower left corner. */
function annotations(view: View): readonly Mark[] {
  const dimensions = paintView({ ...view, paths: [], notes: [] }, [0, 0], SCALE).marks
  const { labels, segments } = paintView(view, [0, 0], SCALE)
  const { x0, x1, y0, y1 } = boxOfView(view, [0, 0], SCALE)
  const around = { x0: x0 - AROUND, x1: x1 + AROUND, y0: y0 - AROUND, y1: y1 + AROUND }
  return [...dimensions, ...placeLabels(labels, { bounds: around, taken: [], segments }).marks]
}

const legWidth = (catalog: Catalog, code: string | null): number =>
  sectionProperties(catalog.stock[(catalog.legs.find((one) => one.code === code) ?? catalog.legs[0]!).stock]!)
    .width
