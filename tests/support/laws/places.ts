/** Laws of where the smaller pieces are: in the frame of reference that `rules/part-kinds.ts` gives for each kind. */
import type { Placement } from '../../../rules/dock.ts'
import { groundOf } from './ground.ts'
import { expectNear, frameOf, groupBy, type Law, near, stopOn, TOLERANCE } from './law.ts'
import { cornerAt, inPlan, outsideOf } from './plan.ts'

const isAt = (p: Placement, x: number, y: number, z: number, tolerance = TOLERANCE) =>
  near(p.at[0], x, tolerance) && near(p.at[1], y, tolerance) && near(p.at[2], z, tolerance)

/** Each section has its frame at the middle of its start edge, on the deck surface, turned as the section. */
export const framesPlaced: Law = (dock) => {
  const out: string[] = []
  const by = groupBy(
    dock.placements.filter((p) => p.kind === 'frame'),
    (p) => p.section,
  )
  for (const s of dock.sections) {
    const frame = by.get(s.id)?.[0]
    if (frame === undefined || frame.code !== s.frame) {
      out.push(`${s.id} has no frame ${s.frame}`)
      continue
    }
    if (!isAt(frame, s.x, s.y, s.z)) out.push(`frame of ${s.id} is at ${frame.at}`)
    if (s.role === 'ramp' && stopOn(dock, s.id)) continue
    const [qx, qy, qz, qw] = frame.turn
    const own = [1 - 2 * (qy ** 2 + qz ** 2), 2 * (qx * qy + qz * qw)] as const
    const heading = (s.heading * Math.PI) / 180
    const flat = Math.hypot(...own)
    if (!near(own[0] / flat, Math.cos(heading), 1e-5) || !near(own[1] / flat, Math.sin(heading), 1e-5))
      out.push(`frame of ${s.id} is turned by ${frame.turn}`)
    const climb = 2 * (qx * qz - qy * qw)
    const slope = s.role === 'ramp' && dock.ramp !== null ? Math.sin(Math.atan(dock.ramp.slope)) : 0
    expectNear(out, `frame of ${s.id} climbs`, climb, slope, 1e-5)
  }
  return out
}

/** A cap is in the mouth of each sleeve of a level section that has no leg, and in no other. */
export const capsInEmptySleeves: Law = (dock, design, catalog) => {
  const out: string[] = []
  const legged = new Set(dock.legs.map((l) => l.id))
  const caps = groupBy(
    dock.placements.filter((p) => p.kind === 'sleeve-cap'),
    (p) => p.section,
  )
  const top = design.dock.deckHeight - catalog.decking.rise
  for (const s of dock.sections) {
    if (s.role === 'ramp') continue
    for (const corner of ['start.left', 'start.right', 'end.left', 'end.right']) {
      const [x, y] = cornerAt(s, corner, catalog.sleeve.along, catalog.sleeve.across)
      const here = (caps.get(s.id) ?? []).filter((p) => isAt(p, x, y, top, 1e-5)).length
      const expected = legged.has(`${s.id}.${corner}`) ? 0 : 1
      if (here !== expected) out.push(`${here} caps in the sleeve ${s.id}.${corner}, expected ${expected}`)
    }
  }
  return out
}

/** Set bolts press the leg's axis at the heights that the catalog gives for its sleeve. */
export const setBoltsInSleeves: Law = (dock, design, catalog) => {
  const out: string[] = []
  const top = design.dock.deckHeight - catalog.decking.rise
  const bolts = groupBy(
    dock.placements.filter((p) => p.kind === 'set-bolt'),
    (p) => p.of,
  )
  for (const leg of dock.legs) {
    const own = bolts.get(leg.id) ?? []
    for (const below of catalog.sleeve.bolts)
      if (own.filter((p) => isAt(p, leg.x, leg.y, top - below)).length !== 1)
        out.push(`${leg.id} has not one set bolt ${below} below the frame top`)
  }
  return out
}

/** A clamp holds each end of a brace, on the leg's axis at the height of the hole. */
export const clampsAtHoles: Law = (dock) => {
  const out: string[] = []
  const legs = new Map(dock.legs.map((l) => [l.id, l]))
  const clamps = groupBy(
    dock.placements.filter((p) => p.kind === 'brace-clamp'),
    (p) => p.of,
  )
  for (const { id, legs: ends, brace } of dock.pairs) {
    if (brace === null) continue
    for (const end of ends) {
      const leg = legs.get(end)
      if (leg === undefined) continue
      const z = end === brace.low ? brace.lowZ : brace.highZ
      const here = (clamps.get(id) ?? []).filter((p) => isAt(p, leg.x, leg.y, z))
      if (here.length !== 1) out.push(`${id}: ${here.length} clamps on ${end} at ${z}`)
    }
  }
  return out
}

