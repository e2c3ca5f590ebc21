/**
 * Loaded before each test file while a fault is in: what is tried on random docks is tried for a second, and ends at the first that fails.
 * A smaller one would only take time.
 */
import fc from 'fast-check'

fc.configureGlobal({ endOnFailure: true, interruptAfterTimeLimit: 1000 })
