/** What is bent, worn, cracked or lost: written down where it is seen, with a picture, and ordered again if it is to be. And notes. */
import { useState } from 'react'
import { shopOf } from '../../rules/catalog-index.ts'
import { KINDS, type PartKind } from '../../rules/part-kinds.ts'
import { type EntryOf, orderedKey, type Said } from '../../rules/record/index.ts'
import { kindWord } from '../../rules/words/dock-words.ts'
import { useLeadline } from '../state/store.ts'
import { Stepper } from '../ui/controls.tsx'
import { Select } from '../ui/select.tsx'
import { useNames } from '../ui/use-names.ts'
import { count, text } from '../words/index.ts'
import { LineField, Pick, Ticks } from './fields.tsx'
import { Frame, Head } from './frame.tsx'
import { useBegun, useSay } from './lake.ts'
import { legNumberOf } from './names.ts'
import { PhotoPick, Photos } from './photos.tsx'

type What = EntryOf<'wear'>['what']
const WHATS: readonly What[] = ['bent', 'worn', 'cracked', 'lost', 'corroded', 'other']
/** What is seen at the lake, in the order in which it is met. */
const PARTS = [
  'leg',
  'foot-pad',
  'brace',
  'brace-clamp',
  'frame',
  'deck-panel',
  'deck-clip',
  'set-bolt',
  'hook-bracket',
  'hook-bolt',
  'hinge-bar',
  'hinge-pin',
  'leg-cap',
  'bumper',
  'anchor-post',
  'accessory',
] as const satisfies readonly PartKind[]

interface Draft {
  readonly part: PartKind | 'note' | null
  /** Of the catalog; empty: not said. */
  readonly code: string
  readonly what: What | null
  readonly where: string
  readonly count: number
  readonly order: boolean
  readonly note: string
  readonly photos: EntryOf<'wear'>['photos']
  /** Entry that it is written in the place of; empty: of none. */
  readonly instead: string
}

const EMPTY: Draft = {
  part: null,
  code: '',
  what: null,
  where: '',
  count: 1,
  order: true,
  note: '',
  photos: [],
  instead: '',
}

/** What was written down, to be put right. */
const draftOf = (entry: EntryOf<'wear'> | EntryOf<'note'>): Draft => ({
  ...EMPTY,
  ...(entry.kind === 'wear'
    ? {
        ...{ part: entry.part, code: entry.code ?? '', what: entry.what, count: entry.count },
        ...{ order: entry.order, note: entry.note ?? '' },
      }
    : { part: 'note', note: entry.text }),
  where: entry.leg ?? '',
  photos: entry.photos ?? [],
  instead: entry.id,
})

/** A draft of an earlier version of the page may lack something. */
function draftFrom(kept: unknown): Draft {
  const was = (kept ?? {}) as Partial<Draft>
  const part = [...KINDS, 'note' as const].find((one) => one === was.part) ?? null
  return {
    part,
    code: typeof was.code === 'string' ? was.code : '',
    what: WHATS.find((one) => one === was.what) ?? null,
    where: typeof was.where === 'string' ? was.where : '',
    count: Number.isInteger(was.count) ? Number(was.count) : 1,
    order: was.order !== false,
    note: typeof was.note === 'string' ? was.note : '',
    photos: Array.isArray(was.photos) ? was.photos : [],
    instead: typeof was.instead === 'string' ? was.instead : '',
  }
}

export function Wear() {
  const { go, keeper, add } = useBegun()
  const { t } = useSay()
  const [draft, setDraft] = useState(() => draftFrom(keeper.draft('wear') ?? EMPTY))
  const put = (part: Partial<Draft>): void => {
    const to = { ...draft, ...part }
    keeper.keepDraft('wear', to)
    setDraft(to)
  }
  const entry = entryOf(draft)
  return (
    <Frame title={t('home.wear')} home={() => go({ at: 'home' })}>
      <Head of={t('wear.title')} />
      <PartPick draft={draft} put={put} />
      {draft.part !== null && draft.part !== 'note' && (
        <>
          <Pick<What>
            legend={t('wear.what')}
            value={draft.what}
            options={WHATS.map((value) => ({ value, label: t(`wear.${value}`) }))}
            set={(what) => put({ what })}
          />
          <Stepper
            label={t('wear.count')}
            fewer={t('wear.fewer')}
            more={t('wear.more')}
            value={draft.count}
            min={1}
            max={99}
            set={(many) => put({ count: many })}
          />
          <Ticks
            items={[{ key: 'order', label: t('wear.order') }]}
            done={() => draft.order}
            set={(_, order) => put({ order })}
          />
        </>
      )}
      {draft.part !== null && (
        <>
          <WherePick draft={draft} put={put} />
          <WhichPick draft={draft} put={put} />
          <LineField label={t('wear.note')} rows={2} value={draft.note} set={(note) => put({ note })} />
          <PhotoPick photos={draft.photos ?? []} set={(photos) => put({ photos: [...photos] })} />
          <div className="ways">
            <button
              type="button"
              className="main"
              disabled={entry === null}
              onClick={() => {
                if (!entry) return
                add(entry)
                // After the one that stands in its place: a phone that goes out between the two has one too many, and none too few.
                if (draft.instead !== '') add({ kind: 'void', voids: [draft.instead] })
                keeper.keepDraft('wear', null)
                setDraft(EMPTY)
              }}
            >
              {t(draft.instead === '' ? 'wear.keep' : 'right.write')}
            </button>
          </div>
        </>
      )}
      <WrittenDown right={(entry) => put(draftOf(entry))} />
    </Frame>
  )
}

