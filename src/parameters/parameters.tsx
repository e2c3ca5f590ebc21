import { useLeadline } from '../state/store.ts'
import { Group } from '../ui/controls.tsx'
import { Fold } from '../ui/fold.tsx'
import { chunk, Lazy } from '../ui/lazy.tsx'
import { useWords } from '../ui/use-words.ts'
import { DeckHeight } from './deck-height.tsx'
import { Extras } from './extras.tsx'
import { Bottom } from './lake-bottom.tsx'
import { Levels } from './lake-levels.tsx'
import { Unsaid } from './lake-unsaid.tsx'
import { FrameSize } from './section-size.tsx'
import { Run } from './shape.tsx'
import { ExposureChoice } from './wind.tsx'

const wholeDocks = chunk(() => import('./whole-docks/whole-docks.tsx').then((m) => m.WholeDocks))
const decking = chunk(() => import('./wants.ts').then((m) => m.Decking))
const edgePlan = chunk(() => import('./extras-placed/edge-plan.tsx').then((m) => m.EdgePlan))
const carried = chunk(() => import('./deck-loads.tsx').then((m) => m.DeckLoads))

export function Parameters() {
  const { t, priced } = useWords()
  const choosable = useLeadline((s) => (s.catalog.deckings?.length ?? 0) > 1)
  return (
    <>
      <Group title={t('group.dock')}>
        <DeckHeight />
        <Run />
        <FrameSize />
        {choosable && <Lazy chunk={decking} props={{}} />}
        <Extras />
        <Fold className="control" summary={t('extras.place')}>
          <Lazy chunk={edgePlan} props={{}} />
        </Fold>
        {priced && (
          <Fold className="control" summary={t('whole-docks.title')}>
            <Lazy chunk={wholeDocks} props={{}} />
          </Fold>
        )}
        <Fold className="control" summary={t('carried.title')}>
          <Lazy chunk={carried} props={{}} />
        </Fold>
      </Group>
      <Group title={t('group.water')}>
        <Unsaid />
        <Bottom />
        <Levels />
        <ExposureChoice />
      </Group>
    </>
  )
}
