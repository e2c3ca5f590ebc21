/**
 * Model files against programs that read them: the Khronos glTF Validator (gltf-validator), @gltf-transform/core and three's USD loader.
 * Their bounding boxes and counts are the Dock's.
 */
import { getBounds, WebIO } from '@gltf-transform/core'
import { strFromU8, unzipSync } from 'fflate'
import { validateBytes } from 'gltf-validator'
import { Box3, Mesh, type Object3D, Vector3 } from 'three'
import { USDLoader } from 'three/addons/loaders/USDLoader.js'
import { describe, expect, it } from 'vitest'
import { glbOf } from '../../../geometry/export/glb.ts'
import type { MODEL_LAKES, ModelOptions } from '../../../geometry/export/model.ts'
import { usdzOf } from '../../../geometry/export/usdz.ts'
import { rotate, solidOf } from '../../../geometry/index.ts'
import { type Catalog, type Dock, demoCatalog, demoDesign, derive, projectOf } from '../../../rules/index.ts'
import { parsedDesign } from '../../support/arbitraries.ts'
import { metricCatalog } from '../../support/catalogs.ts'

const design = (dock: Record<string, unknown>) =>
  parsedDesign({ ...demoDesign, dock: { ...demoDesign.dock, ...dock } })
const DOCKS: readonly (readonly [string, Dock, Catalog])[] = [
  ['the demo dock', derive(demoDesign, demoCatalog), demoCatalog],
  ['a tee', derive(design({ sections: 4, head: { shape: 'tee', sections: 2 } }), demoCatalog), demoCatalog],
  [
    'a dock of another shop',
    derive(
      design({ frame: metricCatalog.frames[0]!.code, extras: {}, ramp: false, start: 3, sections: 3 }),
      metricCatalog,
    ),
    metricCatalog,
  ],
]

/** The box of all vertices, straight from placements; x, up, −y as in the files. */
function boxOf(dock: Dock, catalog: Catalog): Box3 {
  const box = new Box3()
  const point = new Vector3()
  for (const { kind, code, at, turn } of dock.placements) {
    const { positions } = solidOf(kind, code, catalog)
    for (let i = 0; i < positions.length; i += 3) {
      const [x, y, z] = rotate(turn, [positions[i]!, positions[i + 1]!, positions[i + 2]!])
      box.expandByPoint(point.set(x + at[0], z + at[2], -(y + at[1])))
    }
  }
  return box
}

/** Same size, the waterline at 0, the middle over the origin. */
function expectSameBox(box: Box3, dock: Dock, catalog: Catalog): void {
  const own = boxOf(dock, catalog)
  const middle = own.getCenter(new Vector3()).setY(0)
  for (const axis of ['x', 'y', 'z'] as const) {
    expect(box.min[axis]).toBeCloseTo(own.min[axis] - middle[axis], 4)
    expect(box.max[axis]).toBeCloseTo(own.max[axis] - middle[axis], 4)
  }
}

describe('a GLB', () => {
  for (const [name, dock, catalog] of DOCKS) {
    it(`of ${name} has nothing that the Khronos validator remarks on`, async () => {
      const report = await validateBytes(await glbOf(dock, catalog), { maxIssues: 0 })
      expect(report.issues.messages).toEqual([])
      expect(report.issues).toMatchObject({ numErrors: 0, numWarnings: 0, numInfos: 0, numHints: 0 })
    })

    it(`of ${name} is as large as the dock, a named node for each placement, no more meshes than parts`, async () => {
      const document = await new WebIO().readBinary(await glbOf(dock, catalog))
      const { min, max } = getBounds(document.getRoot().getDefaultScene()!)
      expectSameBox(new Box3(new Vector3(...min), new Vector3(...max)), dock, catalog)
      const pieces = document
        .getRoot()
        .listNodes()
        .filter((node) => node.getMesh())
      expect(pieces.length).toBeGreaterThan(80)
      expect(pieces).toHaveLength(dock.placements.length)
      expect(new Set(pieces.map((node) => node.getName())).size).toBe(pieces.length)
      expect(document.getRoot().listMeshes()).toHaveLength(
        new Set(dock.placements.map(({ kind, code }) => `${kind} ${code}`)).size,
      )
      for (const leg of dock.legs) {
        const node = pieces.find((piece) => piece.getName() === `leg ${leg.id}`)!
        const own = boxOf(dock, catalog).getCenter(new Vector3())
        const [x, y, z] = node.getWorldTranslation()
        expect(x + own.x).toBeCloseTo(leg.x, 4)
        expect(-(z + own.z)).toBeCloseTo(leg.y, 4)
        expect(y).toBeGreaterThanOrEqual(leg.bed - 1e-6)
      }
    })
  }

  it('is the same each time', async () => {
    const [, dock, catalog] = DOCKS[0]!
    expect(Buffer.compare(await glbOf(dock, catalog), await glbOf(dock, catalog))).toBe(0)
  })
})

