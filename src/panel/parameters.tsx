/** The few parameters, each with what it changes. */
import { LIMITS } from '../../rules/index.ts'
import { EXPOSURES } from '../../rules/site/waves/exposures.ts'
import { useDock, useLeadline } from '../state/store.ts'
import { Choice, Group, Hint, LengthSlider, Stepper } from '../ui/controls.tsx'
import { Fold } from '../ui/fold.tsx'
import { chunk, Lazy } from '../ui/lazy.tsx'
import { LengthField } from '../ui/quantity-field.tsx'
import { snapUp } from '../units/steps.ts'
import { meters, text } from '../words/index.ts'
import { useWords } from '../words/use-words.ts'
import * as change from './design-edits.ts'
import { dockFacts } from './dock-facts.ts'
import { HeadPicture, type HeadShape } from './pictures.tsx'

const carried = chunk(() => import('./deck-loads.tsx').then((m) => m.DeckLoads))

export function Parameters() {
  const { t } = useWords()
  return (
    <>
      <Group title={t('group.dock')}>
        <DeckHeight />
        <Run />
        <FrameSize />
        <Extras />
        <Fold className="control" summary={t('carried.title')}>
          <Lazy chunk={carried} props={{}} />
        </Fold>
      </Group>
      <Group title={t('group.water')}>
        <Bottom />
        <Levels />
        <ExposureChoice />
      </Group>
    </>
  )
}

function DeckHeight() {
  const height = useLeadline((s) => s.design.dock.deckHeight)
  const high = useLeadline((s) => s.design.site.levels.high)
  const edit = useLeadline((s) => s.edit)
  const { t, length } = useWords()
  const over = height - high
  return (
    <div className="control">
      <LengthField
        label={t('deck.label')}
        value={height}
        commit={(to) => edit((d) => change.setDeck(d, to))}
        className="beside"
      />
      <LengthSlider
        label={t('deck.label')}
        value={height}
        min={0}
        max={1.5}
        valueText={length(height)}
        set={(to, gesture) => edit((d) => change.setDeck(d, to), { gesture })}
      />
      <Hint>
        {t(over < 0 ? 'deck.under-high' : 'deck.over-high', { height: meters(Math.abs(over)) })}{' '}
        {t('deck.hint')}
      </Hint>
      <ClearOfWaves />
    </div>
  )
}

/** The two heights that clear the waves, to be taken by a tap; the deck stays where it is until then. */
function ClearOfWaves() {
  const { waves } = useDock()
  const deck = useLeadline((s) => s.design.dock.deckHeight)
  const high = useLeadline((s) => s.design.site.levels.high)
  const edit = useLeadline((s) => s.edit)
  const { t, units } = useWords()
  if (!waves) return null
  const height = (key: 'waves.re-set' | 'waves.re-set-short' | 'waves.all-season', least: number) => {
    const to = snapUp(least, units)
    return (
      <button
        type="button"
        aria-pressed={Math.abs(deck - to) < 1e-6}
        onClick={() => edit((d) => change.setDeck(d, to))}
      >
        {t(key, { height: meters(to), rise: meters(waves.canRise ?? 0) })}
      </button>
    )
  }
  const reaches = waves.canRise === null || waves.canRise >= Math.max(0, high) - 1e-6
  return (
    // biome-ignore lint/a11y/useSemanticElements: two buttons with their name before them, not fields.
    <div className="heights" role="group" aria-label={t('waves.deck')}>
      <Hint>{t('waves.deck')}</Hint>
      {height(reaches ? 'waves.re-set' : 'waves.re-set-short', waves.recommendedDeckHeight)}
      {height('waves.all-season', waves.recommendedAllSeason)}
    </div>
  )
}

const SHAPES: readonly HeadShape[] = ['straight', 'left', 'right', 'tee', 'wide']

function Run() {
  const design = useLeadline((s) => s.design)
  const edit = useLeadline((s) => s.edit)
  const dock = useDock()
  const stale = useLeadline((s) => s.stale)
  const { t } = useWords()
  if (design.dock.plan) return <Hint>{t('plan.own')}</Hint>
  const { sections = 1, ramp = false, head = { shape: 'straight', sections: 0 } } = design.dock
  const { reach, depth } = dockFacts(dock, design)
  const step = change.headStep(head.shape)
  return (
    <>
      <div className="control">
        <Stepper
          label={t('sections.label')}
          fewer={t('sections.fewer')}
          more={t('sections.more')}
          value={sections}
          min={ramp ? 2 : 1}
          max={LIMITS.sections - head.sections}
          set={(n) => edit((d) => change.setSections(d, n))}
        />
        <Hint>
          {stale ? t('takes.working') : t('sections.reach', { reach: meters(reach), depth: meters(depth) })}
        </Hint>
      </div>
      <div className="control">
        <label className="switch">
          <span>{t('ramp.label')}</span>
          <input
            type="checkbox"
            checked={ramp}
            onChange={(event) => {
              const on = event.currentTarget.checked
              edit((d) => change.setRamp(d, on))
            }}
          />
        </label>
        <RampHint on={ramp} />
      </div>
      <div className="control">
        <Choice
          legend={t('head.label')}
          value={head.shape}
          columns={5}
          options={SHAPES.map((shape) => ({
            value: shape,
            label: t(`head.${shape}`),
            picture: <HeadPicture shape={shape} />,
          }))}
          set={(shape) => edit((d) => change.setHead(d, shape))}
        />
        {head.shape !== 'straight' && (
          <Stepper
            label={t('head.count')}
            fewer={t('head.fewer')}
            more={t('head.more')}
            value={head.sections}
            min={step}
            max={head.shape === 'wide' ? change.legged(design) : 40}
            by={step}
            set={(n) => edit((d) => change.setHeadSections(d, n))}
          />
        )}
        {(head.shape === 'left' || head.shape === 'right') && <Hint>{t('head.hint')}</Hint>}
      </div>
    </>
  )
}

