/** Laws of counting: every count follows from legs, joints, braces and frames, never from another count of the same thing. */
import { countOf, expectCount, frameOf, type Law, stopOnBoth } from './law.ts'

/** A foot pad, a leg cap to each leg; a tube to each leg that has a length. */
export const legsPadsCaps: Law = (dock) => {
  const out: string[] = []
  expectCount(out, 'foot pads', countOf(dock, 'foot-pad'), dock.legs.length)
  expectCount(out, 'leg caps', countOf(dock, 'leg-cap'), dock.legs.length)
  expectCount(out, 'leg tubes', countOf(dock, 'leg'), dock.legs.filter((l) => l.stock !== null).length)
  return out
}

/** A sleeve cap to each sleeve without a leg; four sleeves to a frame, the ramp's too. */
export const sleeveCaps: Law = (dock) => {
  const out: string[] = []
  expectCount(out, 'sleeve caps', countOf(dock, 'sleeve-cap'), 4 * dock.sections.length - dock.legs.length)
  return out
}

/** Set bolts: as many as the catalog says to each used sleeve. */
export const setBolts: Law = (dock, _design, catalog) => {
  const out: string[] = []
  expectCount(out, 'set bolts', countOf(dock, 'set-bolt'), catalog.sleeve.bolts.length * dock.legs.length)
  return out
}

/** Pad bolts: as many as the catalog says to each leg. */
export const padBolts: Law = (dock, _design, catalog) => {
  const out: string[] = []
  expectCount(out, 'pad bolts', countOf(dock, 'pad-bolt'), catalog.rules.padBolts.value * dock.legs.length)
  return out
}

/** Two hooks to a carrying joint (none where a stop says that its edges are too short), their brackets, and the bolts of both sides to each bracket. */
export const hooksAndBolts: Law = (dock, _design, catalog) => {
  const out: string[] = []
  const { bracketsPerHook, boltsCarrier, boltsHung } = catalog.rules
  const hung = new Set(dock.placements.filter((p) => p.kind === 'hook-bracket').map((p) => p.of))
  const joints = dock.joints.filter((j) => j.kind === 'hook' && (hung.has(j.id) || !stopOnBoth(dock, j)))
  const brackets = 2 * bracketsPerHook.value * joints.length
  expectCount(out, 'hook brackets', countOf(dock, 'hook-bracket'), brackets)
  expectCount(
    out,
    'hook bolts',
    countOf(dock, 'hook-bolt'),
    brackets * (boltsCarrier.value + boltsHung.value),
  )
  return out
}

/** Hinge hardware where there is a hinge, and only there. */
export const hingeHardware: Law = (dock, _design, catalog) => {
  const out: string[] = []
  const { barBolts, hingePins, pinBolts } = catalog.rules
  const hinges = dock.joints.filter((j) => j.kind === 'hinge').length
  if (hinges > (dock.sections.some((s) => s.role === 'ramp') ? 1 : 0)) out.push(`${hinges} hinges`)
  expectCount(out, 'hinge bars', countOf(dock, 'hinge-bar'), hinges)
  expectCount(out, 'bar bolts', countOf(dock, 'bar-bolt'), hinges * barBolts.value)
  expectCount(out, 'hinge pins', countOf(dock, 'hinge-pin'), hinges * hingePins.value)
  expectCount(out, 'pin bolts', countOf(dock, 'pin-bolt'), hinges * hingePins.value * pinBolts.value)
  return out
}

/** Two clamps and the catalog's bolts to each brace. */
export const braceHardware: Law = (dock, _design, catalog) => {
  const out: string[] = []
  const braces = dock.pairs.filter((p) => p.brace !== null).length
  expectCount(out, 'braces', countOf(dock, 'brace'), braces)
  expectCount(out, 'brace clamps', countOf(dock, 'brace-clamp'), 2 * braces)
  expectCount(out, 'brace bolts', countOf(dock, 'brace-bolt'), catalog.rules.braceBolts.value * braces)
  return out
}

