/** Records on their way from one phone to another: as a file, in a link, in codes from screen to camera. What comes is never trusted. */
import type { Parsed } from '../../rules/index.ts'
import type { RecordKeeper, Records } from '../record-keeping/index.ts'
import type { Arrived } from './arrived.ts'

export type { Arrived } from './arrived.ts'
export { codesInPicture, watchCamera } from './camera.ts'
export { codeReader, EACH, recordCodes } from './codes.ts'
export { readRecordFile, recordFile } from './file.ts'
export type { Frames } from './frames.ts'
export { isRecordLink, readRecordLink, recordLink } from './link.ts'

/** Keeps what arrived, merged into the record of the same dock where there is one, its photos too. */
export async function keepArrived(
  records: Records,
  { record, photos }: Arrived,
): Promise<Parsed<RecordKeeper>> {
  const taken = await records.take(record)
  if (taken.ok) for (const photo of photos) await taken.value.takePhoto(photo)
  return taken
}
