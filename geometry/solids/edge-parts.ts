/** What sits on a deck's edge: clip, bumper, and accessories that the catalog gives no more than a size of. Own x axis outward unless told. */
import type { Catalog } from '../../rules/index.ts'
import { loft } from './loft.ts'
import type { Body } from './mesh.ts'
import { bar, box, prism } from './prism.ts'
import { circle, halfRound, rectangle } from './rings.ts'

type Sized = { readonly size: readonly [number, number, number] }
/** What a shop says that its accessory is drawn as. */
type Shaped = Sized & { readonly shape?: 'box' | 'plate' | 'tube' | undefined }

/** A plate over the seam between panel and rail with a screw in each; y outward, x along the panel. */
export function deckClipBodies(catalog: Catalog): Body[] {
  const [along, , high] = catalog.decking.clip.size
  const t = 0.003
  const d = Math.min(0.005, high / 6)
  const screws = [1, -1].map((side): Body => {
    const head = bar(
      circle(2 * d, 6),
      [(side * along) / 4, t, (side * high) / 4],
      [(side * along) / 4, t + d / 2, (side * high) / 4],
      'steel',
    )
    return head
  })
  return [box([-along / 2, 0, -high / 2], [along / 2, t, high / 2], 'steel'), ...screws]
}

/** Half round against the edge, from the deck surface down. */
export function bumperBodies({ size: [out, along, high] }: Sized): Body[] {
  const outer = halfRound(out, high)
  return [
    prism({
      outer,
      from: [0, along / 2, -high / 2],
      to: [0, -along / 2, -high / 2],
      up: [0, 0, 1],
      look: 'rubber',
    }),
  ]
}

/**
 * A box, a plate or a tube where the catalog says so. Else it tells no more of an accessory than its size, and by its proportions that is drawn as a ladder (taller than 0.8 m), a ring
 * or a plate (flat against the edge), a cleat (low and long), or else as a box of its size.
 */
export function accessoryBodies({ size, shape }: Shaped): Body[] {
  const [out, along, high] = size
  if (shape === 'plate') return [plate(out, along, high)]
  if (shape === 'tube') {
    const r = Math.min(out, along) / 2
    return [bar(circle(2 * r), [-r, 0, 0], [-r, 0, high], 'aluminum')]
  }
  if (shape === 'box') return [boxOf(out, along, high)]
  if (high > 0.8) return ladder(out, along, high)
  if (out <= 0.35 * Math.min(along, high))
    return out < 0.012 ? [plate(out, along, high)] : [ring(out, along, high)]
  if (along > 1.5 * Math.max(out, high)) return cleat(out, along, high)
  return [boxOf(out, along, high)]
}

const boxOf = (out: number, along: number, high: number): Body =>
  box([-out, -along / 2, 0], [0, along / 2, high], 'aluminum')

const plate = (out: number, along: number, high: number): Body =>
  box([0, -along / 2, -high], [out, along / 2, 0], 'steel')

/** Hangs against the edge, its top at the deck. Steps run against the angle, so that the outline turns counter-clockwise along them. */
function ring(out: number, along: number, high: number): Body {
  const r = out / 2
  const n = 16
  const sides = 8
  const rings = Array.from({ length: n }, (_, i) => {
    const a = (-2 * Math.PI * i) / n
    return Array.from({ length: sides }, (_, k) => {
      const b = (2 * Math.PI * k) / sides
      const swell = r * Math.cos(b)
      return [
        r + r * Math.sin(b),
        (along / 2 - r + swell) * Math.cos(a),
        -high / 2 + (high / 2 - r + swell) * Math.sin(a),
      ] as const
    })
  })
  return loft(rings, true, 'steel')
}

/** Two stringers, down and outward, treads between them; a quarter of it stands over the deck as the handrail. */
function ladder(out: number, along: number, high: number): Body[] {
  const d = Math.min(0.032, out / 4, along / 8)
  const top = high / 4
  const bottom = top - high
  const y = along / 2 - d / 2
  const near = d / 2
  const far = out - d / 2
  const bodies: Body[] = []
  for (const side of [1, -1]) {
    const tube = (a: readonly [number, number], b: readonly [number, number]): Body =>
      bar(circle(d), [a[0], side * y, a[1]], [b[0], side * y, b[1]], 'aluminum')
    bodies.push(tube([near, top - d / 2], [far, bottom]), tube([near, 0], [near, top]))
  }
  bodies.push(bar(circle(d), [near, -y, top - d / 2], [near, y, top - d / 2], 'aluminum'))
  const steps = Math.max(2, Math.round((top - d - bottom) / 0.35))
  const deep = Math.min(0.09, out - d)
  for (let i = 1; i <= steps; i++) {
    const z = -0.02 + ((bottom + 0.06) * i) / steps
    const x = near + ((far - near) * (top - z)) / high
    bodies.push(
      prism({
        outer: rectangle(0.025, deep),
        from: [Math.min(Math.max(x, deep / 2), out - deep / 2), -y, z],
        to: [Math.min(Math.max(x, deep / 2), out - deep / 2), y, z],
        up: [1, 0, 0],
        look: 'aluminum',
      }),
    )
  }
  return bodies
}

/** A base on the deck inside the edge, two posts, a horn along the edge. */
function cleat(out: number, along: number, high: number): Body[] {
  const foot = high * 0.15
  const d = Math.min(out * 0.5, high * 0.4)
  const middle = -out / 2
  const bodies = [box([-out, -along / 4, 0], [0, along / 4, foot], 'steel')]
  for (const side of [1, -1])
    bodies.push(
      bar(circle(d, 12), [middle, (side * along) / 8, foot], [middle, (side * along) / 8, high - d], 'steel'),
      bar(
        circle(d * 0.7, 12),
        [middle, (side * along) / 4, high - d / 2],
        [middle, (side * along) / 2, high - d / 2],
        'steel',
      ),
    )
  bodies.push(
    bar(circle(d, 12), [middle, -along / 4, high - d / 2], [middle, along / 4, high - d / 2], 'steel'),
  )
  return bodies
}
