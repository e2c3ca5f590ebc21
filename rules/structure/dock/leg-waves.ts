import type { Waves } from '../../dock.ts'
export function legWave(_w: Waves, _width: number, _depth: number): { force: number; arm: number } | null {
  return null
}
