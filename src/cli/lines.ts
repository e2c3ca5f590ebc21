/** All messages to the terminal go through here. */
import { visible } from '../documents/files/visible-text.ts'

/** A key or name in a file may be as long as the file: the beginning says where, the end what was expected. */
const [BEGINNING, END] = [1500, 400]

/** One problem or notice a line, of readable length, with invisible characters written out. */
export const lines = (list: readonly string[]): string =>
  list
    .map((text) => {
      const all = visible(text)
      const shown = all.length > BEGINNING + END ? `${all.slice(0, BEGINNING)} … ${all.slice(-END)}` : all
      return `${shown}\n`
    })
    .join('')
