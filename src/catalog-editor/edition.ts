/** The next edition of a catalog: the last number in it, one up (`2026-1`, `2026-2`); its last letter where it ends with one by itself. */
export function nextEdition(edition: string): string {
  const number = /^(.*?)(\d+)(\D*)$/.exec(edition)
  const letter = /^(.*[^A-Za-z])([A-Ya-y])$/.exec(edition)
  if (letter) return `${letter[1]}${String.fromCharCode(letter[2]!.charCodeAt(0) + 1)}`
  if (!number) return edition === '' ? '1' : `${edition} 2`
  const [, head, digits, tail] = number
  // A year is no count of editions.
  if (head === '' && /^(?:19|20)\d\d$/.test(digits!)) return `${edition}-2`
  return `${head}${String(Number(digits) + 1).padStart(digits!.length, '0')}${tail}`
}
