/**
 * Entities of DXF. The library writes most of them; it has no widths for layers and no hatching of given lines, which are written
 * here by the format's reference (AC1021; memory). Places and heights come in m of the lake.
 */
import {
  BlockFlags,
  type DxfBlock,
  Dxfier,
  Units as DxfUnits,
  DxfWriter,
  LWPolyline,
  LWPolylineFlags,
  point2d,
  point3d,
  TextHorizontalAlignment,
} from '@tarikjabiri/dxf'
import { EXACT, type Units } from '../../rules/index.ts'
import type { Box } from '../drawing/cells.ts'
import { type Bounds, LAYERS, type Layer, PENS, type ViewDimension } from '../drawing/view.ts'
import type { Mark, Point } from '../paper/marks.ts'
import { CAP_HEIGHT, textWidth } from '../paper/text.ts'
import { putLayouts } from './dxf-sheet.ts'
import { written } from './dxf-text.ts'

/** Color number of each layer, of the format's own 255: 7 is black or white, whichever shows. */
const COLORS: Readonly<Record<Layer, number>> = {
  FRAME: 7,
  DECK: 8,
  LEG: 5,
  PAD: 5,
  BRACE: 1,
  JOINT: 6,
  EXTRA: 30,
  BOAT: 32,
  BED: 34,
  WATER: 4,
  LEVEL: 4,
  WAVE: 4,
  CONTOUR: 9,
  MATCH: 7,
  DIM: 8,
  TEXT: 7,
}
/** A layer that only the drawing of a dock that must not be built has; red. */
const FORBIDDEN = { color: 1, width: 0.5 } as const
/** Of what is on the sheet only. */
const SHEET = 'SHEET'
/** Figures are rounded to six decimals, so that the last bits in which machines' sines differ are not written. */
const DIGITS = 1e6
const figure = (value: number): number => Math.round(value * DIGITS) / DIGITS
/** Of the text and of the dimensions. */
const STYLE = 'LEADLINE'
/** Of dimensions, m: as the drawing's own are at its scale. */
const DIMENSION = { text: 0.087, arrow: 0.1, gap: 0.04, over: 0.055, off: 0.04 } as const

export interface Line {
  readonly layer: Layer | typeof SHEET
  readonly points: readonly Point[]
  readonly closed: boolean
  readonly lineType?: 'HIDDEN' | 'LEVELS'
}

/** With an angle (degrees) it is centered on its place and turned; else it begins there and lies level. */
export interface Words {
  readonly at: Point
  /** Of capitals. */
  readonly height: number
  readonly words: string
  readonly angle?: number
}

export interface Measured {
  readonly from: Point
  readonly to: Point
  readonly along: ViewDimension['along']
  /** Of its figure and arrows, of those on most views. */
  readonly size: number
  /** A place of its dimension line. */
  readonly line: Point
  /** How it is drawn, for programs that do not draw dimensions on their own. */
  readonly lines: readonly Line[]
  readonly words: readonly Words[]
}

export interface Pen {
  say(layer: Layer | 'FORBIDDEN', words: Words): void
  line(line: Line): void
  circle(layer: Layer, at: Point, radius: number): void
  dimension(measured: Measured): void
  /** Lines across what is within a loop and not within the next; degrees, m from line to line. */
  hatch(layer: Layer, loops: readonly (readonly Point[])[], lines: Hatching): void
  /**
   * A part at `to`. Its lines are defined the first time that its shape is seen.
   * @param base the place of the lines that comes to stand there
   */
  block(name: string, shape: string, lines: readonly Line[], base: Point, to: Point): void
  /** What is drawn so far, m of the lake. */
  bounds(): Bounds
  /** A sheet on which all that is drawn so far is seen in its room at its scale; its other marks around that. */
  sheet(sheet: DrawnSheet): void
  text(): string
}

export interface DrawnSheet {
  readonly name: string
  /** mm. */
  readonly width: number
  readonly height: number
  readonly room: Box
  /** How many m of the lake are one m of paper. */
  readonly scale: number
  readonly marks: readonly Mark[]
}

interface Hatching {
  readonly angle: number
  readonly every: number
}

export const penOf = (units: Units): Pen => new DxfPen(units)

