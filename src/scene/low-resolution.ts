/** Frames drawn at a lower resolution and scaled up onto the canvas. The canvas keeps its size, because resizing it waits for all pending drawing. */
import {
  BufferAttribute,
  BufferGeometry,
  type Camera,
  Mesh,
  type Scene,
  ShaderMaterial,
  type WebGLRenderer,
  WebGLRenderTarget,
} from 'three'

export interface LowResolution {
  draw(renderer: WebGLRenderer, scene: Scene, camera: Camera, width: number, height: number): void
  dispose(): void
}

export function makeLowResolution(): LowResolution {
  const target = new WebGLRenderTarget(1, 1)
  const geometry = new BufferGeometry()
  geometry.setAttribute('position', new BufferAttribute(new Float32Array([-1, -1, 0, 3, -1, 0, -1, 3, 0]), 3))
  const material = new ShaderMaterial({
    name: 'coarse',
    depthTest: false,
    depthWrite: false,
    toneMapped: false,
    uniforms: { uImage: { value: target.texture } },
    vertexShader:
      'varying vec2 vAt; void main() { vAt = position.xy * 0.5 + 0.5; gl_Position = vec4(position.xy, 0.0, 1.0); }',
    fragmentShader:
      'uniform sampler2D uImage; varying vec2 vAt; void main() { gl_FragColor = vec4(texture2D(uImage, vAt).rgb, 1.0); }',
  })
  const sheet = new Mesh(geometry, material)
  sheet.frustumCulled = false
  return {
    draw(renderer, scene, camera, width, height) {
      target.setSize(width, height)
      renderer.setRenderTarget(target)
      renderer.render(scene, camera)
      renderer.setRenderTarget(null)
      renderer.render(sheet, camera)
    },
    dispose() {
      target.dispose()
      geometry.dispose()
      material.dispose()
    },
  }
}
