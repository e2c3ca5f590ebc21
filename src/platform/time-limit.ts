/** Waiting with a time limit. */

/** Thrown when the limit is exceeded. `limit` in ms. */
export class TimeLimitExceeded extends Error {
  override readonly name = 'TimeLimitExceeded'
  constructor(readonly limit: number) {
    super(`no answer within ${limit / 1000} s`)
  }
}

/** Settles as the promise does, or rejects with `TimeLimitExceeded` after `limit` ms. */
export function within<T>(limit: number, promise: Promise<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => reject(new TimeLimitExceeded(limit)), limit)
    promise.then(resolve, reject).finally(() => clearTimeout(timer))
  })
}
