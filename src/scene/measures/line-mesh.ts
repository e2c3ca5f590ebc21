/** Dimension lines as one mesh: flat strips that keep their width on the screen. */
import { BufferAttribute, BufferGeometry, Color, DynamicDrawUsage, Mesh } from 'three'
import type { Vec3 } from '../../../rules/index.ts'
import { makeLineMaterial } from '../materials/line.ts'
import type { World } from '../materials/world.ts'
import type { Line, Tone } from './dimensions.ts'

export interface Lines {
  readonly mesh: Mesh
  show(lines: readonly Line[], dark: boolean): void
  dispose(): void
}

/** As on the screen; the labels' colors are the same (`scene.css`). */
const TONES: Readonly<Record<'light' | 'dark', Readonly<Record<Tone, string>>>> = {
  light: { plain: '#ffffff', water: '#d8f4f2', picked: '#ffffff', warn: '#ffb020', stop: '#ff4d2e' },
  dark: { plain: '#f4f1ea', water: '#b9e4e6', picked: '#ffffff', warn: '#ffc24d', stop: '#ff7a5c' },
}

/** Numbers to an attribute of one corner. */
const LAYOUT = { position: 3, aOther: 3, aSide: 2, aColor: 3 } as const

export function makeLines(world: World): Lines {
  const material = makeLineMaterial(world)
  const mesh = new Mesh(new BufferGeometry(), material)
  mesh.frustumCulled = false
  mesh.renderOrder = 10
  const color = new Color()
  let room = 0

  const grow = (segments: number): void => {
    if (segments <= room) return
    room = segments * 2
    mesh.geometry.dispose()
    const geometry = new BufferGeometry()
    for (const [name, size] of Object.entries(LAYOUT)) {
      const attribute = new BufferAttribute(new Float32Array(room * 4 * size), size)
      geometry.setAttribute(name, attribute.setUsage(DynamicDrawUsage))
    }
    const index = new Uint32Array(room * 6)
    for (let i = 0; i < room; i++)
      index.set(
        [0, 1, 2, 1, 3, 2].map((k) => 4 * i + k),
        6 * i,
      )
    geometry.setIndex(new BufferAttribute(index, 1))
    mesh.geometry = geometry
  }
  return {
    mesh,
    show(lines, dark) {
      const segments: { a: Vec3; b: Vec3; tone: Tone }[] = []
      for (const { from, to, tone, stroke } of lines) {
        segments.push({ a: from, b: to, tone })
        if (!stroke) continue
        for (const end of [from, to]) {
          const at = (k: number): Vec3 => [
            end[0] + k * stroke[0],
            end[1] + k * stroke[1],
            end[2] + k * stroke[2],
          ]
          segments.push({ a: at(-1), b: at(1), tone })
        }
      }
      mesh.visible = segments.length > 0
      if (!mesh.visible) return
      grow(segments.length)
      const { attributes } = mesh.geometry
      const get = (name: keyof typeof LAYOUT): BufferAttribute => attributes[name] as BufferAttribute
      segments.forEach(({ a, b, tone }, i) => {
        // Set without conversion: the line's shader writes screen colors.
        color.setStyle(TONES[dark ? 'dark' : 'light'][tone], '')
        for (let k = 0; k < 4; k++) {
          const v = 4 * i + k
          get('position').setXYZ(v, ...a)
          get('aOther').setXYZ(v, ...b)
          get('aSide').setXY(v, k % 2 === 0 ? -1 : 1, k < 2 ? 0 : 1)
          get('aColor').setXYZ(v, color.r, color.g, color.b)
        }
      })
      for (const name of Object.keys(LAYOUT)) attributes[name]!.needsUpdate = true
      mesh.geometry.setDrawRange(0, segments.length * 6)
    },
    dispose() {
      mesh.geometry.dispose()
      material.dispose()
    },
  }
}
