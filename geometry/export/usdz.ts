/**
 * A dock as a USDZ file, for a phone that sets it down on the real shore: true scale, every piece a named prim that refers to its part's
 * mesh.
 *
 * Written out here, for what writes USDZ elsewhere dates the archive and numbers its meshes by what a page has drawn before: the same dock
 * would give other bytes each time. Format: USDZ File Format Specification 1.3 (a zip archive without compression, data at multiples of
 * 64 bytes, the first file the root layer).
 */
import { strToU8, type Zippable, zipSync } from 'fflate'
import type { Catalog, Dock, Finding, Quat, Vec3 } from '../../rules/index.ts'
import { stopsOf } from '../../rules/stops.ts'
import { type ModelOptions, type ModelPart, type ModelSolid, modelLook, modelOf } from './model.ts'

/** Zip archives tell no time before this. */
const DATE = new Date(1980, 0, 1)
const ALIGN = 64
/** Bytes of a local file header without name and extra field; of an extra field's own header. */
const HEADER = 30
const EXTRA = 4
/** Of an extra field that says nothing. */
const FILLER = 0x1986

/** USDZ bytes; m, y up, the water of the survey day at y = 0 (or the lowest foot), the middle of the dock over the origin. The same bytes for the same dock. */
export function usdzOf(dock: Dock, catalog: Catalog, options: ModelOptions = {}): Uint8Array<ArrayBuffer> {
  const model = modelOf(dock, catalog, options)
  const meshes = model.parts.flatMap((part, p) =>
    part.solid.groups.map((group, g) => ({
      file: `parts/part_${p}_${g}.usda`,
      text: layer('Part', meshPrim('Part', part.solid, group.start, group.count)),
    })),
  )
  const looks = new Map(
    model.parts
      .flatMap(({ solid }) => solid.groups.map(({ material }) => modelLook(solid, material)))
      .map((look) => [look.name, look]),
  )
  return archive([
    { file: 'dock.usda', text: rootLayer(model.parts, [...looks.values()], stopsOf(dock)) },
    ...meshes,
  ])
}

/** Seven digits hold a float; no exponent, no minus before nothing. */
const num = (value: number): string => {
  const text = value.toFixed(6).replace(/\.?0+$/, '')
  return text === '-0' ? '0' : text
}
const triple = (x: number, y: number, z: number): string => `(${num(x)}, ${num(y)}, ${num(z)})`

/** A layer's first line is what it says of itself. */
const layer = (prim: string, body: string, says = ''): string => `#usda 1.0
(${
  says === ''
    ? ''
    : `
    doc = "${says}"`
}
    defaultPrim = "${prim}"
    metersPerUnit = 1
    upAxis = "Y"
)

${body}`

/** Names of prims are letters, digits and underscores; what becomes the same by that is numbered. */
function primNames(): (name: string) => string {
  const used = new Set<string>()
  return (name) => {
    const base = name.replace(/[^A-Za-z0-9_]/g, '_').replace(/^(?=\d)/, '_')
    let free = base
    for (let n = 2; used.has(free); n++) free = `${base}_${n}`
    used.add(free)
    return free
  }
}

function meshPrim(name: string, solid: ModelSolid, start: number, count: number): string {
  const used = new Map<number, number>()
  const indices: number[] = []
  for (let i = start; i < start + count; i++) {
    const vertex = solid.indices[i]!
    if (!used.has(vertex)) used.set(vertex, used.size)
    indices.push(used.get(vertex)!)
  }
  const vectors = (from: Float32Array): string =>
    [...used.keys()].map((v) => triple(from[3 * v]!, from[3 * v + 1]!, from[3 * v + 2]!)).join(', ')
  return `def Mesh "${name}"
{
    int[] faceVertexCounts = [${Array(count / 3)
      .fill(3)
      .join(', ')}]
    int[] faceVertexIndices = [${indices.join(', ')}]
    normal3f[] normals = [${vectors(solid.normals)}] (
        interpolation = "vertex"
    )
    point3f[] points = [${vectors(solid.positions)}]
    uniform token subdivisionScheme = "none"
}
`
}

