/** The caption of the moving water: its wave heights, length and period. */

import { useThree } from '@react-three/fiber'
import { useLayoutEffect, useRef } from 'react'
import { EXACT, type Reader, say, type Units, type Waves } from '../../../rules/index.ts'
import { meters } from '../../words/index.ts'
import { SCENE } from '../../words/scene.ts'
import type { Shell } from '../shell.ts'

/** A length in whole feet or half meters, short ones in half feet or tenths: nobody counts the inches from crest to crest. */
function rough(length: number, units: Units): number {
  const large = units === 'imperial' ? EXACT.foot : 0.5
  const step = length > 8 * large ? large : units === 'imperial' ? large / 2 : 0.1
  return Math.round(length / step) * step
}

/** Gives the height that the words take along the upper edge, px, to whoever asks at a frame. */
export function useCaption(shell: Shell, waves: Waves | null, reader: Reader): () => number {
  const size = useThree((s) => s.size)
  const height = useRef(0)
  // biome-ignore lint/correctness/useExhaustiveDependencies: it takes another height in another size.
  useLayoutEffect(() => {
    height.current = shell.caption(
      waves &&
        say(SCENE, reader, 'waves', {
          height: meters(waves.height),
          tenth: meters(waves.tenth),
          length: meters(rough(waves.length, reader.units)),
          period: { value: waves.period, unit: 's' },
        }),
    )
  }, [shell, waves, reader, size])
  return () => height.current
}
