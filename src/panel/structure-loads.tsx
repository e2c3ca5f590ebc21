/** What every part takes: the figures behind the verdict, for whoever asks. Each in its worst case, and that case in words. */
import type { ReactNode } from 'react'
import type { Dock, Figure, Structure } from '../../rules/index.ts'
import { legNumber } from '../../rules/leg-places.ts'
import { BARE_BED } from '../../rules/structure/strength/bearing.ts'
import { GUARD_PUSH } from '../../rules/structure/strength/loads-published.ts'
import { swayWord } from '../../rules/structure/strength/serviceability.ts'
import { legListed, pairListed } from '../../rules/words/leg-name.ts'
import { isJudged, useDock, useLeadline } from '../state/store.ts'
import { Fold } from '../ui/fold.tsx'
import { useWords, type Words } from '../ui/use-words.ts'
import { type Band, bandOf } from '../utilization/utilization-band.ts'
import { count, meters, text } from '../words/index.ts'
import { caseInWords } from '../words/load-case-words.ts'
import { LOADS, type LoadWord } from '../words/loads.ts'
import { PickButton } from './pick-button.tsx'
import { StableHeight } from './stable-height.tsx'

const newtons = (value: number): Figure => ({ value, unit: 'N' })
const share = (value: number): Figure => ({ value, unit: 'share' })
const small = (value: number): Figure => ({ value: value * 1000, unit: 'mm' })

export function Loads() {
  const dock = useDock()
  const whole = useLeadline(isJudged)
  const { structure } = dock
  const { t } = useWords(LOADS)
  return (
    <StableHeight whole={whole}>
      {structure ? (
        <Told dock={dock} structure={structure} />
      ) : (
        <p className="hint">{t(dock.pending ? 'loads.checking' : 'loads.none')}</p>
      )}
    </StableHeight>
  )
}

function Told({ dock, structure }: { readonly dock: Dock; readonly structure: Structure }) {
  const { t } = useWords(LOADS)
  const intro = t(dock.waves ? 'loads.intro' : 'loads.intro-calm', {
    cases: count(structure.cases),
    live: { value: structure.live, unit: 'Pa' },
  })
  return (
    <div className="loads">
      {structure.legs.length === 0 ? (
        <p className="hint">{t('loads.past', { live: { value: structure.live, unit: 'Pa' } })}</p>
      ) : (
        <>
          <p className="hint">{intro}</p>
          <Legs dock={dock} structure={structure} />
        </>
      )}
      {structure.braces.length > 0 && <Braces dock={dock} structure={structure} />}
      {structure.rails.length > 0 && <Frames structure={structure} />}
      {structure.feet.length > 0 && <Feet dock={dock} structure={structure} />}
      {structure.hooks.length > 0 && <Hooks dock={dock} structure={structure} />}
      <Sway dock={dock} structure={structure} />
      <Lean structure={structure} />
      <p className="hint">{t('loads.screening')}</p>
    </div>
  )
}

/** Use as a bar, a figure and a word together, so that no one of them is needed alone. */
export function Use({ use }: { readonly use: number }) {
  const { t } = useWords(LOADS)
  const band = bandOf(use)
  return <Bar use={use} full={1} band={band} word={t(`loads.word.${band}`)} />
}

/** What a bare bed is trusted with is half of what it is presumed to bear: from the one to the other a foot settles, beyond it sinks. */
function BedUse({ use }: { readonly use: number }) {
  const { t } = useWords(LOADS)
  const [band, word] =
    use <= 1
      ? (['little', t('loads.bed.holds')] as const)
      : use * BARE_BED <= 1
        ? (['much', t('loads.bed.settles')] as const)
        : (['over', t('loads.bed.sinks')] as const)
  return <Bar use={use} full={1 / BARE_BED} band={band} word={word} />
}

function Bar(props: {
  readonly use: number
  readonly full: number
  readonly band: Band
  readonly word: string
}) {
  const { use, full, band, word } = props
  const { figure } = useWords(LOADS)
  return (
    <span className={`use ${band}`}>
      <span className="use-bar" aria-hidden="true">
        <span style={{ inlineSize: `${Math.min(100, (use / full) * 100).toFixed(1)}%` }} />
      </span>
      <span>{figure({ value: use, unit: 'use' })}</span>
      <small>{word}</small>
    </span>
  )
}

interface Row {
  readonly id: string
  readonly name: string
  /** Under its name, over the whole width. */
  readonly notes: readonly string[]
  readonly cells: readonly ReactNode[]
}

