/**
 * Rows as CSV (RFC 4180 quoting, heads first, `\n` between rows).
 *
 * A spreadsheet takes a cell that begins with = + - @, a tab or a line's end for a formula, full-width forms of them too (OWASP, CSV
 * Injection). Such text gets an apostrophe before it, with blanks or what is not seen before such a sign as well; numbers stay numbers,
 * those below nothing too.
 */
import Papa from 'papaparse'

const FORMULA = /^[\t\r\n]|^[\s\p{C}]*[=+\-@＝＋－＠]/u

export const csvOf = (rows: readonly object[]): string =>
  `${Papa.unparse([...rows], { escapeFormulae: FORMULA, newline: '\n' })}\n`