/** Rows of a matrix that points are multiplied with from the left: the dock's frame is turned upright (x, z, −y). */
function transform([x, y, z, w]: Quat, [tx, ty, tz]: Vec3): string {
  const turned: readonly Vec3[] = [
    [1 - 2 * (y * y + z * z), 2 * (x * y + z * w), 2 * (x * z - y * w)],
    [2 * (x * y - z * w), 1 - 2 * (x * x + z * z), 2 * (y * z + x * w)],
    [2 * (x * z + y * w), 2 * (y * z - x * w), 1 - 2 * (x * x + y * y)],
    [tx, ty, tz],
  ]
  const rows = turned.map(([a, b, c], i) => `(${[num(a), num(c), num(-b), i === 3 ? 1 : 0].join(', ')})`)
  return `( ${rows.join(', ')} )`
}

function rootLayer(
  parts: readonly ModelPart[],
  looks: readonly ReturnType<typeof modelLook>[],
  stops: readonly Finding[],
): string {
  const primName = primNames()
  const pieces = parts.flatMap(({ solid, pieces }, p) =>
    pieces.map(({ name, at, turn }) => {
      const groups = solid.groups.map(
        ({ material }, g) => `
                def "g${g}" (
                    prepend references = @./parts/part_${p}_${g}.usda@
                    prepend apiSchemas = ["MaterialBindingAPI"]
                )
                {
                    rel material:binding = </Dock/Looks/${modelLook(solid, material).name}>
                }
`,
      )
      return `
            def Xform "${primName(name)}"
            {
                matrix4d xformOp:transform = ${transform(turn, at)}
                uniform token[] xformOpOrder = ["xformOp:transform"]
${groups.join('')}            }
`
    }),
  )
  const materials = looks.map(({ name: look, color, metallic, roughness, opacity }) => {
    return `
        def Material "${look}"
        {
            token outputs:surface.connect = </Dock/Looks/${look}/surface.outputs:surface>

            def Shader "surface"
            {
                uniform token info:id = "UsdPreviewSurface"
                color3f inputs:diffuseColor = ${triple(...color)}
                float inputs:metallic = ${num(metallic)}${
                  opacity < 1 ? `\n                float inputs:opacity = ${num(opacity)}` : ''
                }
                float inputs:roughness = ${num(roughness)}
                token outputs:surface
            }
        }
`
  })
  return layer(
    'Dock',
    `def Xform "Dock" (
    kind = "component"
)
{
    token preliminary:anchoring:type = "plane"
    token preliminary:planeAnchoring:alignment = "horizontal"

    def Xform "Pieces"
    {
${pieces.join('')}    }

    def Scope "Looks"
    {
${materials.join('')}    }
}
`,
    stops.length > 0 ? `DO NOT BUILD: ${stops.map(({ code }) => code).join(', ')}` : '',
  )
}

function archive(
  files: readonly { readonly file: string; readonly text: string }[],
): Uint8Array<ArrayBuffer> {
  const all: Zippable = {}
  let offset = 0
  for (const { file, text } of files) {
    const data = strToU8(text)
    const bare = offset + HEADER + file.length
    // An extra field is at least its own header long, so where the gap is shorter than that, one more multiple.
    let gap = (ALIGN - (bare % ALIGN)) % ALIGN
    if (gap > 0 && gap < EXTRA) gap += ALIGN
    all[file] = [
      data,
      { level: 0, mtime: DATE, ...(gap > 0 && { extra: { [FILLER]: new Uint8Array(gap - EXTRA) } }) },
    ]
    offset = bare + gap + data.length
  }
  return zipSync(all, { level: 0, mtime: DATE })
}
