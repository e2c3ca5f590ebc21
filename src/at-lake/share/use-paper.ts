/** A paper of the record, made when it is asked for: its fonts and its sheets are in no page's way before. */
import { download } from '../../platform/download.ts'
import { useLeadline } from '../../state/store.ts'
import { useBegun, useSay } from '../lake.ts'
import type { PaperOfRecord } from './paper.ts'

/** @param failed told why there is none */
export function usePaper(failed: (words: string) => void): (what: PaperOfRecord) => Promise<void> {
  const { record, season, project } = useBegun()
  const { t, reader } = useSay()
  const catalog = useLeadline((s) => s.catalog)
  return async (what) => {
    try {
      const { recordPdf } = await import('./paper.ts')
      const made = await recordPdf({ what, record, season, project, catalog, reader })
      download(made, made.type, made.name)
    } catch {
      failed(t('share.no-paper'))
    }
  }
}
