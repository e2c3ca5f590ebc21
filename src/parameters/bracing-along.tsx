/** Braces along the dock, where the shop sells such: none, at the lake end, or wherever they fit. */
import type { Design } from '../../rules/index.ts'
import { useLeadline } from '../state/store.ts'
import { Choice } from '../ui/controls.tsx'
import { useWords } from '../ui/use-words.ts'
import { WANTS } from '../words/wants.ts'

type Along = NonNullable<NonNullable<Design['dock']['bracing']>['along']> | 'none'
const WHERE: readonly Along[] = ['none', 'last', 'all']

export function BracingAlong() {
  const along = useLeadline((s) => s.design.dock.bracing?.along ?? 'none')
  const sold = useLeadline((s) => s.catalog.braces.some((brace) => brace.along))
  const edit = useLeadline((s) => s.edit)
  const { t } = useWords(WANTS)
  // What is asked for stays in reach where another catalog has come.
  if (!sold && along === 'none') return null
  return (
    <div className="control">
      <Choice
        legend={t('along.label')}
        value={along}
        options={WHERE.map((value) => ({ value, label: t(`along.${value}`) }))}
        hint={t('along.hint')}
        set={(value) => edit((design) => setAlong(design, value))}
      />
    </div>
  )
}

/** A design that asks for none says nothing of it. */
function setAlong({ dock: { bracing, ...dock }, ...design }: Design, to: Along): Design {
  const { along: _, ...rest } = bracing ?? {}
  const next = to === 'none' ? rest : { ...rest, along: to }
  return { ...design, dock: Object.keys(next).length > 0 ? { ...dock, bracing: next } : dock }
}
