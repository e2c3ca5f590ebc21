/** As much of opentype.js as is used; the package brings no types. */
declare module 'opentype.js' {
  interface Font {
    readonly unitsPerEm: number
    readonly ascender: number
    readonly descender: number
    readonly tables: {
      readonly os2: { readonly sCapHeight: number; readonly sxHeight: number }
      readonly cmap: { readonly glyphIndexMap: Readonly<Record<string, number>> }
    }
    charToGlyph(character: string): { readonly advanceWidth: number }
  }
  const opentype: { parse(buffer: ArrayBuffer): Font }
  export default opentype
}
