/** Square codes read by the camera, or out of a picture. By the browser's own reader where it has one. */

/** Between two looks, ms. */
const LOOK = 60
/** Width that a picture is read at, px: the code is most of it. */
const WIDTH = 640
/** Of pictures from a file, which may show a code in a corner, or one that is all of a screen: one after the other until it is read. */
const WIDTHS_OF_FILE = [1600, 800, 2600, 400] as const

/** What stands in a picture. */
type Reader = (canvas: HTMLCanvasElement) => Promise<readonly string[]>

/** Of the Shape Detection API, which the compiler does not know. */
interface Detector {
  detect(source: HTMLCanvasElement): Promise<readonly { readonly rawValue: string }[]>
}
interface DetectorClass {
  new (options: { formats: readonly string[] }): Detector
  getSupportedFormats(): Promise<readonly string[]>
}

async function ownReader(): Promise<Reader | null> {
  const { BarcodeDetector: Own } = globalThis as { BarcodeDetector?: DetectorClass }
  try {
    if (!Own || !(await Own.getSupportedFormats()).includes('qr_code')) return null
    const detector = new Own({ formats: ['qr_code'] })
    return async (canvas) => (await detector.detect(canvas)).map(({ rawValue }) => rawValue)
  } catch {
    return null
  }
}

async function loadedReader(): Promise<Reader> {
  const { default: read } = await import('jsqr')
  return async (canvas) => {
    const context = canvas.getContext('2d', { willReadFrequently: true })
    const { width, height } = canvas
    const data = context?.getImageData(0, 0, width, height).data
    const found = data && read(data, width, height, { inversionAttempts: 'dontInvert' })
    return found ? [found.data] : []
  }
}

const codeIn = async (): Promise<Reader> => (await ownReader()) ?? (await loadedReader())

/** Draws what is seen, no wider than that. */
function draw(
  canvas: HTMLCanvasElement,
  from: CanvasImageSource,
  size: readonly [number, number],
  most: number,
): void {
  const scale = Math.min(1, most / Math.max(...size))
  canvas.width = Math.max(1, Math.round(size[0] * scale))
  canvas.height = Math.max(1, Math.round(size[1] * scale))
  canvas.getContext('2d', { willReadFrequently: true })?.drawImage(from, 0, 0, canvas.width, canvas.height)
}

/** `denied`: the user or the site's policy says no; `none`: there is no camera, or another program has it. */
export type Camera =
  | { readonly ok: true; stop(): void }
  | { readonly ok: false; readonly why: 'denied' | 'none' }

/** Shows what the camera sees and tells each code in it, until it is stopped. Never rejects. */
export async function watchCamera(video: HTMLVideoElement, told: (text: string) => void): Promise<Camera> {
  let stream: MediaStream
  let read: Reader
  try {
    read = await codeIn()
    stream = await navigator.mediaDevices.getUserMedia({ audio: false, video: { facingMode: 'environment' } })
  } catch (error) {
    const denied = error instanceof Error && error.name === 'NotAllowedError'
    return { ok: false, why: denied ? 'denied' : 'none' }
  }
  let over = false
  const canvas = document.createElement('canvas')
  video.muted = true
  video.setAttribute('playsinline', '')
  video.srcObject = stream
  // A page that is out of sight may not play; it does when it is seen again.
  await video.play().catch(() => {})
  const look = async (): Promise<void> => {
    if (over) return
    if (video.videoWidth > 0) {
      draw(canvas, video, [video.videoWidth, video.videoHeight], WIDTH)
      for (const text of await read(canvas).catch(() => [])) if (!over) told(text)
    }
    setTimeout(look, LOOK)
  }
  void look()
  return {
    ok: true,
    stop() {
      over = true
      for (const track of stream.getTracks()) track.stop()
      video.srcObject = null
    },
  }
}

/** What the codes in a picture say; none where there are none, or it is no picture. */
export async function codesInPicture(picture: Blob): Promise<readonly string[]> {
  const bitmap = await createImageBitmap(picture).catch(() => null)
  if (!bitmap) return []
  const canvas = document.createElement('canvas')
  const read = await codeIn()
  const whole = Math.max(bitmap.width, bitmap.height)
  let found: readonly string[] = []
  for (const width of WIDTHS_OF_FILE) {
    if (found.length > 0) break
    // What is smaller than that has been looked at as it is.
    if (width > 1600 && whole <= 1600) continue
    draw(canvas, bitmap, [bitmap.width, bitmap.height], width)
    found = await read(canvas).catch(() => [])
  }
  bitmap.close()
  return found
}
