/** The demo shop with fender boards for sale besides: the demo's own catalog stays as it is, and so do the check codes of its docks. */
import { demoCatalog, parseCatalog } from '../../rules/index.ts'

/** Two bolts to a board of 5/4 by 6 cedar: 0.0254 · 0.1397 · 0.9144 m · 370 kg/m3 = 1.200 kg. */
export const FENDER = {
  code: 'fender-board',
  name: 'Fender board',
  place: 'edge',
  space: 0.3048,
  parts: [
    {
      kind: 'fender-board',
      code: 'fender-36',
      name: 'Fender board 36 in',
      price: 2200,
      mass: 1.2,
      size: [0.0254, 0.1397, 0.9144],
      count: 1,
    },
    {
      kind: 'fender-bolt',
      code: 'fender-bolt-4',
      name: 'Fender bolt 3/8 x 4 in',
      price: 120,
      mass: 0.09,
      bag: 'X',
      size: [0.1016, 0.0206, 0.0206],
      count: 2,
    },
  ],
} as const

const parsed = parseCatalog({ ...demoCatalog, id: 'fender-shop', extras: [...demoCatalog.extras, FENDER] })
if (!parsed.ok) throw new Error(parsed.issues.map(({ path, message }) => `${path}: ${message}`).join('\n'))

export const fenderCatalog = parsed.value