/** What lights up in the drawing too. */
function Table({ head, rows }: { readonly head: readonly string[]; readonly rows: readonly Row[] }) {
  const set = useLeadline((s) => s.set)
  const selection = useLeadline((s) => s.selection)
  return (
    <div className="scroll">
      <table className="of-loads">
        <thead>
          <tr>
            {head.map((name) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        {rows.map(({ id, name, notes, cells }) => (
          <tbody
            key={id}
            data-of={id}
            className={selection === id ? 'lit' : ''}
            onPointerEnter={() => set({ hover: id })}
            onPointerLeave={() => set({ hover: null })}
          >
            <tr>
              <th scope="row">
                <PickButton id={id}>{name}</PickButton>
              </th>
              {cells.map((cell, i) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: columns have no names but their order.
                <td key={i}>{cell}</td>
              ))}
            </tr>
            <tr className="notes-of">
              <td colSpan={head.length}>
                {notes.map((note) => (
                  <p key={note}>{note}</p>
                ))}
              </td>
            </tr>
          </tbody>
        ))}
      </table>
    </div>
  )
}

/** A kind of part with its worst, the table a tap deeper. */
function Group(props: {
  readonly name: string
  readonly use: ReactNode
  readonly hint?: string
  readonly head: readonly string[]
  readonly rows: () => readonly Row[]
}) {
  const { name, use, hint, head, rows } = props
  return (
    <Fold
      className="load-group"
      summary={
        <>
          <span>{name}</span> {use}
        </>
      }
    >
      {hint !== undefined && <p className="hint">{hint}</p>}
      <Rows head={head} rows={rows} />
    </Fold>
  )
}
/** Rendered only when unfolded. */
const Rows = ({ head, rows }: { readonly head: readonly string[]; readonly rows: () => readonly Row[] }) => (
  <Table head={head} rows={rows()} />
)

const most = <T,>(list: readonly T[], figure: (item: T) => number): number =>
  list.reduce((high, item) => Math.max(high, figure(item)), 0)

const worstWith = (name: string, words: Words<LoadWord>): string =>
  words.t('loads.worst', { case: text(caseInWords(name, words)) })

interface Shown {
  readonly dock: Dock
  readonly structure: Structure
}

function Legs({ dock, structure: { legs } }: Shown) {
  const words = useWords(LOADS)
  const { t, figure } = words
  return (
    <Group
      name={t('loads.legs')}
      use={<Use use={most(legs, (leg) => leg.use)} />}
      head={['where', 'push', 'bending', 'used'].map((key) => t(`loads.${key}` as 'loads.where'))}
      rows={() =>
        legs.map(({ leg, axial, moment, use, case: name }) => ({
          id: leg,
          name: legListed(dock, leg, words.reader),
          notes: [worstWith(name, words)],
          cells: [
            axial < 0 ? t('loads.pulled', { force: newtons(-axial) }) : figure(newtons(axial)),
            figure({ value: moment, unit: 'Nm' }),
            <Use key="use" use={use} />,
          ],
        }))
      }
    />
  )
}

export const forceInWords = (axial: number, { t }: Pick<Words<LoadWord>, 't'>): string =>
  t(axial < 0 ? 'loads.pressed' : 'loads.pulled', { force: newtons(Math.abs(axial)) })

function Braces({ dock, structure: { braces } }: Shown) {
  const words = useWords(LOADS)
  const { t } = words
  return (
    <Group
      name={t('loads.braces')}
      use={<Use use={most(braces, (brace) => brace.use)} />}
      head={[t('loads.where'), t('loads.force'), t('loads.used')]}
      rows={() =>
        braces.map(({ pair, axial, use, case: name }) => ({
          id: pair,
          name: t('loads.pair', { legs: text(pairListed(dock, pair)) }),
          notes: [worstWith(name, words)],
          cells: [forceInWords(axial, words), <Use key="use" use={use} />],
        }))
      }
    />
  )
}

function Frames({ structure: { rails } }: Pick<Shown, 'structure'>) {
  const words = useWords(LOADS)
  const { t } = words
  return (
    <Group
      name={t('loads.frames')}
      use={<Use use={most(rails, (rail) => rail.use)} />}
      head={[t('loads.where'), t('loads.sag'), t('loads.used')]}
      rows={() =>
        rails.map(({ section, use, deflection, span, case: name }) => ({
          id: section,
          name: section,
          notes: [worstWith(name, words)],
          cells: [
            t('loads.sag-of', { sag: small(deflection), span: meters(span) }),
            <Use key="use" use={use} />,
          ],
        }))
      }
    />
  )
}

function Feet({ dock, structure: { feet } }: Shown) {
  const words = useWords(LOADS)
  const { t, figure } = words
  const trusted = feet.flatMap(({ use }) => (use === null ? [] : [use]))
  return (
    <Group
      name={t('loads.feet')}
      use={trusted.length > 0 && <BedUse use={most(trusted, (use) => use)} />}
      hint={t('loads.bed')}
      head={['where', 'presses', 'pressure', 'used'].map((key) => t(`loads.${key}` as 'loads.where'))}
      rows={() =>
        feet.map((foot) => ({
          id: foot.leg,
          name: legListed(dock, foot.leg, words.reader),
          notes: [
            worstWith(foot.case, words),
            foot.lifts
              ? t('loads.lifts', { case: text(caseInWords(foot.liftCase ?? '', words)) })
              : t('loads.lifts-not'),
            foot.slides ? t('loads.slides') : t('loads.slides-not', { push: share(foot.push) }),
          ],
          cells: [
            figure(newtons(foot.load)),
            figure({ value: foot.pressure, unit: 'Pa' }),
            foot.use === null ? t('loads.bed-none') : <BedUse key="use" use={foot.use} />,
          ],
        }))
      }
    />
  )
}

function Hooks({ dock, structure: { hooks } }: Shown) {
  const words = useWords(LOADS)
  const { t, figure } = words
  return (
    <Group
      name={t('loads.hooks')}
      use={null}
      head={[t('loads.where'), t('loads.bears'), t('loads.pulled-up')]}
      rows={() =>
        hooks.map(({ joint, down, up, upCase }) => ({
          id: joint,
          name: dock.joints.find(({ id }) => id === joint)?.between.join(' – ') ?? joint,
          notes: upCase === null ? [] : [t('loads.up-with', { case: text(caseInWords(upCase, words)) })],
          cells: [figure(newtons(down)), figure(newtons(up))],
        }))
      }
    />
  )
}

function Sway({ dock, structure }: Shown) {
  const words = useWords(LOADS)
  const { t } = words
  const { swayAcross, swayAlong, swayUnbracedAcross, playAlong, playAcross, uneven, braces, slides } =
    structure
  const felt = (sway: number) => text(t(`loads.sway.${swayWord(sway, GUARD_PUSH)}`))
  return (
    <section>
      <h3>{t('loads.sway')}</h3>
      <p>
        {t('loads.sway.across', {
          push: newtons(GUARD_PUSH),
          sway: small(swayAcross),
          word: felt(swayAcross),
        })}{' '}
        {braces.length === 0
          ? t('loads.sway.no-braces')
          : t('loads.sway.bare', {
              sway: small(swayUnbracedAcross),
              times: { value: swayUnbracedAcross / Math.max(swayAcross, 1e-6), unit: 'factor-rough' },
            })}
      </p>
      <p>{t('loads.sway.along', { sway: small(swayAlong), word: felt(swayAlong) })}</p>
      <p>{t('loads.play', { along: small(playAlong), across: small(playAcross) })}</p>
      {uneven && (
        <p>
          {t('loads.uneven', {
            by: small(uneven.by),
            low: count(legNumber(dock, uneven.low)),
            leg: count(legNumber(dock, uneven.leg)),
            use: share(uneven.use),
          })}{' '}
          {uneven.hangs.length > 0 && t('loads.uneven.hangs', { legs: count(uneven.hangs.length) })}
        </p>
      )}
      <p>
        {t(slides.slides ? 'loads.slip.over' : 'loads.slip.holds', {
          push: share(slides.push),
          case: text(caseInWords(slides.case ?? '', words)),
        })}
      </p>
    </section>
  )
}

function Lean({ structure }: Pick<Shown, 'structure'>) {
  const { t } = useWords(LOADS)
  const { buckling, bucklingUnbraced, deep, braces, sleeve, sleeves } = structure
  const times = (value: number | null) => (value === null ? text('–') : { value, unit: 'factor-rough' })
  return (
    <section>
      <h3>{t('loads.lean')}</h3>
      {!deep ? (
        <p>{t('loads.lean.later')}</p>
      ) : (
        <>
          <p>
            {buckling === null ? t('loads.lean.none') : t('loads.lean.factor', { factor: times(buckling) })}{' '}
            {braces.length > 0 && bucklingUnbraced !== null
              ? t('loads.lean.bare', { factor: times(bucklingUnbraced) })
              : ''}
          </p>
          <p>
            {t('loads.sleeve', { stiffness: { value: sleeve.stiffness, unit: 'Nm' } })}{' '}
            {sleeve.stated ? '' : t('loads.sleeve.guess')}
          </p>
          <ul>
            {sleeves.map(({ part, buckling: factor, legUse, swayAlong }) => (
              <li key={part}>
                {t(part < 1 ? 'loads.sleeve.half' : 'loads.sleeve.double', {
                  factor: times(factor),
                  use: legUse === null ? text('–') : share(legUse),
                  along: small(swayAlong),
                })}
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  )
}