/** Panels lie on their frame: middle within it, all of one section apart from each other by a panel's length. */
export const panelsOnFrames: Law = (dock, _design, catalog) => {
  const out: string[] = []
  const by = groupBy(
    dock.placements.filter((p) => p.kind === 'deck-panel'),
    (p) => p.section,
  )
  for (const s of dock.sections) {
    if (s.role === 'ramp') continue
    const panel = catalog.decking.panels.find((p) => p.code === frameOf(catalog, s.frame)?.panel)
    if (s.turn !== undefined) {
      // One, in the middle between the middles of its sides.
      const middle = ['start.left', 'end.left', 'start.right', 'end.right'].map((corner) =>
        cornerAt(s, corner),
      )
      const [x, y] = [0, 1].map((k) => middle.reduce((sum, p) => sum + p[k as 0 | 1] / 4, 0))
      for (const p of by.get(s.id) ?? [])
        if (!isAt(p, x!, y!, s.z)) out.push(`a panel of ${s.id} is off its middle`)
      continue
    }
    const a = (-s.heading * Math.PI) / 180
    const along = (by.get(s.id) ?? []).map((p) => {
      const [dx, dy] = [p.at[0] - s.x, p.at[1] - s.y]
      if (!near(dx * Math.sin(a) + dy * Math.cos(a), 0, 1e-5))
        out.push(`a panel of ${s.id} is off its center line`)
      if (!near(p.at[2], s.z)) out.push(`a panel of ${s.id} is at ${p.at[2]}`)
      return dx * Math.cos(a) - dy * Math.sin(a)
    })
    along.sort((p, q) => p - q)
    const half = (panel?.length ?? 0) / 2
    if (along.length > 0 && (along[0]! < half - 1e-5 || along.at(-1)! > s.length - half + 1e-5))
      out.push(`a panel of ${s.id} overhangs its frame`)
    for (let i = 1; i < along.length; i++)
      if (along[i]! - along[i - 1]! < 2 * half - 1e-5) out.push(`two panels of ${s.id} lie on each other`)
  }
  return out
}

/** A post's foot is as deep in the bottom as the catalog says; it is the shortest that reaches over the deck, or a finding says none does. */
export const postsReach: Law = (dock, design, catalog) => {
  const out: string[] = []
  const ground = groundOf(design.site)
  for (const extra of catalog.extras) {
    if (extra.place !== 'post') continue
    const embed = extra.embed ?? catalog.rules.postEmbed.value
    for (const p of dock.placements) {
      const own = extra.posts.find((post) => p.kind === 'anchor-post' && post.code === p.code)
      if (own === undefined) continue
      const beds = ground.at(p.at[0], p.at[1], false)
      const told = dock.findings.some((f) => f.parts.includes(extra.code) || f.parts.includes(p.of))
      const right = beds.filter((bed) => near(p.at[2], bed - embed, 2e-5))
      if (beds.length > 0 && right.length === 0)
        out.push(`post at ${p.at}, its foot should be at ${beds.map((b) => b - embed)}`)
      const needed = design.dock.deckHeight + extra.above - p.at[2]
      if (own.length < needed - 1e-5 && !told)
        out.push(`${p.code} at ${p.at} is too short for ${needed}, and no finding names it`)
      const shorter = extra.posts.find(
        (post) => post.length < own.length - 1e-9 && post.length >= needed + 1e-5,
      )
      if (shorter !== undefined) out.push(`${p.code} at ${p.at}, ${shorter.code} would do for ${needed}`)
    }
  }
  return out
}

/** A post that the rule placed goes past every foot pad, in plan. One with a place of its own (`dock.placed`) stands where it was put. */
export const postsBesidePads: Law = (dock, design, catalog) => {
  const out: string[] = []
  for (const extra of catalog.extras) {
    if (extra.place !== 'post') continue
    const refused = dock.findings.filter(
      (f) => f.code === 'extra-no-place' && f.values.extra?.value === extra.code,
    ).length
    const byHand = (design.dock.placed ?? []).filter((p) => p.code === extra.code).length - refused
    for (const post of dock.placements) {
      if (post.kind !== 'anchor-post' || !post.of.startsWith(`${extra.code}.`)) continue
      if (Number(post.of.slice(extra.code.length + 1)) <= byHand) continue
      const stock = catalog.stock[extra.posts.find(({ code }) => code === post.code)!.stock]!
      const tube = (stock.shape === 'round-tube' ? stock.diameter : 0) / 2
      for (const pad of dock.placements) {
        const plate = pad.kind === 'foot-pad' && catalog.pads.find(({ code }) => code === pad.code)?.plate
        if (!plate) continue
        const heading = dock.sections.find((s) => s.id === pad.section)!.heading
        const a = (heading * Math.PI) / 180
        const [px, py] = [post.at[0] - pad.at[0], post.at[1] - pad.at[1]]
        const along = Math.abs(px * Math.cos(a) + py * Math.sin(a))
        const across = Math.abs(py * Math.cos(a) - px * Math.sin(a))
        const dx = Math.max(0, along - plate.length / 2)
        const dy = Math.max(0, across - plate.width / 2)
        if (Math.hypot(dx, dy) < tube) out.push(`${post.of} goes through the pad of ${pad.of}`)
      }
    }
  }
  return out
}

