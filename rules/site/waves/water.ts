/** Fresh water and gravity, for all that waves and loads are counted with. Growth laws keep the 9.81 that they print. */

/** Standard gravity, m/s². */
export const G = 9.80665
/** kg/m³ */
export const WATER = 1000
/** N/m³ */
export const GAMMA = WATER * G
