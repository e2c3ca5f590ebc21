/**
 * The sheet of a DXF: a layout in paper space with a viewport on the model. The library writes neither layouts nor viewports; these are
 * by the format's reference (AC1021; memory).
 */
import { type Dxfier, DxfObject, type DxfWriter, LWPolyline } from '@tarikjabiri/dxf'

type Tags = readonly (readonly [code: number, value: number | string])[]
const push = (dx: Dxfier, tags: Tags): void => {
  for (const [code, value] of tags) dx.push(code, value)
}
const NOWHERE = 1e20

class Layout extends DxfObject {
  readonly #tags: Tags
  constructor(owner: string, tags: Tags) {
    super('LAYOUT')
    this.ownerObjecthandle = owner
    this.#tags = tags
  }
  override dxfy(dx: Dxfier): void {
    super.dxfy(dx)
    push(dx, this.#tags)
  }
}

/** Of another entity it takes what all have. */
class Viewport extends LWPolyline {
  readonly #tags: Tags
  constructor(tags: Tags, layerName: string) {
    super([], { layerName })
    this.type = 'VIEWPORT'
    this.subclassMarker = 'AcDbViewport'
    this.#tags = tags
  }
  protected override dxfyChild(dx: Dxfier): void {
    push(dx, this.#tags)
  }
}

export interface Place {
  /** Middle and size, units of the sheet. */
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

export interface SheetOf {
  readonly name: string
  /** mm. */
  readonly width: number
  readonly height: number
  /** Units of the sheet to the mm: its unit is the model's. */
  readonly unit: number
  readonly inches: boolean
  readonly layer: string
  readonly window: Place
  /** What of the model is seen in the window: its middle and its height, units of the model. */
  readonly seen: Pick<Place, 'x' | 'y' | 'height'>
}

/** Both layouts that a file has: of the model, and of one sheet. What else is on that is put into `document.paperSpace`. */
export function putLayouts(dxf: DxfWriter, sheet: SheetOf): void {
  const { document } = dxf
  const { objects, modelSpace, paperSpace } = document
  const list = objects.addDictionary()
  objects.addEntryToRoot('ACAD_LAYOUT', list.handle)
  const add = (name: string, order: number, block: string, flags: number): Layout => {
    const layout = objects.addObject(
      new Layout(list.handle, [
        [100, 'AcDbPlotSettings'],
        [1, ''],
        [2, 'none_device'],
        [4, ''],
        [6, ''],
        [40, 0],
        [41, 0],
        [42, 0],
        [43, 0],
        [44, sheet.width],
        [45, sheet.height],
        [46, 0],
        [47, 0],
        [48, 0],
        [49, 0],
        [140, 0],
        [141, 0],
        [142, 1],
        [143, 1],
        [70, flags],
        [72, sheet.inches ? 0 : 1],
        [73, 0],
        [74, 5],
        [7, ''],
        [75, 16],
        [147, 1],
        [148, 0],
        [149, 0],
        [100, 'AcDbLayout'],
        [1, name],
        [70, 1],
        [71, order],
        [10, 0],
        [20, 0],
        [11, sheet.width * sheet.unit],
        [21, sheet.height * sheet.unit],
        [12, 0],
        [22, 0],
        [32, 0],
        [14, NOWHERE],
        [24, NOWHERE],
        [34, NOWHERE],
        [15, -NOWHERE],
        [25, -NOWHERE],
        [35, -NOWHERE],
        [146, 0],
        [13, 0],
        [23, 0],
        [33, 0],
        [16, 1],
        [26, 0],
        [36, 0],
        [17, 0],
        [27, 1],
        [37, 0],
        [76, 0],
        [330, block],
      ]),
    )
    list.addEntryObject(name, layout.handle)
    return layout
  }
  modelSpace.blockRecord.layoutObject = add('Model', 0, modelSpace.blockRecord.handle, 1024).handle
  paperSpace.blockRecord.layoutObject = add(sheet.name, 1, paperSpace.blockRecord.handle, 688).handle
  const { unit, layer, width, height } = sheet
  const whole = { x: (width * unit) / 2, y: (height * unit) / 2, width: width * unit, height: height * unit }
  // The first is the sheet itself.
  paperSpace.addEntity(new Viewport(viewport(1, whole, whole), layer))
  paperSpace.addEntity(new Viewport(viewport(2, sheet.window, sheet.seen), layer))
}

const viewport = (id: number, place: Place, seen: Pick<Place, 'x' | 'y' | 'height'>): Tags => [
  [10, place.x],
  [20, place.y],
  [30, 0],
  [40, place.width],
  [41, place.height],
  [68, id],
  [69, id],
  [12, seen.x],
  [22, seen.y],
  [13, 0],
  [23, 0],
  [14, 10],
  [24, 10],
  [15, 10],
  [25, 10],
  [16, 0],
  [26, 0],
  [36, 1],
  [17, 0],
  [27, 0],
  [37, 0],
  [42, 50],
  [43, 0],
  [44, 0],
  [45, seen.height],
  [50, 0],
  [51, 0],
  [72, 100],
  // Its scale is locked.
  [90, id === 1 ? 32768 : 16384 + 32768],
  [1, ''],
  [281, 0],
  [71, 1],
  [74, 0],
  [110, 0],
  [120, 0],
  [130, 0],
  [111, 1],
  [121, 0],
  [131, 0],
  [112, 0],
  [122, 1],
  [132, 0],
  [79, 0],
  [146, 0],
]
