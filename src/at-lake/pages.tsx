/** Which screen is open. */
import { Call } from './call.tsx'
import { Check } from './check/check.tsx'
import { Heights } from './heights.tsx'
import { Home } from './home.tsx'
import { type Page, useBegun } from './lake.ts'
import { LegsAtHand } from './legs-at-hand.tsx'
import { NextYear } from './next-year.tsx'
import { Out } from './out.tsx'
import { SetUp } from './set-up.tsx'
import { Share } from './share/share.tsx'
import { Shop } from './shop.tsx'
import { Wear } from './wear.tsx'

export function Pages() {
  const { page } = useBegun()
  return screenOf(page)
}

function screenOf(page: Page) {
  switch (page.at) {
    case 'home':
      return <Home />
    case 'set-up':
      return <SetUp at={page.stage} />
    case 'out':
      return <Out at={page.stage} />
    case 'check':
      return <Check />
    case 'wear':
      return <Wear />
    case 'shop':
      return <Shop />
    case 'share':
      return <Share />
    case 'heights':
      return <Heights />
    case 'call':
      return <Call />
    case 'legs':
      return <LegsAtHand />
    case 'next':
      return <NextYear />
  }
}
