/** Handing a file to the person: as a download, or to the device's own view of models. */

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

/** Whether the device shows models on the real ground when it is handed a link to one. */
export const showsModels = (): boolean => document.createElement('a').relList.supports('ar')

/** The link that such a device takes for one: `rel="ar"`, an image as its only child, a USDZ behind it. */
export function modelLink(bytes: Uint8Array, media: string, name: string): HTMLAnchorElement {
  const anchor = document.createElement('a')
  anchor.rel = 'ar'
  anchor.href = addressOf(bytes, media)
  anchor.download = name
  anchor.append(document.createElement('img'))
  return anchor
}
