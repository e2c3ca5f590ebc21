/** What the colors on the parts mean and what the swaying dock shows, in words and figures, under the picture. */
import type { Figure, Structure } from '../../rules/index.ts'
import { legNumber } from '../../rules/leg-places.ts'
import { GUARD_PUSH } from '../../rules/structure/strength/loads-published.ts'
import { pairListed } from '../../rules/words/leg-name.ts'
import { exaggeration } from '../scene/sway/exaggeration.ts'
import { useDock, useLeadline } from '../state/store.ts'
import { Choice } from '../ui/controls.tsx'
import { useWords } from '../ui/use-words.ts'
import { colorOf, gradient } from '../utilization/utilization-colors.ts'
import { type Worst, worstOf } from '../utilization/worst-member.ts'
import { FORCES, type ForceWord } from '../words/forces.ts'
import { text } from '../words/index.ts'
import { caseInWords } from '../words/load-case-words.ts'
import { LOADS } from '../words/loads.ts'

const small = (meters: number): Figure => ({ value: meters * 1000, unit: 'mm' })

export function Legend() {
  const forces = useLeadline((s) => s.forces)
  const sway = useLeadline((s) => s.sway)
  return (
    <div className="seen">
      {forces && <Forces />}
      {sway !== 'none' && <Sway way={sway} />}
    </div>
  )
}

function Forces() {
  const { structure, pending } = useDock()
  const { t } = useWords(FORCES)
  return (
    <section aria-label={t('forces.title')}>
      <div>
        <p>{t('forces.title')}</p>
        <div className="ramp" aria-hidden="true" style={{ backgroundImage: gradient() }} />
        <div className="ramp-ends">
          <span>{t('forces.none')}</span>
          <span>{t('forces.half')}</span>
          <span>{t('forces.all')}</span>
        </div>
        <p className="over">
          <Swatch use={2} /> {t('forces.over')}
        </p>
      </div>
      {structure ? (
        <ul>
          {worstOf(structure).map((worst) => (
            <Line key={worst.kind} worst={worst} />
          ))}
        </ul>
      ) : (
        <p className="hint">{t(pending ? 'forces.checking' : 'forces.not-known')}</p>
      )}
    </section>
  )
}

const Swatch = ({ use }: { readonly use: number }) => {
  const [r, g, b] = colorOf(use).map((channel) => Math.round(channel * 255))
  return (
    <span className="swatch-of-use" aria-hidden="true" style={{ backgroundColor: `rgb(${r} ${g} ${b})` }} />
  )
}

function Line({ worst: { kind, id, use, case: name } }: { readonly worst: Worst }) {
  const dock = useDock()
  const { t } = useWords(FORCES)
  const { t: loads } = useWords(LOADS)
  const number = legNumber(dock, id)
  const where = number > 0 ? String(number) : pairListed(dock, id)
  return (
    <li>
      <Swatch use={use} />
      <span>
        {t(`forces.${kind}`, { where: text(where), use: { value: use, unit: 'share' } })}{' '}
        <small>{t('forces.with', { case: text(caseInWords(name, { t: loads })) })}</small>
      </span>
    </li>
  )
}

function Sway({ way }: { readonly way: 'across' | 'along' }) {
  const { structure, pending } = useDock()
  const dragging = useLeadline((s) => s.dragging)
  const set = useLeadline((s) => s.set)
  const { t } = useWords(FORCES)
  return (
    <section aria-label={t('sway.title')}>
      <Choice
        legend={t('sway.title')}
        value={way}
        columns={2}
        options={[
          { value: 'across', label: t('sway.across') },
          { value: 'along', label: t('sway.along') },
        ]}
        set={(sway) => set({ sway })}
      />
      {dragging ? (
        <p className="hint">{t('sway.dragging')}</p>
      ) : structure ? (
        <HowFar structure={structure} way={way} />
      ) : (
        <p className="hint">{t(pending ? 'forces.checking' : 'forces.not-known')}</p>
      )}
    </section>
  )
}

function HowFar({ structure, way }: { readonly structure: Structure; readonly way: 'across' | 'along' }) {
  const { t } = useWords(FORCES)
  const { swayAcross, swayUnbracedAcross, swayAlong, braces } = structure
  const still = matchMedia('(prefers-reduced-motion: reduce)').matches
  const twice = way === 'across' && braces.length > 0
  const most = way === 'along' ? swayAlong : twice ? Math.max(swayAcross, swayUnbracedAcross) : swayAcross
  const times = exaggeration(most)
  return (
    <div>
      {twice ? (
        <p>
          <strong>{t('sway.braced', { sway: small(swayAcross) })}</strong>
          <br />
          <strong>{t('sway.bare', { sway: small(swayUnbracedAcross) })}</strong>
        </p>
      ) : (
        <p>
          <strong>{t('sway.single', { sway: small(most) })}</strong>
        </p>
      )}
      <p className="hint">
        {t('sway.push', { push: { value: GUARD_PUSH, unit: 'N' } })}{' '}
        {t(`sway.${times > 1 ? 'times' : 'true'}${still ? '-still' : ''}` as ForceWord, {
          times: text(String(times)),
        })}{' '}
        {way === 'along' && t('sway.along-why')}
      </p>
    </div>
  )
}
