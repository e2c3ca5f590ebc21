/** A key within a JSON Pointer (RFC 6901). */
export const pointer = (key: string): string => key.replaceAll('~', '~0').replaceAll('/', '~1')
