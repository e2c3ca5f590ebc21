/** What is found of a dock after the frame of an edit: the same in a worker and, where a page allows none, on its own thread. */
import { assessInSteps, assessQuickly } from '../../rules/derive.ts'
import { assessKit, type Catalog, type Design, type Dock, deriveKit } from '../../rules/index.ts'
import { type SwayShape, swayShape, type Way } from '../../rules/structure/dock/sway-shape.ts'

/** What is asked of a design: to be placed, what is quickly found of it, all that is found, that without remedies, how it sways. */
export type Step = 'place' | 'quick' | 'deep' | 'found' | 'sway'

/** All that is found; the rest of the Dock is as it was placed. */
export interface Assessment extends Pick<Dock, 'structure' | 'findings' | 'fit'> {
  /** Nothing more is going to be found. */
  readonly whole: boolean
}

/** As it is placed, and how long that took, ms. */
export function placedHere(design: Design, catalog: Catalog): { readonly dock: Dock; readonly took: number } {
  const begun = performance.now()
  const dock = assessKit(deriveKit(design, catalog))
  return { dock, took: performance.now() - begun }
}

/** Tells what is found: quickly once; deeply twice, first without remedies and then with those that help; `found`: the first of both alone. */
export function assess(
  design: Design,
  catalog: Catalog,
  step: 'quick' | 'deep' | 'found',
  tell: (judgement: Assessment) => void,
): void {
  const kit = deriveKit(design, catalog)
  const told = ({ structure, findings, fit }: Dock, whole: boolean): void =>
    tell({ structure, findings, fit, whole })
  if (step === 'quick') {
    told(assessQuickly(kit), false)
    return
  }
  const { found, whole } = assessInSteps(kit)
  told(found, step === 'found')
  if (step === 'deep') told(whole(), true)
}

/** With its braces, then without them where they make a difference; none where the dock cannot be solved. */
export function swayShapes(design: Design, catalog: Catalog, way: Way): readonly SwayShape[] {
  try {
    const kit = deriveKit(design, catalog)
    const own = swayShape(kit, { braces: true, way })
    if (!own) return []
    const bare = way === 'across' && own.braceEnds.length > 0 ? swayShape(kit, { braces: false, way }) : null
    return bare ? [own, bare] : [own]
  } catch {
    // It can move without resistance: a finding says so.
    return []
  }
}
