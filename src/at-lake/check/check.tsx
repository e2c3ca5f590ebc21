/** Whether the deck lies level: measured down to the water at legs, or with a level laid on the deck. Then which leg goes by how much, as few as can be. */
import { useState } from 'react'
import { type LevelCheck, levelCheck } from '../../../rules/at-lake/index.ts'
import { Frame } from '../frame.tsx'
import { cameFrom, useBegun, useSay } from '../lake.ts'
import { usePart } from '../trail.ts'
import { ByHand } from './by-hand.tsx'
import { type Draft, draftFrom, readingsOf } from './draft.ts'
import { Readings } from './readings.tsx'
import { Result } from './result.tsx'

const PARTS = ['result'] as const

export function Check() {
  const begun = useBegun()
  const { t } = useSay()
  const { go, keeper, project, page } = begun
  const [draft, setDraft] = useState(() => draftFrom(keeper.draft('check')))
  const [found, setFound] = useState<LevelCheck | null>(null)
  const [part, setPart] = usePart(PARTS)
  const result = part === 'result' ? found : null
  const put = (part: Partial<Draft>): void => {
    const to = { ...draft, ...part }
    keeper.keepDraft('check', to)
    setDraft(to)
  }
  const done = (): void => {
    keeper.keepDraft('check', null)
    go(cameFrom(page))
  }
  return (
    <Frame
      title={t('check.title')}
      back={result ? () => setPart(null) : undefined}
      home={() => go({ at: 'home' })}
    >
      {!project ? (
        <ByHand done={done} />
      ) : result ? (
        <Result
          found={result}
          draft={draft}
          moved={() => {
            put({ readings: [], bubbles: [], hanging: [], at: 0, after: true })
            setPart(null)
          }}
          again={() => setPart(null)}
          done={done}
        />
      ) : (
        <Readings
          draft={draft}
          put={put}
          find={() => {
            setFound(levelCheck(readingsOf(draft, begun), project))
            setPart('result')
          }}
        />
      )}
    </Frame>
  )
}
