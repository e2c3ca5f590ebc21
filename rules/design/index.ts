export { demoDesign } from './demo.ts'
export { parseDesign, parseDesignText } from './parse.ts'
export { type Design, LIMITS, type Obstacle, type Site, type Sounding } from './schema.ts'
