export { type Bed, makeBed } from './bed.ts'
