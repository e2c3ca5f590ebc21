/**
 * For the build: parts of three that the renderer holds on to and this scene never gets to, in the least form that the renderer can do
 * with. Each says what would want the whole one; where the scene came to use that, its stub goes.
 */
import { parseSync } from 'vite'

/** By the name that three's renderer (`three.module.js`) declares. */
export const STUBS: Readonly<Record<string, string>> = {
  // Glasses: R3F listens whether a session begins.
  WebXRManager: `class WebXRManager extends EventDispatcher {
  constructor() { super(); this.enabled = this.isPresenting = false; }
  setAnimationLoop() {}
  dispose() {}
}`,
  // A background of a scene, be it color or texture: our sky is a mesh.
  WebGLBackground: `function WebGLBackground( renderer, environments, state, objects, alpha, premultipliedAlpha ) {
  const clearColor = new Color( 0 );
  let clearAlpha = alpha === true ? 0 : 1;
  const setClear = () => state.buffers.color.setClear( clearColor.r, clearColor.g, clearColor.b, clearAlpha, premultipliedAlpha );
  return {
    getClearColor: () => clearColor,
    setClearColor( color, a = 1 ) { clearColor.set( color ); clearAlpha = a; setClear(); },
    getClearAlpha: () => clearAlpha,
    setClearAlpha( a ) { clearAlpha = a; setClear(); },
    render() {
      setClear();
      if ( ! renderer.autoClear ) return;
      state.buffers.depth.setTest( true );
      state.buffers.depth.setMask( true );
      state.buffers.color.setMask( true );
      renderer.clear( renderer.autoClearColor, renderer.autoClearDepth, renderer.autoClearStencil );
    },
    addToRenderList() {},
    dispose() {},
  };
}`,
  // Environment maps: metal mirrors our sky by its own formula.
  WebGLEnvironments: 'function WebGLEnvironments() { return { get: () => null, dispose() {} }; }',
  getDFGLUT: 'function getDFGLUT() { return null; }',
  DATA: 'const DATA = null;',
  // A scene drawn into the faces of a cube.
  WebGLCubeRenderTarget: 'class WebGLCubeRenderTarget extends WebGLRenderTarget {}',
  // Uniform buffers, morph targets, clipping planes: the cut is in our shaders.
  WebGLUniformsGroups: 'function WebGLUniformsGroups() { return { bind() {}, update() {}, dispose() {} }; }',
  WebGLMorphtargets: 'function WebGLMorphtargets() { return { update() {} }; }',
  WebGLClipping: `function WebGLClipping() {
  return {
    uniform: { value: null, needsUpdate: false }, numPlanes: 0, numIntersection: 0,
    init: () => false, beginShadows() {}, endShadows() {}, setGlobalState() {}, setState() {},
  };
}`,
  // Materials of three's own but for the one that draws the shadow: all of ours are shaders.
  WebGLMaterials: `function WebGLMaterials() {
  return {
    refreshFogUniforms() {},
    refreshMaterialUniforms( uniforms, material ) { if ( material.isShaderMaterial ) material.uniformsNeedUpdate = false; },
  };
}`,
  ShaderLib: `const ShaderLib = {
  depth: {
    uniforms: /*@__PURE__*/ mergeUniforms( [ UniformsLib.common, UniformsLib.displacementmap ] ),
    vertexShader: ShaderChunk.depth_vert,
    fragmentShader: ShaderChunk.depth_frag,
  },
};`,
  // Textures other than plain colors and depths: compressed, of fewer channels, of other numbers.
  WebGLUtils: `function WebGLUtils( gl ) {
  const known = new Map( [
    [ UnsignedByteType, gl.UNSIGNED_BYTE ], [ UnsignedShortType, gl.UNSIGNED_SHORT ], [ UnsignedIntType, gl.UNSIGNED_INT ],
    [ FloatType, gl.FLOAT ], [ HalfFloatType, gl.HALF_FLOAT ], [ UnsignedInt248Type, gl.UNSIGNED_INT_24_8 ],
    [ RGBAFormat, gl.RGBA ], [ DepthFormat, gl.DEPTH_COMPONENT ], [ DepthStencilFormat, gl.DEPTH_STENCIL ],
  ] );
  return { convert: ( p ) => known.get( p ) ?? null };
}`,
  // A canvas of more than 8 bits, effects after the picture.
  WebGLOutput: 'function WebGLOutput() {}',
}

