/** A design seen in a mirror that lies along its center line: left is right, the first brace too. */
import { type Catalog, type Design, shopOf } from '../../rules/index.ts'
import { planOf } from '../../rules/layout/plan.ts'

const SIDE: Record<string, string> = { left: 'right', right: 'left' }
const swap = <T extends string>(edge: T): T => (SIDE[edge] ?? edge) as T

/** Ids of legs and of pairs of legs name sides. */
export const swapId = (id: string): string =>
  id.replace(/\.(left|right)\b/g, (_, side: string) => `.${SIDE[side]}`)

/** The same id for a pair of left-over legs, whichever way round its two legs are named. */
export const sortedId = (id: string): string => id.split('~').sort().join('~')

/** A corner piece's own mirror image is the same piece hung by its other edge, with its corners' names the other way round: another dock. */
export const turnsAskew = (design: Design, catalog: Catalog): boolean => {
  const shop = shopOf(catalog)
  return planOf(design, shop).some(({ frame }) => shop.frames.get(frame)?.turn !== undefined)
}

export function mirrored(design: Design, catalog: Catalog): Design {
  const shop = shopOf(catalog)
  const { sections: _s, ramp: _r, head: _h, ...dock } = design.dock
  const frames = new Map(planOf(design, shop).map((p) => [p.id, shop.frames.get(p.frame)]))
  /** Along a start or end edge distances run from the left corner: from the other one in a mirror. */
  const across = (host: string, edge: string, along: number, taken: number): number =>
    (edge === 'start' || edge === 'end') && (taken > 0 || along <= frames.get(host)!.width)
      ? Math.round((frames.get(host)!.width - along - taken) * 1e7) / 1e7
      : along
  return {
    ...design,
    site: {
      ...design.site,
      soundings: design.site.soundings.map((s) => ({ ...s, offset: -s.offset + 0 })),
      ...(design.site.limits?.sides && {
        limits: {
          ...design.site.limits,
          sides: design.site.limits.sides.map(({ from, to, ...side }) => ({
            ...side,
            from: [from[0], 0 - from[1]] as [number, number],
            to: [to[0], 0 - to[1]] as [number, number],
          })),
        },
      }),
      ...(design.site.crossSlope !== undefined && { crossSlope: -design.site.crossSlope }),
    },
    dock: {
      ...dock,
      ...(dock.boat && { boat: { ...dock.boat, side: swap(dock.boat.side) } }),
      ...(dock.boats && {
        boats: dock.boats.map((one) => ({
          ...one,
          edge: swap(one.edge),
          ...(one.along !== undefined && {
            along: frames.get(one.section) ? across(one.section, one.edge, one.along, 0) : one.along,
          }),
        })),
      }),
      plan: planOf(design, shop).map((p) => {
        const frame = frames.get(p.id)
        const own = frame ? (p.with === 'left' || p.with === 'right' ? frame.length : frame.width) : 0
        const host = p.on === null ? undefined : frames.get(p.on)
        return {
          id: p.id,
          on: p.on,
          ...(p.ramp && { role: 'ramp' as const }),
          edge: swap(p.edge),
          with: swap(p.with),
          along: host && p.on !== null ? across(p.on, p.edge, p.along, own) : p.along,
          frame: p.frame,
        }
      }),
      bracing: {
        first: (SIDE[design.dock.bracing?.first ?? 'left'] ?? 'right') as 'left' | 'right',
        none: (design.dock.bracing?.none ?? []).map(swapId),
        ...(design.dock.bracing?.along && { along: design.dock.bracing.along }),
      },
      ...(dock.overrides && {
        overrides: Object.fromEntries(Object.entries(dock.overrides).map(([id, o]) => [swapId(id), o])),
      }),
      ...(dock.placed && {
        placed: dock.placed.map((p) => ({
          ...p,
          edge: swap(p.edge),
          along: frames.get(p.section) ? across(p.section, p.edge, p.along, 0) : p.along,
        })),
      }),
    },
  }
}
