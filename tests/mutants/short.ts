/** Loaded before each test file while a fault is in: it is found by the first random dock that fails, and a smaller one would only take time. */
import fc from 'fast-check'

fc.configureGlobal({ endOnFailure: true })
