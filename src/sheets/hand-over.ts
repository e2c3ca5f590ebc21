/** Handing a file to the person. */

/** Long enough for a download to begin. */
const KEPT = 60_000

function addressOf(bytes: Uint8Array, media: string): string {
  const url = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type: media }))
  setTimeout(() => URL.revokeObjectURL(url), KEPT)
  return url
}

export function download(bytes: Uint8Array, media: string, name: string): void {
  const anchor = document.createElement('a')
  anchor.href = addressOf(bytes, media)
  anchor.download = name
  anchor.click()
}
