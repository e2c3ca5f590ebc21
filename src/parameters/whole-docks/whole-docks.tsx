/** Three whole docks side by side, each worked out to the end; one tap takes one, one undo gives the own one back. */

import { useEffect, useRef, useState } from 'react'
import { newPrice } from '../../../rules/existing/new-parts.ts'
import type { Design, Dock } from '../../../rules/index.ts'
import { footprintOf, footprintOfAll } from '../../../rules/layout/footprint.ts'
import { makeStructureClient, type StructureClient } from '../../assessment/structure-client.ts'
import { dockFacts } from '../../state/dock-facts.ts'
import { sameDesign } from '../../state/same-design.ts'
import { useLeadline, useLeadlineStore } from '../../state/store.ts'
import { Hint } from '../../ui/controls.tsx'
import { useNames } from '../../ui/use-names.ts'
import { useSheet } from '../../ui/use-sheet.ts'
import { useWords } from '../../ui/use-words.ts'
import { snapUp } from '../../units/steps.ts'
import { meters, text } from '../../words/index.ts'
import { WHOLE_DOCKS } from '../../words/whole-docks.ts'
import { candidatesFor } from './candidates.ts'
import { chooseDocks, type Derive, type WholeDock } from './choose.ts'
import css from './whole-docks.css?inline'

interface Worked {
  /** The design that was in hand: what they go by. */
  readonly from: Design
  readonly docks: readonly WholeDock[]
}

export function WholeDocks() {
  const store = useLeadlineStore()
  const design = useLeadline((s) => s.design)
  const catalog = useLeadline((s) => s.catalog)
  const stale = useLeadline((s) => s.stale)
  const dragging = useLeadline((s) => s.dragging)
  const { t, units } = useWords(WHOLE_DOCKS)
  const [worked, setWorked] = useState<Worked | null>(null)
  const known = useRef<Worked | null>(null)
  const box = useSheet<HTMLDivElement>(css)
  const headed = (design.dock.head?.sections ?? 0) > 0

  useEffect(() => {
    const isOf = ({ from, docks }: Worked): boolean =>
      sameDesign(from, design) || docks.some((one) => sameDesign(one.design, design))
    // One of them taken, and given back, leaves all three to choose from.
    if (stale || dragging || (known.current && isOf(known.current))) return
    const { dock, project } = store.getState()
    const candidates = candidatesFor(design, catalog, {
      bed: project.bed,
      reach: dockFacts(dock, design).reach,
      waves: dock.waves,
      snapUp: (height) => snapUp(height, units),
    })
    if (!candidates) return
    let over = false
    const client = makeStructureClient()
    setWorked(null)
    known.current = null
    void chooseDocks(candidates, askOf(client, catalog), () => over).then((docks) => {
      if (over) return
      known.current = { from: design, docks }
      setWorked(known.current)
      client.close()
    })
    return () => {
      over = true
      client.close()
    }
  }, [store, design, catalog, stale, dragging, units])

  return (
    <div className="whole-docks" ref={box} aria-busy={worked === null && !design.dock.plan}>
      <Hint>{design.dock.plan ? t('plan') : `${t(headed ? 'hint-own' : 'hint-straight')} ${t('hint')}`}</Hint>
      <div role="status">{worked === null && !design.dock.plan ? <Hint>{t('working')}</Hint> : null}</div>
      {worked?.docks.length === 0 && <Hint>{t('none')}</Hint>}
      {worked?.docks.map((one) => (
        <Card key={one.kind} one={one} />
      ))}
    </div>
  )
}

function askOf(client: StructureClient, catalog: Parameters<typeof candidatesFor>[1]): Derive {
  return {
    place: (design) =>
      new Promise((done) =>
        client.ask({
          of: { design, catalog },
          step: 'place',
          placed: (dock) => done(dock),
          failed: () => done(null),
        }),
      ),
    find: (design) =>
      new Promise((done) =>
        client.ask({
          of: { design, catalog },
          step: 'found',
          got: ({ findings }) => done(findings),
          failed: () => done(null),
        }),
      ),
  }
}

function Card({ one: { kind, design, dock, fixes } }: { readonly one: WholeDock }) {
  const edit = useLeadline((s) => s.edit)
  const taken = useLeadline((s) => sameDesign(s.design, design))
  const frame = useLeadline((s) => s.catalog.frames.find(({ code }) => code === design.dock.frame))
  const decking = useLeadline(({ catalog: { deckings = [] } }) =>
    deckings.find(({ code, panels }) =>
      design.dock.finish === undefined ? Object.keys(panels).length === 0 : code === design.dock.finish,
    ),
  )
  const { t, money, priced } = useWords(WHOLE_DOCKS)
  const named = useNames()
  const { reach, sections } = dockFacts(dock, design)
  const fix = fixes.stops + fixes.warnings
  const many = t('sections', { sections })
  return (
    <article aria-label={t(kind)}>
      <h3>{t(kind)}</h3>
      <Plan dock={dock} />
      <ul>
        <li>{dock.ramp ? t('with-ramp', { sections: text(many) }) : many}</li>
        {frame && <li>{named(frame)}</li>}
        <li>{t('reach', { reach: meters(reach) })}</li>
        {decking && <li>{named(decking)}</li>}
        <li>{t('deck', { height: meters(design.dock.deckHeight) })}</li>
      </ul>
      <p className="whole-verdict" data-fix={fixes.stops > 0 ? 'stop' : fix > 0 ? 'warn' : 'none'}>
        {t(fix === 0 ? 'can-be-built' : 'fix', { count: fix })}
      </p>
      {priced && (
        <p className="whole-price">
          <strong>{money(newPrice(dock))}</strong> {t('parts')}
        </p>
      )}
      <button type="button" aria-pressed={taken} disabled={taken} onClick={() => edit(() => design)}>
        {t(taken ? 'taken' : 'take')}
      </button>
    </article>
  )
}

/** From above: shore below, lake above. */
function Plan({ dock }: { readonly dock: Dock }) {
  const all = footprintOfAll(dock.sections)
  if (!all) return null
  const pad = 0.6
  const wide = all.y1 - all.y0 + 2 * pad
  const long = all.x1 - all.x0 + 2 * pad
  return (
    <svg viewBox={`${-all.y1 - pad} ${-all.x1 - pad} ${wide} ${long}`} aria-hidden="true">
      <rect className="land" x={-all.y1 - pad} y={0} width={wide} height={Math.max(0, pad - all.x0)} />
      {dock.sections.map((section) => {
        const { x0, x1, y0, y1 } = footprintOf(section)
        return <rect key={section.id} x={-y1} y={-x1} width={y1 - y0} height={x1 - x0} />
      })}
    </svg>
  )
}
