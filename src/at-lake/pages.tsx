/** Which screen is open. What is not of the way out itself comes in chunks of its own, asked for as soon as there is time: later there may be no signal. */
import { useEffect } from 'react'
import { whenIdle } from '../platform/idle.ts'
import { chunk, Lazy } from '../ui/lazy.tsx'
import { Call } from './call.tsx'
import { Heights } from './heights.tsx'
import { Home } from './home.tsx'
import { type Page, useBegun } from './lake.ts'
import { LegsAtHand } from './legs-at-hand.tsx'
import { Out } from './out.tsx'
import { SetUp } from './set-up.tsx'

const check = chunk(() => import('./check/check.tsx').then((m) => m.Check))
const share = chunk(() => import('./share/share.tsx').then((m) => m.Share))
const wear = chunk(() => import('./wear.tsx').then((m) => m.Wear))
const shop = chunk(() => import('./shop.tsx').then((m) => m.Shop))
const next = chunk(() => import('./next-year.tsx').then((m) => m.NextYear))

export function Pages() {
  const { page } = useBegun()
  useEffect(
    () =>
      whenIdle(() => {
        // One that cannot be had now is asked for again when it is shown, and told then.
        for (const one of [check, share, wear, shop, next]) one.load().catch(() => {})
      }),
    [],
  )
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
      return <Lazy chunk={check} props={{}} />
    case 'wear':
      return <Lazy chunk={wear} props={{}} />
    case 'shop':
      return <Lazy chunk={shop} props={{}} />
    case 'share':
      return <Lazy chunk={share} props={{}} />
    case 'heights':
      return <Heights />
    case 'call':
      return <Call />
    case 'legs':
      return <LegsAtHand />
    case 'next':
      return <Lazy chunk={next} props={{}} />
  }
}
