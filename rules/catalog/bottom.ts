/** What a lake bottom is of: asked of a design too, which is read where no catalog is. */
import * as v from 'valibot'

export const BottomSchema = v.picklist(['rock', 'gravel', 'sand', 'clay', 'muck'])
/** What the lake's bottom is: one of the kinds that the catalog has values for. */
export type BottomKind = v.InferOutput<typeof BottomSchema>
