/** Text of DXF: letters of any script. */

/** In the format's texts these begin a code: `%%d`, `^J`, `\U+`. */
const CODES = /%%|\^|\\/

/**
 * On one line, accents joined to their letters. What is not of ASCII is written by its number (`\U+4E2D`), which programs of every age
 * read, whatever they take the file's letters for; beyond four digits, which that cannot say, as UTF-8, as the version of the file has it.
 */
export function written(text: string): string {
  let out = ''
  const normal = text.normalize('NFC')
  const coded = CODES.test(normal)
  for (const letter of normal) {
    const point = letter.codePointAt(0)!
    if (point < 0x20 || (point >= 0x7f && point < 0xa0)) out += ' '
    else if (point > 0xffff) out += letter
    else if (point >= 0x7f || (point >= 0xd800 && point < 0xe000) || (coded && '%^\\'.includes(letter)))
      out += `\\U+${point.toString(16).toUpperCase().padStart(4, '0')}`
    else out += letter
  }
  return out
}
