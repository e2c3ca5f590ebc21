/** What the deck is laid with, where the shop has a choice: material and color, with what that comes to for this dock. */
import { panelFor } from '../../rules/catalog-index.ts'
import { type Catalog, type Dock, shopOf } from '../../rules/index.ts'
import { useDock, useLeadline } from '../state/store.ts'
import { Choice } from '../ui/controls.tsx'
import { useWords } from '../words/use-words.ts'
import * as change from './design-edits.ts'

export function Decking() {
  const catalog = useLeadline((s) => s.catalog)
  const finish = useLeadline((s) => s.design.dock.finish)
  const stale = useLeadline((s) => s.stale)
  const edit = useLeadline((s) => s.edit)
  const dock = useDock()
  const { t, money, priced } = useWords()
  const { deckings = [] } = catalog
  if (deckings.length < 2) return null
  const own = deckings.find(change.isOwn)?.code
  return (
    <div className="control">
      <Choice
        legend={t('decking.label')}
        value={finish ?? own ?? ''}
        columns={2}
        options={deckings.map(({ code, name, color }) => ({
          value: code,
          picture: <i className="swatch" style={{ background: color }} />,
          label: (
            <>
              {name}
              {priced && !stale && <small>{money(panelsPrice(dock, catalog, code))}</small>}
            </>
          ),
        }))}
        set={(code) => edit((d) => change.setFinish(d, code === own ? undefined : code))}
      />
    </div>
  )
}

/** Of all panels of the dock, were they laid in that decking: what the list would say, in the smallest coin. */
function panelsPrice(dock: Dock, catalog: Catalog, finish: string): number {
  const shop = shopOf(catalog)
  return dock.sections.reduce((sum, section) => {
    const frame = shop.frames.get(section.frame)
    return frame ? sum + frame.panels * panelFor(shop, finish, frame).price : sum
  }, 0)
}
