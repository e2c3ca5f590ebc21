/** Docks with a builder's verdict, written before anything was computed. */
import { DEEP } from './deep.ts'
import { EXPOSED } from './exposed.ts'
import type { BuildersDock } from './form.ts'
import { SHELTERED } from './sheltered.ts'
import { SHORELINE } from './shoreline.ts'

export type { BuildersDock, Verdict } from './form.ts'

export const BUILDERS_DOCKS: readonly BuildersDock[] = [...SHELTERED, ...DEEP, ...EXPOSED, ...SHORELINE]
