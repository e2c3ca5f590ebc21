import { usePlaced } from '../state/store.ts'
import { chunk, Lazy } from '../ui/lazy.tsx'

const unsaid = chunk(() => import('../start/unsaid.tsx').then((m) => m.Told))

/** What nobody has said of the shore yet; fetched only where there is such a thing. */
export function Unsaid() {
  const some = usePlaced().findings.some(({ code }) => code === 'site-assumed')
  return some ? <Lazy chunk={unsaid} props={{}} /> : null
}
