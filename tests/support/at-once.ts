/** Docks without what takes long and most tests do not look at. */
import { assess, assessKit, type Catalog, type Design, type Dock, deriveKit } from '../../rules/index.ts'

/** The Dock as a page has it in the frame of a drag: its structure, clashes and remedies come after (`derive` has all). */
export const deriveAtOnce = (design: Design, catalog: Catalog): Dock => assessKit(deriveKit(design, catalog))

/** All that is found, and no remedy tried: for tests of many docks. */
export const deriveFound = (design: Design, catalog: Catalog): Dock =>
  assess(deriveKit(design, catalog), { remedies: false })
