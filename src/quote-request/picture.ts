/** A small picture of the dock as it is seen, to go with a request. */
import type { PictureHandle } from '../ui/handles.ts'

/** px: enough to tell one dock from another, in some tens of kilobytes. */
const SIZE = { width: 640, height: 400 } as const
const QUALITY = 0.72

/** A data URL of a JPEG; null where there is no scene, or it cannot be taken: a request goes without it. */
export async function smallPicture(scene: PictureHandle | null): Promise<string | null> {
  if (!scene) return null
  try {
    const image = await createImageBitmap(await scene.snapshot(SIZE.width, SIZE.height))
    const canvas = document.createElement('canvas')
    Object.assign(canvas, SIZE)
    const context = canvas.getContext('2d')
    if (!context) return null
    context.drawImage(image, 0, 0, SIZE.width, SIZE.height)
    image.close()
    const taken = canvas.toDataURL('image/jpeg', QUALITY)
    return taken.startsWith('data:image/jpeg') ? taken : null
  } catch {
    return null
  }
}
