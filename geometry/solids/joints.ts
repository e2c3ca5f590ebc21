/** What holds sections together: hook bracket, tie plate, hinge pin. Own x axis outward from the section that carries. */
import type { Catalog } from '../../rules/index.ts'
import { boltBodies, bracketPlate } from './bolts.ts'
import type { Body } from './mesh.ts'
import { bar, bentPlate, box } from './prism.ts'
import { circle } from './rings.ts'

/** One plate bent twice: flat on the carrying edge, across the gap, and up again as the lip that the next section drops on. */
export function hookBracketBodies(catalog: Catalog): Body[] {
  const [out, across, high] = catalog.hooks.bracket.size
  const t = bracketPlate(catalog)
  const gap = catalog.rules.jointGap.value
  const reach = Math.min(out, Math.max(gap, 3 * t))
  const path = [
    [0, 0],
    [0, -high],
    [reach, -high],
    [reach, -high * 0.35],
  ] as const
  return [
    bentPlate(path, t, { from: [0, across / 2, 0], to: [0, -across / 2, 0], up: [0, 0, 1], look: 'steel' }),
  ]
}

/** A plate over the gap with a bolt at each end. */
export function tiePlateBodies(catalog: Catalog): Body[] {
  const [along, across, thick] = catalog.tie.size
  const d = Math.min(0.008, along / 8)
  const bolts = [1, -1].flatMap((side) => {
    const [bodyHead] = boltBodies({ diameter: d, length: thick, head: 0, toward: 1, nut: null })
    return [upright(bodyHead!, (side * along) / 4, thick)]
  })
  return [box([-along / 2, -across / 2, 0], [along / 2, across / 2, thick], 'steel'), ...bolts]
}

/** Turns a body along x upright at a place on the plate. */
function upright(body: Body, x: number, z: number): Body {
  const turn = (list: number[], dx: number, dz: number): number[] => {
    const out: number[] = []
    for (let i = 0; i < list.length; i += 3) out.push(-list[i + 2]! + dx, list[i + 1]!, list[i]! + dz)
    return out
  }
  return { ...body, positions: turn(body.positions, x, z), normals: turn(body.normals, 0, 0) }
}

/** A round pin along the hinge axis with a collar at each end. */
export function hingePinBodies(catalog: Catalog): Body[] {
  const [d, long] = catalog.hinge.pin.size
  const collar = Math.min(long / 6, d / 3)
  const run = (diameter: number, a: number, b: number): Body =>
    bar(circle(diameter), [0, a, 0], [0, b, 0], 'steel')
  return [
    run(d * 0.75, -long / 2 + collar, long / 2 - collar),
    run(d, -long / 2, -long / 2 + collar),
    run(d, long / 2 - collar, long / 2),
  ]
}
