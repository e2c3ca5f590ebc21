/** What the deck is laid with, where the shop has a choice: material and color, with what that comes to for this dock. */
import { panelFor } from '../../rules/catalog-index.ts'
import { type Catalog, type Design, shopOf } from '../../rules/index.ts'
import { placedOf, useLeadline } from '../state/store.ts'
import { Choice } from '../ui/controls.tsx'
import { useNames } from '../ui/use-names.ts'
import { useWords } from '../ui/use-words.ts'
import { WANTS } from '../words/wants.ts'

export function Decking() {
  const catalog = useLeadline((s) => s.catalog)
  const finish = useLeadline((s) => s.design.dock.finish)
  const stale = useLeadline((s) => s.stale)
  const edit = useLeadline((s) => s.edit)
  const { t, money, lined } = useWords(WANTS)
  const named = useNames()
  const { deckings = [] } = catalog
  // Which sections there are says what it comes to; every other change leaves it alone.
  const frames = useLeadline((s) =>
    placedOf(s)
      .sections.map(({ frame }) => frame)
      .join('\n'),
  )
  const own = deckings.find(isOwn)?.code
  return (
    <div className="control">
      <Choice
        legend={t('decking.label')}
        value={finish ?? own ?? ''}
        columns={2}
        options={deckings
          .filter((one) => !one.hidden || one.code === finish)
          .map(({ code, name, color }) => ({
            value: code,
            picture: <i className="swatch" style={{ background: color }} />,
            label: (
              <>
                {named({ code, name })}
                {lined && !stale && <small>{money(panelsPrice(frames, catalog, code))}</small>}
              </>
            ),
          }))}
        set={(code) => edit((d) => setFinish(d, code === own ? undefined : code))}
      />
    </div>
  )
}

/** Of all panels of the dock, were they laid in that decking: what the list would say, in the smallest coin. */
function panelsPrice(frames: string, catalog: Catalog, finish: string): number {
  const shop = shopOf(catalog)
  return frames.split('\n').reduce((sum, code) => {
    const frame = shop.frames.get(code)
    return frame ? sum + frame.panels * panelFor(shop, finish, frame).price : sum
  }, 0)
}

/** What frames carry when nobody asks for another: nothing is laid in its panels' place. */
const isOwn = ({ panels }: NonNullable<Catalog['deckings']>[number]): boolean =>
  Object.keys(panels).length === 0

/** @param finish undefined: what the frames carry anyway */
function setFinish(design: Design, finish: string | undefined): Design {
  const { finish: _, ...dock } = design.dock
  return { ...design, dock: finish === undefined ? dock : { ...dock, finish } }
}
