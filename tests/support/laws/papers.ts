/** Laws of what others key on: ids, order of work, findings, rounding, fingerprint, and what is null until it is built. */
import { createHash } from 'node:crypto'
import canonicalize from 'canonicalize'
import jsonPatch, { type Operation } from 'fast-json-patch'
import type { Dock } from '../../../rules/dock.ts'
import { groupBy, type Law } from './law.ts'

/** Sections are `s1`, `s2` … and `h1`, `h2` … in that order; a plan brings its own. All ids are unique. */
export const idsByContract: Law = (dock, design) => {
  const out: string[] = []
  if (design.dock.plan === undefined) {
    const run = dock.sections.filter((s) => s.id.startsWith('s')).length
    dock.sections.forEach((s, i) => {
      const expected = i < run ? `s${i + 1}` : `h${i - run + 1}`
      if (s.id !== expected) out.push(`section ${i + 1} is ${s.id}, expected ${expected}`)
    })
  }
  for (const leg of dock.legs)
    if (leg.id !== `${leg.section}.${leg.corner}`)
      out.push(`leg ${leg.id} is at ${leg.section}.${leg.corner}`)
  for (const j of dock.joints)
    if (j.id !== j.between.join('~')) out.push(`joint ${j.id} is between ${j.between}`)
  for (const list of [dock.sections, dock.legs, dock.pairs, dock.joints])
    for (const [id, same] of groupBy<{ id: string }>(list, (item) => item.id))
      if (same.length > 1) out.push(`${same.length} are called ${id}`)
  return out
}

/** Every placement is of something that is there, or of an extra. */
export const piecesOfSomething: Law = (dock) => {
  const ids = new Set([...dock.sections, ...dock.legs, ...dock.pairs, ...dock.joints].map((item) => item.id))
  const extras = ['bumper', 'fender-board', 'fender-bolt', 'accessory', 'anchor-post', 'auger', 'post-clamp']
  return dock.placements
    .filter((p) => !ids.has(p.of) && !extras.includes(p.kind))
    .map((p) => `${p.kind} of ${p.of}`)
}

/** A turn is a unit quaternion. */
export const turnsAreUnit: Law = (dock) =>
  dock.placements
    .filter((p) => Math.abs(Math.hypot(...p.turn) - 1) > 5e-6)
    .map((p) => `${p.kind} of ${p.of} is turned by ${p.turn}`)

/** The standing section first, then the ramp, then outward: none before what carries it; each once. */
export const orderOfWork: Law = (dock) => {
  const out: string[] = []
  const { workOrder, sections } = dock
  if (
    [...workOrder].sort().join() !==
    sections
      .map((s) => s.id)
      .sort()
      .join()
  )
    out.push(`work order ${workOrder} is not of the sections`)
  const place = new Map(workOrder.map((id, i) => [id, i]))
  const standing = sections.find((s) => s.role === 'standing')
  const ramp = sections.find((s) => s.role === 'ramp')
  if (standing !== undefined && workOrder[0] !== standing.id)
    out.push(`work begins with ${workOrder[0]}, expected ${standing.id}`)
  if (ramp !== undefined && standing !== undefined && workOrder[1] !== ramp.id)
    out.push(`${ramp.id} is not second`)
  for (const s of sections)
    if (s.on !== null && (place.get(s.on) ?? Infinity) >= (place.get(s.id) ?? -1))
      out.push(`${s.id} goes in before ${s.on}, which carries it`)
  return out
}

/** What a finding may be about. */
function knownIds(...[dock, design]: [Dock, Parameters<Law>[1]]): Set<string> {
  const { dock: asked } = design
  return new Set([
    ...[...dock.sections, ...dock.legs, ...dock.pairs, ...dock.joints].map((item) => item.id),
    ...dock.placements.flatMap((p) => [p.of, p.code]),
    ...Object.keys(asked.extras ?? {}),
    ...Object.keys(asked.overrides ?? {}),
    ...(asked.bracing?.none ?? []),
    ...(asked.placed ?? []).flatMap((p) => [p.code, p.section]),
    ...(asked.plan ?? []).flatMap((p) => [p.id, p.frame ?? '']),
    // Sections asked for by number, of which those that cannot be placed are named all the same.
    ...Array.from({ length: asked.sections ?? 0 }, (_, i) => `s${i + 1}`),
    ...Array.from({ length: asked.head?.sections ?? 0 }, (_, i) => `h${i + 1}`),
    asked.frame,
    asked.pad ?? '',
  ])
}