/** Local file headers as they lie in an archive (PKWARE APPNOTE 4.3.7): names, where data begins, how it is stored. */
function localFiles(zip: Uint8Array): { name: string; data: number; method: number; size: number }[] {
  const view = new DataView(zip.buffer, zip.byteOffset, zip.byteLength)
  const found = []
  for (let at = 0; view.getUint32(at, true) === 0x04034b50; ) {
    const [size, nameLength, extraLength] = [
      view.getUint32(at + 18, true),
      view.getUint16(at + 26, true),
      view.getUint16(at + 28, true),
    ]
    const data = at + 30 + nameLength + extraLength
    found.push({
      name: strFromU8(zip.subarray(at + 30, at + 30 + nameLength)),
      data,
      method: view.getUint16(at + 8, true),
      size,
    })
    at = data + size
  }
  return found
}

const meshesOf = (root: Object3D): Mesh[] => {
  const found: Mesh[] = []
  root.traverse((object) => {
    if (object instanceof Mesh) found.push(object)
  })
  return found
}

describe('a USDZ', () => {
  for (const [name, dock, catalog] of DOCKS) {
    const bytes = usdzOf(dock, catalog)

    it(`of ${name} is an archive without compression, its data at multiples of 64 bytes, the root layer first`, () => {
      const files = localFiles(bytes)
      expect(files[0]!.name).toBe('dock.usda')
      expect(files.map((file) => file.name).sort()).toEqual(Object.keys(unzipSync(bytes)).sort())
      for (const { data, method } of files) {
        expect(data % 64).toBe(0)
        expect(method).toBe(0)
      }
    })

    it(`of ${name} is read by another program as a dock of the same size and as many pieces`, () => {
      const group = new USDLoader().parse(bytes.slice().buffer)
      group.updateMatrixWorld(true)
      const meshes = meshesOf(group)
      const looks = dock.placements.map(({ kind, code }) => solidOf(kind, code, catalog).groups.length)
      expect(meshes).toHaveLength(looks.reduce((sum, count) => sum + count, 0))
      const box = new Box3()
      for (const mesh of meshes) box.expandByObject(mesh, true)
      expectSameBox(box, dock, catalog)
    })

    it(`of ${name} closes every bracket and refers only to files and looks that are there`, () => {
      const files = Object.fromEntries(
        Object.entries(unzipSync(bytes)).map(([file, data]) => [file, strFromU8(data)]),
      )
      for (const text of Object.values(files)) {
        expect(text.startsWith('#usda 1.0\n')).toBe(true)
        const open: string[] = []
        for (const sign of text.replace(/"[^"]*"/g, ''))
          if ('([{'.includes(sign)) open.push(sign)
          else if (')]}'.includes(sign)) expect(open.pop()).toBe('([{'[')]}'.indexOf(sign)])
        expect(open).toEqual([])
        expect(text).not.toMatch(/NaN|Infinity|undefined|e-\d/)
      }
      const root = files['dock.usda']!
      for (const [, file] of root.matchAll(/@\.\/([^@]+)@/g)) expect(files[file!]).toBeDefined()
      for (const [, look] of root.matchAll(/binding = <\/Dock\/Looks\/(\w+)>/g))
        expect(root).toContain(`def Material "${look}"`)
      const names = [...root.matchAll(/def Xform "(\w+)"/g)].map(([, prim]) => prim)
      expect(new Set(names).size).toBe(names.length)
      expect(names).toHaveLength(dock.placements.length + 2)
    })
  }

  it('is the same each time', () => {
    const [, dock, catalog] = DOCKS[0]!
    expect(Buffer.compare(usdzOf(dock, catalog), usdzOf(dock, catalog))).toBe(0)
  })
})

describe('a model with the lake, or on its feet', () => {
  const dock = derive(demoDesign, demoCatalog)
  const { bed } = projectOf(demoDesign, demoCatalog, dock)
  const lake = (parts: (typeof MODEL_LAKES)[number]) => ({ parts, bed, design: demoDesign })
  const boundsOf = async (options: ModelOptions) => {
    const document = await new WebIO().readBinary(await glbOf(dock, demoCatalog, options))
    const scene = document.getRoot().listScenes()[0]!
    const nodes = scene.listChildren()[0]!.listChildren()
    return { document, nodes, bounds: getBounds(scene) }
  }
  const lowest = Math.min(...dock.legs.map(({ bed: at }) => at))

  it('stands with its lowest foot at height 0', async () => {
    const [onWater, onFeet] = [await boundsOf({}), await boundsOf({ base: 'feet' })]
    // As much higher as the lowest foot was under the water: posts that are driven in reach deeper.
    expect(onFeet.bounds.max[1]! - onWater.bounds.max[1]!).toBeCloseTo(-lowest, 5)
    const soles = onFeet.nodes
      .filter((node) => /^(leg|foot-pad|pad|mud-pad) /.test(node.getName()))
      .map((node) => getBounds(node).min[1]!)
    expect(soles.length).toBeGreaterThan(dock.legs.length - 1)
    expect(Math.min(...soles)).toBeCloseTo(0, 2)
  })

  it('has water at height 0 and the bed under it where they are asked for, and neither where not', async () => {
    const names = async (parts: (typeof MODEL_LAKES)[number]) =>
      (await boundsOf({ lake: lake(parts) })).nodes
        .map((node) => node.getName())
        .filter((name) => ['water', 'lake-bed'].includes(name))
    expect(await names('none')).toEqual([])
    expect(await names('water')).toEqual(['water'])
    expect(await names('bed')).toEqual(['lake-bed'])
    expect(await names('both')).toEqual(['water', 'lake-bed'])
    const { nodes, document } = await boundsOf({ lake: lake('both') })
    const find = (name: string) => nodes.find((node) => node.getName() === name)!
    const water = getBounds(find('water'))
    for (const height of [water.min[1]!, water.max[1]!]) expect(height).toBeCloseTo(0, 6)
    // Every point of the bed is the ground that the soundings tell of.
    const ground = find('lake-bed')
    const at = ground.getTranslation()
    const position = ground.getMesh()!.listPrimitives()[0]!.getAttribute('POSITION')!
    for (let i = 0; i < position.getCount(); i += 7) {
      const [x, y, z] = position.getElement(i, [0, 0, 0]) as [number, number, number]
      expect(z).toBeCloseTo(bed.bedAt(x, y), 4)
    }
    expect(at[2]).toBe(0)
    const look = document
      .getRoot()
      .listMaterials()
      .find((one) => one.getName() === 'water')!
    expect([look.getAlphaMode(), look.getBaseColorFactor()[3]! < 1]).toEqual(['BLEND', true])
    const report = await validateBytes(await glbOf(dock, demoCatalog, { lake: lake('both') }), {
      maxIssues: 0,
    })
    expect(report.issues.numErrors).toBe(0)
  })

  it('as USDZ has the same', () => {
    const root = (options: ModelOptions) =>
      strFromU8(unzipSync(usdzOf(dock, demoCatalog, options))['dock.usda']!)
    const both = root({ base: 'feet', lake: lake('both') })
    expect(both).toMatch(/def Xform "water"/)
    expect(both).toMatch(/def Xform "lake_bed"/)
    expect(both).toMatch(/inputs:opacity = 0\.45/)
    expect(root({})).not.toMatch(/water|lake_bed|opacity/)
  })
})
