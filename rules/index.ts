/** The engine as a library: plain Node or a browser, no DOM. */

export { assessKit } from './assess-kit.ts'
export {
  type BottomKind,
  type Catalog,
  demoCatalog,
  parseCatalog,
  parseCatalogText,
  type Stock,
} from './catalog/index.ts'
export { sectionProperties } from './catalog/section-properties.ts'
export { type Shop, shopOf } from './catalog-index.ts'
export { CHECKS } from './checks/index.ts'
export { type AssessOptions, assess, derive } from './derive.ts'
export { type Design, demoDesign, LIMITS, parseDesign, parseDesignText } from './design/index.ts'
export { applyPatch } from './design/patch.ts'
export type * from './dock.ts'
export { fingerprintOf } from './fingerprint.ts'
export { deriveKit, type Kit } from './kit.ts'
export { SLACK } from './numbers.ts'
export {
  type DifferenceRow,
  difference,
  type Have,
  type PackingList,
  packingList,
  rowsOfList,
} from './papers/index.ts'
export * as bodies from './parts/bodies.ts'
export { type Project, projectOf } from './project.ts'
export { NO_REASONS, publishKit } from './publish-kit.ts'
export { parseRequest, parseRequestText, type RequestFile, verifyRequest } from './request.ts'
export { type Bed, makeBed } from './site/index.ts'
export { buckling, solveFrame, UnstableFrameError } from './structure/index.ts'
export type { Issue, Notice, Parsed } from './validation.ts'
export { ENGINE_VERSION } from './version.ts'
export { withStructure } from './with-structure.ts'
export * from './words/index.ts'
