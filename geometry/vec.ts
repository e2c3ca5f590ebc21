/** The little vector arithmetic that shapes need, for all of this folder. */
export * from '../rules/vec.ts'
