/** What the panel's controls change, as pure functions of the Design. */
import type { BottomKind, Design } from '../../rules/index.ts'
import { EXPOSURES } from '../../rules/site/waves/exposures.ts'

type HeadShape = NonNullable<Design['dock']['head']>['shape']

const withDock = (design: Design, change: Partial<Design['dock']>): Design => ({
  ...design,
  dock: { ...design.dock, ...change },
})
const withSite = (design: Design, change: Partial<Design['site']>): Design => ({
  ...design,
  site: { ...design.site, ...change },
})

export const legged = ({ dock }: Pick<Design, 'dock'>): number => (dock.sections ?? 0) - (dock.ramp ? 1 : 0)

export const setDeck = (design: Design, deckHeight: number): Design => withDock(design, { deckHeight })

/** A wide end is never longer than the sections that it can lie along. */
function fitHead(design: Design): Design {
  const head = design.dock.head
  if (head?.shape !== 'wide') return design
  const most = Math.max(1, legged(design))
  return head.sections <= most ? design : withDock(design, { head: { ...head, sections: most } })
}

export const setSections = (design: Design, sections: number): Design =>
  fitHead(withDock(design, { sections }))

/** The ramp is one section more or less: the dock in the water stays as long as it is. */
export const setRamp = (design: Design, ramp: boolean): Design =>
  ramp === Boolean(design.dock.ramp)
    ? design
    : fitHead(
        withDock(design, { ramp, sections: Math.max(1, (design.dock.sections ?? 1) + (ramp ? 1 : -1)) }),
      )

/** Sections that a head begins with, and by how many it grows. */
export const headStep = (shape: HeadShape): number => (shape === 'tee' ? 2 : 1)

export function setHead(design: Design, shape: HeadShape): Design {
  const now = design.dock.head?.sections ?? 0
  const step = headStep(shape)
  const sections = shape === 'straight' ? 0 : Math.max(step, Math.floor(now / step) * step)
  return fitHead(withDock(design, { head: { ...design.dock.head, shape, sections } }))
}

export const setHeadSections = (design: Design, sections: number): Design =>
  withDock(design, { head: { shape: 'straight', ...design.dock.head, sections } })

export const setFrame = (design: Design, frame: string): Design => withDock(design, { frame })

export function setExtra(design: Design, code: string, n: number): Design {
  const { [code]: _, ...rest } = design.dock.extras
  return withDock(design, { extras: n > 0 ? { ...design.dock.extras, [code]: n } : rest })
}

/** For what one more comes to. */
export const oneMore = (design: Design, code: string): Design =>
  setExtra(design, code, (design.dock.extras[code] ?? 0) + 1)

type Assumed = NonNullable<Design['site']['assumed']>[number]

/** Somebody has said so: it is assumed no longer. */
function said(design: Design, what: Assumed): Design {
  const { assumed = [], ...site } = design.site
  const left = assumed.flatMap((each): Assumed[] => {
    if (each === what) return []
    // Of both levels one was said: the other was not.
    if (each !== 'levels' || !what.startsWith(each)) return [each]
    return [what === 'levels.low' ? 'levels.high' : 'levels.low']
  })
  return { ...design, site: left.length > 0 ? { ...site, assumed: left } : site }
}

/** What is still assumed of a level. */
export const levelAssumed = ({ site: { assumed } }: Design, which: 'low' | 'high'): boolean =>
  assumed?.some((each) => each === 'levels' || each === `levels.${which}`) ?? false

export const setBottom = (design: Design, bottom: BottomKind): Design =>
  said(withSite(design, { bottom }), 'bottom')

export const setLevel = (design: Design, which: 'low' | 'high', value: number): Design =>
  said(withSite(design, { levels: { ...design.site.levels, [which]: value } }), `levels.${which}`)

export type Exposure = keyof typeof EXPOSURES | 'none' | 'own'

export function exposureOf({ site: { wind } }: Design): Exposure {
  if (!wind) return 'none'
  for (const [name, { speed, fetch }] of Object.entries(EXPOSURES))
    if (wind.speed === speed && wind.fetch === fetch) return name as keyof typeof EXPOSURES
  return 'own'
}

export function setExposure(design: Design, exposure: Exposure): Design {
  if (exposure === 'own') return design
  if (exposure !== 'none')
    return said(withSite(design, { wind: { ...design.site.wind, ...EXPOSURES[exposure] } }), 'wind')
  const { wind: _, ...site } = design.site
  return { ...design, site }
}

export type Wind = NonNullable<Design['site']['wind']>

/** A wind without fetch raises nothing, and a fetch without wind: what is not known yet begins with a small lake's. */
export const setWind = (design: Design, change: Partial<Wind>): Design =>
  said(withSite(design, { wind: { ...EXPOSURES.small, ...design.site.wind, ...change } }), 'wind')

export const setWake = (design: Design, wake: number): Design => withSite(design, { wake })
