/** A dock as a binary glTF 2.0 file: true scale, every piece a named node; each part's mesh is there once and shared. */
import { Document, WebIO } from '@gltf-transform/core'
import type { Catalog, Dock } from '../../rules/index.ts'
import { isForbidden, stopsOf } from '../../rules/stops.ts'
import {
  type ModelMaterial,
  type ModelOptions,
  type ModelSolid,
  modelLook,
  modelOf,
  UPRIGHT,
} from './model.ts'

/** To a thousandth of a mm. */
const rounded = (value: number): number => Math.round(value * 1e6) / 1e6 || 0

/**
 * GLB bytes; m, y up, the water of the survey day at y = 0 (or the lowest foot), the middle of the dock over the origin. The same bytes for the same dock.
 *
 * Pieces are nodes, not GPU instances: what does not know the extension for those would show one of each.
 */
export async function glbOf(
  dock: Dock,
  catalog: Catalog,
  options: ModelOptions = {},
): Promise<Uint8Array<ArrayBuffer>> {
  const model = modelOf(dock, catalog, options)
  const document = new Document()
  const buffer = document.createBuffer()
  const materials = new Map<string, ReturnType<Document['createMaterial']>>()
  const materialOf = (solid: ModelSolid, look: ModelMaterial) => {
    const { name, color, metallic, roughness, opacity } = modelLook(solid, look)
    const known = materials.get(name)
    if (known) return known
    const material = document
      .createMaterial(name)
      .setBaseColorFactor([...color, opacity])
      .setMetallicFactor(metallic)
      .setRoughnessFactor(roughness)
    if (opacity < 1) material.setAlphaMode('BLEND').setDoubleSided(true)
    materials.set(name, material)
    return material
  }
  const scene = document.createScene(model.name || 'dock')
  if (isForbidden(dock)) scene.setExtras({ doNotBuild: stopsOf(dock).map(({ code }) => code) })
  document.getRoot().setDefaultScene(scene)
  const root = document
    .createNode(isForbidden(dock) ? 'dock, DO NOT BUILD' : 'dock')
    .setRotation([...UPRIGHT])
  scene.addChild(root)
  for (const { name, solid, pieces } of model.parts) {
    const accessor = (type: 'VEC3' | 'SCALAR', array: Float32Array | Uint32Array) =>
      document
        .createAccessor()
        .setType(type)
        // A copy, for solids are shared; without the last bits, in which the sines of browsers differ.
        .setArray(array.map(rounded) as Float32Array<ArrayBuffer> | Uint32Array<ArrayBuffer>)
        .setBuffer(buffer)
    const position = accessor('VEC3', solid.positions)
    const normal = accessor('VEC3', solid.normals)
    const mesh = document.createMesh(name)
    for (const { start, count, material } of solid.groups)
      mesh.addPrimitive(
        document
          .createPrimitive()
          .setAttribute('POSITION', position)
          .setAttribute('NORMAL', normal)
          .setIndices(accessor('SCALAR', solid.indices.subarray(start, start + count)))
          .setMaterial(materialOf(solid, material)),
      )
    for (const { name: piece, at, turn } of pieces)
      root.addChild(
        document
          .createNode(piece)
          .setMesh(mesh)
          .setTranslation([rounded(at[0]), rounded(at[1]), rounded(at[2])])
          .setRotation([rounded(turn[0]), rounded(turn[1]), rounded(turn[2]), rounded(turn[3])]),
      )
  }
  return new WebIO().writeBinary(document)
}
