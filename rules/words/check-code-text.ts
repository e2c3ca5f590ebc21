/** A check code as people read it: its first twelve digits, in fours. */
export const inFours = (code: string): string => code.slice(0, 12).replace(/(.{4})(?=.)/g, '$1 ')
