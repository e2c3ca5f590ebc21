/** What findings and remedies say. The first picture has none to tell: these words come with what finds something. */
import type { Finding, Remedy } from '../dock.ts'
import findings from './en/findings.json' with { type: 'json' }
import type { Reader } from './language.ts'
import { type Subject, subject } from './messages.ts'
import { tellFinding, tellRemedy } from './tell-finding.ts'

/** Of findings and remedies: `CODE.plain`, `CODE.text`, `remedy.KEY`, `name.TABLE.KEY`. */
export const FINDINGS = subject('findings', findings)

/**
 * What a finding says: `plain` for a homeowner, `text` with its figures; its code where nobody has words for it.
 * @param more words of what is found later (`structure-words.ts`)
 */
export const findingIn = (
  finding: Pick<Finding, 'code' | 'values'>,
  form: 'plain' | 'text',
  reader: Reader,
  more: readonly Subject[] = [],
): string => tellFinding(finding, form, reader, [FINDINGS, ...more])

/** What a remedy is called, with the words of more subjects where its values have keys of theirs. */
export const remedyIn = (remedy: Remedy, reader: Reader, more: readonly Subject[] = []): string =>
  tellRemedy(remedy, reader, [FINDINGS, ...more])
