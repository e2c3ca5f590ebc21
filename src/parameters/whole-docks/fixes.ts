/** What stands between a dock and its being built, by its findings. */
import type { Dock } from '../../../rules/index.ts'

export interface Fixes {
  readonly stops: number
  readonly warnings: number
}

export const fixesOf = (findings: Dock['findings']): Fixes => ({
  stops: findings.filter(({ severity }) => severity === 'stop').length,
  warnings: findings.filter(({ severity }) => severity === 'warn').length,
})
