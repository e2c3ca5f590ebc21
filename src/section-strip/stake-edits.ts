/** What stays on shore, as pure functions of the Design: a stake that distances run from, a mark that levels are read against. */
import type { Design } from '../../rules/index.ts'

type Site = Design['site']

const withSite = (design: Design, change: Partial<Site>): Design => {
  const { stake, benchmark, ...site } = { ...design.site, ...change }
  return { ...design, site: { ...site, ...(stake && { stake }), ...(benchmark && { benchmark }) } }
}

/** Without a name there is none; at the water's edge until it is said where. */
export const nameStake = (design: Design, name: string): Design =>
  withSite(design, {
    stake: name.trim() === '' ? undefined : { x: 0, ...design.site.stake, name: name.trim() },
  })

/** @param back m behind the water's edge; beyond it negative */
export const placeStake = (design: Design, back: number): Design =>
  design.site.stake ? withSite(design, { stake: { ...design.site.stake, x: 0 - back } }) : design

/** Without a name there is none; on the water until it is said how high. */
export const nameMark = (design: Design, name: string): Design =>
  withSite(design, {
    benchmark: name.trim() === '' ? undefined : { above: 0, ...design.site.benchmark, name: name.trim() },
  })

/** @param above m over the survey water; under it negative */
export const placeMark = (design: Design, above: number): Design =>
  design.site.benchmark ? withSite(design, { benchmark: { ...design.site.benchmark, above } }) : design
