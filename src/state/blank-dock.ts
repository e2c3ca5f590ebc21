/** An empty Dock: shown while a worker places the first one, when that is too large to be placed at once. */
import { type Dock, ENGINE_VERSION, NO_REASONS } from '../../rules/index.ts'

export const BLANK: Dock = Object.freeze({
  engine: ENGINE_VERSION,
  name: '',
  start: null,
  sections: [],
  ramp: null,
  legs: [],
  pairs: [],
  joints: [],
  placements: [],
  parts: [],
  totals: { mass: 0, price: 0, currency: 'USD', heaviestLift: 0, heaviestSection: null },
  existing: null,
  workOrder: [],
  waves: null,
  structure: null,
  fit: null,
  pending: true,
  findings: [],
  reasons: NO_REASONS,
  fingerprint: { all: '', design: '', catalog: '', engine: ENGINE_VERSION },
})
