/** What the selected leg or brace carries in its worst load case; shown beside its reasons. */
import type { Dock } from '../../rules/index.ts'
import { useWords, type Words } from '../ui/use-words.ts'
import { text } from '../words/index.ts'
import { caseInWords } from '../words/load-case-words.ts'
import { LOADS, type LoadWord } from '../words/loads.ts'
import { forceInWords, Use } from './structure-loads.tsx'

export function MemberUse({ id, dock }: { readonly id: string; readonly dock: Dock }) {
  const words = useWords(LOADS)
  if (!dock.structure) return dock.pending ? <p className="hint">{words.t('use.pending')}</p> : null
  const told = toldOf(id, dock, dock.structure, words)
  return (
    <>
      {told.map(({ use, line }) => (
        <p key={line} className="carries">
          {use !== null && <Use use={use} />} {line}
        </p>
      ))}
    </>
  )
}

interface Line {
  readonly use: number | null
  readonly line: string
}

/** Of a leg also what the brace of its pair carries, and what the braces are for. */
function toldOf(
  id: string,
  dock: Dock,
  structure: NonNullable<Dock['structure']>,
  words: Words<LoadWord>,
): Line[] {
  const { t } = words
  const leg = structure.legs.find((l) => l.leg === id)
  const pair = dock.pairs.find((p) => p.id === id || p.legs.includes(id))
  const brace = structure.braces.find((b) => b.pair === pair?.id)
  const share = (value: number) => ({ value, unit: 'share' })
  const small = (value: number) => ({ value: value * 1000, unit: 'mm' })
  return [
    ...(leg
      ? [
          {
            use: leg.use,
            line: t('use.leg', {
              case: text(caseInWords(leg.case, words)),
              use: share(leg.use),
              axial: { value: leg.axial, unit: 'N' },
              moment: { value: leg.moment, unit: 'Nm' },
            }),
          },
        ]
      : []),
    ...(brace
      ? [
          {
            use: brace.use,
            line: t('use.brace', {
              case: text(caseInWords(brace.case, words)),
              use: share(brace.use),
              axial: text(forceInWords(brace.axial, words)),
            }),
          },
          {
            use: null,
            line: t('use.brace-why', {
              bare: small(structure.swayUnbracedAcross),
              sway: small(structure.swayAcross),
            }),
          },
        ]
      : []),
  ]
}
