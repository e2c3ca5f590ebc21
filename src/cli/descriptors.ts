/** Files that the terminal holds open already, and waiting for them. */

/**
 * The number under which a name's file is open already: `-` (standard input or output, as `dash` says), `/dev/stdin`, `/dev/fd/63`.
 * Such a file is used as it is: opened again by its name a file would be read from its start, replaced, or, as a socket, not open at all.
 */
export function descriptorOf(file: string, dash: 0 | 1): number | null {
  if (file === '-') return dash
  const standard = ['/dev/stdin', '/dev/stdout', '/dev/stderr'].indexOf(file)
  if (standard >= 0) return standard
  const number = /^\/(?:dev|proc\/self)\/fd\/(\d{1,9})$/.exec(file)?.[1]
  return number === undefined ? null : Number(number)
}

const never = new Int32Array(new SharedArrayBuffer(4))

/** Waits without work, for a file that is not ready. */
export const pause = (milliseconds: number): void => {
  Atomics.wait(never, 0, 0, milliseconds)
}
