/** Photos as they are kept: small enough for many of them, large enough to see what is bent. */
import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex } from '@noble/hashes/utils.js'
import type { SeasonRecord } from '../../rules/record/index.ts'

/** Longest side, px. */
const LONGEST = 1280
/** What a photo should stay under, bytes; qualities of JPEG that are tried for it, the last whatever comes of it. */
const LARGEST = 150_000
const QUALITIES = [0.8, 0.7, 0.6, 0.5]

/** Hashes of the photos that entries speak of, each once. */
export const photosOf = (record: SeasonRecord): readonly string[] => [
  ...new Set(
    record.entries.flatMap((entry) =>
      entry.kind === 'note' || entry.kind === 'wear' ? (entry.photos ?? []).map(({ hash }) => hash) : [],
    ),
  ),
]

export const hashOf = (bytes: ArrayBuffer | Uint8Array): string =>
  bytesToHex(sha256(bytes instanceof Uint8Array ? bytes : new Uint8Array(bytes)))

interface Shrunk {
  readonly bytes: ArrayBuffer
  /** px */
  readonly width: number
  readonly height: number
}

/** As JPEG, turned upright, with nothing of where it was taken. null: the browser cannot read it. */
export async function shrinkPhoto(picture: Blob): Promise<Shrunk | null> {
  const bitmap = await createImageBitmap(picture, { imageOrientation: 'from-image' }).catch(() => null)
  if (!bitmap) return null
  try {
    const scale = Math.min(1, LONGEST / Math.max(bitmap.width, bitmap.height))
    const canvas = document.createElement('canvas')
    canvas.width = Math.max(1, Math.round(bitmap.width * scale))
    canvas.height = Math.max(1, Math.round(bitmap.height * scale))
    const context = canvas.getContext('2d')
    if (!context) return null
    // JPEG knows no transparency: what is clear comes out white.
    context.fillStyle = '#fff'
    context.fillRect(0, 0, canvas.width, canvas.height)
    context.imageSmoothingQuality = 'high'
    context.drawImage(bitmap, 0, 0, canvas.width, canvas.height)
    let small: Blob | null = null
    for (const quality of QUALITIES) {
      small = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/jpeg', quality))
      if (small && small.size <= LARGEST) break
    }
    return small && { bytes: await small.arrayBuffer(), width: canvas.width, height: canvas.height }
  } finally {
    bitmap.close()
  }
}
