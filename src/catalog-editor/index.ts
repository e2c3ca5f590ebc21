/** The script of a page's tag: defines `<leadline-catalog-editor>`, and gives the class to whoever imports it. */
import { defineLeadlineCatalogEditor } from './leadline-catalog-editor.tsx'

export { type CatalogEvent, LeadlineCatalogEditor } from './leadline-catalog-editor.tsx'

defineLeadlineCatalogEditor()
