/** What stands between a dock and its being built: what its verdict asks to be fixed. */
import type { Dock } from '../../../rules/index.ts'
import { verdictOf } from '../../panel/verdict.ts'

export interface Fixes {
  readonly stops: number
  readonly warnings: number
}

export function fixesOf(findings: Dock['findings']): Fixes {
  const { toFix } = verdictOf({ findings })
  const stops = toFix.filter(({ severity }) => severity === 'stop').length
  return { stops, warnings: toFix.length - stops }
}