function RampHint({ on }: { readonly on: boolean }) {
  const { ramp } = useDock()
  const { t } = useWords()
  const stale = useLeadline((s) => s.stale)
  if (!on) return <Hint>{t('ramp.off')}</Hint>
  // Its slope is of an earlier dock while this one is worked out.
  if (!ramp || stale) return <Hint>{t('ramp.on')}</Hint>
  const way = Math.abs(ramp.slope) < 0.005 ? 'level' : ramp.slope > 0 ? 'up' : 'down'
  const values = { slope: { value: ramp.slope, unit: 'slope' }, step: meters(Math.abs(ramp.step)) }
  return (
    <Hint>
      {t('ramp.on')} {t(`ramp.${way}`, values)}
    </Hint>
  )
}

function FrameSize() {
  const frame = useLeadline((s) => s.design.dock.frame)
  const frames = useLeadline((s) => s.catalog.frames)
  const edit = useLeadline((s) => s.edit)
  const { t, money, priced } = useWords()
  return (
    <div className="control">
      <Choice
        legend={t('frame.label')}
        value={frame}
        options={frames.map((f) => ({
          value: f.code,
          label: (
            <>
              {f.name}
              {priced && <small>{money(f.price)}</small>}
            </>
          ),
        }))}
        set={(code) => edit((d) => change.setFrame(d, code))}
      />
    </div>
  )
}

function Extras() {
  const extras = useLeadline((s) => s.catalog.extras)
  const wanted = useLeadline((s) => s.design.dock.extras)
  const edit = useLeadline((s) => s.edit)
  const { t } = useWords()
  return (
    <fieldset className="control list">
      <legend>{t('extras.label')}</legend>
      {extras.map(({ code, name }) => (
        <Stepper
          key={code}
          label={name}
          fewer={t('extras.fewer', { name: text(name) })}
          more={t('extras.more', { name: text(name) })}
          value={wanted[code] ?? 0}
          min={0}
          max={LIMITS.extras}
          set={(n) => edit((d) => change.setExtra(d, code, n))}
        />
      ))}
    </fieldset>
  )
}

const BOTTOMS = ['rock', 'gravel', 'sand', 'clay', 'muck'] as const

function Bottom() {
  const bottom = useLeadline((s) => s.design.site.bottom)
  const edit = useLeadline((s) => s.edit)
  const { t } = useWords()
  return (
    <div className="control">
      <Choice
        legend={t('bottom.label')}
        value={bottom}
        columns={5}
        options={BOTTOMS.map((kind) => ({
          value: kind,
          label: t(`bottom.${kind}`),
          picture: <i className={`swatch ${kind}`} />,
        }))}
        hint={t('bottom.hint')}
        set={(kind) => edit((d) => change.setBottom(d, kind))}
      />
    </div>
  )
}

/** How far it rises and falls: no signs. A high level under the day's is a fall of that much, and comes as a negative number. */
function Levels() {
  const { low, high } = useLeadline((s) => s.design.site.levels)
  const edit = useLeadline((s) => s.edit)
  const { t } = useWords()
  return (
    <fieldset className="control list">
      <legend>{t('levels.label')}</legend>
      <div className="pair">
        <LengthField
          label={t('levels.rises')}
          value={high}
          commit={(to) => edit((d) => change.setLevel(d, 'high', to))}
        />
        <LengthField
          label={t('levels.falls')}
          value={0 - low}
          commit={(to) => edit((d) => change.setLevel(d, 'low', 0 - to))}
        />
      </div>
      <Hint>{t('levels.hint')}</Hint>
    </fieldset>
  )
}

const exposure = chunk(() => import('./exposure.tsx').then((m) => m.Exposure))
const EXPOSED = ['sheltered', 'small', 'wide', 'open'] as const

function ExposureChoice() {
  const design = useLeadline((s) => s.design)
  const edit = useLeadline((s) => s.edit)
  const { waves } = useDock()
  const { t } = useWords()
  const now = change.exposureOf(design)
  const option = <T extends change.Exposure>(value: T, wind: change.Wind | undefined) => ({
    value,
    label: (
      <>
        {t(`exposure.${value}`)}
        {wind && (
          <small>
            {t('exposure.wind', {
              speed: { value: wind.speed, unit: 'm/s' },
              fetch: { value: wind.fetch, unit: 'fetch' },
            })}
          </small>
        )}
      </>
    ),
  })
  const hint = !waves
    ? `${t('exposure.hint')} ${t('exposure.pending')}`
    : t(waves.period > 0 ? 'waves.told' : 'waves.wakes', {
        height: meters(waves.height),
        period: { value: waves.period, unit: 's' },
        crest: meters(waves.crest),
      })
  return (
    <div className="control">
      <Choice
        legend={t('exposure.label')}
        value={now}
        columns={2}
        options={[
          ...EXPOSED.map((name) => option<change.Exposure>(name, EXPOSURES[name])),
          option('none', undefined),
          ...(now === 'own' ? [option('own', design.site.wind)] : []),
        ]}
        hint={hint}
        set={(to) => edit((d) => change.setExposure(d, to))}
      />
      <Fold summary={t('exposure.figures')}>
        <Lazy chunk={exposure} props={{}} />
      </Fold>
    </div>
  )
}
