/** The script of a page's tag: defines `<leadline-dock>`, and gives the class to whoever imports it. */
import { defineLeadlineDock } from './leadline-dock.ts'

export { LeadlineDock } from './leadline-dock.ts'
export type { LeadlineAttributes, LeadlineEvents } from './page-types.ts'

defineLeadlineDock()
