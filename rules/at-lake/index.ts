/** The engine of the day at the lake: pure, plain data in and out, words nowhere. */
export { assignLegs } from './assign-legs.ts'
export { type DayAt, dayAt, dayOf } from './day.ts'
export { levelCheck } from './level/level-check.ts'
export { type LevelKnown, levelToday, stillWater } from './level/level-today.ts'
export { type OldDock, type OldLeg, type OldLegSet, oldDock } from './old-dock.ts'
export { setBolts } from './order.ts'
export type * from './types.ts'
