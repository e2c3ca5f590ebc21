/** A record as a file: JSON, as the terminal reads it; where there are photos a ZIP archive with that and them in it. */
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate'
import type { Parsed } from '../../rules/index.ts'
import { parseRecordText, RECORD_LIMITS, type SeasonRecord } from '../../rules/record/index.ts'
import { plainName } from '../platform/file-name.ts'
import { hashOf, photosOf } from '../record-keeping/photos.ts'
import { type Arrived, damaged, withPhotos } from './arrived.ts'

/** Largest file that is read, bytes: a thousand photos of 150 kB. */
const LARGEST = 160_000_000
const LARGEST_PHOTO = 4_000_000
const RECORD = 'record.json'
const PHOTO = /^photos\/([0-9a-f]{64})\.jpg$/

/** `photo`: what is kept under a hash; those that are not here stay out. */
export async function recordFile(
  record: SeasonRecord,
  photo: (hash: string) => Promise<Blob | null>,
): Promise<File> {
  const text = `${JSON.stringify(record, null, 1)}\n`
  const name = `${plainName(record.name)}.record`
  const photos: Record<string, Uint8Array> = {}
  for (const hash of photosOf(record)) {
    const kept = await photo(hash)
    if (kept) photos[`photos/${hash}.jpg`] = new Uint8Array(await kept.arrayBuffer())
  }
  if (Object.keys(photos).length === 0) return new File([text], `${name}.json`, { type: 'application/json' })
  // A picture is packed already.
  const archive = zipSync({ [RECORD]: [strToU8(text), { level: 9 }], ...photos }, { level: 0 })
  return new File([archive], `${name}.zip`, { type: 'application/zip' })
}

/** Of a file that is given: JSON or archive, whatever it is called. Never throws or rejects. */
export async function readRecordFile(file: Blob): Promise<Parsed<Arrived>> {
  const expected = 'a record that was saved here'
  if (file.size > LARGEST) return damaged(`a file of ${file.size} bytes`, `at most ${LARGEST}`)
  try {
    const bytes = new Uint8Array(await file.arrayBuffer())
    // As every ZIP archive begins.
    if (bytes[0] !== 0x50 || bytes[1] !== 0x4b) return withPhotos(parseRecordText(strFromU8(bytes)))
    let room = LARGEST
    const found = unzipSync(bytes, {
      filter({ name, originalSize }) {
        const fits =
          name === RECORD
            ? originalSize <= RECORD_LIMITS.textBytes
            : PHOTO.test(name) && originalSize <= LARGEST_PHOTO
        // Many entries may be packed next to nothing, or lie over each other: together they are no more than the largest file.
        if (fits) room -= originalSize
        return fits && room >= 0
      },
    })
    const text = found[RECORD]
    if (!text) return damaged('the archive', `${RECORD} in it`)
    const photos = Object.entries(found).flatMap(([name, photo]) =>
      // One that is not what its name says was damaged on its way.
      PHOTO.exec(name)?.[1] === hashOf(photo) ? [photo.slice()] : [],
    )
    return withPhotos(parseRecordText(strFromU8(text)), photos)
  } catch {
    return damaged('the file', expected)
  }
}
