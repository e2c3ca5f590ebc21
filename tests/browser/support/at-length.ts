import { test } from 'vitest'

const asked = process.env.LEADLINE_AT_LENGTH !== undefined

/**
 * What every push looks at in one size, on one device, in one bundler, looked at in the others: run by `npm run test:long` alone, told as
 * skipped elsewhere.
 */
export const atLength = test.skipIf(!asked)

/** Of the ways that something is looked at, those of this run: the first ones, or all at length. */
export const someOf = <T>(all: readonly T[], atEveryPush: number): readonly T[] =>
  asked ? all : all.slice(0, atEveryPush)
