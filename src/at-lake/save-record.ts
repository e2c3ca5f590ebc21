/** The record as a file, for whoever keeps it elsewhere or sends it. */
import type { SeasonRecord } from '../../rules/record/index.ts'
import { download } from '../platform/download.ts'
import { plainName } from '../platform/file-name.ts'

const fileName = (record: SeasonRecord): string => `${plainName(record.name)}.record.json`
export const recordText = (record: SeasonRecord): string => `${JSON.stringify(record, null, 1)}\n`

export const saveRecord = (record: SeasonRecord): void =>
  download(recordText(record), 'application/json', fileName(record))

export const recordFile = (record: SeasonRecord): File =>
  new File([recordText(record)], fileName(record), { type: 'application/json' })
