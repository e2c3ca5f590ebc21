/** From unknown input to a Catalog: schema, versions, and the references within it. */

import { kindsWith } from '../part-kinds.ts'
import { planIssues } from '../plan/schema.ts'
import {
  type Issue,
  issue,
  type Parsed,
  type Plain,
  parseText,
  parseWith,
  plainOf,
  show,
  upgrade,
} from '../validation.ts'
import { type Catalog, CatalogSchema } from './schema.ts'
import { boredThrough, sectionProperties } from './section-properties.ts'

const CATALOG_FORMAT = 'leadline/catalog'
const CATALOG_VERSION = 1
const MAX_BYTES = 8 * 1024 * 1024

/** `[n]` turns a catalog of version n into one of n + 1. Version 1 is the first. */
const migrations: Record<number, (old: Record<string, unknown>) => Record<string, unknown>> = {}

/** Checks a catalog and every reference within it. Unknown keys are kept. Never throws. */
export const parseCatalog = (input: unknown): Parsed<Catalog> => parsePlainCatalog(plainOf(input))

/** The same of what was made plain when it came in. */
export function parsePlainCatalog(plain: Plain): Parsed<Catalog> {
  const file = upgrade(plain, CATALOG_FORMAT, CATALOG_VERSION, migrations)
  return file.ok ? parseWith(CatalogSchema, file.plain, referenceIssues) : file
}

/** The same from JSON text. */
export function parseCatalogText(text: string): Parsed<Catalog> {
  const json = parseText(text, MAX_BYTES)
  return json.ok ? parseCatalog(json.value) : json
}

/** Of a section, the most that a bolt's hole may take: past that nothing of a brace is left to pull on. */
const MOST_BORED = 0.9

function boredIssues({ hardware, braces, stock }: Catalog): Issue[] {
  const bolt = hardware.findIndex(({ kind }) => kind === 'brace-bolt')
  const thin = braces.find(({ stock: name }) => {
    const own = Object.hasOwn(stock, name) ? stock[name] : undefined
    return (
      own &&
      bolt >= 0 &&
      boredThrough(own) * hardware[bolt]!.diameter > MOST_BORED * sectionProperties(own).area
    )
  })
  if (!thin) return []
  const { diameter } = hardware[bolt]!
  return [
    issue(
      `hardware[${bolt}].diameter`,
      `${diameter}, through brace ${show(thin.code)}`,
      'a bolt that leaves a tenth of its section',
    ),
  ]
}

/** What the schema cannot tell of one entry alone: that what is named is there, that codes differ, that figures agree with each other. */
const referenceIssues = (catalog: Catalog): Issue[] => [
  ...stockIssues(catalog),
  ...strengthIssues(catalog),
  ...frameIssues(catalog),
  ...deckingIssues(catalog),
  ...partIssues(catalog),
  ...hardwareIssues(catalog),
  ...templateIssues(catalog),
  ...codeIssues(catalog),
  ...shopIssues(catalog),
]

function shopIssues({ shop, services = [] }: Catalog): Issue[] {
  const known = Object.fromEntries(services.map(({ code }) => [code, true]))
  return (shop?.brings ?? []).flatMap((code, i) => within(`shop.brings[${i}]`, code, known, 'a service'))
}

function within(path: string, code: string, known: object, what: string): Issue[] {
  return Object.hasOwn(known, code) ? [] : [issue(path, show(code), `${what} of this catalog`)]
}

const stockIssues = ({ stock, materials }: Catalog): Issue[] =>
  Object.entries(stock).flatMap(([name, one]) => {
    const path = `stock[${show(name)}]`
    const issues = within(`${path}.material`, one.material, materials, 'a material')
    if (one.shape !== 'round-tube' && one.shape !== 'rect-tube') return issues
    const side = one.shape === 'round-tube' ? one.diameter : Math.min(one.width, one.height)
    return one.wall > side / 2
      ? [...issues, issue(`${path}.wall`, show(one.wall), `at most half of ${side}`)]
      : issues
  })

const strengthIssues = ({ materials }: Catalog): Issue[] =>
  Object.entries(materials).flatMap(([name, { strength }]) => {
    if (!strength) return []
    const path = `materials[${show(name)}].strength`
    const atMost = (at: string, value: number, most: number, what: string): Issue[] =>
      value > most ? [issue(`${path}.${at}`, show(value), `at most ${most}, ${what}`)] : []
    const issues = atMost('yield', strength.yield, strength.ultimate, 'its ultimate strength')
    // Poisson's ratio lies between 0 and 1/2 in what docks are made of.
    if (strength.G > strength.E / 2 || strength.G < strength.E / 3)
      issues.push(issue(`${path}.G`, show(strength.G), 'between a third and a half of E'))
    if (strength.family === 'aluminum' && strength.welded) {
      const { welded } = strength
      issues.push(
        ...atMost('welded.ultimate', welded.ultimate, strength.ultimate, 'that away from a weld'),
        ...atMost('welded.yield', welded.yield, strength.yield, 'that away from a weld'),
      )
    }
    return issues
  })

