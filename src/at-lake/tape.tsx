/** A length of a table, which is read as one: where there is no room for it, it goes on a second line after its feet, and nowhere else. */
export function Tape({ of }: { readonly of: string }) {
  return of.split(/(?<=\D) (?=\d)/).flatMap((part, i) => [i > 0 ? ' ' : '', <span key={part}>{part}</span>])
}
