/** A picture of the scene as it is seen, at any size: in tiles, where it is larger than the renderer draws at once. */
import { type PerspectiveCamera, type Scene, Vector2, type WebGLRenderer } from 'three'

/** Largest side of a tile, px. */
const TILE = 2048

/**
 * Draws into the scene's own canvas, which is to be drawn again afterwards (`restore`), all in one task: nobody sees it otherwise.
 *
 * @param sized told of each tile's size before it is drawn, px
 */
export function snapshot(
  { gl, scene, camera }: { gl: WebGLRenderer; scene: Scene; camera: PerspectiveCamera },
  [width, height]: readonly [number, number],
  sized: (width: number, height: number) => void,
  restore: () => void,
): Promise<Blob> {
  const sheet = document.createElement('canvas')
  sheet.width = width
  sheet.height = height
  const context = sheet.getContext('2d')
  if (!context) return Promise.reject(new Error('no canvas to draw on'))
  const ratio = gl.getPixelRatio()
  const size = gl.getSize(new Vector2())
  const { aspect, fov } = camera
  try {
    gl.setPixelRatio(1)
    camera.aspect = width / height
    // All that is seen now is in it: where it is narrower, with more above and below; else with more at the sides.
    if (camera.aspect < aspect)
      camera.fov = (Math.atan((Math.tan((fov * Math.PI) / 360) * aspect) / camera.aspect) * 360) / Math.PI
    for (let y = 0; y < height; y += TILE)
      for (let x = 0; x < width; x += TILE) {
        const [w, h] = [Math.min(TILE, width - x), Math.min(TILE, height - y)]
        gl.setSize(w, h, false)
        // Also updates the projection.
        camera.setViewOffset(width, height, x, y, w, h)
        sized(w, h)
        gl.render(scene, camera)
        context.drawImage(gl.domElement, x, y)
      }
  } finally {
    camera.clearViewOffset()
    camera.aspect = aspect
    camera.fov = fov
    camera.updateProjectionMatrix()
    gl.setPixelRatio(ratio)
    gl.setSize(size.x, size.y, false)
    restore()
  }
  return new Promise((done, failed) =>
    sheet.toBlob((blob) => (blob ? done(blob) : failed(new Error('the picture is too large'))), 'image/png'),
  )
}
