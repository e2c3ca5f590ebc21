/** The dock as it is placed and counted: all that parts lists and quotes go by. */
import { assessKit, type Catalog, type Design, type Dock, deriveKit } from '../../rules/index.ts'

export const placedDock = (design: Design, catalog: Catalog): Dock => assessKit(deriveKit(design, catalog))
