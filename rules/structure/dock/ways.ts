/** Where loads push to, and the levels of the lake that they come at. */

export type Toward = 'left' | 'right' | 'shore' | 'lake'
export type LevelName = 'low' | 'today' | 'high'

export const TOWARD: Readonly<Record<Toward, readonly [number, number]>> = {
  left: [0, 1],
  right: [0, -1],
  shore: [-1, 0],
  lake: [1, 0],
}

export const levelOf = (levels: { low: number; high: number }, name: LevelName): number =>
  name === 'today' ? 0 : levels[name]