class DxfPen implements Pen {
  readonly #dxf = new DxfWriter()
  readonly #imperial: boolean
  /** Units of the drawing for a meter. */
  readonly #k: number
  readonly #style: ReturnType<DxfWriter['tables']['addStyle']>
  /** Of dimensions, by how many times they are as large as most. */
  readonly #styles = new Map<number, string>()
  readonly #blocks = new Map<string, string>()
  readonly #named = new Map<string, number>()
  readonly #bounds = { x0: Infinity, x1: -Infinity, y0: Infinity, y1: -Infinity }
  #dimensions = 0
  #forbidden = false

  constructor(units: Units) {
    const imperial = units === 'imperial'
    const dxf = this.#dxf
    const k = imperial ? 1 / EXACT.inch : 1000
    this.#imperial = imperial
    this.#k = k
    dxf.setUnits(imperial ? DxfUnits.Inches : DxfUnits.Millimeters)
    dxf.setVariable('$MEASUREMENT', { 70: imperial ? 0 : 1 })
    // Feet and inches to a quarter, or whole millimeters.
    dxf.setVariable('$LUNITS', { 70: imperial ? 4 : 2 })
    dxf.setVariable('$LUPREC', { 70: imperial ? 2 : 0 })
    dxf.setVariable('$TEXTSTYLE', { 7: STYLE })
    dxf.setVariable('$DIMSTYLE', { 2: STYLE })
    dxf.addLType('HIDDEN', '_ _ _ _', [0.04 * k, -0.025 * k])
    dxf.addLType('LEVELS', '__ __ __', [0.15 * k, -0.06 * k])
    for (const name of LAYERS) this.#layer(name, COLORS[name], PENS[name].width)
    this.#style = dxf.tables.addStyle(STYLE)
    this.#style.fontFileName = 'arial.ttf'
    this.#styleOf(1)
  }

  #scaled(meters: number): number {
    return figure(meters * this.#k)
  }

  #at([x, y]: Point) {
    return point3d(this.#scaled(x), this.#scaled(y), 0)
  }

