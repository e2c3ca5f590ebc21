/** What is asked for in other words than sections and sizes: a chunk of its own, after the first picture. */
export { Decking } from './decking.tsx'
export { RampHint } from './ramp-hint.tsx'
export { Reach } from './reach.tsx'
