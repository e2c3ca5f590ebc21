/** The deck would be under water: the level must be wrong, or it is no day for it. Nothing goes on from here but to the level. */
import { meters } from '../words/index.ts'
import { ShopNumber } from './call.tsx'
import { Head } from './frame.tsx'
import { toLevel, useBegun, useSay } from './lake.ts'

export function Flooded() {
  const { go, page, day } = useBegun()
  const { t } = useSay()
  return (
    <>
      <Head of={t('flooded.title')} />
      <UnderWater by={-(day?.overWater ?? 0)} />
      <div className="ways">
        <button type="button" className="main" onClick={() => go(toLevel(page))}>
          {t('level.again')}
        </button>
      </div>
    </>
  )
}

/** By how much, m. */
export function UnderWater({ by }: { readonly by: number }) {
  const { t } = useSay()
  return (
    <div className="stop" role="alert">
      <p>
        <b>{t('flooded.stop', { by: meters(Math.max(0, by)) })}</b>
      </p>
      <p>{t('flooded.why')}</p>
      <ShopNumber />
    </div>
  )
}
