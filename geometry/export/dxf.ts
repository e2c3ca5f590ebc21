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
import { type Catalog, type Design, type Dock, EXACT, sectionProperties } from '../../rules/index.ts'
import { drawingWords } from '../../rules/words/drawing.ts'
import { elevationView } from '../drawing/elevation.ts'
import { alikePairs, pairView } from '../drawing/pairs.ts'
import { type Drawn, planView } from '../drawing/plan.ts'
import { type Layer, PENS, type View } from '../drawing/view.ts'
import { codeOf } from '../paper/document.ts'
import type { Point } from '../paper/marks.ts'
import type { PaperOptions } from '../paper/options.ts'
import { printable } from '../paper/text.ts'

/** AutoCAD color index of each layer: 7 is black or white, whichever shows. */
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
const SMALL = 0.07
const BETWEEN = 1.5

/**
 * DXF text (AutoCAD R2007 entities), inches for imperial units and millimeters for metric ones. The same text for the same dock, date and
 * options.
 */
export function dxfOf(dock: Dock, design: Design, catalog: Catalog, options: PaperOptions): string {
  const { units, lang } = options
  const t = drawingWords(lang, units)
  const drawn: Drawn = { dock, design, catalog, units, lang }
  const k = units === 'imperial' ? 1 / EXACT.inch : 1000
  const dxf = new DxfWriter()
  dxf.setUnits(units === 'imperial' ? DxfUnits.Inches : DxfUnits.Millimeters)
  dxf.addLType('HIDDEN', '_ _ _ _', [0.04 * k, -0.025 * k])
  dxf.addLType('LEVELS', '__ __ __', [0.15 * k, -0.06 * k])
  for (const layer of Object.keys(PENS) as Layer[]) dxf.addLayer(layer, COLORS[layer], 'Continuous')
  const say = (layer: Layer, [x, y]: Point, height: number, words: string, middle = true): void => {
    const at = point3d(x * k, y * k)
    dxf.addText(at, height * k, printable(words), {
      layerName: layer,
      ...(middle && { horizontalAlignment: TextHorizontalAlignment.Center, secondAlignmentPoint: at }),
    })
  }
  const line = (layer: Layer, points: readonly Point[], closed: boolean, lineType?: string): void => {
    dxf.addLWPolyline(
      points.map(([x, y]) => ({ point: point2d(x * k, y * k) })),
      {
        layerName: layer,
        flags: closed ? LWPolylineFlags.Closed : LWPolylineFlags.None,
        ...(lineType && { lineType }),
      },
    )
  }
  const put = (view: View, dx: number, dy: number): void => {
    const moved = ([x, y]: Point): Point => [x + dx, y + dy]
    for (const { layer, points, closed, hidden } of view.paths)
      if (layer !== 'LEG' || view.title !== t('plan'))
        line(layer, points.map(moved), closed, hidden ? 'HIDDEN' : layer === 'LEVEL' ? 'LEVELS' : undefined)
    for (const { at, text, size } of view.notes)
      say('TEXT', moved([at[0], at[1]]), size > 3 ? TEXT : SMALL, text)
    for (const dimension of view.dimensions) {
      const [a, b] = ends(dimension)
      line('DIM', [moved(a), moved(b)], false)
      say('DIM', moved([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2 + 0.02]), SMALL, dimension.text)
    }
    const { x0, y1 } = view.bounds
    say('TEXT', moved([x0, y1 + 0.25]), TEXT * 1.4, view.title, false)
    view.captions?.forEach((caption, i) => {
      say('TEXT', moved([x0, y1 + 0.12 - i * 0.1]), SMALL, caption, false)
    })
  }
  if (dock.sections.length > 0) {
    const [plan, side] = [planView(drawn), elevationView(drawn)]
    put(plan, 0, 0)
    for (const leg of dock.legs) {
      dxf.addCircle(point3d(leg.x * k, leg.y * k), (legWidth(catalog, leg.code) / 2) * k, {
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
    say('TEXT', [plan.bounds.x0, plan.bounds.y1 + 1], TEXT * 1.6, dock.name, false)
    say(
      'TEXT',
      [plan.bounds.x0, plan.bounds.y1 + 0.75],
      SMALL,
      [catalog.name, `${t('check-code')} ${codeOf(dock)}`, options.date, options.by]
        .filter(Boolean)
        .join(' · '),
      false,
    )
    say('TEXT', [plan.bounds.x0, plan.bounds.y1 + 0.6], SMALL, t('screening'), false)
  }
  return dxf.stringify()
}

/** Where a dimension line stands, a hand's breadth off. */
function ends({ from, to, along, side, off, line }: View['dimensions'][number]): readonly [Point, Point] {
  const away = (off / 7) * 0.35 * (side === 'below' || side === 'left' ? -1 : 1)
  if (along === 'y') {
    const x = (line ?? Math.max(from[0], to[0])) + away
    return [
      [x, from[1]],
      [x, to[1]],
    ]
  }
  const y = (line ?? Math.min(from[1], to[1])) + away
  return [
    [from[0], y],
    [to[0], y],
  ]
}

const legWidth = (catalog: Catalog, code: string | null): number =>
  sectionProperties(catalog.stock[(catalog.legs.find((one) => one.code === code) ?? catalog.legs[0]!).stock]!)
    .width
