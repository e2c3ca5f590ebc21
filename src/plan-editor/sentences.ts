/** What sections are called, and why something cannot be, in words. */
import type { Say } from '../../rules/index.ts'
import type { Lying, Tried } from '../../rules/plan/troubles.ts'
import { count, meters, text } from '../words/index.ts'
import type { PLAN_EDITOR } from '../words/plan-editor.ts'

export type SayPlan = Say<keyof (typeof PLAN_EDITOR)['english']>

/** More sections than this are no picture to touch any more. */
export const MOST_SHAPED = 200

/** By its id where that says which it is. */
export function nameOf(t: SayPlan, { layout }: Lying, id: string): string {
  if (layout.ramp?.id === id) return t('ramp')
  const [, row, n] = /^([sh])(\d+)$/.exec(id) ?? []
  return row === undefined ? id : t(row === 's' ? 'section.run' : 'section.head', { n: n! })
}

/** What stands on it in the picture: the number of its name, as findings and papers have it. */
export function shortOf(t: SayPlan, lying: Lying, id: string): string {
  if (lying.layout.ramp?.id === id) return t('ramp')
  const [, row, n] = /^([sh])(\d+)$/.exec(id) ?? []
  return row === 's' ? n! : row === 'h' ? t('short.head', { n: n! }) : id
}

/** The name with its place in the order of work. */
export const labelOf = (t: SayPlan, lying: Lying, id: string): string =>
  t('section', {
    name: text(nameOf(t, lying, id)),
    order: count(lying.layout.workOrder.findIndex((p) => p.id === id) + 1),
  })

/** Why it cannot be; nothing where it can. */
export function whyNot(t: SayPlan, lying: Lying, tried: Tried): string[] {
  const name = (id: string) => text(nameOf(t, lying, id))
  if (!tried.ok) return [t(`refused.${tried.why}`, { a: name(tried.section) })]
  return tried.brought.map(({ kind, sections: [a, b], shared, least }) =>
    t(`trouble.${kind}`, {
      a: name(a!),
      ...(b === undefined ? {} : { b: name(b) }),
      ...(shared === undefined ? {} : { shared: meters(shared), least: meters(least!) }),
    }),
  )
}
