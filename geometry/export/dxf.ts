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
import { type Catalog, EXACT, sectionProperties } from '../../rules/index.ts'
import { drawingWords } from '../../rules/words/drawing.ts'
import { elevationView } from '../drawing/elevation.ts'
import { PAPER, placeLabels } from '../drawing/labels.ts'
import { boxOfView, paintView } from '../drawing/paint.ts'
import { alikePairs, pairView } from '../drawing/pairs.ts'
import { planView } from '../drawing/plan.ts'
import { type Layer, PENS, type View } from '../drawing/view.ts'
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
/** Digits after the point of every figure in the file: what two machines' sines differ by is not written. */
const DIGITS = 1e6
const figure = (value: number): number => Math.round(value * DIGITS) / DIGITS

/**
 * DXF text (version AC1021), inches for imperial units and millimeters for metric ones. The same text for the same dock, date and
 * options.
 */
export function dxfOf(drawn: PaperOf): string {
  const { dock, catalog, options, units, lang } = drawn
  const t = drawingWords(lang, units)
  const k = units === 'imperial' ? 1 / EXACT.inch : 1000
  const dxf = new DxfWriter()
  dxf.setUnits(units === 'imperial' ? DxfUnits.Inches : DxfUnits.Millimeters)
  dxf.addLType('HIDDEN', '_ _ _ _', [0.04 * k, -0.025 * k])
  dxf.addLType('LEVELS', '__ __ __', [0.15 * k, -0.06 * k])
  for (const layer of Object.keys(PENS) as Layer[]) dxf.addLayer(layer, COLORS[layer], 'Continuous')
  const say = (
    layer: Layer,
    [x, y]: Point,
    height: number,
    words: string,
    middle = true,
    rotation = 0,
  ): void => {
    const at = point3d(figure(x * k), figure(y * k))
    dxf.addText(at, figure(height * k), printable(words), {
      layerName: layer,
      ...(rotation !== 0 && { rotation: figure(rotation) }),
      ...(middle && { horizontalAlignment: TextHorizontalAlignment.Center, secondAlignmentPoint: at }),
    })
  }
  const line = (layer: Layer, points: readonly Point[], closed: boolean, lineType?: string): void => {
    dxf.addLWPolyline(
      points.map(([x, y]) => ({ point: point2d(figure(x * k), figure(y * k)) })),
      {
        layerName: layer,
        flags: closed ? LWPolylineFlags.Closed : LWPolylineFlags.None,
        ...(lineType && { lineType }),
      },
    )
  }
  const put = (view: View, dx: number, dy: number): void => {
    const moved = ([x, y]: Point): Point => [x + dx, y + dy]
    for (const { layer, points, closed, hidden, bare } of view.paths)
      if (!bare && (layer !== 'LEG' || view.title !== t('plan')))
        line(layer, points.map(moved), closed, hidden ? 'HIDDEN' : layer === 'LEVEL' ? 'LEVELS' : undefined)
    const { x0, y0, y1 } = view.bounds
    const head = view.captions?.length ?? 0
    for (const mark of annotations(view)) {
      // From paper back to the lake.
      const back = ([x, y]: Point): Point => moved([x0 + (x * SCALE) / 1000, y0 - (y * SCALE) / 1000])
      if (mark.kind === 'path' && mark.fill !== PAPER) line('DIM', mark.points.map(back), mark.closed)
      else if (mark.kind === 'text')
        say('TEXT', back(mark.at), (mark.size * CAP_HEIGHT * SCALE) / 1000, mark.text, true, mark.angle)
    }
    say('TEXT', moved([x0, y1 + ABOVE + head * SMALL * 1.8]), TEXT * 1.4, view.title, false)
    view.captions?.forEach((caption, i) => {
      say('TEXT', moved([x0, y1 + ABOVE - 0.05 + (head - 1 - i) * SMALL * 1.8]), SMALL, caption, false)
    })
  }
  if (dock.sections.length > 0) {
    const [plan, side] = [planView(drawn), elevationView(drawn)]
    put(plan, 0, 0)
    for (const leg of dock.legs) {
      const radius = legWidth(catalog, leg.code) / 2
      dxf.addCircle(point3d(figure(leg.x * k), figure(leg.y * k)), figure(radius * k), {
        layerName: 'LEG',
      })
    }
    let top = plan.bounds.y0 - BETWEEN
    put(side, 0, top - side.bounds.y1)
    top -= side.bounds.y1 - side.bounds.y0 + BETWEEN
    let across = plan.bounds.x0
    for (const alike of alikePairs(dock)) {
      const view = pairView(drawn, alike)
      put(view, across - view.bounds.x0, top - view.bounds.y1)
      across += view.bounds.x1 - view.bounds.x0 + BETWEEN
    }
    say('TEXT', [plan.bounds.x0, plan.bounds.y1 + 1.9], TEXT * 1.6, dock.name, false)
    say(
      'TEXT',
      [plan.bounds.x0, plan.bounds.y1 + 1.7],
      SMALL,
      [catalog.name, `${t('check-code')} ${codeOf(dock)}`, options.date, options.by]
        .filter(Boolean)
        .join(' · '),
      false,
    )
    say('TEXT', [plan.bounds.x0, plan.bounds.y1 + 1.55], SMALL, t('screening'), false)
  }
  return dxf.stringify()
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
