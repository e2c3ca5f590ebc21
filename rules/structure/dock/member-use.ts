/**
 * The worst of one leg or rail over all cases.
 *
 * Every piece is looked at where it starts, where it ends and, under a load along it, where it bends most between. Cases are sifted by
 * the sum of their shares (ADM 2020 H.1); the worst of them is then told by the whole rule.
 */
import type { Shop } from '../../catalog-index.ts'
import { type Strengths, strengthsOfStock, utilization } from '../strength/index.ts'

export interface PieceOf {
  /** Index among the judged members. */
  readonly at: number
  /** m */
  readonly length: number
  /** Between the points that keep it from buckling, m. */
  readonly held: number
}

export interface Worst {
  readonly use: number
  /** Pressing positive, N. */
  readonly axial: number
  /** N·m, both planes together. */
  readonly moment: number
  readonly governs: string
  readonly case: string
}

export interface MemberJudge {
  visit(forces: Float64Array, name: string): void
  worst(): Worst
}

/** Strengths that were asked for so far, by stock, length and weld. */
const strengthsAsked = (): Map<string, Strengths> => new Map()

function strengthsFor(shop: Shop, stock: string, held: number, weld: 'none' | 'ends'): Strengths {
  const known = shop.once(strengthsAsked)
  // A drag asks for ever new lengths; to 5 mm, rounded up, they are few.
  const length = Math.ceil(held * 200) / 200
  const key = `${stock} ${length} ${weld}`
  let strengths = known.get(key)
  if (!strengths) {
    strengths = strengthsOfStock(shop.catalog, stock, { length, weld })!
    known.set(key, strengths)
  }
  return strengths
}

export function memberJudge(
  shop: Shop,
  stock: string,
  pieces: readonly PieceOf[],
  weld: 'none' | 'ends',
): MemberJudge {
  const laws = pieces.map(({ held }) => strengthsFor(shop, stock, held, weld))
  const round = shop.catalog.stock[stock]!.shape.startsWith('round')
  let most = -1
  let worst = { piece: 0, axial: 0, My: 0, Mz: 0, Vy: 0, Vz: 0, T: 0, name: '' }
  const look = (
    piece: number,
    axial: number,
    My: number,
    Mz: number,
    Vy: number,
    Vz: number,
    T: number,
    name: string,
  ): void => {
    const law = laws[piece]!
    const y = Math.abs(My) / law.momentY.value
    const z = Math.abs(Mz) / law.momentZ.value
    const share =
      Math.abs(axial) / (axial > 0 ? law.tension.value : law.compression.value) +
      (round ? Math.sqrt(y * y + z * z) : y + z)
    if (share <= most) return
    most = share
    worst = { piece, axial, My, Mz, Vy, Vz, T, name }
  }
  return {
    visit(forces, name) {
      for (let i = 0; i < pieces.length; i++) {
        const { at, length } = pieces[i]!
        const o = at * 12
        const Vy = forces[o + 1]!
        const Vz = forces[o + 2]!
        const T = forces[o + 3]!
        const My = forces[o + 4]!
        const Mz = forces[o + 5]!
        look(i, -forces[o]!, My, Mz, Vy, Vz, T, name)
        look(i, forces[o + 6]!, forces[o + 10]!, forces[o + 11]!, forces[o + 7]!, forces[o + 8]!, T, name)
        // The load along it, from what its two ends do not balance.
        const qy = -(Vy + forces[o + 7]!) / length
        const qz = -(Vz + forces[o + 8]!) / length
        const x = Math.abs(qz) >= Math.abs(qy) ? -Vz / qz : -Vy / qy
        if (!(x > 0 && x < length)) continue
        const axial = (forces[o + 6]! - forces[o]!) / 2
        const inY = My + Vz * x + (qz * x * x) / 2
        const inZ = -Mz + Vy * x + (qy * x * x) / 2
        look(i, axial, inY, inZ, Vy + qy * x, Vz + qz * x, T, name)
      }
    },
    worst() {
      const { piece, axial, My, Mz, Vy, Vz, T, name } = worst
      const use = utilization(laws[piece]!, { axial, My, Mz, Vy, Vz, T })
      return {
        use: use.use,
        axial: -axial,
        moment: Math.hypot(My, Mz),
        governs: use.governing.by,
        case: name,
      }
    },
  }
}
