/** What a catalog's materials look like. A catalog gives a name and a density, and shops name materials in their own language. */
import type { Catalog } from '../../rules/index.ts'
import type { Look } from '../types.ts'

const RUBBER = /rubber|gummi|epdm|neoprene/i
const PLASTIC = /plastic|poly|hdpe|pvc|kunststoff|composite|wpc/i

/** By name where it says rubber or plastic, else by density: lighter than 1500 kg/m3 is wood, up to 4000 aluminum, beyond it steel. */
export function lookOf(catalog: Catalog, material: string): Look {
  const { name, density } = catalog.materials[material]!
  if (RUBBER.test(name)) return 'rubber'
  if (PLASTIC.test(name)) return 'plastic'
  return density < 1500 ? 'wood' : density < 4000 ? 'aluminum' : 'steel'
}
