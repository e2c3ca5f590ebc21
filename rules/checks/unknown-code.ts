import { straightFrames } from '../catalog/straight.ts'
import { pointer } from '../design/pointer.ts'
import type { Kit } from '../kit.ts'
import { round6 } from '../numbers.ts'
import { type Check, type Found, key, meters, names, remedy, remove, replace, SHOP, text } from './check.ts'

/** Codes that the catalog does not have: frames, extras, pads, decking, stock lengths. */
export const unknownCode: Check = {
  code: 'unknown-code',
  severity: 'stop',
  basis: SHOP,
  find: (kit) => [...frames(kit), ...extras(kit), ...pads(kit), ...deckings(kit), ...stocks(kit)],
}

function frames({ layout, shop, design }: Kit): Found[] {
  const byFrame = new Map<string, string[]>()
  for (const { id, frame } of layout.unknownFrames) {
    const ids = byFrame.get(frame)
    if (ids) ids.push(id)
    else byFrame.set(frame, [id])
  }
  const other = straightFrames(shop.catalog)[0]!.code
  return [...byFrame].map(([frame, ids]) => ({
    parts: ids,
    values: { what: key('frame'), code: text(frame), known: names([...shop.frames.keys()]) },
    remedy:
      frame === design.dock.frame
        ? remedy('use-code', [replace('/dock/frame', other)], { code: text(other) })
        : null,
  }))
}

const extras = ({ extras, shop }: Kit): Found[] =>
  extras.unknown.map(({ code, path }) => ({
    parts: [],
    values: { what: key('extra'), code: text(code), known: names([...shop.extras.keys()]) },
    remedy: remedy('leave-out', [remove(path)]),
  }))

function deckings({ design, shop }: Kit): Found[] {
  const code = design.dock.finish
  return code === undefined || shop.deckings.has(code)
    ? []
    : [
        {
          parts: [],
          values: { what: key('decking'), code: text(code), known: names([...shop.deckings.keys()]) },
          remedy: remedy('leave-out', [remove('/dock/finish')]),
        },
      ]
}

function pads({ design, shop }: Kit): Found[] {
  const code = design.dock.pad
  return code === undefined || shop.pads.has(code)
    ? []
    : [
        {
          parts: [],
          values: { what: key('foot-pad'), code: text(code), known: names([...shop.pads.keys()]) },
          remedy: remedy('leave-out', [remove('/dock/pad')]),
        },
      ]
}

const stocks = ({ design, shop }: Kit): Found[] =>
  Object.entries(design.dock.overrides ?? {})
    .filter(
      ([, { stock }]) => stock !== undefined && !shop.legs.some((l) => Math.abs(l.length - stock) <= 0.001),
    )
    .map(([id, { stock }]) => ({
      parts: [id],
      values: {
        what: key('leg-length'),
        code: meters(stock!),
        known: { value: shop.legs.map((l) => round6(l.length)), unit: 'm' },
      },
      remedy: remedy('leave-out', [remove(`/dock/overrides/${pointer(id)}`)]),
    }))
