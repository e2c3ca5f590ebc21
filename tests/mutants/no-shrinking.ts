/** A fault is found by the first example that it fails: a smaller one would only take time. */
import fc from 'fast-check'

fc.configureGlobal({ endOnFailure: true })
