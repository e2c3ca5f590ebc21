/**
 * The words of all that is found, those of the structure and of what lies on the bed too. A page that wants its first picture soon imports `finding-words.ts` alone and
 * gets these with the structure.
 */
import type { Finding, Remedy } from '../dock.ts'
import obstacles from './en/obstacles.json' with { type: 'json' }
import structure from './en/structure.json' with { type: 'json' }
import { findingIn, remedyIn } from './finding-words.ts'
import { english, type Reader } from './language.ts'
import { subject } from './messages.ts'

/** What is found after the frame of an edit. */
export const FOUND_LATER = [subject('structure', structure), subject('obstacles', obstacles)]

/** What a finding says: `plain` for a homeowner, `text` with its figures. */
export const findingText = (
  finding: Pick<Finding, 'code' | 'values'>,
  form: 'plain' | 'text',
  reader: Reader = english('metric'),
): string => findingIn(finding, form, reader, FOUND_LATER)

/** What a remedy is called, those of the structure too. In English and meters where no reader is given. */
export const remedyText = (remedy: Remedy, reader: Reader = english('metric')): string =>
  remedyIn(remedy, reader, FOUND_LATER)