/** By the name that three's core (`three.core.js`) declares. */
export const CORE_STUBS: Readonly<Record<string, string>> = {
  // What a ray meets: `parts/pick.ts` finds that by our own solids. R3F makes a raycaster for its events, which nothing here listens to.
  Raycaster: `class Raycaster {
  constructor() { this.params = {}; }
  setFromCamera() {}
  intersectObject() { return []; }
}`,
  Ray: 'class Ray {}',
  Triangle: 'class Triangle {}',
  // Leaving out what is out of sight: every mesh of the scene says `frustumCulled = false`, for the dock is in sight as a whole.
  Frustum: `class Frustum {
  setFromProjectionMatrix() { return this; }
  intersectsObject() { return true; }
}`,
  // The same for several cameras at once.
  FrustumArray: 'class FrustumArray {}',
  // What a mesh is made of before it is given a material of ours; shadows of lamps.
  MeshBasicMaterial: 'class MeshBasicMaterial extends Material {}',
  MeshDistanceMaterial: 'class MeshDistanceMaterial extends Material {}',
  // Colors by name: ours are numbers.
  _colorKeywords: 'const _colorKeywords = {};',
}

/**
 * Functions within others that are left empty: textures other than flat ones, targets of several samples, glass, another kind of shadow,
 * wireframes, and giving the context over to another library.
 */
export const EMPTIED: Readonly<Record<string, readonly string[]>> = {
  WebGLTextures: [
    'uploadCubeTexture',
    'updateVideoTexture',
    'updateMultisampleRenderTarget',
    'updateRenderTargetMipmap',
    'setTextureCube',
    'setTexture2DArray',
    'setTexture3D',
  ],
  WebGLState: ['reset'],
  WebGLGeometries: ['updateWireframeAttribute'],
  WebGLRenderer: ['renderTransmissionPass'],
  WebGLShadowMap: ['VSMPass'],
}

/** Statements of the outermost level that only complete a part that is a stub. */
const LEFT_OVER = /^ShaderLib\.\w+ =/

interface Node {
  readonly type: string
  readonly start: number
  readonly end: number
  readonly id?: { readonly name: string } | null
  readonly body?: Node | readonly Node[]
  readonly declarations?: readonly Node[]
  readonly kind?: string
  readonly value?: Node
}

/** Throws where three has not what is to be replaced: another version of it is to be looked at anew. */
export function withStubs(code: string, stubs = STUBS, emptied = EMPTIED): string {
  const { program } = parseSync('three.module.js', code)
  const cuts: { start: number; end: number; put: string }[] = []
  const found = new Set<string>()
  for (const node of program.body as unknown as Node[]) {
    const name = node.id?.name ?? node.declarations?.[0]?.id?.name ?? ''
    const stub = Object.hasOwn(stubs, name) ? stubs[name] : undefined
    if (stub !== undefined) {
      found.add(name)
      cuts.push({ start: node.start, end: node.end, put: stub })
    } else if (node.type === 'ExpressionStatement' && LEFT_OVER.test(code.slice(node.start, node.end)))
      cuts.push({ start: node.start, end: node.end, put: '' })
    for (const inner of Object.hasOwn(emptied, name) ? functionsOf(node) : []) {
      const { id, body } = inner
      if (!id || !emptied[name]!.includes(id.name)) continue
      found.add(`${name}.${id.name}`)
      const { start, end } = body as Node
      cuts.push({ start, end, put: '{}' })
    }
  }
  const wanted = [
    ...Object.keys(stubs),
    ...Object.entries(emptied).flatMap(([owner, names]) => names.map((name) => `${owner}.${name}`)),
  ]
  const missing = wanted.filter((name) => !found.has(name))
  if (missing.length > 0) throw new Error(`withStubs: three has no ${missing.join(', ')}`)
  let out = ''
  let from = 0
  for (const { start, end, put } of cuts.sort((a, b) => a.start - b.start)) {
    out += code.slice(from, start) + put
    from = end
  }
  return out + code.slice(from)
}

/** Functions declared in a function, or in the constructor of a class. */
function functionsOf(node: Node): readonly Node[] {
  const body = (node.body as Node).body as readonly Node[]
  const list =
    node.type === 'ClassDeclaration'
      ? ((body.find((m) => m.kind === 'constructor')!.value!.body as Node).body as readonly Node[])
      : body
  return list.filter((inner) => inner.type === 'FunctionDeclaration')
}
