/** Downloads made by the page. */
import type { Design } from '../../rules/index.ts'
import { plainName } from './file-name.ts'

/** Long enough for a download to begin, ms. */
const KEPT = 60_000

export function download(content: BlobPart, media: string, name: string): void {
  const url = URL.createObjectURL(new Blob([content], { type: media }))
  setTimeout(() => URL.revokeObjectURL(url), KEPT)
  const anchor = document.createElement('a')
  anchor.href = url
  anchor.download = name
  anchor.click()
}

export const saveDesign = (design: Design): void =>
  download(
    `${JSON.stringify(design, null, 2)}\n`,
    'application/json',
    `${plainName(design.name)}.leadline.json`,
  )
