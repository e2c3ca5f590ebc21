/** What ends a command before its end. */
import { messageOf } from '../platform/error-message.ts'

class Fault extends Error {
  /** One a problem: where, what was wrong, what was expected. */
  readonly lines: readonly string[]
  constructor(lines: readonly string[]) {
    super(lines.join('\n'))
    this.lines = lines
  }
}

/** Arguments or files that cannot be used: exit code 2. */
export class Unusable extends Fault {
  readonly code = 2
}

/** What was made cannot be written: exit code 3. */
export class Unwritable extends Fault {
  readonly code = 3
}

/** The code of a failed system call, such as `ENOSPC`; the error's own words where it has none. */
export const codeOf = (error: unknown): string =>
  error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : messageOf(error)
