/** The demo shop with lengthwise braces for sale besides: the demo's own catalog stays as it is, and so do the check codes of its docks. */
import { type Design, demoCatalog, parseCatalog } from '../../rules/index.ts'

const range = (from: number, to: number) => ({ from, to })

/**
 * Of the demo's brace tube. 8 ft frames: legs of one section stand 2.4384 - 2 x 0.087313 = 2.263774 m apart, of two that hang together a
 * pitch of 2.4384 m and the joint's gap.
 */
const ALONG = [
  { code: 'along-89', holes: 2.2606, price: 7900, spacing: range(2.2, 2.3) },
  { code: 'along-96', holes: 2.4384, price: 8400, spacing: range(2.2, 2.5) },
  { code: 'along-102', holes: 2.5908, price: 8900, spacing: range(2.4, 2.5) },
].map((brace) => ({
  ...brace,
  name: `Lengthwise brace ${brace.code.slice(6)} in`,
  stock: 'brace-tube',
  end: 0.0127,
  legs: range(1.2192, 3.048),
  along: true,
}))

const parsed = parseCatalog({ ...demoCatalog, braces: [...demoCatalog.braces, ...ALONG] })
if (!parsed.ok) throw new Error(parsed.issues.map(({ path, message }) => `${path}: ${message}`).join('\n'))

export const alongCatalog = parsed.value

export const askedAlong = ({ dock, ...design }: Design, along: 'last' | 'all'): Design => ({
  ...design,
  dock: { ...dock, bracing: { ...dock.bracing, along } },
})
