/** The Dock as a page has it in the frame of a drag: all but its structure, which comes after (`derive` has both). */
import { assessKit, type Catalog, type Design, type Dock, deriveKit } from '../../rules/index.ts'

export const deriveAtOnce = (design: Design, catalog: Catalog): Dock => assessKit(deriveKit(design, catalog))
