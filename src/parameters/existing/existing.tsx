/** A dock that is there already: taken from an earlier one, a file or a link, or counted by hand; what becomes of its parts. */
import { useState } from 'react'
import { existingFrom, partsOfDesign } from '../../../rules/existing/from-parts.ts'
import type { ExistingParts } from '../../../rules/existing/owned.ts'
import type { Design, Issue, Named } from '../../../rules/index.ts'
import { EXISTING, leftLines, newLines, usedLines } from '../../../rules/words/existing-text.ts'
import { dockIn } from '../../../rules/words/part-names.ts'
import { useLeadline, usePlaced } from '../../state/store.ts'
import { Stepper } from '../../ui/controls.tsx'
import { FilePick } from '../../ui/file-picker.tsx'
import { Fold } from '../../ui/fold.tsx'
import { EarlierPick, LinkPick } from '../../ui/pick-dock.tsx'
import { useNames } from '../../ui/use-names.ts'
import { useWords } from '../../ui/use-words.ts'
import { text } from '../../words/index.ts'
import { ownedLegs, setExisting, setOwnedFrames, setOwnedLegs } from './edits.ts'
import { readOwned } from './read-owned.ts'

/** More than anyone counts by hand. */
const MOST = 999

export function ExistingDock() {
  const { t } = useWords(EXISTING)
  return (
    <Fold className="control" summary={t('fold')}>
      <Take />
      <Counted />
      <Becomes />
    </Fold>
  )
}

/** Whatever is taken stands in the place of what stood there, as one step of undo. */
function Take() {
  const { t } = useWords(EXISTING)
  const catalog = useLeadline((s) => s.catalog)
  const some = useLeadline((s) => s.design.dock.existing !== undefined)
  const edit = useLeadline((s) => s.edit)
  const [fault, setFault] = useState<string | null>(null)
  const set = (existing: ExistingParts | null): void => {
    setFault(null)
    edit((d) => setExisting(d, existing))
  }
  const bad = (name: string, [first]: readonly Issue[]): void =>
    setFault(
      t('bad', {
        file: text(name),
        why: text(first?.path ? `${first.path}: ${first.message}` : (first?.message ?? '')),
      }),
    )
  const takeDesign = (design: Design): void => set(existingFrom(partsOfDesign(design, catalog), catalog))
  return (
    <>
      <p className="hint">{t('lead')}</p>
      <div className="actions">
        <FilePick
          label={t('file')}
          take={async (file) => {
            const read = readOwned(await file.text(), catalog)
            if (read.ok) set(read.value)
            else bad(file.name, read.issues)
          }}
        />
        <EarlierPick label={t('earlier')} take={takeDesign} />
        {some && (
          <button type="button" onClick={() => set(null)}>
            {t('none')}
          </button>
        )}
      </div>
      <LinkPick label={t('link')} take={takeDesign} bad={() => setFault(t('link-bad'))} />
      {fault && (
        <p className="fault" role="alert">
          {fault}
        </p>
      )}
    </>
  )
}

/** Sections and legs; what else a file told of stays as it is. */
function Counted() {
  const { t } = useWords(EXISTING)
  const { frames, legs } = useLeadline((s) => s.catalog)
  const design = useLeadline((s) => s.design)
  const edit = useLeadline((s) => s.edit)
  const named = useNames()
  const one = (part: Named, value: number, set: (n: number) => void) => {
    const name = named(part)
    return (
      <Stepper
        key={part.code}
        label={name}
        fewer={t('fewer', { part: text(name) })}
        more={t('more', { part: text(name) })}
        value={value}
        min={0}
        max={MOST}
        set={set}
      />
    )
  }
  return (
    <fieldset className="control list">
      <legend>{t('count')}</legend>
      {frames.map((frame) =>
        one(frame, design.dock.existing?.sections?.[frame.code] ?? 0, (n) =>
          edit((d) => setOwnedFrames(d, frame.code, n)),
        ),
      )}
      {legs.map((leg) =>
        one(leg, ownedLegs(design, leg.length), (n) => edit((d) => setOwnedLegs(d, leg.length, n))),
      )}
    </fieldset>
  )
}

function Becomes() {
  const catalog = useLeadline((s) => s.catalog)
  const words = useWords(EXISTING)
  const dock = dockIn(usePlaced(), catalog, words.language)
  const { existing } = dock
  const { t } = words
  if (!existing) return null
  const told = (title: string, lines: readonly string[], none: string | null) =>
    lines.length === 0 ? (
      none && <p className="hint">{none}</p>
    ) : (
      <section aria-label={title}>
        <h3>{title}</h3>
        <ul className="hint">
          {lines.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </section>
    )
  return (
    <>
      {told(t('used'), usedLines(existing, words, dock), null)}
      {told(t('left'), leftLines(existing, words), t('left-none'))}
      {told(t('new'), newLines(existing.new, words), t('new-none'))}
    </>
  )
}
