export { demoDesign } from './demo.ts'
export { DESIGN_FORMAT, DESIGN_VERSION, parseDesign, parseDesignText } from './parse.ts'
export { type Design, LIMITS, type PlanItem, type Site, type Sounding } from './schema.ts'
