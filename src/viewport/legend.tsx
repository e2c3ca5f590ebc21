/** What the colors on the parts mean and what the swaying dock shows, in words and figures, under the picture. */
import type { Figure, Structure } from '../../rules/index.ts'
import { wordsIn } from '../../rules/index.ts'
import { GUARD_PUSH } from '../../rules/structure/strength/loads-published.ts'
import { caseInWords } from '../panel/load-case-words.ts'
import { exaggeration } from '../scene/sway/exaggeration.ts'
import { useDock, useLeadline } from '../state/store.ts'
import { Choice } from '../ui/controls.tsx'
import { colorOf, gradient } from '../utilization/utilization-colors.ts'
import { type Worst, worstOf } from '../utilization/worst-member.ts'
import { text } from '../words/index.ts'
import { type SeenWord, seen } from '../words/seen.ts'
import { useLoadWords } from '../words/use-load-words.ts'

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

function useSeen() {
  const words = useLoadWords()
  const told = (key: SeenWord, values?: Readonly<Record<string, Figure>>): string =>
    seen(words.lang, words.units, key, values)
  return { ...words, told }
}

function Forces() {
  const { structure, pending } = useDock()
  const { told } = useSeen()
  return (
    <section aria-label={told('forces.title')}>
      <div>
        <p>{told('forces.title')}</p>
        <div className="ramp" aria-hidden="true" style={{ backgroundImage: gradient() }} />
        <div className="ramp-ends">
          <span>{told('forces.none')}</span>
          <span>{told('forces.half')}</span>
          <span>{told('forces.all')}</span>
        </div>
        <p className="over">
          <Swatch use={2} /> {told('forces.over')}
        </p>
      </div>
      {structure ? (
        <ul>
          {worstOf(structure).map((worst) => (
            <Line key={worst.kind} worst={worst} />
          ))}
        </ul>
      ) : (
        <p className="hint">{told(pending ? 'forces.checking' : 'forces.not-known')}</p>
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
  const words = useSeen()
  const { told, lang, length } = words
  const leg = dock.legs.find((l) => l.id === id)
  const ofPair = dock.legs.find((l) => l.id === dock.pairs.find((pair) => pair.id === id)?.legs[0])
  const where = leg
    ? `${leg.section} ${wordsIn(lang).corners[leg.corner]}`
    : ofPair
      ? words.loads('loads.out', { x: text(length(ofPair.x)) })
      : id
  return (
    <li>
      <Swatch use={use} />
      <span>
        {told(`forces.${kind}`, { where: text(where), use: { value: use, unit: 'share' } })}{' '}
        <small>{told('forces.with', { case: text(caseInWords(name, words)) })}</small>
      </span>
    </li>
  )
}

function Sway({ way }: { readonly way: 'across' | 'along' }) {
  const { structure, pending } = useDock()
  const dragging = useLeadline((s) => s.dragging)
  const set = useLeadline((s) => s.set)
  const { told } = useSeen()
  return (
    <section aria-label={told('sway.title')}>
      <Choice
        legend={told('sway.title')}
        value={way}
        columns={2}
        options={[
          { value: 'across', label: told('sway.across') },
          { value: 'along', label: told('sway.along') },
        ]}
        set={(sway) => set({ sway })}
      />
      {dragging ? (
        <p className="hint">{told('sway.dragging')}</p>
      ) : structure ? (
        <HowFar structure={structure} way={way} />
      ) : (
        <p className="hint">{told(pending ? 'forces.checking' : 'forces.not-known')}</p>
      )}
    </section>
  )
}

function HowFar({ structure, way }: { readonly structure: Structure; readonly way: 'across' | 'along' }) {
  const { told } = useSeen()
  const { swayAcross, swayUnbracedAcross, swayAlong, braces } = structure
  const still = matchMedia('(prefers-reduced-motion: reduce)').matches
  const twice = way === 'across' && braces.length > 0
  const most = way === 'along' ? swayAlong : twice ? Math.max(swayAcross, swayUnbracedAcross) : swayAcross
  const times = exaggeration(most)
  return (
    <div>
      {twice ? (
        <p>
          <strong>{told('sway.braced', { sway: small(swayAcross) })}</strong>
          <br />
          <strong>{told('sway.bare', { sway: small(swayUnbracedAcross) })}</strong>
        </p>
      ) : (
        <p>
          <strong>{told('sway.single', { sway: small(most) })}</strong>
        </p>
      )}
      <p className="hint">
        {told('sway.push', { push: { value: GUARD_PUSH, unit: 'N' } })}{' '}
        {told(`sway.${times > 1 ? 'times' : 'true'}${still ? '-still' : ''}` as SeenWord, {
          times: text(String(times)),
        })}{' '}
        {way === 'along' && told('sway.along-why')}
      </p>
    </div>
  )
}