  #layer(name: string, color: number, width: number): void {
    const made = this.#dxf.addLayer(name, color, 'Continuous')
    // In hundredths of a mm.
    amend(made, (code, value) => (code === 370 ? Math.round(width * 100) : code === 390 ? null : value))
  }

  #styleOf(size: number): string {
    const made = this.#styles.get(size)
    if (made !== undefined) return made
    const name = this.#styles.size === 0 ? STYLE : `${STYLE}_${this.#styles.size + 1}`
    this.#styles.set(size, name)
    Object.assign(this.#dxf.addDimStyle(name), {
      DIMSCALE: figure(size),
      DIMASZ: this.#scaled(DIMENSION.arrow),
      DIMEXO: this.#scaled(DIMENSION.off),
      DIMEXE: this.#scaled(DIMENSION.over),
      DIMTXT: this.#scaled(DIMENSION.text),
      DIMGAP: this.#scaled(DIMENSION.gap),
      DIMTIH: 0,
      DIMTOH: 0,
      DIMTAD: 1,
      DIMLUNIT: this.#imperial ? 4 : 2,
      DIMDEC: this.#imperial ? 2 : 0,
      DIMTXSTY: this.#style.handle,
    })
    return name
  }

  #reach(points: readonly Point[], by = 0): void {
    const box = this.#bounds
    for (const [x, y] of points) {
      box.x0 = Math.min(box.x0, x - by)
      box.x1 = Math.max(box.x1, x + by)
      box.y0 = Math.min(box.y0, y - by)
      box.y1 = Math.max(box.y1, y + by)
    }
  }

  #putLine(into: DxfBlock, { layer: layerName, points, closed, lineType }: Line, base: Point = [0, 0]): void {
    into.addLWPolyline(
      points.map(([x, y]) => ({ point: point2d(this.#scaled(x - base[0]), this.#scaled(y - base[1])) })),
      {
        layerName,
        flags: closed ? LWPolylineFlags.Closed : LWPolylineFlags.None,
        ...(lineType && { lineType }),
      },
    )
  }

  #putWords(into: DxfBlock, layerName: string, { at: place, height, words, angle }: Words): void {
    const text = into.addText(this.#at(place), this.#scaled(height), written(words), {
      layerName,
      ...(angle && { rotation: figure(angle) }),
      ...(angle !== undefined && {
        horizontalAlignment: TextHorizontalAlignment.Center,
        secondAlignmentPoint: this.#at(place),
      }),
    })
    text.textStyle = STYLE
    const long = textWidth(words, height / CAP_HEIGHT)
    const turn = ((angle ?? 0) * Math.PI) / 180
    const [before, after] = angle === undefined ? [0, long] : [long / 2, long / 2]
    const [ux, uy] = [Math.cos(turn), Math.sin(turn)]
    const along = (u: number, v: number): Point => [place[0] + u * ux - v * uy, place[1] + u * uy + v * ux]
    this.#reach([along(-before, 0), along(after, 0), along(-before, height), along(after, height)])
  }

  say(layerName: Layer | 'FORBIDDEN', words: Words): void {
    if (layerName === 'FORBIDDEN' && !this.#forbidden) {
      this.#forbidden = true
      this.#layer(layerName, FORBIDDEN.color, FORBIDDEN.width)
    }
    this.#putWords(this.#dxf.modelSpace, layerName, words)
  }

  line(line: Line): void {
    this.#reach(line.points)
    this.#putLine(this.#dxf.modelSpace, line)
  }

  circle(layerName: Layer, center: Point, radius: number): void {
    this.#reach([center], radius)
    this.#dxf.addCircle(this.#at(center), this.#scaled(radius), { layerName })
  }

  dimension({ from, to, along, size, line, lines, words }: Measured): void {
    this.#dimensions++
    const blockName = `*D${this.#dimensions}`
    const block = this.#dxf.blocks.addBlock(blockName, this.#dxf.document.objects, false)
    block.flags = BlockFlags.AnonymousBlock
    for (const one of lines) {
      this.#reach(one.points)
      this.#putLine(block, one)
    }
    for (const one of words) this.#putWords(block, 'DIM', one)
    const [dx, dy] = [Math.abs(to[0] - from[0]), Math.abs(to[1] - from[1])]
    const options = {
      blockName,
      definitionPoint: this.#at(line),
      middlePoint: this.#at(words[0]?.at ?? line),
      ActualMeasurement: this.#scaled(along === 'x' ? dx : along === 'y' ? dy : Math.hypot(dx, dy)),
      styleName: this.#styleOf(size),
      layerName: 'DIM',
    }
    // Turned along what it measures, also where it slopes: some readers measure an aligned one level.
    const slope = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI
    const made = this.#dxf.addLinearDim(this.#at(from), this.#at(to), {
      ...options,
      angle: along === 'x' ? 0 : along === 'y' ? 90 : figure(slope),
    })
    // Its block is its own.
    amend(made, (code, value) => (code === 70 ? Number(value) + 32 : value))
  }

  hatch(layerName: Layer, loops: readonly (readonly Point[])[], { angle, every }: Hatching): void {
    for (const loop of loops) this.#reach(loop)
    const scaledLoops = loops.map((loop) => loop.map(([x, y]): Point => [this.#scaled(x), this.#scaled(y)]))
    this.#dxf.modelSpace.addEntity(
      new LineHatch(scaledLoops, { angle, every: this.#scaled(every) }, layerName),
    )
  }

  block(name: string, shape: string, lines: readonly Line[], base: Point, to: Point): void {
    const key = `${name}\n${shape}`
    let blockName = this.#blocks.get(key)
    if (blockName === undefined) {
      const plain = name.toUpperCase().replace(/[^A-Z0-9_-]/g, '_')
      const count = (this.#named.get(plain) ?? 0) + 1
      this.#named.set(plain, count)
      blockName = `${plain}_${count}`
      this.#blocks.set(key, blockName)
      const block = this.#dxf.addBlock(blockName)
      for (const line of lines) this.#putLine(block, line, base)
    }
    for (const { points } of lines)
      this.#reach(points.map(([x, y]): Point => [x - base[0] + to[0], y - base[1] + to[1]]))
    this.#dxf.addInsert(blockName, this.#at(to), { layerName: lines[0]!.layer })
  }

  bounds(): Bounds {
    return { ...this.#bounds }
  }

  sheet({ name, width, height, room, scale, marks }: DrawnSheet): void {
    // Paper has the model's unit.
    const unit = this.#k / 1000
    const on = (mm: number): number => figure(mm * unit)
    const { x0, x1, y0, y1 } = this.#bounds
    this.#layer(SHEET, 7, 0.18)
    putLayouts(this.#dxf, {
      name: written(name),
      width,
      height,
      unit,
      inches: this.#imperial,
      layer: SHEET,
      window: {
        x: on((room.x0 + room.x1) / 2),
        y: on(height - (room.y0 + room.y1) / 2),
        width: on(room.x1 - room.x0),
        height: on(room.y1 - room.y0),
      },
      seen: {
        x: this.#scaled((x0 + x1) / 2),
        y: this.#scaled((y0 + y1) / 2),
        height: on((room.y1 - room.y0) * scale),
      },
    })
    for (const mark of marks) this.#putMark(mark, height, on)
  }

  /** What stands on a sheet so high, mm. */
  #putMark(mark: Mark, height: number, on: (mm: number) => number): void {
    const up = ([x, y]: Point): Point => [x / 1000, (height - y) / 1000]
    const { paperSpace } = this.#dxf.document
    if (mark.kind === 'path' && mark.stroke)
      this.#putLine(paperSpace, { layer: SHEET, points: mark.points.map(up), closed: mark.closed })
    else if (mark.kind === 'text') {
      const at = this.#at(up(mark.at))
      const text = paperSpace.addText(at, on(mark.size * CAP_HEIGHT), written(mark.text), {
        layerName: SHEET,
        ...(mark.angle !== 0 && { rotation: figure(mark.angle) }),
        ...(mark.anchor !== 'start' && {
          horizontalAlignment:
            mark.anchor === 'middle' ? TextHorizontalAlignment.Center : TextHorizontalAlignment.Right,
          secondAlignmentPoint: this.#at(up(mark.at)),
        }),
      })
      text.textStyle = STYLE
    }
  }

  text(): string {
    const { x0, x1, y0, y1 } = this.#bounds
    const [least, most] = Number.isFinite(x0)
      ? [this.#at([x0, y0]), this.#at([x1, y1])]
      : [point3d(0, 0, 0), point3d(0, 0, 0)]
    this.#dxf.setVariable('$EXTMIN', { 10: least.x, 20: least.y, 30: 0 })
    this.#dxf.setVariable('$EXTMAX', { 10: most.x, 20: most.y, 30: 0 })
    return this.#dxf.stringify()
  }
}

/** What the library writes for it, each value changed; null leaves a group out. */
function amend(
  one: { dxfy(dx: Dxfier): void },
  change: (code: number, value: string | number) => string | number | null,
): void {
  const own = one.dxfy.bind(one)
  one.dxfy = (dx) => {
    const made = new Dxfier()
    own(made)
    for (let i = 0; i < made.lines.length; i += 2) {
      const code = Number(made.lines[i])
      const value = change(code, made.lines[i + 1]!)
      if (value !== null) dx.push(code, value)
    }
  }
}

/** The library's own has only patterns by name, and turning one turns it for all that come after. Of another entity it takes what all have. */
class LineHatch extends LWPolyline {
  readonly #loops: readonly (readonly Point[])[]
  readonly #lines: Hatching

  constructor(loops: readonly (readonly Point[])[], lines: Hatching, layerName: string) {
    super([], { layerName })
    this.type = 'HATCH'
    this.subclassMarker = 'AcDbHatch'
    this.#loops = loops
    this.#lines = lines
  }

  protected override dxfyChild(dx: Dxfier): void {
    const { angle, every } = this.#lines
    const turn = (angle * Math.PI) / 180
    const tags: [number, string | number][] = [
      [10, 0],
      [20, 0],
      [30, 0],
      [210, 0],
      [220, 0],
      [230, 1],
      [2, '_USER'],
      [70, 0],
      [71, 0],
      [91, this.#loops.length],
    ]
    this.#loops.forEach((loop, i) => {
      // A closed polyline; the first one is the outer one.
      tags.push([92, i === 0 ? 3 : 2], [72, 0], [73, 1], [93, loop.length])
      for (const [x, y] of loop) tags.push([10, x], [20, y])
      tags.push([97, 0])
    })
    tags.push(
      [75, 0],
      [76, 0],
      [52, angle],
      [41, every],
      [77, 0],
      [78, 1],
      [53, angle],
      [43, 0],
      [44, 0],
      [45, figure(-Math.sin(turn) * every)],
      [46, figure(Math.cos(turn) * every)],
      [79, 0],
      [98, 0],
    )
    for (const [code, value] of tags) dx.push(code, value)
  }
}
