/** What is waited for no longer than it may take. */

/** That it took too long. `limit` in ms. */
export class TimeLimitExceeded extends Error {
  override readonly name = 'TimeLimitExceeded'
  constructor(readonly limit: number) {
    super(`no answer within ${limit / 1000} s`)
  }
}

/** The promise's own end, or a rejection with `TimeLimitExceeded` after `limit` ms. */
export function within<T>(limit: number, promise: Promise<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => reject(new TimeLimitExceeded(limit)), limit)
    promise.then(resolve, reject).finally(() => clearTimeout(timer))
  })
}
