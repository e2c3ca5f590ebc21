/** What is asked to be worked out, and who is to be told. */
import type { Dock } from '../../rules/index.ts'
import type { SwayShape, Way } from '../../rules/structure/dock/sway-shape.ts'
import type { Designed } from '../state/store.ts'
import type { Assessment, Step } from './assess.ts'

export interface Wish {
  readonly of: Designed
  readonly step: Step
  /** Which way it is pushed, where it is asked how it sways: across, if nothing is said. */
  readonly way?: Way
  /** What is found. A deep question is answered twice, the second time `whole`; what is `found` is told once. */
  readonly got?: (judgement: Assessment) => void
  /** To be placed: how it is, and how long that took, ms. */
  readonly placed?: (dock: Dock, took: number) => void
  readonly swayed?: (shapes: readonly SwayShape[]) => void
  /** It cannot be worked out here: its code did not come, say, or it gives no answer. */
  readonly failed: () => void
}

/** Where wishes are worked out, one at a time: in a worker, or on the page's own thread. */
export interface Line {
  ask(wish: Wish): void
  /** Nothing that was asked is wanted any more. */
  drop(): void
  close(): void
}
