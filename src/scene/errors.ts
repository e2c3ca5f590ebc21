/** This browser gives no WebGL 2 context: the page goes on with the drawing. */
export class NoWebGLError extends Error {
  override readonly name = 'NoWebGLError'
  readonly code = 'no-webgl'
  constructor() {
    super('mountScene: no WebGL 2 context')
  }
}
