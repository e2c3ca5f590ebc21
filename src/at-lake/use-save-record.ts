/** The record as a file with its pictures, for whoever keeps it elsewhere. */
import { download } from '../platform/download.ts'
import { useBegun } from './lake.ts'

export function useSaveRecord(): () => void {
  const { keeper } = useBegun()
  const save = async (): Promise<void> => {
    const { recordFile } = await import('../record-sharing/index.ts')
    const made = await recordFile(keeper.record, (hash) => keeper.photo(hash))
    download(made, made.type, made.name)
  }
  return () => void save()
}
