/** From unknown input to a Catalog: schema, versions, and the references within it. */

import { kindsWith } from '../part-kinds.ts'
import { boredThrough, sectionProperties } from '../parts/section-properties.ts'
import {
  type Issue,
  issue,
  type Parsed,
  parseText,
  parseWith,
  plainOf,
  show,
  upgrade,
} from '../validation.ts'
import { type Catalog, CatalogSchema } from './schema.ts'

const CATALOG_FORMAT = 'leadline/catalog'
const CATALOG_VERSION = 1
const MAX_BYTES = 8 * 1024 * 1024

/** `[n]` turns a catalog of version n into one of n + 1. Version 1 is the first. */
const migrations: Record<number, (old: Record<string, unknown>) => Record<string, unknown>> = {}

/** Checks a catalog and every reference within it. Unknown keys are kept. Never throws. */
export function parseCatalog(input: unknown): Parsed<Catalog> {
  const file = upgrade(plainOf(input), CATALOG_FORMAT, CATALOG_VERSION, migrations)
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

function referenceIssues(catalog: Catalog): Issue[] {
  const issues: Issue[] = []
  const within = (path: string, code: string, known: object, what: string): void => {
    if (!Object.hasOwn(known, code)) issues.push(issue(path, show(code), `${what} of this catalog`))
  }
  const once = (path: string, codes: readonly string[]): void => {
    codes.forEach((code, i) => {
      if (codes.indexOf(code) < i)
        issues.push(issue(`${path}[${i}].code`, `${show(code)} a second time`, 'codes that differ'))
    })
  }
  for (const [name, stock] of Object.entries(catalog.stock)) {
    within(`stock[${show(name)}].material`, stock.material, catalog.materials, 'a material')
    if (stock.shape === 'round-tube' || stock.shape === 'rect-tube') {
      const side = stock.shape === 'round-tube' ? stock.diameter : Math.min(stock.width, stock.height)
      if (stock.wall > side / 2)
        issues.push(issue(`stock[${show(name)}].wall`, show(stock.wall), `at most half of ${side}`))
    }
  }
  for (const [name, { strength }] of Object.entries(catalog.materials)) {
    if (!strength) continue
    const path = `materials[${show(name)}].strength`
    const atMost = (at: string, value: number, most: number, what: string): void => {
      if (value > most) issues.push(issue(`${path}.${at}`, show(value), `at most ${most}, ${what}`))
    }
    atMost('yield', strength.yield, strength.ultimate, 'its ultimate strength')
    // Poisson's ratio lies between 0 and 1/2 in what docks are made of.
    if (strength.G > strength.E / 2 || strength.G < strength.E / 3)
      issues.push(issue(`${path}.G`, show(strength.G), 'between a third and a half of E'))
    if (strength.family === 'aluminum' && strength.welded) {
      atMost('welded.ultimate', strength.welded.ultimate, strength.ultimate, 'that away from a weld')
      atMost('welded.yield', strength.welded.yield, strength.yield, 'that away from a weld')
    }
  }
  const panels = Object.fromEntries(catalog.decking.panels.map((p) => [p.code, p]))
  catalog.frames.forEach((frame, i) => {
    within(`frames[${i}].rail`, frame.rail, catalog.stock, 'stock')
    within(`frames[${i}].ends`, frame.ends, catalog.stock, 'stock')
    within(`frames[${i}].cross.stock`, frame.cross.stock, catalog.stock, 'stock')
    within(`frames[${i}].panel`, frame.panel, panels, 'a deck panel')
    if (frame.width <= 2 * catalog.sleeve.across || frame.length <= 2 * catalog.sleeve.along)
      issues.push(
        issue(`frames[${i}]`, `${frame.length} x ${frame.width}`, 'a frame larger than its sleeves'),
      )
  })
  within('sleeve.stock', catalog.sleeve.stock, catalog.stock, 'stock')
  catalog.legs.forEach((leg, i) => {
    within(`legs[${i}].stock`, leg.stock, catalog.stock, 'stock')
  })
  catalog.braces.forEach((brace, i) => {
    within(`braces[${i}].stock`, brace.stock, catalog.stock, 'stock')
  })
  issues.push(...boredIssues(catalog))
  catalog.pads.forEach((pad, i) => {
    within(`pads[${i}].socket.stock`, pad.socket.stock, catalog.stock, 'stock')
    within(`pads[${i}].plate.material`, pad.plate.material, catalog.materials, 'a material')
  })
  catalog.decking.panels.forEach((panel, i) => {
    within(`decking.panels[${i}].plank.stock`, panel.plank.stock, catalog.stock, 'stock')
    within(`decking.panels[${i}].batten.stock`, panel.batten.stock, catalog.stock, 'stock')
  })
  within('hinge.bar.stock', catalog.hinge.bar.stock, catalog.stock, 'stock')
  catalog.extras.forEach((extra, i) => {
    if (extra.place === 'post')
      extra.posts.forEach((post, k) => {
        within(`extras[${i}].posts[${k}].stock`, post.stock, catalog.stock, 'stock')
      })
  })
  for (const kind of kindsWith('list', 'hardware')) {
    const bolts = catalog.hardware.filter((bolt) => bolt.kind === kind).length
    if (bolts !== 1) issues.push(issue('hardware', `${bolts} entries of kind ${kind}`, 'one'))
  }
  const { frames, legs, braces, pads, decking, hardware, extras } = catalog
  const services = catalog.services ?? []
  const lists = { frames, legs, braces, pads, 'decking.panels': decking.panels, hardware, extras, services }
  for (const [path, items] of Object.entries(lists))
    once(
      path,
      items.map((item) => item.code),
    )
  once(
    'legs',
    legs.map((leg) => String(leg.length)),
  )
  return issues
}
