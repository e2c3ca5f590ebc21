/** The Dock with its structure, which may come later than the rest. */
import { inOrder } from './checks/index.ts'
import type { Dock } from './dock.ts'
import type { Standing } from './stand.ts'

export function withStructure({ pending: _, ...dock }: Dock, { structure, findings }: Standing): Dock {
  return Object.freeze({ ...dock, structure, findings: inOrder([...dock.findings, ...findings]) })
}
