/** A catalog's file: read, wrong or not, and written. */
import { messageOf } from '../platform/error-message.ts'
import { isObject, type JsonObject } from './draft.ts'

export type OpenedFile =
  | { readonly ok: true; readonly draft: JsonObject }
  | {
      readonly ok: false
      readonly why: 'not-json' | 'not-a-catalog' | 'too-large' | 'newer'
      readonly detail: string
    }

/** As the engine takes it. */
const MOST = 8 * 1024 * 1024

/**
 * Whatever has the shape of a file of JSON with a catalog in it is opened, so that what is wrong can be put right; another file is not, for
 * there would be nothing to put right. Never throws.
 */
export function readCatalogFile(text: string): OpenedFile {
  if (text.length > MOST) return { ok: false, why: 'too-large', detail: '' }
  let value: unknown
  try {
    value = JSON.parse(text.replace(/^\uFEFF/, ''))
  } catch (error) {
    return { ok: false, why: 'not-json', detail: messageOf(error) }
  }
  if (!isObject(value)) return { ok: false, why: 'not-a-catalog', detail: '' }
  const { format = 'leadline/catalog', version } = value
  if (format !== 'leadline/catalog') return { ok: false, why: 'not-a-catalog', detail: String(format) }
  if (typeof version === 'number' && version > 1) return { ok: false, why: 'newer', detail: String(version) }
  return { ok: true, draft: value }
}

export const writtenFile = (draft: JsonObject): string => `${JSON.stringify(draft, null, 2)}\n`