interface PartProps {
  readonly draft: Draft
  readonly put: (part: Partial<Draft>) => void
}

function PartPick({ draft, put }: PartProps) {
  const { t, reader } = useSay()
  const options = ['none', ...PARTS, 'note'] as const
  return (
    <div className="text-field">
      <label htmlFor="lake-wear-part">{t('wear.part')}</label>
      <Select<(typeof options)[number]>
        id="lake-wear-part"
        value={options.find((one) => one === draft.part) ?? 'none'}
        options={options}
        wordOf={(one) =>
          one === 'note' ? t('wear.only-note') : one === 'none' ? t('wear.none') : kindWord(one, reader)
        }
        // None after all: nothing is put right either, and what stands there stays.
        set={(one) => put(one === 'none' ? EMPTY : { part: one, code: '' })}
      />
    </div>
  )
}

/** At which leg, if at one. */
function WherePick({ draft, put }: PartProps) {
  const { record } = useBegun()
  const { t } = useSay()
  return (
    <div className="text-field">
      <label htmlFor="lake-wear-where">{t('wear.where')}</label>
      <Select
        id="lake-wear-where"
        value={draft.where}
        options={['', ...record.legs.map(({ id }) => id)]}
        wordOf={(id) =>
          id === '' ? t('wear.anywhere') : t('leg.number', { n: count(legNumberOf(id, record)) })
        }
        set={(where) => put({ where })}
      />
    </div>
  )
}

/** Where the shop has several and the leg does not tell which: of legs and braces it does. */
function WhichPick({ draft, put }: PartProps) {
  const { record } = useBegun()
  const { t } = useSay()
  const catalog = useLeadline((s) => s.catalog)
  const named = useNames()
  const { part, where, code } = draft
  if (part === null || part === 'note' || record.catalog?.id !== catalog.id) return null
  const parts = shopOf(catalog).parts.filter(({ kind }) => kind === part)
  if (parts.length < 2 || (where !== '' && (part === 'leg' || part === 'brace'))) return null
  return (
    <div className="text-field">
      <label htmlFor="lake-wear-which">{t('wear.which')}</label>
      <Select
        id="lake-wear-which"
        value={code}
        options={['', ...parts.map((one) => one.code)]}
        wordOf={(one) => {
          const found = parts.find((part) => part.code === one)
          return found ? named(found) : t('level.later')
        }}
        set={(to) => put({ code: to })}
      />
    </div>
  )
}

function entryOf({ part, code, what, where, count: many, order, note, photos = [] }: Draft): Said | null {
  const rest = {
    ...(where === '' ? {} : { leg: where }),
    ...(photos.length > 0 ? { photos } : {}),
  }
  if (part === 'note')
    return note.trim() === '' && photos.length === 0 ? null : { kind: 'note', text: note.trim(), ...rest }
  if (part === null || what === null) return null
  return {
    kind: 'wear',
    part,
    ...(code === '' ? {} : { code }),
    what,
    count: many,
    order,
    ...(note.trim() === '' ? {} : { note: note.trim() }),
    ...rest,
  }
}

function ToRight({ right }: { readonly right: () => void }) {
  const { t } = useSay()
  return (
    <button
      type="button"
      className="quiet"
      onClick={(event) => {
        right()
        // The fields stand above.
        event.currentTarget.closest('.lake-day')?.scrollIntoView({ block: 'start' })
      }}
    >
      {t('right.write')}
    </button>
  )
}

/** It does not hold any more; in the record it stays, with what took it back. */
function TakeBack({ of }: { readonly of: string }) {
  const { add } = useBegun()
  const { t } = useSay()
  return (
    <button type="button" className="quiet" onClick={() => add({ kind: 'void', voids: [of] })}>
      {t('wear.take-back')}
    </button>
  )
}

interface WrittenDownProps {
  /** To be put right: it stands in the fields, and holds until that is written down. */
  readonly right: (entry: EntryOf<'wear'> | EntryOf<'note'>) => void
}

/** What was written down this season. */
function WrittenDown({ right }: WrittenDownProps) {
  const { state, record, go } = useBegun()
  const { t, reader } = useSay()
  const { wear, notes } = state
  if (wear.length + notes.length === 0) return null
  const isOrdered = (id: string): boolean => state.done.includes(orderedKey(id))
  const open = wear.filter(({ order, id }) => order && !isOrdered(id))
  const at = (leg: string | undefined): string =>
    leg === undefined ? '' : t('wear.at', { n: count(legNumberOf(leg, record)) })
  return (
    <div className="list">
      <h3>{t('wear.so-far')}</h3>
      <ul>
        {wear.map((one) => (
          <li key={one.id}>
            {t('wear.line', {
              count: count(one.count),
              part: text(kindWord(one.part, reader)),
              what: text(t(`wear.${one.what}`)),
              at: text(at(one.leg)),
            })}
            {one.note && ` ${one.note}`}
            {isOrdered(one.id) && ` ${t('wear.ordered')}`}
            <Photos photos={one.photos ?? []} />
            {!isOrdered(one.id) && <ToRight right={() => right(one)} />}
            <TakeBack of={one.id} />
          </li>
        ))}
        {notes.map((one) => (
          <li key={one.id}>
            {one.text} {at(one.leg)}
            <Photos photos={one.photos ?? []} />
            <ToRight right={() => right(one)} />
            <TakeBack of={one.id} />
          </li>
        ))}
      </ul>
      {open.length > 0 && (
        <button type="button" onClick={() => go({ at: 'shop' })}>
          {t('home.shop', { count: count(open.length) })}
        </button>
      )}
    </div>
  )
}