/** Extras with a place of their own are on an edge of a section: on its outline, or a post its standoff away. */
export const extrasOnEdges: Law = (dock, _design, catalog) => {
  const out: string[] = []
  for (const extra of catalog.extras) {
    const off = extra.place === 'post' ? extra.standoff : 0
    const codes = new Set(
      extra.place === 'post' ? extra.posts.map((p) => p.code) : extra.parts.map((p) => p.code),
    )
    for (const p of dock.placements) {
      if (!codes.has(p.code)) continue
      const section = dock.sections.find((s) => s.id === p.section)
      if (section === undefined || section.role === 'ramp') continue
      const outside = outsideOf(section, [p.at[0], p.at[1]])
      if (!near(outside, off, 1e-5))
        out.push(`${p.code} at ${p.at} is ${outside} off ${section.id}, expected ${off}`)
    }
  }
  return out
}

/**
 * A fender board stands with its top at the deck, its back to its section; its bolts go through it and the rail behind it, as many
 * through each board of an extra, one over the other.
 */
export const fenderBoards: Law = (dock, design, catalog) => {
  const out: string[] = []
  for (const extra of catalog.extras) {
    const board = extra.parts.find(({ kind }) => kind === 'fender-board')
    const bolt = extra.parts.find(({ kind }) => kind === 'fender-bolt')
    if (!board) continue
    const [, wide] = board.size
    for (const [id, own] of groupBy(dock.placements, (p) => p.of)) {
      if (!id.startsWith(`${extra.code}.`)) continue
      const boards = own.filter((p) => p.kind === 'fender-board')
      const bolts = own.filter((p) => p.kind === 'fender-bolt')
      if (boards.length !== board.count) out.push(`${id} has ${boards.length} boards`)
      if (bolts.length !== (bolt?.count ?? 0)) out.push(`${id} has ${bolts.length} bolts`)
      for (const p of boards) {
        const section = dock.sections.find((s) => s.id === p.section)!
        const [cx, cy] = inPlan(section, [section.length / 2, 0])
        const [x, y, z, w] = p.turn
        const outward = [1 - 2 * (y * y + z * z), 2 * (x * y + z * w)] as const
        if (!near(p.at[2], design.dock.deckHeight)) out.push(`${id}: its top is at ${p.at[2]}`)
        if (outward[0] * (p.at[0] - cx) + outward[1] * (p.at[1] - cy) <= 0)
          out.push(`${id}: its face is turned to the dock`)
        const rail = catalog.stock[frameOf(catalog, section.frame)!.rail]!
        const deep = rail.shape === 'rect-tube' || rail.shape === 'flat' ? rail.height : rail.diameter
        const top = design.dock.deckHeight - catalog.decking.rise
        const through = bolts.filter((b) => Math.hypot(b.at[0] - p.at[0], b.at[1] - p.at[1]) < wide / 2)
        if (Math.abs(through.length - bolts.length / boards.length) >= 1)
          out.push(
            `${id}: ${through.length} of ${bolts.length} bolts go through one of ${boards.length} boards`,
          )
        const heights = through.map((b) => b.at[2])
        if (new Set(heights).size < heights.length) out.push(`${id}: two bolts in one place`)
        for (const height of heights)
          if (height >= top || height <= top - deep) out.push(`${id}: a bolt at ${height} misses the rail`)
      }
    }
  }
  return out
}

/**
 * The hinge bar, its pins and their bolts are on the hinge axis: at the start, the hinge's drop below the deck surface, and beside
 * no section, unless ramp and standing section share less of an edge than the bar is long.
 */
export const hingeOnAxis: Law = (dock, design, catalog) => {
  const out: string[] = []
  const kinds = ['hinge-bar', 'hinge-pin', 'bar-bolt', 'pin-bolt']
  const standing = dock.sections.find((s) => s.role === 'standing')
  const ramp = dock.sections.find((s) => s.role === 'ramp')
  const side = (sign: 1 | -1) =>
    Math.min(...[ramp, standing].map((s) => (s === undefined ? 0 : sign * s.y + s.width / 2)))
  const shared = side(1) + side(-1)
  for (const p of dock.placements) {
    if (!kinds.includes(p.kind) || standing === undefined || dock.start === null) continue
    if (!isAt(p, dock.start, p.at[1], design.dock.deckHeight - catalog.hinge.drop))
      out.push(`${p.kind} at ${p.at} is off the hinge axis`)
    if (shared >= catalog.hinge.bar.length && Math.abs(p.at[1] - standing.y) > standing.width / 2 + 1e-5)
      out.push(`${p.kind} at ${p.at} is beside ${standing.id}`)
  }
  return out
}
