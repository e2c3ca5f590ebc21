/** Which heights of waves count, and what stands of them. */

/** Most of its depth that a wave's height can be, ASCE 7-16 5.4.4 (memory). */
export const BREAKING = 0.78
/** Crest over still water as part of the height (ASCE 7-16 5.4.4 and earlier; memory). */
export const CREST = 0.7
/** Mean of the highest tenth over the significant height (Longuet-Higgins 1952, J. Marine Research 11; Rayleigh's law). */
export const TENTH = 1.27
/** Highest wave over the significant one. */
export const HIGHEST = 1.8
/** Over this part of the length times tanh(kd) a wave breaks by itself (Miche 1944; memory). */
export const STEEPEST = 0.142