/** A finding has a severity that there is, is about something that there is, says so in words, and cites its basis. */
export const findingsAreWhole: Law = (dock, design) => {
  const out: string[] = []
  const ids = knownIds(dock, design)
  for (const f of dock.findings) {
    if (!['stop', 'warn', 'note'].includes(f.severity)) out.push(`${f.code} has severity ${f.severity}`)
    for (const part of f.parts) if (!ids.has(part)) out.push(`${f.code} is about ${part}, which is not there`)
    if (f.text.trim() === '' || /undefined|NaN|\{|\}/.test(f.text)) out.push(`${f.code} says "${f.text}"`)
    if (f.basis.trim() === '') out.push(`${f.code} has no basis`)
    for (const [name, figure] of Object.entries(f.values))
      if (typeof figure.value === 'number' && !Number.isFinite(figure.value))
        out.push(`${f.code}: ${name} is ${figure.value}`)
  }
  return out
}

/** A remedy's patch can be applied to the design that it was found in. */
export const remediesApply: Law = (dock, design) => {
  const out: string[] = []
  for (const f of dock.findings) {
    if (f.remedy === null) continue
    try {
      jsonPatch.applyPatch(structuredClone(design), structuredClone(f.remedy.patch) as Operation[], true)
    } catch (error) {
      out.push(`${f.code}: remedy ${JSON.stringify(f.remedy.patch)} does not apply: ${(error as Error).name}`)
    }
  }
  return out
}

/** Every number that goes out is finite and rounded to 1e-6, and no zero is negative. */
export const numbersRounded: Law = (dock) => {
  const out: string[] = []
  const walk = (value: unknown, path: string): void => {
    if (typeof value === 'number') {
      const rounded = Math.round(value * 1e6) / 1e6
      if (!Number.isFinite(value) || Object.is(value, -0) || rounded !== value)
        out.push(`${path} is ${Object.is(value, -0) ? '-0' : value}`)
    } else if (typeof value === 'object' && value !== null) {
      for (const [key, item] of Object.entries(value)) walk(item, `${path}/${key}`)
    }
  }
  walk(dock, '')
  return out
}

/** Hashes are 64 hex digits. */
export const fingerprintShape: Law = (dock) => {
  const { all, design, catalog } = dock.fingerprint
  return Object.entries({ all, design, catalog })
    .filter(([, hash]) => !/^[0-9a-f]{64}$/.test(hash))
    .map(([name, hash]) => `fingerprint ${name} is ${hash}`)
}

const sha256 = (value: unknown) =>
  createHash('sha256')
    .update(canonicalize(value) ?? '')
    .digest('hex')

/** Its parts are SHA-256 of the RFC 8785 JSON of the parsed design without `name` and `job`, and of the catalog without `shop`. */
export const fingerprintOfContent: Law = (dock, design, catalog) => {
  const { name: _name, job: _job, ...counted } = design
  const { shop: _shop, ...sold } = catalog
  const out: string[] = []
  if (dock.fingerprint.design !== sha256(counted)) out.push('fingerprint design is not of this design')
  if (dock.fingerprint.catalog !== sha256(sold)) out.push('fingerprint catalog is not of this catalog')
  return out
}

/** Share of a normal distribution below a value, by Simpson's rule. */
function normalBelow(value: number): number {
  const [from, n] = [-9, 4000]
  const to = Math.max(from, Math.min(9, value))
  const density = (x: number): number => Math.exp(-(x * x) / 2) / Math.sqrt(2 * Math.PI)
  const step = (to - from) / n
  let sum = density(from) + density(to)
  for (let i = 1; i < n; i++) sum += (i % 2 === 1 ? 4 : 2) * density(from + i * step)
  return (sum * step) / 3
}

/** Every leg with a length has its chance, of what it may be short by and of the bed's error there; none while that is worked out. */
export const chancesFollow: Law = (dock) => {
  const told = new Map(dock.fit?.legs.map((one) => [one.leg, one]))
  const out: string[] = []
  for (const leg of dock.legs) {
    const one = told.get(leg.id)
    if (leg.fitChance !== (one?.chance ?? null)) out.push(`${leg.id} fitChance is not that of the fit`)
    if ((one !== undefined) !== (leg.stock !== null && dock.pending === undefined))
      out.push(`${leg.id} ${one ? 'has' : 'lacks'} a chance`)
    if (!one) continue
    const { error, room, chance, reserve95 } = one
    const expected = error > 0 ? normalBelow(room / error) : room >= -2e-6 ? 1 : 0
    const slack = error > 0 ? 2e-5 + (2e-6 / error) * (1 + Math.abs(room) / error) : 0
    if (Math.abs(chance - expected) > slack) out.push(`${leg.id} chance ${chance}, expected ${expected}`)
    if (Math.abs(room + reserve95 - leg.aboveDeck! - 1.644854 * error) > 1e-5)
      out.push(`${leg.id} reserve of ${reserve95} for 95 %`)
  }
  const least = Math.min(1, ...dock.legs.map(({ fitChance }) => fitChance ?? 1))
  if (dock.fit && dock.fit.all > least + 0.01) out.push(`all fit at ${dock.fit.all}, one at ${least}`)
  return out
}
