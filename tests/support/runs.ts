/**
 * How often random tests are run. What stands in a test is the number of every push; `npm run test:deep` runs ten times that.
 * `LEADLINE_RUNS` says how many instead of each thousand: 10000 is ten times.
 */
const OF_A_THOUSAND = Number(process.env.LEADLINE_RUNS ?? 1000)

/** Of `n` at every push, how many now: for the number of cases, and for how often the hard ones among them must have come up. */
export const runs = (n: number): number => Math.max(1, Math.ceil((n * OF_A_THOUSAND) / 1000))

/** More than at every push: what programs beside ours are run for, where they are installed. */
export const isDeep = OF_A_THOUSAND > 1000
