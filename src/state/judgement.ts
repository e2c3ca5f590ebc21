/** What is found of a dock after the frame of an edit: the same in a worker and, where a page allows none, on its own thread. */
import { assessInSteps, assessQuickly } from '../../rules/derive.ts'
import { type Catalog, type Design, type Dock, deriveKit } from '../../rules/index.ts'

/** All that is found; the rest of the Dock is as it was placed. */
export interface Judgement extends Pick<Dock, 'structure' | 'findings'> {
  /** Nothing more is going to be found. */
  readonly whole: boolean
}

/** Tells what is found: quickly once; deeply twice, first without remedies and then with those that help. */
export function judgementsOf(
  design: Design,
  catalog: Catalog,
  deep: boolean,
  tell: (judgement: Judgement) => void,
): void {
  const kit = deriveKit(design, catalog)
  const told = ({ structure, findings }: Dock, whole: boolean): void => tell({ structure, findings, whole })
  if (!deep) {
    told(assessQuickly(kit), false)
    return
  }
  const { found, whole } = assessInSteps(kit)
  told(found, false)
  told(whole(), true)
}
