/** The shape of every part of a catalog, each made once. */
import { bodies, type Catalog, type PartKind } from '../../rules/index.ts'
import { legStock } from '../../rules/parts/clamp-plates.ts'
import type { Solid } from '../types.ts'
import { augerBodies } from './augers.ts'
import { hardwareBodies } from './bolts.ts'
import { capBodies } from './caps.ts'
import { braceClampBodies, postClampBodies } from './clamps.ts'
import { accessoryBodies, bumperBodies, deckClipBodies } from './edge-parts.ts'
import { hingePinBodies, hookBracketBodies, tiePlateBodies } from './joints.ts'
import { type Body, solidFrom } from './mesh.ts'
import { pieceBodies } from './pieces.ts'

/** One key for each row of a parts list: a shop may use one code for two kinds. */
export const partKeyOf = (kind: PartKind, code: string): string => `${kind}\n${code}`

const made = new WeakMap<Catalog, Map<string, Solid>>()

/**
 * The solid of a part in its own frame. The same object each time for the same catalog object (catalogs are read-only).
 * Throws where the catalog has no such part: placements name none.
 */
export function solidOf(kind: PartKind, code: string, catalog: Catalog): Solid {
  const solids = made.get(catalog) ?? new Map<string, Solid>()
  made.set(catalog, solids)
  const key = partKeyOf(kind, code)
  const known = solids.get(key)
  if (known) return known
  const parts = bodiesOf(kind, code, catalog)
  if (!parts)
    throw new Error(`solidOf: no ${kind} ${JSON.stringify(code)} in catalog ${JSON.stringify(catalog.id)}`)
  const solid = solidFrom(parts)
  solids.set(key, solid)
  return solid
}

function bodiesOf(kind: PartKind, code: string, catalog: Catalog): Body[] | null {
  const from = <T extends { readonly code: string }>(
    list: readonly T[],
    make: (item: T) => Body[],
  ): Body[] | null => {
    const item = list.find((i) => i.code === code)
    return item ? make(item) : null
  }
  const pieces = (list: ReturnType<typeof bodies.frameBody>): Body[] => pieceBodies(catalog, list)
  const extras = catalog.extras.flatMap((extra) => extra.parts.filter((part) => part.kind === kind))
  switch (kind) {
    case 'frame':
      return from(catalog.frames, (frame) => pieces(bodies.frameBody(catalog, frame)))
    case 'leg':
      return from(catalog.legs, (leg) => pieces(bodies.tubeBody(catalog, leg)))
    case 'anchor-post': {
      const posts = catalog.extras.flatMap((extra) => (extra.place === 'post' ? extra.posts : []))
      return from(posts, (post) => pieces(bodies.tubeBody(catalog, post)))
    }
    case 'brace':
      return from(catalog.braces, (brace) => pieces(bodies.braceBody(catalog, brace)))
    case 'foot-pad':
      return from(catalog.pads, (pad) => pieces(bodies.padBody(catalog, pad)))
    case 'deck-panel':
      return from(catalog.decking.panels, (panel) => pieces(bodies.panelBody(catalog, panel)))
    case 'hinge-bar':
      return from([catalog.hinge.bar], () => pieces(bodies.hingeBarBody(catalog)))
    case 'set-bolt':
    case 'pad-bolt':
    case 'hook-bolt':
    case 'bar-bolt':
    case 'pin-bolt':
    case 'brace-bolt':
      return from(
        catalog.hardware.filter((bolt) => bolt.kind === kind),
        (bolt) => hardwareBodies(catalog, bolt),
      )
    case 'leg-cap':
      return from([catalog.caps.leg], (cap) => capBodies(cap, legStock(catalog)))
    case 'sleeve-cap':
      return from([catalog.caps.sleeve], (cap) => capBodies(cap, catalog.stock[catalog.sleeve.stock]!))
    case 'brace-clamp':
      return from([catalog.clamp], () => braceClampBodies(catalog))
    case 'hook-bracket':
      return from([catalog.hooks.bracket], () => hookBracketBodies(catalog))
    case 'hinge-pin':
      return from([catalog.hinge.pin], () => hingePinBodies(catalog))
    case 'deck-clip':
      return from([catalog.decking.clip], () => deckClipBodies(catalog))
    case 'bumper':
      return from(extras, bumperBodies)
    case 'auger':
      return from(extras, (auger) => augerBodies(catalog, auger))
    case 'post-clamp':
      return from(extras, (clamp) => postClampBodies(catalog, clamp))
    case 'accessory':
      return from([catalog.tie], () => tiePlateBodies(catalog)) ?? from(extras, accessoryBodies)
  }
}
