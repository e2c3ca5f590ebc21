/** A form of the page's own in the place of our fields: found in its slot, and read by the names of its fields. */
import { NOTHING_TYPED, type Typed } from './contact-fields.tsx'

/** Characters. */
const LONGEST = 200
const LONGEST_NOTE = 4000
const KNOWN: ReadonlySet<string> = new Set(['name', 'email', 'phone', 'place', 'note', 'wants', 'picture'])

/** Null where the page has put none there. */
export function ownForm(slot: HTMLSlotElement | null): HTMLFormElement | null {
  return slot?.assignedElements().find((one) => one instanceof HTMLFormElement) ?? null
}

/**
 * Fields by other names than ours are lines of the note; files are left out, and no picture goes along unless a field `picture` says so.
 * `agreed`: the box beside the shop's own text, which is ours in any case: nothing in the form stands for it.
 */
export function typedIn(form: HTMLFormElement, agreed: boolean): Typed {
  const fields = new FormData(form)
  const textOf = (name: string): string => {
    const value = fields.get(name)
    return typeof value === 'string' ? value : ''
  }
  const more = [...fields].flatMap(([name, value]) =>
    KNOWN.has(name) || typeof value !== 'string' || value === '' ? [] : [`${name}: ${value}`],
  )
  const [name, email, phone, place] = (['name', 'email', 'phone', 'place'] as const).map((key) =>
    textOf(key).slice(0, LONGEST),
  )
  return {
    ...NOTHING_TYPED,
    ...(name && { name }),
    ...(email && { email }),
    ...(phone && { phone }),
    ...(place && { place }),
    note: [textOf('note'), ...more].filter(Boolean).join('\n').slice(0, LONGEST_NOTE),
    wants: fields.getAll('wants').filter((one) => typeof one === 'string'),
    picture: textOf('picture') !== '',
    agreed,
  }
}