/** A frame to each section, its panels, the clips of each panel. */
export const framesAndDecking: Law = (dock, design, catalog) => {
  const out: string[] = []
  const instead = catalog.deckings?.find(({ code }) => code === design.dock.finish)?.panels ?? {}
  let panels = 0
  for (const section of dock.sections) {
    const frame = frameOf(catalog, section.frame)
    if (frame === undefined) {
      out.push(`${section.id} has a frame ${section.frame} that the catalog has not`)
      continue
    }
    panels += frame.panels
  }
  expectCount(out, 'frames', countOf(dock, 'frame'), dock.sections.length)
  expectCount(out, 'deck panels', countOf(dock, 'deck-panel'), panels)
  expectCount(out, 'deck clips', countOf(dock, 'deck-clip'), panels * catalog.rules.clipsPerPanel.value)
  const perSection = new Map<string, number>()
  for (const p of dock.placements)
    if (p.kind === 'deck-panel')
      perSection.set(`${p.section} ${p.code}`, (perSection.get(`${p.section} ${p.code}`) ?? 0) + 1)
  for (const section of dock.sections) {
    const frame = frameOf(catalog, section.frame)
    if (frame !== undefined)
      expectCount(
        out,
        `panels of ${section.id}`,
        perSection.get(`${section.id} ${instead[frame.panel] ?? frame.panel}`) ?? 0,
        frame.panels,
      )
  }
  return out
}

/** Tie plates to each tie. */
export const tiePlates: Law = (dock, _design, catalog) => {
  const out: string[] = []
  const ties = dock.joints.filter((j) => j.kind === 'tie').length
  const plates = dock.placements.filter((p) => p.kind === 'accessory' && p.code === catalog.tie.code).length
  expectCount(out, 'tie plates', plates, ties * catalog.rules.tiesPerTie.value)
  return out
}

/** Every extra that was asked for is there with all its parts, or a finding names it. Nothing is there that was not asked for. */
export const extrasAsAsked: Law = (dock, design, catalog) => {
  const out: string[] = []
  const asked = new Map<string, number>()
  for (const [code, n] of Object.entries(design.dock.extras ?? {}))
    asked.set(code, (asked.get(code) ?? 0) + n)
  for (const { code } of design.dock.placed ?? []) asked.set(code, (asked.get(code) ?? 0) + 1)
  const told = (code: string) =>
    dock.findings.some(
      (f) =>
        f.parts.some((part) => part === code || part.startsWith(`${code}.`)) ||
        Object.values(f.values).some((v) => v.value === code),
    )
  if (dock.sections.length === 0) return out
  for (const [code, n] of asked)
    if (n > 0 && !catalog.extras.some((e) => e.code === code) && !told(code))
      out.push(`unknown extra ${code} without a finding`)
  for (const extra of catalog.extras) {
    const n = asked.get(extra.code) ?? 0
    const counts = extra.parts.map((part) => ({
      what: part.code,
      each: part.count,
      placed: dock.placements.filter((p) => p.kind === part.kind && p.code === part.code).length,
    }))
    if (extra.place === 'post') {
      const codes = extra.posts.map((p) => p.code)
      const placed = dock.placements.filter((p) => p.kind === 'anchor-post' && codes.includes(p.code)).length
      counts.push({ what: 'posts', each: 1, placed })
    }
    for (const { what, each, placed } of counts) {
      if (placed > n * each) out.push(`${extra.code}: ${placed} of ${what}, asked for ${n * each}`)
      if (placed < n * each && !told(extra.code))
        out.push(`${extra.code}: ${placed} of ${what}, asked for ${n * each}, no finding`)
      if (placed % each !== 0) out.push(`${extra.code}: ${placed} of ${what} are no whole extras`)
    }
  }
  return out
}
