/** The Dock with its structure, which may come later than the rest. */
import { inOrder } from './checks/index.ts'
import type { Dock } from './dock.ts'
import type { Standing } from './stand.ts'

/** A dock with what is found about its structure: no longer pending, findings in their order. */
export function withStructure({ pending: _, ...dock }: Dock, { structure, findings }: Standing): Dock {
  return Object.freeze({ ...dock, structure, findings: inOrder([...dock.findings, ...findings]) })
}
