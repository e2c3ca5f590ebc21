/** What papers are made from. Small, so that who asks for one does not wait for the code that draws it. */
import type { Project } from '../../rules/index.ts'
import { projectIn } from '../../rules/words/part-names.ts'
import { type Drawn, drawnOf } from '../drawn.ts'
import type { PaperOptions } from './options.ts'

/** What all papers of one dock are made from. */
export interface PaperOf extends Drawn {
  readonly options: PaperOptions
  /** A check code of the paper's own, of more than the dock: told in place of the dock's, which is told beside it. */
  readonly check?: { readonly name: string; readonly dockName: string; readonly code: string }
}

/** Once for all papers of a file: they share what is drawn. */
export const paperFrom = (project: Project, options: PaperOptions): PaperOf => ({
  ...drawnOf(projectIn(project, options.language), options),
  options,
})