function frameIssues({ frames, decking, sleeve, stock }: Catalog): Issue[] {
  const panels = Object.fromEntries(decking.panels.map((p) => [p.code, p]))
  if (frames.every(({ turn }) => turn !== undefined))
    return [issue('frames', 'corner pieces alone', 'a frame without a turn, for the run')]
  if (frames.every(({ turn, hidden }) => turn !== undefined || hidden))
    return [issue('frames', 'all hidden', 'a frame for the run that is offered')]
  return frames.flatMap((frame, i) => [
    ...within(`frames[${i}].rail`, frame.rail, stock, 'stock'),
    ...within(`frames[${i}].ends`, frame.ends, stock, 'stock'),
    ...within(`frames[${i}].cross.stock`, frame.cross.stock, stock, 'stock'),
    ...within(`frames[${i}].panel`, frame.panel, panels, 'a deck panel'),
    ...(frame.width <= 2 * sleeve.across || frame.length <= 2 * sleeve.along
      ? [issue(`frames[${i}]`, `${frame.length} x ${frame.width}`, 'a frame larger than its sleeves')]
      : []),
    ...(panels[frame.panel] && panels[frame.panel]!.turn !== frame.turn
      ? [
          issue(
            `frames[${i}].panel`,
            `${show(frame.panel)}, turned by ${panels[frame.panel]!.turn ?? 0} degrees`,
            `a panel turned by ${frame.turn ?? 0}, as the frame is`,
          ),
        ]
      : []),
    ...(frame.turn !== undefined && frame.panels !== 1
      ? [issue(`frames[${i}].panels`, `${frame.panels}`, '1: a corner piece has one panel')]
      : []),
  ])
}

/** What is laid in a panel's place is of its size, and of one decking alone: its color is that of its planks. */
function deckingIssues({ deckings = [], decking }: Catalog): Issue[] {
  const panels = Object.fromEntries(decking.panels.map((p) => [p.code, p]))
  const laidBy = new Map<string, string>()
  return deckings.flatMap((choice, i) =>
    Object.entries(choice.panels).flatMap(([own, laid]): Issue[] => {
      const path = `deckings[${i}].panels[${show(own)}]`
      const unknown = [
        ...within(path, own, panels, 'for a deck panel'),
        ...within(path, laid, panels, 'a deck panel'),
      ]
      if (unknown.length > 0) return unknown
      const [a, b] = [panels[own]!, panels[laid]!]
      if (Math.abs(a.length - b.length) > 1e-6 || Math.abs(a.width - b.width) > 1e-6 || a.turn !== b.turn)
        return [issue(path, `${b.length} x ${b.width}`, `a panel of ${a.length} x ${a.width}`)]
      const other = laidBy.get(laid) ?? choice.code
      laidBy.set(laid, other)
      return other === choice.code ? [] : [issue(path, show(laid), `a panel that ${show(other)} has not`)]
    }),
  )
}

/** Stock and materials of what is not a frame. */
function partIssues(catalog: Catalog): Issue[] {
  const { stock, materials } = catalog
  const ofStock = (path: string, code: string): Issue[] => within(path, code, stock, 'stock')
  return [
    ...ofStock('sleeve.stock', catalog.sleeve.stock),
    ...catalog.legs.flatMap((leg, i) => ofStock(`legs[${i}].stock`, leg.stock)),
    ...catalog.braces.flatMap((brace, i) => ofStock(`braces[${i}].stock`, brace.stock)),
    ...boredIssues(catalog),
    ...catalog.pads.flatMap((pad, i) => [
      ...ofStock(`pads[${i}].socket.stock`, pad.socket.stock),
      ...within(`pads[${i}].plate.material`, pad.plate.material, materials, 'a material'),
    ]),
    ...catalog.decking.panels.flatMap((panel, i) => [
      ...ofStock(`decking.panels[${i}].plank.stock`, panel.plank.stock),
      ...ofStock(`decking.panels[${i}].batten.stock`, panel.batten.stock),
    ]),
    ...ofStock('hinge.bar.stock', catalog.hinge.bar.stock),
    ...catalog.extras.flatMap((extra, i) =>
      extra.place === 'post'
        ? extra.posts.flatMap((post, k) => ofStock(`extras[${i}].posts[${k}].stock`, post.stock))
        : [],
    ),
  ]
}

const hardwareIssues = ({ hardware }: Catalog): Issue[] =>
  kindsWith('list', 'hardware').flatMap((kind) => {
    const bolts = hardware.filter((bolt) => bolt.kind === kind).length
    return bolts === 1 ? [] : [issue('hardware', `${bolts} entries of kind ${kind}`, 'one')]
  })

function templateIssues({ templates = [], frames }: Catalog): Issue[] {
  const known = Object.fromEntries(frames.map((frame) => [frame.code, frame]))
  return templates.flatMap(({ frame, plan }, i) => [
    ...within(`templates[${i}].frame`, frame, known, 'a frame'),
    ...planIssues(plan, `templates[${i}].plan`),
    ...plan.flatMap((item, k) =>
      item.frame === undefined
        ? []
        : within(`templates[${i}].plan[${k}].frame`, item.frame, known, 'a frame'),
    ),
  ])
}

function codeIssues({ frames, legs, braces, pads, decking, deckings, ...others }: Catalog): Issue[] {
  const { hardware, extras, services, templates, quote } = others
  const once = (path: string, codes: readonly string[]): Issue[] =>
    codes.flatMap((code, i) =>
      codes.indexOf(code) < i
        ? [issue(`${path}[${i}].code`, `${show(code)} a second time`, 'codes that differ')]
        : [],
    )
  const lists = {
    ...{ frames, legs, braces, pads, 'decking.panels': decking.panels, deckings: deckings ?? [] },
    ...{ hardware, extras, services: services ?? [], templates: templates ?? [] },
    'quote.zones': quote?.zones ?? [],
  }
  return [
    ...Object.entries(lists).flatMap(([path, items]) =>
      once(
        path,
        items.map(({ code }) => code),
      ),
    ),
    ...once(
      'legs',
      legs.map(({ length }) => String(length)),
    ),
  ]
}
