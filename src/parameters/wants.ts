/** What is asked for in other words than sections and sizes: a chunk of its own, after the first picture. */
export { Decking } from './decking.tsx'
export { Extras } from './extras.tsx'
export { Levels } from './lake-levels.tsx'
export { RampHint } from './ramp-hint.tsx'
export { Reach } from './reach.tsx'
export { FrameSize } from './section-size.tsx'
export { ExposureChoice } from './wind.tsx'
