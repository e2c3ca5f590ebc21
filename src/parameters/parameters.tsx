import { useLeadline } from '../state/store.ts'
import { Group } from '../ui/controls.tsx'
import { Fold } from '../ui/fold.tsx'
import { chunk, Lazy } from '../ui/lazy.tsx'
import { useWords } from '../ui/use-words.ts'
import { DeckHeight } from './deck-height.tsx'
import { Bottom } from './lake-bottom.tsx'
import { Unsaid } from './lake-unsaid.tsx'
import { Run } from './shape.tsx'

const gauge = chunk(() => import('./gauge/gauge.tsx').then((m) => m.Gauge))
const limits = chunk(() => import('./limits/limits.tsx').then((m) => m.Limits))
const wholeDocks = chunk(() => import('./whole-docks/whole-docks.tsx').then((m) => m.WholeDocks))
const extras = chunk(() => import('./wants.ts').then((m) => m.Extras))
const frameSize = chunk(() => import('./wants.ts').then((m) => m.FrameSize))
const levels = chunk(() => import('./wants.ts').then((m) => m.Levels))
const exposure = chunk(() => import('./wants.ts').then((m) => m.ExposureChoice))
const decking = chunk(() => import('./wants.ts').then((m) => m.Decking))
const edgePlan = chunk(() => import('./extras-placed/edge-plan.tsx').then((m) => m.EdgePlan))
const myBoat = chunk(() => import('./boats/boats.tsx').then((m) => m.Boats))
const existing = chunk(() => import('./existing/existing.tsx').then((m) => m.ExistingDock))
const people = chunk(() => import('./deck-loads.tsx').then((m) => m.People))

export function Parameters() {
  const { t, priced } = useWords()
  const choosable = useLeadline((s) => (s.catalog.deckings?.length ?? 0) > 1)
  return (
    <>
      <Group title={t('group.dock')}>
        <DeckHeight />
        <Run />
        <Lazy chunk={myBoat} props={{}} />
        <Lazy chunk={frameSize} props={{}} />
        {choosable && <Lazy chunk={decking} props={{}} />}
        <Lazy chunk={extras} props={{}} />
        <Fold className="control" summary={t('extras.place')}>
          <Lazy chunk={edgePlan} props={{}} />
        </Fold>
        {priced && (
          <Fold className="control" summary={t('whole-docks.title')}>
            <Lazy chunk={wholeDocks} props={{}} />
          </Fold>
        )}
        <Lazy chunk={existing} props={{}} />
        <Fold className="control" summary={t('carried.title')}>
          <Lazy chunk={people} props={{}} />
        </Fold>
      </Group>
      <Group title={t('group.water')}>
        <Unsaid />
        <Bottom />
        <Lazy chunk={levels} props={{}} />
        <Lazy chunk={gauge} props={{}} />
        <Lazy chunk={exposure} props={{}} />
        <Lazy chunk={limits} props={{}} />
      </Group>
    </>
  )
}
