/**
 * Does it stand? The structure of a dock and what was found about it. Comes after the kit: a page shows the kit in the frame of a drag,
 * and this when it is there.
 */

import { key } from './checks/check.ts'
import { toFindings } from './checks/index.ts'
import { STRUCTURE_CHECKS } from './checks/structure/registry.ts'
import type { Finding, Structure, Waves } from './dock.ts'
import type { Kit } from './kit.ts'
import { whyNotJudged } from './structure/dock/not-judged.ts'
import { type Depth, structureOf } from './structure/dock/structure.ts'
import { UnstableFrameError } from './structure/frame-model.ts'
import { FOUND_LATER } from './words/structure-words.ts'

export interface Standing {
  readonly structure: Structure | null
  /** In the order of the registry, remedies as the checks propose them; `derive` sorts them among the others. */
  readonly findings: readonly Finding[]
}

/** Never throws on a valid Design and Catalog: what cannot be judged is a finding. */
export function stand(kit: Kit, waves: Waves | null, depth?: Depth): Standing {
  const why = whyNotJudged(kit)
  if (why) {
    const values = { why: key(why) }
    return { structure: null, findings: toFindings(NOT_JUDGED, [{ parts: [], values }], FOUND_LATER) }
  }
  try {
    const structure = structureOf(kit, waves, depth)
    const stood = { kit, waves, structure }
    const findings = STRUCTURE_CHECKS.flatMap((check) => toFindings(check, check.find(stood), FOUND_LATER))
    return { structure, findings }
  } catch (error) {
    if (!(error instanceof UnstableFrameError)) throw error
    const values = { where: key(error.direction) }
    return { structure: null, findings: toFindings(UNSTABLE, [{ parts: [], values }], FOUND_LATER) }
  }
}

const NOT_JUDGED = { code: 'not-judged', severity: 'note', basis: 'This version of Leadline' } as const
const UNSTABLE = {
  code: 'unstable',
  severity: 'stop',
  basis: 'Statics of the dock as a space frame',
} as const
