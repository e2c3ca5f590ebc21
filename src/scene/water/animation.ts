/** The clock of the moving water: it runs while the waves are played; otherwise it stands still and requests no frames. */
import type { World } from '../materials/world.ts'
import { phaseAt, type Sea } from './wave-trains.ts'

export interface Play {
  /** The surface moves: each frame is followed by another. */
  readonly moving: boolean
  /** Null for still water. `moving` false shows the waves as they stand at the start. */
  show(sea: Sea | null, moving: boolean): void
  /** Called at each frame with its time, ms. */
  tick(now: number): void
}

/** Waves come up within this time, s. */
const RISE = 0.8
/** A longer step was a pause: the page was out of sight, and the water goes on from where it was, s. */
const PAUSE = 1

export function makePlay(world: World): Play {
  let sea: Sea | null = null
  let moving = false
  let time = 0
  let last: number | null = null
  let shown = 0
  const put = (): void => {
    world.uTime.value = time
    world.uSeaLook.value.set(shown, sea?.sharpness ?? 0, sea?.variance ?? 0)
    sea?.trains.forEach((train, i) => {
      world.uSea.value[i]!.set(train.kx, train.ky, phaseAt(train, time), train.amplitude)
    })
  }
  return {
    get moving() {
      return moving
    },
    show(next, move) {
      sea = next
      if (move && !moving) last = null
      moving = move && next !== null
      if (!moving) time = 0
      shown = next === null ? 0 : moving ? shown : 1
      put()
    },
    tick(now) {
      if (!moving) return
      const step = last === null ? 0 : Math.min(PAUSE, (now - last) / 1000)
      last = now
      time += step
      shown = Math.min(1, shown + step / RISE)
      put()
    },
  }
}
