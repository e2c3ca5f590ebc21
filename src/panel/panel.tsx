/** The panel: the few parameters, then the answers in the order in which they are asked for. */
import { wordsIn } from '../../rules/index.ts'
import { useWords } from '../words/use-words.ts'
import { Fold } from './fold.tsx'
import { chunk, Later } from './later.tsx'
import { Parameters } from './parameters.tsx'
import { Stands } from './stands.tsx'
import { Takes } from './takes.tsx'
import { What } from './what.tsx'

const papers = chunk(() => import('../sheets/papers.tsx').then((m) => m.Papers))
const why = chunk(() => import('./why.tsx').then((m) => m.Why))

export function Panel() {
  const { lang, t } = useWords()
  return (
    <div className="panel" part="panel">
      <Parameters />
      <Stands />
      <What />
      <Takes />
      <Fold className="answer why" title={t('why.title')}>
        <Later chunk={why} props={{}} />
      </Fold>
      <Fold className="answer papers" title={t('papers.title')}>
        <Later chunk={papers} props={{}} />
      </Fold>
      <Fold className="answer cautions" id="cautions" title={t('cautions.title')} print>
        <ul>
          {wordsIn(lang).cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      </Fold>
    </div>
  )
}
