/** The engine of the day at the lake: pure, plain data in and out, words nowhere. */
export { assignLegs } from './assign-legs.ts'
export { type DayAt, dayAt, dayOf } from './day.ts'
export { depthToFrame } from './depth-to-frame.ts'
export { levelCheck } from './level/level-check.ts'
export { levelToday, stillWater } from './level/level-today.ts'
export { oldDock } from './old-dock.ts'
export type * from './types.ts'
